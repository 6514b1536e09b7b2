"""What to carry: the figures and the record of a rig joined, and the tick list that is kept."""

import re
from collections import Counter
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Final

from axlewright import units
from axlewright.actions.bay_words import cleaned
from axlewright.actions.log_words import side_of
from axlewright.actions.report import written
from axlewright.duty import hard_trail_share
from axlewright.errors import AxlewrightError, UnknownEntry
from axlewright.rig import Chapter, Condition, Job, Kept, Noticed, Trip
from axlewright.strength import (
    DRAWS,
    Assessment,
    assess_rig,
    breaking_rates,
    kind_of,
    wear_lives,
)
from axlewright.tables import card_of, cards, consequences, duties, spares, troubles
from axlewright.upkeep import (
    Carrying,
    Outing,
    Ticked,
    Weakness,
    Worn,
    driven,
    outing_of,
    what_to_carry,
)
from axlewright.views import kinds_meant

if TYPE_CHECKING:
    from axlewright.actions.log import Log

ABOUT: Final = "packing"
STATES: Final = ("packed", "missing", "not said")
HARDEST: Final = "rocks_and_ledges"  # where nobody has said what the use is
MILDEST: Final = "gravel_and_farm_tracks"
LONGEST_PLACE: Final = 80
MOST: Final = {"days": 365, "people": 20}
HEAVIEST: Final = 5000.0  # kg
FARTHEST: Final = 5.0e6  # m
GONE: Final = ("broke", "cracked")


def outing_said(said: Mapping[str, str], usual: Mapping[str, str]) -> Outing:
    """Give a trip out of what was typed: days, people, mass, far, ground, distance.

    What is empty comes from ``usual``; whatever cannot be is refused with its reason.
    """
    told = {name: cleaned(said.get(name, "")) or usual.get(name, "") for name in USUAL}
    ground = told["ground"].replace(" ", "_")
    if ground not in duties():
        raise UnknownEntry(
            f"There is no ground {ground[:40]!r}.", remedy=f"One of: {', '.join(duties())}."
        )
    return outing_of(
        _count(told["days"], "days"),
        _count(told["people"], "people"),
        _measure(told["mass"], "mass", HEAVIEST, "60 kg"),
        _measure(told["far"], "distance", FARTHEST, "60 km"),
        ground,
        _measure(told["distance"], "distance", FARTHEST, "300 km") if told["distance"] else None,
    )


USUAL: Final[Mapping[str, str]] = {
    "days": "3",
    "people": "2",
    "mass": "150 kg",
    "far": "50 km",
    "ground": HARDEST,
    "distance": "",
}


def _kilometres(metres: float) -> str:
    return f"{metres / 1e3:g} km"


def _count(text: str, name: str) -> int:
    if not re.fullmatch("[0-9]{1,4}", text) or not 1 <= int(text) <= MOST[name]:
        raise AxlewrightError(
            f"{text[:20]!r} is no number of {name}.", remedy=f"1 to {MOST[name]}, as in 3."
        )
    return int(text)


def _measure(text: str, kind: str, most: float, example: str) -> float:
    read = units.parse(text, kind)
    if read.dont_know or not 0.0 <= read.value <= most:
        raise AxlewrightError(
            f"{text[:40]!r} is no {kind} of a trip.", remedy=f"With its unit, as in {example}."
        )
    return read.value


def usual_outing(log: "Log", slug: str) -> dict[str, str]:
    """Words of the trip that was last packed for; else of this owner's use."""
    words = log.words(slug)
    told = dict(USUAL)
    if words.get("use.hardest"):
        told["ground"] = words["use.hardest"].replace(" ", "_")
    draft = log.desk.standing(slug).draft
    far = draft.given().get("from_help")
    if far is not None:
        told["far"] = _kilometres(far.value)
    for kept in _packings(log.history(slug, ["noticed"])):
        for name, word in kept:
            if name.startswith("trip.") and name[5:] in USUAL:
                told[name[5:]] = word
    return told


