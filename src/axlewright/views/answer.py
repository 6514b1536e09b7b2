"""The answer: first the sentence, then at most five rows, then what it rests on."""

from dataclasses import dataclass
from math import isfinite

from axlewright.duty import CASES
from axlewright.rig import FIELDS, Finding
from axlewright.strength import (
    Assessment,
    Comparison,
    Influence,
    Place,
    housing_mass,
    lowest_point,
)
from axlewright.views.phrases import (
    beside_the_track,
    closeness,
    gives_at,
    life,
    part_name,
    quantity,
    short_name,
    then,
)

MOST_ROWS = 5
MOST_BETTER = 6
LESS, MORE = 0.97, 1.03  # smaller changes of a margin are not told
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
    return f"In one bad moment {name} gives first{told}: {then(first.part)}."


def wear_sentence(assessment: Assessment, system: str = "metric") -> str:
    """What is used up first, in one sentence."""
    first = assessment.wearing[0]
    name = part_name(first.part, first.side)
    return (
        f"Wearing out: {name}, {first.mode}, after {life(first, system)} of this use "
        f"(a coarse estimate). If it goes: {then(first.part)}."
    )


def drive_lines(findings: tuple[Finding, ...]) -> list[str]:
    """May I drive? From what was found, never from a figure."""
    if not findings:
        return ["May I drive? Nobody's look is on record, so no figure below says yes."]
    lines = []
    for item in findings:
        where = f" ({item.where})" if item.where else ""
        lines.append(
            f"{item.state.upper()}: {item.part}{where}, {item.what}, {item.when}: {item.why}. "
            f"{item.do}"
        )
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
            beside=beside_the_track(place.part),
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
            beside=beside_the_track(place.part),
            share=f"{100.0 * place.first:.0f} %",
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
                f" At its ends the first is {_kind(item.leads_low)} or {_kind(item.leads_high)}."
            )
        lines.append(f"{_matters(item, system)}: {asks} {how}{swaps}")
        if len(lines) == most:
            break
    return lines


def measurable() -> dict[str, tuple[str, str]]:
    """Quantities that a person can measure: the question and how, by column name."""
    return {field.quantity: (field.asks, field.how) for field in FIELDS if field.quantity}


def after_mend_lines(assessment: Assessment) -> list[str]:
    """Which part gives next once each leading one has been made strong."""
    return [
        f"Made strong enough, {part_name(part)} passes the break on to {part_name(next_part)}."
        for part, next_part in assessment.after_mend
    ]


def change_lines(comparison: Comparison, system: str = "metric") -> list[str]:
    """What a change did: what got worse as plainly as what got better."""
    before = {place.kind: place for place in comparison.before.order}
    after = {place.kind: place for place in comparison.after.order}
    worse, better = [], []
    for kind, now in after.items():
        was = before.get(kind)
        if was is None or not (isfinite(was.margin) or isfinite(now.margin)):
            continue
        name = short_name(now.part, now.side)
        if not isfinite(now.margin):
            better.append((-9.0, f"{name}: no longer in reach"))
            continue
        if not isfinite(was.margin):
            worse.append((0.0, f"{name}: now in reach"))
            continue
        ratio = now.margin / max(was.margin, 1e-6)
        line = f"{name}: {_times_more(ratio)}"
        if ratio < LESS:
            worse.append((ratio, line))
        elif ratio > MORE:
            better.append((-ratio, line))
    names = " and ".join(change.name for change in comparison.changes)
    lines = [f"With {names}: {sentence(comparison.after)}"]
    lines.append("Worse: " + _listed([line for _, line in sorted(worse)]))
    told = [line for _, line in sorted(better)]
    rest = len(told) - MOST_BETTER
    more = [f"and {rest} more parts a little"] if rest > 0 else []
    lines.append("Better: " + _listed(told[:MOST_BETTER] + more))
    lines.append(_bulk_line(comparison, system))
    if comparison.dropped:
        lines.append(f"Readings that went with what was replaced: {_listed(comparison.dropped)}")
    return lines


def _bulk_line(comparison: Comparison, system: str) -> str:
    before, after = comparison.before.columns, comparison.after.columns
    mass = float((housing_mass(after) - housing_mass(before))[0])
    drop = float((lowest_point(after) - lowest_point(before))[0])
    told = "no change of mass in tubes, sleeves and truss"
    if abs(mass) > 0.05:
        sense = "more" if mass > 0.0 else "less"
        told = f"{quantity(abs(mass), 'mass', system, 2)} {sense} in tubes, sleeves and truss"
    if abs(drop) < 0.0005:
        return f"Mass and clearance: {told}; the centre hangs as low as before."
    sense = "higher" if drop > 0.0 else "lower"
    moved = quantity(abs(drop), "length", system, 2)
    return f"Mass and clearance: {told}; the centre hangs {moved} {sense}."


def broken_lines(assessment: Assessment) -> list[str]:
    """What has broken or been mended already, against what the order says."""
    lines = []
    kinds = [place.kind for place in assessment.order]
    wears = [place.kind for place in assessment.wearing]
    for condition in assessment.rig.conditions:
        if condition.what not in {"broke", "bent", "bowed", "mended", "cracked"}:
            continue
        key = condition.part.lower().replace("-", "_").replace(" ", "_")
        found = [kind for kind in dict.fromkeys(kinds + wears) if kind.startswith(key)]
        if not found:
            lines.append(f"Already {condition.what}: {condition.part}; it is not in the orders.")
            continue
        kind = found[0]
        places = []
        if kind in kinds:
            places.append(f"number {kinds.index(kind) + 1} in one bad moment")
        if kind in wears:
            places.append(f"number {wears.index(kind) + 1} in wearing out")
        lines.append(
            f"Already {condition.what}: {condition.part}; the orders have it as "
            f"{' and '.join(places)}."
        )
    return lines


def severity_lines(assessment: Assessment) -> list[str]:
    """How far the order moves when a case's severity goes to the ends of its band."""
    label = {case.key: case.label for case in CASES}
    moved: dict[str, list[str]] = {}
    for move in assessment.severities:
        if move.leads_mild != move.leads_hard:
            ends = f"{_kind(move.leads_mild)} if milder, {_kind(move.leads_hard)} if harder"
            moved.setdefault(ends, []).append(label[move.case])
    if not moved:
        return ["Milder or harder severities do not change which part goes first."]
    told = "; ".join(f"{ends} ({', '.join(cases)})" for ends, cases in moved.items())
    return [f"Severity could change the first part: {told}."]


def _kind(kind: str) -> str:
    return kind.replace("_", " ")


def _matters(item: Influence, system: str) -> str:
    doubt = item.doubt
    low, high = (
        quantity(doubt.low, doubt.kind, system, 2),
        quantity(doubt.high, doubt.kind, system, 2),
    )
    unit = high.partition(" ")[2]
    span = f"{low.removesuffix(unit).strip()} to {high}"
    swaps = ": could swap the first" if item.swaps else ""
    return f"the {doubt.label} ({span}{swaps})"


def _share(place: Place, assessment: Assessment) -> str:
    return f"{100.0 * place.first:.0f} %" if assessment.drawn is not None else ""


def _tenths(share: float) -> str:
    return f"{round(10.0 * share)}"


def _times_more(ratio: float) -> str:
    if ratio >= 1.0:
        return f"takes a {100.0 * (ratio - 1.0):.0f} % harder moment"
    return f"gives at a {100.0 * (1.0 - ratio):.0f} % milder moment"


def _listed(items: list[str] | tuple[str, ...]) -> str:
    return "; ".join(items) if items else "nothing"
