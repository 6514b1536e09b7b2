"""The answer as a page says it: whether to drive, what gives first, what wears, what to believe."""

import re
from dataclasses import dataclass

from axlewright.strength import Assessment, WearPlace
from axlewright.tables import consequences
from axlewright.views.answer import (
    OrderRow,
    after_mend_lines,
    broken_lines,
    drive_lines,
    measure_next,
    not_judged_line,
    order_rows,
    rests_line,
    sentence,
    severity_lines,
    wear_rows,
    wear_sentence,
)
from axlewright.views.drawing_ink import CLOSENESS
from axlewright.views.drawing_links import Links, called, ident, kind_of_part
from axlewright.views.gearing import gearing_lines, mismatch_lines
from axlewright.views.page_picture import Picture, answer_picture
from axlewright.views.phrases import beside_the_track, gives_at, life, then

LINKED = re.compile(r'href="#part-([a-z-]+)"')
UNJUDGED = "Not judged: there is no data for it here. That is not good news."
SLIPS = "Checked for slipping only; what breaks it is not judged. That is not good news."


@dataclass(frozen=True, slots=True, kw_only=True)
class PageRow:
    """One row of an order: ``ident`` is its part's place on the page, ``close`` its state."""

    rank: int
    part: str
    ident: str
    gives_at: str
    then: str
    beside: str
    share: str
    state: str
    close: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PartNote:
    """What is known of one part that can be tapped in the drawing."""

    ident: str
    name: str
    lines: tuple[str, ...]
    rank: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Measure:
    """One thing worth ten minutes: what, and how."""

    what: str
    how: str


@dataclass(frozen=True, slots=True, kw_only=True)
class AnswerPage:
    """Words and drawing of the page "The answer", in the reader's units.

    ``stops`` replace the answer where there are any; ``drive`` is what was looked at, kept apart
    from every figure; ``mismatch`` says that front and rear do not turn alike.
    """

    stops: tuple[str, ...]
    drive: tuple[str, ...]
    sentence: str
    wear_sentence: str
    moment: tuple[PageRow, ...]
    wearing: tuple[PageRow, ...]
    shares: str
    broken: tuple[str, ...]
    moves: tuple[str, ...]
    mends: tuple[str, ...]
    measure: tuple[Measure, ...]
    rests: str
    not_judged: str
    gearing: tuple[str, ...]
    mismatch: tuple[str, ...]
    picture: Picture
    parts: tuple[PartNote, ...]


def answer_page(assessment: Assessment, system: str = "metric") -> AnswerPage:
    """Everything that the page "The answer" says."""
    stops = tuple(drive_lines(assessment.stops)) if assessment.stops else ()
    looks = [line for line in drive_lines(assessment.findings) if line not in stops]
    links = Links(part="#part-")
    gears = gearing_lines(assessment, system)
    apart = mismatch_lines(gears)
    picture = answer_picture(assessment, system=system, links=links)
    return AnswerPage(
        stops=stops,
        drive=tuple(looks),
        sentence=sentence(assessment),
        wear_sentence=wear_sentence(assessment, system),
        moment=tuple(_row(row) for row in order_rows(assessment, system)),
        wearing=tuple(_row(row) for row in wear_rows(assessment, system)),
        shares=_shares(assessment),
        broken=tuple(broken_lines(assessment)),
        moves=tuple(severity_lines(assessment)),
        mends=tuple(after_mend_lines(assessment)),
        measure=tuple(_measure(line) for line in measure_next(assessment, system)),
        rests=rests_line(assessment, system),
        not_judged=not_judged_line(assessment),
        gearing=tuple(line for line in gears if line not in apart),
        mismatch=tuple(apart),
        picture=picture,
        parts=part_notes(assessment, picture.svg, system),
    )


def part_notes(assessment: Assessment, svg: str, system: str = "metric") -> tuple[PartNote, ...]:
    """What is known of every part that a drawing links to, the leading ones first."""
    wanted = set(LINKED.findall(svg))
    kinds = {ident(kind_of_part(part)): kind_of_part(part) for part in consequences()}
    notes = [_note(assessment, kinds[place], system) for place in sorted(wanted)]
    return tuple(sorted(notes, key=lambda note: (note.rank or 99, note.name)))


def _note(assessment: Assessment, kind: str, system: str) -> PartNote:
    lines, rank, part = [], 0, kind
    for at, place in enumerate(assessment.order, 1):
        if place.kind == kind:
            rank, part = at, place.part
            told = gives_at(place, assessment.columns, system)
            lines.append(f"Number {at} of {len(assessment.order)} in one bad moment: {told}.")
    for at, worn in enumerate(assessment.wearing, 1):
        if worn.kind == kind:
            part = part if rank else worn.part
            told = f"{worn.mode}, {_after(worn, system)}"
            lines.append(f"Number {at} of {len(assessment.wearing)} in wearing out: {told}.")
    names = consequences()
    entry = names.get(part) or names.get(f"{kind}_left") or names[kind]
    if not lines:
        checked = any(kind_of_part(row.part) == kind for row in assessment.point.solved.rows)
        lines.append(SLIPS if checked else UNJUDGED)
    lines.append(f"If it gives: {then(entry.key)}.")
    lines.append(f"Mended beside the track: {beside_the_track(entry.key, system)}.")
    lines.append(f"The look that tells: {entry.look}.")
    name = called(kind)
    return PartNote(
        ident=f"part-{ident(kind)}",
        name=name[:1].upper() + name[1:],
        lines=tuple(lines),
        rank=rank,
    )


def _after(worn: WearPlace, system: str) -> str:
    told = life(worn, system)
    return told if told == "no end seen" else f"after {told} of this use"


def _row(row: OrderRow) -> PageRow:
    return PageRow(
        rank=row.rank,
        part=row.part,
        ident=f"part-{ident(kind_of_part(row.key))}",
        gives_at=row.gives_at,
        then=row.then,
        beside=row.beside,
        share=row.share,
        state=row.closeness,
        close=CLOSENESS.get(row.closeness, ""),
    )


def _shares(assessment: Assessment) -> str:
    drawn = assessment.drawn
    if drawn is None:
        return "Middle values alone: no draws of the doubt were made."
    first = assessment.order[0]
    share = 100.0 * first.first
    return (
        f"In {share:.0f} of 100 draws of everything that is not known for certain the first row "
        f"goes first ({drawn.draws} draws)."
    )


def _measure(line: str) -> Measure:
    what, _, how = line.partition("): ")
    return Measure(what=f"{what})"[:1].upper() + f"{what})"[1:], how=how)
