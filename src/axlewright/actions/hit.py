"""After a hit: it is entered, and how far off the wheel stands is weighed against a bowed rod."""

import datetime as dt
from collections.abc import Mapping
from math import pi
from typing import TYPE_CHECKING, Final

from axlewright import units
from axlewright.actions.bay_words import cleaned
from axlewright.actions.log_words import Photo, side_of
from axlewright.errors import AxlewrightError
from axlewright.rig import Hit, Noticed
from axlewright.upkeep import OFF_CENTRE

if TYPE_CHECKING:
    from axlewright.actions.log import Log
    from axlewright.views import OffCentre, Rod

LONGEST_WORDS: Final = 200
UNANSWERED: Final = "The sum needs the rest of the thirteen answers; the five looks do not."


def hit_from(
    log: "Log",
    slug: str,
    said: Mapping[str, str],
    photo: Photo | None = None,
    *,
    who: str = "",
    odometer: str = "",
    device: str = "",
    key: str = "",
) -> int:
    """Enter a hit out of what, side, speed and note."""
    what = cleaned(said.get("what", ""))[:LONGEST_WORDS]
    if not what:
        raise AxlewrightError("What was hit?", remedy="As in: a rock.")
    speed = said.get("speed", "").strip()
    fast = units.parse(speed, "speed") if speed else None
    return log.enter(
        slug,
        Hit(
            what=what,
            side=side_of(said.get("side", "")),
            speed=None if fast is None or fast.dont_know else fast.value,
        ),
        who=who,
        odometer=odometer,
        note=said.get("note", ""),
        photos=[] if photo is None else [photo],
        device=device,
        key=key,
    )


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
    who: str = "",
    odometer: str = "",
    device: str = "",
    key: str = "",
    on: dt.date | None = None,
    system: str = "metric",
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
    return log.enter(
        slug,
        body,
        on=on,
        who=who,
        odometer=odometer,
        note=said.get("note", ""),
        photos=[] if photo is None else [photo],
        device=device,
        key=key,
    )


def _said(said: Mapping[str, str], name: str, kind: str) -> float | None:
    text = said.get(name, "").strip()
    if not text:
        return None
    read = units.parse(text, kind)
    return None if read.dont_know else read.value


def _number(text: str) -> float:
    try:
        number = float(text.replace(",", "."))
    except ValueError as trouble:
        raise AxlewrightError(f"{text[:40]!r} is no ratio.", remedy="As in 16.") from trouble
    if not number > 0.0:
        raise AxlewrightError(f"{text[:40]!r} is no ratio.", remedy="As in 16.")
    return number