def carrying(
    log: "Log",
    slug: str,
    said: Mapping[str, str],
    assessment: Assessment | None = None,
    draws: int = DRAWS,
) -> Carrying:
    """What to carry on a trip that is told in words, with the list as it is ticked.

    Without an assessment the rig is assessed here, if its questions are answered.
    """
    rig = log.desk.rig(slug) if assessment is None else None
    if rig is not None:
        assessment = assess_rig(rig, draws=draws)
    outing = outing_said(said, usual_outing(log, slug))
    standing = log.desk.standing(slug)
    history = log.history(slug)
    words = standing.draft.words() if assessment is None else assessment.rig.words
    axle = standing.draft.axle
    weak, broke, unplaced = weaknesses(axle, words, assessment, history, standing.draft.conditions)
    drive = log.drive(slug)
    return Carrying(
        slug=slug,
        name=standing.draft.name,
        axle=axle,
        words=words,
        load=what_to_carry(weak, outing, axle, words, worn_of(history)),
        ticks=ticks_of(history),
        judged=assessment is not None,
        draws=0 if assessment is None or assessment.drawn is None else assessment.drawn.draws,
        broke=broke,
        unplaced=unplaced,
        stops=tuple(f"{each.what}: {each.why}" for each in drive.reasons if each.state == "stop"),
    )


def carrying_of(assessment: Assessment, said: Mapping[str, str] | None = None) -> Carrying:
    """What to carry by a rig's figures and its conditions alone, where no record is at hand."""
    rig = assessment.rig
    usual = dict(USUAL) | {"ground": rig.words["use.hardest"].replace(" ", "_")}
    if "from_help" in rig.given:
        usual["far"] = _kilometres(rig.given["from_help"].value)
    weak, broke, unplaced = weaknesses(rig.axle, rig.words, assessment, (), rig.conditions)
    return Carrying(
        slug="",
        name=rig.name,
        axle=rig.axle,
        words=rig.words,
        load=what_to_carry(weak, outing_said(said or {}, usual), rig.axle, rig.words, Worn()),
        ticks={},
        judged=True,
        draws=0 if assessment.drawn is None else assessment.drawn.draws,
        broke=broke,
        unplaced=unplaced,
        stops=tuple(f"{each.part}, {each.what}" for each in assessment.stops),
    )


def weaknesses(
    axle: str,
    words: Mapping[str, str],
    assessment: Assessment | None,
    history: Sequence[Kept] = (),
    conditions: Sequence[Condition] = (),
) -> tuple[tuple[Weakness, ...], tuple[str, ...], tuple[str, ...]]:
    """Every part that may give, with what the figures and the record tell of it.

    Gives the parts, what broke on record, and what of that is no part that is known.
    """
    rates = {} if assessment is None else breaking_rates(assessment)
    lives = {} if assessment is None else wear_lives(assessment)
    parts = list(dict.fromkeys([*rates, *lives]))
    if assessment is None:
        parts = [each for each in consequences() if card_of(kind_of(each), axle) is not None]
    others = [each for each in troubles().values() if each.fits(axle, words)]
    kinds = list(dict.fromkeys([*map(kind_of, parts), *(each.key for each in others)]))
    told = [*(part for each in history for part in _broke(each)), *_conditions(conditions)]
    counts: Counter[str] = Counter()
    unplaced = []
    for each in told:
        meant = kinds_meant(each, kinds)
        if not meant:
            unplaced.append(each)
            continue
        side = next((word for word in ("left", "right") if word in each.casefold().split()), "")
        counts[f"{meant[0]}_{side}" if side else meant[0]] += 1
    longer = _longer(assessment)
    weak = [
        Weakness(
            part=part,
            kind=kind_of(part),
            label=consequences()[part].label,
            what_then=consequences()[part].what_then,
            rate=rates.get(part),
            life=lives.get(part),
            long=None if part == kind_of(part) else part.endswith(longer),
            broke=_counted(counts, part),
        )
        for part in parts
    ]
    weak += [
        Weakness(
            part=each.key,
            kind=each.key,
            label=each.label,
            what_then=each.what_then,
            broke=float(sum(counts[f"{each.key}{side}"] for side in ("", "_left", "_right"))),
        )
        for each in others
    ]
    return tuple(weak), tuple(dict.fromkeys(told)), tuple(dict.fromkeys(unplaced))


def _counted(counts: Mapping[str, int], part: str) -> float:
    """Breaks of a part: those of its side, and half of those whose side nobody said."""
    kind = kind_of(part)
    if part == kind:
        return float(sum(counts[f"{kind}{side}"] for side in ("", "_left", "_right")))
    return counts[part] + 0.5 * counts[kind]


def _longer(assessment: Assessment | None) -> str:
    """Ending of the parts on the side of the longer tube."""
    if assessment is None:
        return "_right"
    left, right = (float(assessment.columns[f"tube_bare_{each}"][0]) for each in ("left", "right"))
    return "_left" if left > right else "_right"


