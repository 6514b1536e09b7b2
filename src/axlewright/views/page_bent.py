"""Where it is bent, as a page and a terminal show it: shares with bands, looks, what to read."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from axlewright.rig import Rig, point_columns
from axlewright.tables import (
    LocatorReading,
    locator_evidence,
    locator_jobs,
    locator_readings,
    procedures,
)
from axlewright.upkeep import NOTHING, Bent, Located, Piece, ShareBand, Suspect
from axlewright.views.drawing_sheet import Flag, drawing
from axlewright.views.locator import (
    RESTS,
    headline,
    located_lines,
    looks_besides,
    remainder_lines,
    share_words,
)

FLAGGED: Final = 5
TOLD: Final = 0.02
LETTERS: Final = 82.0
PARTS: Final[Mapping[str, str]] = {  # where the flag of a cause stands in the drawing
    "tube_up": "tube",
    "tube_back": "tube",
    "loose": "tube_joint",
    "forging": "end_forging",
    "knuckle": "knuckle",
    "pivot": "ball_joints",
    "hub": "hub_bearing",
    "tie_rod": "tie_rod",
    "drag_link": "drag_link",
    "moved": "link_brackets",
    "moved_rear": "link_brackets",
}
BANDS: Final = (
    "A band is how far the share moves when every number of the tables behind it is off by half, "
    "up or down; those numbers are the trade's habit, not counts."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class CauseRow:
    """One cause: its flag, its share and band (also in per cent, for a line), what it takes."""

    number: int
    label: str
    share: str
    band: str
    low: float
    middle: float
    high: float
    danger: str
    look: str
    stop: str
    minutes: str


@dataclass(frozen=True, slots=True, kw_only=True)
class AskedReading:
    """One reading that may be typed in: its name, its question, whether it is a sign, its page."""

    name: str
    label: str
    sign: bool
    said: str
    page: str


@dataclass(frozen=True, slots=True, kw_only=True)
class NextJob:
    """One job that is still open: what, how long, with what, and the readings it gives."""

    key: str
    label: str
    minutes: str
    tool: str
    how: str
    asks: tuple[AskedReading, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class BentPage:
    """Everything on the page; nothing of it says that the rig may be driven."""

    sentence: str
    causes: tuple[CauseRow, ...]
    nothing: CauseRow
    dangerous: tuple[CauseRow, ...]
    besides: tuple[tuple[str, str], ...]
    rods: tuple[str, ...]
    jobs: tuple[NextJob, ...]
    done: tuple[NextJob, ...]
    used: tuple[Piece, ...]
    left_out: tuple[Piece, ...]
    typed: tuple[str, ...]
    bands: str
    rests: str
    drawing: str


def bent_page(bent: Bent, rig: Rig, said: Mapping[str, str], system: str = "metric") -> BentPage:
    """Shares and looks of one axle as a page shows them; ``said`` is what was typed in."""
    found = bent.found
    told = [one for one in found.suspects if one.share >= TOLD]
    numbers = {one.key: at for at, one in enumerate(told[:FLAGGED], 1)}
    jobs = _jobs(found, said)
    open_jobs = [job.key for job in found.jobs]
    return BentPage(
        sentence=headline(found),
        causes=tuple(_row(one, bent, numbers) for one in told),
        nothing=_nothing(bent),
        dangerous=tuple(_row(one, bent, numbers) for one in found.dangerous),
        besides=tuple(looks_besides(found.axle)),
        rods=tuple(line for line in remainder_lines(found) if line),
        jobs=tuple(jobs[key] for key in open_jobs if key in jobs),
        done=tuple(job for key, job in jobs.items() if key not in open_jobs),
        used=bent.used,
        left_out=bent.left_out,
        typed=bent.typed,
        bands=BANDS,
        rests=RESTS,
        drawing=_drawing(rig, told[:FLAGGED], numbers, system),
    )


def bent_lines(bent: Bent, system: str = "metric") -> list[str]:
    """The answer for a terminal: shares with bands, dangerous causes, what next, its grounds."""
    lines = located_lines(bent.found, system, bent.bands)
    if bent.hit is not None:
        lines.append(f"The last hit on record is that of {bent.hit}.")
    if bent.used:
        lines.append("From the record, the newest of each:")
        lines += [f"  {one.label}: {one.said} (entry {one.number}, {one.on})" for one in bent.used]
    if bent.left_out:
        lines.append("On record and left out:")
        lines += [
            f"  {one.label}: {one.said} (entry {one.number}, {one.on}): {one.left_out}"
            for one in bent.left_out
        ]
    return [*lines, BANDS]


def _row(one: Suspect, bent: Bent, numbers: Mapping[str, int]) -> CauseRow:
    band = bent.bands[one.key]
    return CauseRow(
        number=numbers.get(one.key, 0),
        label=one.label,
        share=share_words(one.share),
        band=band_words(band),
        low=_cent(band.low),
        middle=_cent(one.share),
        high=_cent(band.high),
        danger=one.danger,
        look=one.look,
        stop=one.stop,
        minutes=f"{one.minutes:g}",
    )


def _nothing(bent: Bent) -> CauseRow:
    share, band = bent.found.nothing, bent.bands[NOTHING]
    return CauseRow(
        number=0,
        label="none of all these",
        share=share_words(share),
        band=band_words(band),
        low=_cent(band.low),
        middle=_cent(share),
        high=_cent(band.high),
        danger="",
        look="",
        stop="",
        minutes="",
    )


def band_words(band: ShareBand) -> str:
    """A band of a share in words."""
    low, high = share_words(band.low), share_words(band.high)
    if low == high:
        return low
    return f"{low.removesuffix(' %')} to {high}" if low[0].isdigit() else f"{low} to {high}"


def _cent(share: float) -> float:
    return round(100.0 * share, 1)


def _jobs(found: Located, said: Mapping[str, str]) -> dict[str, NextJob]:
    pages = {row.reading: row.of for row in locator_evidence().values() if row.of in procedures()}
    asks: dict[str, list[AskedReading]] = {}
    for row in locator_readings().values():
        if row.axle in {found.axle, "both"}:
            asks.setdefault(row.job, []).extend(_asked(row, said, pages.get(row.key, "")))
    return {
        job.key: NextJob(
            key=job.key,
            label=job.label,
            minutes=f"{job.minutes:g}",
            tool=job.tool,
            how=job.how,
            asks=tuple(asks[job.key]),
        )
        for job in locator_jobs().values()
        if job.axle in {found.axle, "both"} and job.key in asks
    }


def _asked(row: LocatorReading, said: Mapping[str, str], page: str) -> list[AskedReading]:
    sides: Sequence[str] = ("left", "right") if row.each else ("",)
    return [
        AskedReading(
            name=(name := f"{row.key}_{side}" if side else row.key),
            label=f"{row.label}, {side}" if side else row.label,
            sign=row.kind == "sign",
            said=said.get(name, ""),
            page=page,
        )
        for side in sides
    ]


def _drawing(rig: Rig, told: Sequence[Suspect], numbers: Mapping[str, int], system: str) -> str:
    flags = []
    for one in told:
        kind = one.key.removesuffix(f"_{one.side}") if one.side else one.key
        part = PARTS[kind]
        flags.append(
            Flag(
                number=numbers[one.key],
                part=f"{part}_{one.side}" if one.side else part,
                closeness="",
            )
        )
    return drawing(
        point_columns(rig),
        rig.words,
        rig.tyre,
        flags,
        views=("across", "plan"),
        measures=False,
        system=system,
        key=False,
        text=LETTERS,
        name="bent",
        stacked=True,
    )
