"""The drawing as pages show it: of a whole rig with its flags, or growing answer by answer."""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache

from axlewright.rig import FIRST_FIELDS, Given, Rig, TyreCode, point_columns, rig_from_text
from axlewright.strength import Assessment
from axlewright.views.drawing_sheet import Links, drawing, drawing_in_words
from axlewright.views.report_words import flags_of

LETTERS = 82.0  # height of lettering, mm of the real thing: 12 px where the page is 390 px wide
STANDS_AT = 0.465  # hub above ground over free diameter of a loaded tyre; memory
USUAL: Mapping[str, str] = {
    "tube.bare.left": "290 mm",
    "tube.bare.right": "580 mm",
    "rig.condition": "never looked at",
}
ACROSS = ("track", "spring_spacing", "tube_bare_left", "tube_bare_right")
DRAWN = tuple(  # what the drawing letters
    each.path
    for each in FIRST_FIELDS
    if each.question not in {None, 12, 13} and each.axle == "both"
)
GROWING = "Solid: told. Dotted: a usual axle's, until you tell. Tap an empty box to fill it."
FLAGGED = (
    "Heavy outline and close hatching: gives first. Wide hatching: holds, without much room. "
    "Tap a part to see what is known of it."
)
GROWN = "Everything drawn to scale. Tap a number to change it."


@dataclass(frozen=True, slots=True, kw_only=True)
class Picture:
    """One drawing for a page: its SVG, a line below it, and the same in words."""

    svg: str
    caption: str
    words: tuple[str, ...]


def growing_picture(
    axle: str,
    said: Mapping[str, str],
    given: Mapping[str, Given],
    tyre: TyreCode | None,
    known: Collection[str],
    *,
    system: str = "metric",
    typed: Mapping[str, str] | None = None,
    links: Links | None = None,
) -> Picture:
    """Drawing of what was said so far of one axle, a usual axle where nothing was said.

    ``said`` are words by path, ``given`` numbers by quantity, ``known`` the paths answered.
    ``typed`` has answers to be lettered as they were typed, by path.
    """
    rig = usual_rig(axle, said, given, tyre)
    columns = point_columns(rig)
    svg = drawing(
        columns,
        rig.words,
        rig.tyre,
        system=system,
        text=LETTERS,
        name="growing",
        key=False,
        known=known,
        typed=typed,
        links=links,
        stacked=True,
    )
    missing = [path for path in DRAWN if path not in known]
    words = drawing_in_words(columns, rig.words, rig.tyre, system=system).splitlines()
    told = f"{len(missing)} of its {len(DRAWN)} numbers and words are those of a usual axle."
    return Picture(
        svg=svg,
        caption=GROWING if missing else GROWN,
        words=(words[0], *([told] if missing else []), *words[1:]),
    )


def answer_picture(
    assessment: Assessment,
    *,
    system: str = "metric",
    links: Links | None = None,
    name: str = "answer",
    views: Sequence[str] = ("across", "side", "plan"),
) -> Picture:
    """Drawing of an assessed axle with the numbered flags of its order."""
    rig, flags = assessment.rig, flags_of(assessment)
    svg = drawing(
        assessment.columns,
        rig.words,
        rig.tyre,
        flags,
        views=tuple(view for view in ("across", "side", "plan") if view in views),
        system=system,
        text=LETTERS,
        name=name,
        key=False,
        links=links,
        stacked=True,
    )
    words = drawing_in_words(assessment.columns, rig.words, rig.tyre, flags, system=system)
    caption = FLAGGED
    return Picture(svg=svg, caption=caption, words=tuple(words.splitlines()))


def usual_rig(
    axle: str, said: Mapping[str, str], given: Mapping[str, Given], tyre: TyreCode | None
) -> Rig:
    """Rig out of what was said, with a usual axle's answers for the rest, scaled to its track."""
    usual = _usual(axle)
    numbers = dict(usual.given)
    if "track" in given:
        scale = given["track"].value / numbers["track"].value
        for name in ACROSS:
            numbers[name] = replace(numbers[name], value=numbers[name].value * scale)
    for one, other in (("left", "right"), ("right", "left")):
        for name in ("hub_height", "tube_girth"):
            if f"{name}_{one}" not in given and f"{name}_{other}" in given:
                numbers[f"{name}_{one}"] = given[f"{name}_{other}"]
    if tyre is not None and not any(name.startswith("hub_height") for name in given):
        for name in ("hub_height_left", "hub_height_right"):
            numbers[name] = replace(numbers[name], value=STANDS_AT * tyre.outer_diameter)
    return replace(
        usual,
        words={**usual.words, **said},
        given={**numbers, **given},
        tyre=tyre or usual.tyre,
    )


@cache
def _usual(axle: str) -> Rig:
    """Rig of the catalogue's examples."""
    lines = [
        f'{field.path} = "{USUAL.get(field.path, field.example)}"'
        for field in FIRST_FIELDS
        if "." in field.path and field.axle in {"both", axle}
    ]
    head = ["axlewright = 1", 'rig.name = "usual"', f'rig.axle = "{axle}"']
    return rig_from_text("\n".join([*head, *lines]))