def _broke(kept: Kept) -> tuple[str, ...]:
    return kept.body.broke if isinstance(kept.body, Chapter) else ()


def _conditions(conditions: Sequence[Condition]) -> list[str]:
    return [f"{each.part} {each.where}".strip() for each in conditions if each.what in GONE]


def worn_of(history: Sequence[Kept]) -> Worn:
    """What lies behind a rig, out of chapters and trips; the short end counts as record.

    Where nobody said on what ground, the mildest is taken as record, for then it proves little;
    wear takes the distance as this owner's own use.
    """
    far = driven(history)
    hard = 0.0
    for kept in history:
        body = kept.body
        if isinstance(body, Chapter | Trip):
            whole = body.shortest if isinstance(body, Chapter) else body.distance
            named = 0.0
            for ground, metres in body.grounds:
                named += metres
                hard += metres / hard_trail_share(ground)
            hard += max(whole - named, 0.0) / hard_trail_share(MILDEST)
    return Worn(shortest=far.shortest, longest=far.longest, hard=hard)


# -- the tick list -----------------------------------------------------------------------------


def _packings(history: Sequence[Kept]) -> list[tuple[tuple[str, str], ...]]:
    return [
        each.body.answers
        for each in history
        if isinstance(each.body, Noticed) and each.body.about == ABOUT
    ]


def ticks_of(history: Sequence[Kept]) -> dict[str, Ticked]:
    """How the tick list stands: what was said last of each spare."""
    told: dict[str, Ticked] = {}
    for each in history:
        if not isinstance(each.body, Noticed) or each.body.about != ABOUT:
            continue
        said = dict(each.body.answers)
        for key in spares():
            if key in said or f"{key}.lies" in said:
                before = told.get(key, Ticked())
                told[key] = Ticked(
                    state=said.get(key, before.state),
                    lies=said.get(f"{key}.lies", before.lies),
                    on=each.on.isoformat(),
                )
    return told


def tick(
    log: "Log",
    slug: str,
    ticks: Mapping[str, Ticked],
    trip: Mapping[str, str] | None = None,
    **more: object,
) -> int:
    """Enter lines of the tick list that say something new, with the trip; 0 where none does."""
    before = ticks_of(log.history(slug, ["noticed"]))
    answers: list[tuple[str, str]] = []
    for key, line in ticks.items():
        if key not in spares():
            raise UnknownEntry(
                f"There is no spare {key[:40]!r}.", remedy="One of those that the list names."
            )
        if line.state not in STATES:
            raise AxlewrightError(
                f"A spare is not {line.state[:20]!r}.", remedy=f"One of: {', '.join(STATES)}."
            )
        was = before.get(key, Ticked())
        lies = cleaned(line.lies)[:LONGEST_PLACE]
        if line.state != was.state:
            answers.append((key, line.state))
        if lies != was.lies:
            answers.append((f"{key}.lies", lies))
    usual = usual_outing(log, slug)
    told = {name: cleaned(word)[:40] for name, word in (trip or {}).items() if name in USUAL}
    answers += [
        (f"trip.{name}", word)
        for name, word in told.items()
        if word != usual[name] and (word or name == "distance")
    ]
    if not answers:
        return 0
    body = Noticed(about=ABOUT, answers=tuple(answers))
    return log.enter(slug, body, **more)  # type: ignore[arg-type]


def card_done(log: "Log", slug: str, card: str, *, side: str = "", **more: object) -> int:
    """Enter that a repair card was worked through, as work on what it serves."""
    known = cards().get(card)
    if known is None or known.axle not in {log.axle(slug), "both"}:
        raise UnknownEntry(
            f"There is no card {card[:40]!r} for this axle.", remedy="One of those on the page."
        )
    part = known.serves[0].replace("_", " ") if known.serves else ""
    job = Job(task=f"beside the track: {known.title}", part=part, side=side_of(side))
    return log.work(slug, job, **more)


# -- what is carried off -----------------------------------------------------------------------


def carry_pdf(told: Carrying, system: str = "metric") -> bytes:
    """Packing list and repair cards as the bytes of a PDF."""
    from axlewright.report import carry_paper
    from axlewright.views import carry_data

    return carry_paper(carry_data(told, system))


def write_carry(told: Carrying, path: Path, system: str = "metric") -> None:
    """Put packing list and repair cards on disk; an old file stays whole until the new one is."""
    written(carry_pdf(told, system), path)
