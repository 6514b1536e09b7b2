"""After a hit: it is entered, and how far off the wheel stands is weighed against a bowed rod."""

from collections.abc import Mapping
from math import pi
from typing import TYPE_CHECKING, Final

from axlewright import units
from axlewright.actions.log_words import Photo, goes_with, side_of, words_of
from axlewright.errors import AxlewrightError
from axlewright.rig import Hit, Noticed
from axlewright.upkeep import OFF_CENTRE

if TYPE_CHECKING:
    from axlewright.actions.log import Log
    from axlewright.views import OffCentre, Rod

UNANSWERED: Final = "The sum needs the rest of the thirteen answers; the five looks do not."


def hit_from(
    log: "Log", slug: str, said: Mapping[str, str], photo: Photo | None = None, **more: object
) -> int:
    """Enter a hit out of what, side, speed and note."""
    what = words_of(said, "what")
    if not what:
        raise AxlewrightError("What was hit?", remedy="As in: a rock.")
    body = Hit(
        what=what,
        side=side_of(said.get("side", "")),
        speed=_said(said, "speed", "speed"),
    )
    return log.enter(slug, body, **goes_with(log.today, said, photo, more))


def rods_of(log: "Log", slug: str, system: str = "metric") -> "tuple[Rod, ...]":
    """Rods of a rig whose bow can turn the steering wheel; none while answers are missing."""
    from axlewright.strength import assess_rig
    from axlewright.views import rods

    rig = log.desk.rig(slug)
    return () if rig is None else rods(assess_rig(rig, draws=0), system)


def weigh_off_centre(
    log: "Log", slug: str, said: Mapping[str, str], system: str = "metric"
) -> "OffCentre":
    """Weigh rod, bow, length, off and ratio as a person says them; nothing is entered."""
    from axlewright.views import off_centre, rod_of

    rig = log.desk.rig(slug)
    if rig is None:
        raise AxlewrightError(UNANSWERED, remedy="Answer them on the page of the axle.")
    rod = rod_of(rods_of(log, slug, system), said.get("rod", "") or "tie rod")
    ratio = said.get("ratio", "").strip()
    bow = _said(said, "bow", "length")
    return off_centre(
        rod,
        0.0 if bow is None else bow,
        None if rod.straight else _said(said, "length", "length"),
        _said(said, "off", "angle"),
        _number(ratio) if ratio else None,
        rig.tyre.outer_diameter,
        system,
    )


def off_centre_from(
    log: "Log",
    slug: str,
    said: Mapping[str, str],
    photo: Photo | None = None,
    *,
    system: str = "metric",
    **more: object,
) -> int:
    """Enter what was seen and felt, with what the sum says of it."""
    told = weigh_off_centre(log, slug, said, system)
    degrees = "" if told.felt is None else f"{told.felt * 180.0 / pi:g} deg"
    answers = {
        "rod": told.rod.name,
        "bow": f"{1e3 * told.bow:g} mm",
        "length": "" if told.rod.straight else f"{1e3 * told.length:g} mm",
        "off centre": degrees,
        "bowed": "yes" if told.bow and not told.rod.straight else "no",
        "says": told.says,
        "because": told.because,
        "told": "\n".join(told.lines),
    }
    body = Noticed(about=OFF_CENTRE, answers=tuple(answers.items()))
    return log.enter(slug, body, **goes_with(log.today, said, photo, more))


def _said(said: Mapping[str, str], name: str, kind: str) -> float | None:
    text = said.get(name, "").strip()
    if not text:
        return None
    read = units.parse(text, kind)
    return None if read.dont_know else read.value


def _number(text: str) -> float:
    try:
        return float(text.replace(",", "."))
    except ValueError as trouble:
        raise AxlewrightError(f"{text[:40]!r} is no ratio.", remedy="As in 16.") from trouble
