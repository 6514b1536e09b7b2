"""The answer: first the sentence, then at most five rows, then what it rests on."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from math import isfinite

from axlewright.rig import FIELDS, Doubt, Finding
from axlewright.strength import Assessment, Comparison, Influence, Place, WearPlace
from axlewright.tables import consequence
from axlewright.views.compared import (
    bulk_lines,
    listed,
    offset_lines,
    replaced_lines,
    weld_lines,
    worse_and_better,
)
from axlewright.views.geometry_change import geometry_lines
from axlewright.views.named_parts import kinds_meant
from axlewright.views.phrases import (
    beside_the_track,
    case_name,
    closeness,
    gives,
    gives_at,
    hurts,
    kind_name,
    life,
    part_name,
    several,
    short_name,
    span,
    then,
    worn,
)
from axlewright.views.questions import field_name

MOST_ROWS = 5
LITTLE = 0.05  # a mend that lets the axle take less more than this buys little
AGREED = 3  # a part that broke and stands this high in an order agrees with it
ONCE = frozenset({"broke", "bent", "bowed"})
SLOWLY = frozenset({"mended", "cracked"})
BESIDE = {
    "yes": "it is changed beside the track",
    "partly": "beside the track only to get out of danger",
    "no": "it is not mended beside the track",
}
CAUTION = (
    "Decision support, not a certificate: the makers' manuals, local law and licensed practice "
    "come first. Go comes only from looks at the real thing."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderRow:
    """One row of an order, ready to print."""

    rank: int
    part: str
    key: str
    gives_at: str
    then: str
    beside: str
    share: str
    closeness: str


def sentence(assessment: Assessment) -> str:
    """What gives first in one bad moment, in one sentence."""
    first = assessment.order[0]
    name = part_name(first.part, first.side)
    if not isfinite(first.margin):
        return "Nothing in this axle gives in the moments that were tried."
    others = [place for place in assessment.order[1:3] if place.first >= 0.05]
    shares = f"{_tenths(first.first)} of 10 draws" if assessment.drawn is not None else ""
    if shares and others:
        shares += "; " + ", ".join(
            f"{part_name(place.part, place.side)} in {_tenths(place.first)}" for place in others
        )
    told = f" ({shares})" if shares else ""
    return f"In one bad moment {name} {gives(first.part)} first{told}: {then(first.part)}."


def wear_sentence(assessment: Assessment, system: str = "metric") -> str:
    """What is used up first, in one sentence."""
    first = assessment.wearing[0]
    return (
        f"Wearing out: {worn(first)} after {life(first, system)} of this use "
        f"(a coarse estimate). If {'they go' if several(first.part) else 'it goes'}: "
        f"{then(first.part)}."
    )


def drive_lines(findings: tuple[Finding, ...]) -> list[str]:
    """May I drive? From what was found, never from a figure."""
    if not findings:
        return ["May I drive? Nobody's look is on record, so no figure below says yes."]
    lines = []
    for item in findings:
        where = f" ({item.where})" if item.where else ""
        found = ", ".join(filter(None, (f"{item.part}{where}", item.what, item.when)))
        do = f"{item.do[:1].upper()}{item.do[1:].rstrip('.')}."
        lines.append(f"{item.state.upper()}: {found}: {item.why}. {do}")
    return lines


def order_rows(
    assessment: Assessment, system: str = "metric", most: int = MOST_ROWS
) -> list[OrderRow]:
    """Rows of one bad moment, first first."""
    return [
        OrderRow(
            rank=rank,
            part=short_name(place.part, place.side),
            key=place.part,
            gives_at=gives_at(place, assessment.columns, system),
            then=then(place.part),
            beside=beside_the_track(place.part, system),
            share=_share(place, assessment),
            closeness=closeness(place),
        )
        for rank, place in enumerate(assessment.order[:most], 1)
    ]


def wear_rows(
    assessment: Assessment, system: str = "metric", most: int = MOST_ROWS
) -> list[OrderRow]:
    """Rows of wearing out, first first."""
    return [
        OrderRow(
            rank=rank,
            part=short_name(place.part, place.side),
            key=place.part,
            gives_at=f"{place.mode}: {life(place, system)}",
            then=then(place.part),
            beside=beside_the_track(place.part, system),
            share=_share(place, assessment),
            closeness="",
        )
        for rank, place in enumerate(assessment.wearing[:most], 1)
    ]


def not_judged_line(assessment: Assessment) -> str:
    """What was not judged, because nobody has looked."""
    return f"Not judged, because nobody has looked: {', '.join(assessment.not_judged)}."


def rests_line(assessment: Assessment, system: str = "metric") -> str:
    """What the answer rests on, and which doubt matters most."""
    told = f"Rests on {assessment.rig.answers} answers of yours and {assessment.doubts} assumptions"
    if not assessment.influences:
        return f"{told}."
    told = f"{told}; {_matters(assessment.influences[0], system)} matters most."
    return f"{told} {memory_line(assessment)}"


def memory_line(assessment: Assessment) -> str:
    """How much of the doubt about what gives first stands on memory, where no source was read."""
    first = assessment.remembered[0]
    return (
        f"Of the doubt about the first row {100.0 * first.share:.0f} % stands on memory: values "
        "for which no source was read."
    )


def measure_next(assessment: Assessment, system: str = "metric", most: int = 3) -> list[str]:
    """Assumptions worth ten minutes, the one that could swap the order first."""
    lines = []
    for item in assessment.influences:
        if item.doubt.given or item.doubt.quantity not in measurable():
            continue
        asks, how = measurable()[item.doubt.quantity]
        swaps = ""
        if item.swaps:
            swaps = (
                f" At the low end the {kind_name(item.leads_low)} would lead the order, at the "
                f"high end the {kind_name(item.leads_high)}."
            )
        lines.append(f"{_matters(item, system)}: {asks} {how}{swaps}")
        if len(lines) == most:
            break
    return lines


def measurable() -> dict[str, tuple[str, str]]:
    """Quantities that a person can measure: the question and how, by column name.

    How hard a usual moment is cannot be measured, only judged; it has a line of its own.
    """
    return {
        field.quantity: (field.asks, field.how)
        for field in FIELDS
        if field.quantity and not field.path.startswith("severity.")
    }


def after_mend_lines(assessment: Assessment) -> list[str]:
    """Which part gives next once each leading one has been made strong, and how much that buys."""
    places = {place.part: place for place in assessment.order}
    leader = assessment.order[0]
    drawn = assessment.drawn is not None
    often, average = (" most often", " on average") if drawn else ("", "")
    lines, little = [], []
    for mended in assessment.after_mend:
        place = places[mended.part]
        label = kind_name(place.kind)
        stronger = f"stronger {label}" if several(mended.part) else f"a stronger {label}"
        if not isfinite(place.margin):
            continue
        if not mended.following:
            lines.append(f"With {stronger} nothing else is in reach.")
            continue
        rest = places[mended.following]
        if place.kind != leader.kind and mended.harder < LITTLE:
            little.append(stronger)
            continue
        name, verb = part_name(rest.part, rest.side), gives(rest.part)
        when = f"still {verb} first" if rest.kind == leader.kind else f"{verb} next"
        harder = 100.0 * mended.harder
        told = f"With {stronger}, {name} {when}{often}, in a moment {harder:.0f} % harder{average}"
        worse = hurts(rest.part) and not hurts(mended.part)
        warned = " That is the worse thing to break." if worse else ""
        there = BESIDE[consequence(rest.part).mendable]
        lines.append(f"{told}: {then(rest.part)}; {there}.{warned}")
    if little:
        name, verb = part_name(leader.part, leader.side), gives(leader.part)
        alone = f"{' or '.join(little)} alone"
        lines.append(f"With {alone}, {name} still {verb} first: it buys little.")
    return lines


def change_lines(comparison: Comparison, system: str = "metric") -> list[str]:
    """What a change did: what got worse as plainly as what got better."""
    names = " and ".join(change.name for change in comparison.changes)
    worse, better = worse_and_better(comparison, system)
    before, after = comparison.before.findings, comparison.after.findings
    new = tuple(each for each in after if each not in before)
    return [
        f"With {names}: {sentence(comparison.after)}",
        f"Worse: {listed(worse)}.",
        f"Better: {listed(better)}.",
        *bulk_lines(comparison, system),
        *offset_lines(comparison),
        *weld_lines(comparison),
        *geometry_lines(comparison, system),
        *replaced_lines(comparison),
        *(drive_lines(new) if new else []),
    ]


def broken_lines(assessment: Assessment, broke: Sequence[str] = ()) -> list[str]:
    """What has broken or been mended already, against what the order would have said.

    ``broke`` names what broke in the chapters of the past, beside the rig's own conditions.
    """
    kinds = [place.kind for place in assessment.order]
    wears = [place.kind for place in assessment.wearing]
    told = [_against_orders(part, what, kinds, wears) for part, what in _broke(assessment, broke)]
    return told or ["Nothing on record has broken yet, so nothing has tested this order."]


def broken_parts(assessment: Assessment, broke: Sequence[str] = ()) -> list[str]:
    """The same in a few words: each part with its places in the two orders."""
    kinds = [place.kind for place in assessment.order]
    wears = [place.kind for place in assessment.wearing]
    found = []
    for part, _ in _broke(assessment, broke):
        meant = kinds_meant(part, kinds + wears)
        places = _places(meant[0], kinds, wears) if meant else []
        found.append(f"{part} ({' and '.join(places) or 'the orders do not judge it'})")
    return found


def _broke(assessment: Assessment, broke: Sequence[str]) -> list[tuple[str, str]]:
    """Each thing that broke or was mended, once, and what became of it."""
    own = [
        (each.part, each.what) for each in assessment.rig.conditions if each.what in ONCE | SLOWLY
    ]
    known = {part.casefold() for part, _ in own}
    return own + [(part, "broke") for part in dict.fromkeys(broke) if part.casefold() not in known]


def _places(kind: str, kinds: list[str], wears: list[str]) -> list[str]:
    orders = ((kinds, "in one bad moment"), (wears, "in wearing out"))
    return [
        f"number {order.index(kind) + 1} of {len(order)} {name}"
        for order, name in orders
        if kind in order
    ]


def _against_orders(part: str, what: str, kinds: list[str], wears: list[str]) -> str:
    meant = kinds_meant(part, kinds + wears)
    if not meant:
        return f"Already {what}: {part}. The orders do not judge it, so it tells nothing of them."
    kind = meant[0]
    places = _places(kind, kinds, wears)
    ranks = [kinds.index(kind) + 1] if kind in kinds else []
    if kind in wears and what in SLOWLY:
        ranks.append(wears.index(kind) + 1)
    agrees = bool(ranks) and min(ranks) <= AGREED
    verdict = (
        "the order would have said so"
        if agrees
        else "the order would not have said so: believe the part, and look for the wrong number"
    )
    return (
        f"Already {what}: {part}. The orders have the {kind_name(kind)} as "
        f"{' and '.join(places)}; {verdict}."
    )


def severity_lines(assessment: Assessment) -> list[str]:
    """How far the order moves when a case's severity goes to the ends of its band."""
    moved: dict[tuple[str, str], list[str]] = {}
    seen: set[tuple[str, str]] = set()
    for move in assessment.severities:
        case = case_name(move.case)
        for end, kind in (("milder", move.leads_mild), ("harder", move.leads_hard)):
            if kind != move.leads and (end, case) not in seen:
                moved.setdefault((end, kind), []).append(case)
                seen.add((end, case))
    lines = [
        f"If {' or '.join(cases)} is {end} than taken here, the {kind_name(kind)} would lead."
        for (end, kind), cases in moved.items()
    ]
    return lines or ["Milder or harder moments of one kind do not change which part leads."]


def doubt_name(doubt: Doubt) -> str:
    """What a doubt is about, with an article."""
    if not doubt.given:
        return f"the {doubt.label}"
    return f"your {_field_names().get(doubt.label, doubt.label).partition(', positive')[0]}"


@cache
def _field_names() -> dict[str, str]:
    return {field.path: field_name(field) for field in FIELDS}


def _matters(item: Influence, system: str) -> str:
    doubt = item.doubt
    swaps = ": could swap the first" if item.swaps else ""
    return f"{doubt_name(doubt)} ({span(doubt.low, doubt.high, doubt.kind, system, 2)}{swaps})"


def _share(place: Place | WearPlace, assessment: Assessment) -> str:
    return f"{100.0 * place.first:.0f} %" if assessment.drawn is not None else ""


def _tenths(share: float) -> str:
    return f"{max(1, round(10.0 * share))}"
