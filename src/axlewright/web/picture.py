"""The drawing of one axle as far as it is known, for its page."""

from typing import Final

from markupsafe import Markup

from axlewright.actions import Draft
from axlewright.errors import AxlewrightError, Fault
from axlewright.rig import FIELDS, Rig, point_columns
from axlewright.views import drawing

USUAL: Final = "What nobody has said yet is drawn as usual."

INSTEAD: Final = {"rig.condition": "never looked at"}  # the example would ask for a list


def picture_of(draft: Draft, system: str) -> tuple[Markup, str]:
    """Drawing as SVG, and a line below it; what nobody has said yet is drawn as usual."""
    try:
        rig, caption = _filled(draft).rig(), USUAL if draft.missing() else ""
    except AxlewrightError:
        rig, caption = _filled(Draft(name=draft.name, axle=draft.axle)).rig(), USUAL
    return _drawn(rig, system), f"To scale, seen from behind. {caption}".strip()


def _filled(draft: Draft) -> Draft:
    """The draft with an example, or the other side's answer, for whatever is missing."""
    fields = {each.path: each for each in FIELDS}
    for path in draft.missing():
        stem, _, side = path.rpartition(".")
        twin = draft.answers.get(f"{stem}.{'left' if side == 'right' else 'right'}")
        same = side in {"left", "right"} and twin is not None and not twin.dont_know
        text = INSTEAD.get(path, fields[path].example)
        read = draft.read(fields[path], twin.text if twin and same else text)
        if not isinstance(read, Fault):
            draft = draft.with_answer(path, read)
    return draft


def _drawn(rig: Rig, system: str) -> Markup:
    drawn = drawing(
        point_columns(rig),
        rig.words,
        rig.tyre,
        views=("across",),
        key=False,
        system=system,
        text=44.0,
    )
    return Markup(drawn)  # noqa: S704  (made by views, which escapes what was typed)
