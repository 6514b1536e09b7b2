"""After a hit in words: what stops, what was hit, what the sum over a rod said, where to look."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from axlewright import units
from axlewright.rig import Kept, Noticed
from axlewright.tables import look_stops, looks_beyond
from axlewright.upkeep import OFF_CENTRE, WantedLook
from axlewright.views.log import happened, wanted_look_lines
from axlewright.views.look_words import last_hit
from axlewright.views.off_centre_words import OffCentre
from axlewright.views.take_rods import RATIO, Rod
from axlewright.views.units_in_text import in_units

STAND: Final = "Stop where it is safe, engine off, both ends chocked. Nobody goes under."


@dataclass(frozen=True, slots=True, kw_only=True)
class SumWords:
    """One sum on record: its entry, what it says, line by line."""

    number: int
    state: str
    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class HitWords:
    """The words of the page after a hit; ``sums`` are those since it, the latest first."""

    stand: str
    stop_list: tuple[str, ...]
    hit: str
    photos: tuple[str, ...]
    rods: tuple[Rod, ...]
    unit: str
    scale: float
    ratio: str
    sums: tuple[SumWords, ...]
    beyond: tuple[tuple[str, str], ...]


def hit_words(
    history: Sequence[Kept], axle: str, rods: Sequence[Rod], system: str = "metric"
) -> HitWords:
    """What the page after a hit says of one axle."""
    hit = last_hit(history)
    beyond = sorted(looks_beyond().values(), key=lambda each: each.rank)
    unit = units.SYSTEMS[system]["length"]
    return HitWords(
        stand=STAND,
        stop_list=tuple(
            each.words for each in look_stops().values() if each.axle in {axle, "both"}
        ),
        hit="" if hit is None else f"{hit.on}: {happened(hit, system).removeprefix('hit ')}",
        photos=() if hit is None else hit.photos,
        rods=tuple(rods),
        unit=unit,
        scale=units.known("length")[unit],
        ratio=f"{RATIO[0]:g} to {RATIO[1]:g}",
        sums=tuple(
            _sum(each)
            for each in reversed(history)
            if isinstance(each.body, Noticed)
            and each.body.about == OFF_CENTRE
            and (hit is None or each.order > hit.order)
        ),
        beyond=tuple(
            (in_units(each.cause, system), in_units(each.look, system))
            for each in beyond
            if each.axle in {axle, "both"}
        ),
    )


def hit_lines(
    told: OffCentre | None, wanted: Sequence[WantedLook], axle: str, system: str = "metric"
) -> list[str]:
    """After a hit in the terminal: the sum, where else to look, the five looks."""
    lines = [STAND]
    if told is not None:
        beyond = hit_words((), axle, (), system).beyond
        lines += ["Does what is seen explain what is felt?", *(f"  {one}" for one in told.lines)]
        lines += ["What else it can be, the dangerous first:"]
        lines += [f"  {place}. {cause}: {look}" for place, (cause, look) in enumerate(beyond, 1)]
    return [*lines, "Now look:", *wanted_look_lines(wanted, system)]


def _sum(kept: Kept) -> SumWords:
    assert isinstance(kept.body, Noticed)  # noqa: S101  (chosen so above)
    said = dict(kept.body.answers)
    return SumWords(
        number=kept.number,
        state=said.get("says", ""),
        lines=tuple(said.get("told", "").split("\n")),
    )
