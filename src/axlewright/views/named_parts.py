"""Which parts of the orders a person means: "U-joint", "left tube", "panhard bracket"."""

import re
from collections.abc import Iterable
from typing import Final

from axlewright.views.phrases import kind_name

SAME: Final = {  # words of the garage for words of the orders; common practice, no source
    "u joint": "wheel joint",
    "ujoint": "wheel joint",
    "universal joint": "wheel joint",
    "panhard": "track bar",
    "wheel bearing": "hub bearing",
    "half shaft": "inner shaft",
    "halfshaft": "inner shaft",
    "axle shaft": "inner shaft",
    "crown wheel": "ring and pinion",
    "ring gear": "ring and pinion",
    "pinion": "ring and pinion",
    "prop shaft": "propeller shaft",
    "propshaft": "propeller shaft",
    "drive shaft": "propeller shaft",
    "perch": "spring seat",
    "spring pad": "spring seat",
    "shock bracket": "damper bracket",
    "king pin": "kingpin",
    "diff housing": "centre casting",
    "wheel nuts": "wheel studs",
    "shock absorber": "damper",
    "u bolt": "leaf clamp",
}
SILENT: Final = frozenset({"left", "right", "the", "of", "and", "on", "a", "axle", "front", "rear"})


def kinds_meant(said: str, kinds: Iterable[str]) -> list[str]:
    """Kinds of part that a person's word for one fits, the closest first."""
    wanted = _words(_translated(said))
    fits = []
    for kind in dict.fromkeys(kinds):
        known = _words(kind_name(kind)) | _words(kind)
        if wanted and wanted <= known:
            fits.append((len(_words(kind_name(kind)) - wanted), kind))
    return [kind for _, kind in sorted(fits, key=lambda pair: pair[0])]


def _translated(said: str) -> str:
    plain = re.sub(r"[^a-z]+", " ", said.casefold()).strip()
    for word, ours in SAME.items():
        if re.search(rf"\b{word}\b", plain) and ours not in plain:
            plain = re.sub(rf"\b{word}\b", ours, plain)
            break
    return plain


def _words(text: str) -> set[str]:
    parts = re.split(r"[^a-z]+", text.casefold())
    return {part.removesuffix("s") for part in parts if part and part not in SILENT}
