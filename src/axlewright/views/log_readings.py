"""A guided reading in words, and what became of one; parts, the past, the questions of a shake."""

from collections.abc import Sequence

from axlewright import units
from axlewright.rig import Component, Fitment
from axlewright.tables import Procedure, ProcedureStep, instrument, shimmy_questions
from axlewright.upkeep import Carried, Past, ReadingTaken
from axlewright.views.log import verdict_lines
from axlewright.views.phrases import to_doubt
from axlewright.views.units_in_text import in_units


def procedure_list_lines(procedures: Sequence[Procedure]) -> list[str]:
    """Every guided reading of an axle, by name."""
    return [f"{each.key}: {each.title}" for each in procedures]


def procedure_lines(
    asked: Procedure, steps: Sequence[ProcedureStep], system: str = "metric"
) -> list[str]:
    """How a reading is taken: what first, the picture, the steps, what people get wrong."""
    sides = " and ".join(each for each in asked.sides if each)
    lines = [
        f"{asked.title} ({sides or 'one reading'})",
        f"First: {asked.before}",
        f"Load: {asked.load_state}.",
        f"Picture: {asked.sketch}",
    ]
    for each in steps:
        lines.append(in_units(f"{each.step}. {each.do}", system))
        if each.caution:
            lines.append(f"   CAUTION: {each.caution}")
    tools = ", ".join(f"{instrument(key).label} [{key}]" for key in asked.instruments)
    return [
        *lines,
        f"Floor and frame: {asked.correction}",
        f"Sign: {asked.sign}.",
        f"What people get wrong: {asked.wrong}",
        f"With: {tools}.",
    ]


def reading_lines(taken: ReadingTaken, system: str = "metric") -> list[str]:
    """What was understood, what looks mixed up, the value with its doubt, then every verdict."""
    kind, known = taken.procedure.kind, taken.worth
    lines = [f"Understood: {taken.echo}"]
    for doubt in taken.doubts:
        lines += [f"  Is that right? {doubt.problem}. {doubt.ask}"]
    if not taken.number:
        return [*lines, "Not kept. Say it again as it is, or with --sure."]
    half, unit = 0.5 * (known.band[1] - known.band[0]), units.SYSTEMS[system][kind]
    ends = (known.mean, *known.band)
    mean, low, high = (f"{to_doubt(end, half, kind, system)} {unit}" for end in ends)
    lines.append(f"Kept as {taken.number}: {mean}, 95 times in 100 between {low} and {high}.")
    if not taken.judged:
        lines.append("  NOT JUDGED: no limit is known here. Give the manual's with `log limit`.")
    stops = any(each.state == "stop" for each in taken.objections)
    for each in taken.judged:
        lines += verdict_lines(each, kind, system, stops=stops)
    return [*lines, "A reading within its limit is no go: looks say that."]


def part_lines(
    parts: Sequence[tuple[Component, Sequence[Fitment], Carried]], system: str = "metric"
) -> list[str]:
    """Parts, where each was, and what it went through."""
    lines = []
    for part, where, went in parts:
        mark = f" ({part.mark})" if part.mark else ""
        far = units.show(went.distance, "distance", system)
        lines.append(
            f"{part.key}: {part.name}{mark}; {far}, {_times(len(went.trips), 'trip')}, "
            f"{_times(len(went.hits), 'hit')}"
        )
        for each in where:
            until = f"to {each.until}" if each.until else "and still there"
            lines.append(f"    {each.place} of {each.rig} from {each.since} {until}")
    return lines or ["No part has an identity yet: `log part`."]


def _times(count: int, what: str) -> str:
    return f"{count} {what}{'' if count == 1 else 's'}"


def past_lines(past: Past, system: str = "metric") -> list[str]:
    """How far it has gone, and what broke beside the order."""
    low, high = (
        units.show(end, "distance", system) for end in (past.driven.shortest, past.driven.longest)
    )
    count = past.driven.count
    trips = "1 trip is" if count == 1 else f"{count or 'no'} trips are"
    lines = [f"Driven: {low} to {high}, of which {trips} on record."]
    if not past.broke:
        lines.append("Nothing that broke is on record.")
    for broke in past.broke:
        if not past.judged:
            lines.append(f"  {broke} broke; there is no order yet to hold it against.")
            continue
        orders = (("one bad moment", past.ranks), ("wearing out", past.wears))
        places = [
            f"number {each.rank} of {each.of} in {name}"
            for name, ranks in orders
            for each in ranks
            if each.broke == broke and each.rank
        ]
        told = f"the orders have it as {' and '.join(places)}" if places else "no order knows it"
        lines.append(f"  {broke} broke; {told}.")
    return lines


def shimmy_question_lines(system: str = "metric") -> list[str]:
    """Questions about a shake, each with the words that answer it and what they are abroad."""

    def told(word: str) -> str:
        there = in_units(word, system)
        return word if there == word else f"{word} ({there})"

    return [
        "From memory alone, nothing is tried out:",
        *(
            f"  {each.key}: {each.question} {' | '.join(map(told, each.answers))}"
            for each in shimmy_questions().values()
        ),
    ]
