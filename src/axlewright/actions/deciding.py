"""Decide about a rig: its file or its record, the owner's prices, and the choice on paper."""

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING, Final

from axlewright.decide import (
    DRAWS,
    Carried,
    Decision,
    Faster,
    Mend,
    Terms,
    Told,
    coming_faster,
    decide,
    hands_for,
    read_terms,
    still_carries,
    tyre_grid,
    with_record,
)
from axlewright.rig import SEED, Condition, Job, Kept, Remark, Rig, file_bytes, load_rig
from axlewright.tables import consequences

if TYPE_CHECKING:
    from axlewright.actions.log import Log

ABOUT: Final = "own prices"
GAVE: Final = frozenset({"mended", "cracked", "broke", "bent", "bowed"})
AT_ONCE: Final = frozenset({"broke", "bent", "bowed"})
SECONDS: Final = 86400.0
SHARED: Final = 4000  # draws from which other cores are worth starting


@dataclass(frozen=True, slots=True, kw_only=True)
class DecisionAnswer:
    """A choice, which tyres the axle carries, and which lighter rig it would still carry."""

    decision: Decision
    grid: tuple[Carried, ...]
    still: tuple[float, str, str] | None


def decide_file(
    path: str,
    prices: str = "",
    *,
    draws: int = DRAWS,
    seed: int = SEED,
    progress: Told | None = None,
) -> DecisionAnswer:
    """Decide about a rig file; raises `BadFile` with every fault of the first that is not fit."""
    rig = load_rig(path)
    terms = read_terms(file_bytes(prices), prices) if prices else Terms()
    return decide_rig(rig, terms, draws=draws, seed=seed, progress=progress)


def decide_rig(
    rig: Rig,
    terms: Terms | None = None,
    history: Sequence[Kept] = (),
    *,
    draws: int = DRAWS,
    seed: int = SEED,
    progress: Told | None = None,
    today: dt.date | None = None,
) -> DecisionAnswer:
    """Decide about a rig; ``history`` is its record, whose mends count as evidence.

    Its trips and odometer say how far it drives a year, where the owner did not.
    """
    today = today or dt.datetime.now(dt.UTC).astimezone().date()
    terms, yearly = with_record(terms or Terms(), rig, history, today)
    gave, at_once = parts_that_gave(rig.conditions)
    decision = decide(
        rig,
        terms,
        draws=draws,
        seed=seed,
        gave=gave,
        at_once=at_once,
        faster=mends_faster(rig.conditions, history),
        progress=progress,
        workers=hands_for(draws, SHARED),
    )
    return DecisionAnswer(
        decision=replace(decision, yearly=yearly),
        grid=tyre_grid(rig, seed=seed),
        still=still_carries(rig, seed=seed),
    )


def decide_logged(
    log: "Log",
    slug: str,
    terms: Terms | None = None,
    *,
    draws: int = DRAWS,
    seed: int = SEED,
    progress: Told | None = None,
) -> DecisionAnswer | None:
    """Decide about a rig in the store with its record; None until its questions are answered.

    Without ``terms`` those hold that were told in the bay.
    """
    rig = log.desk.rig(slug)
    if rig is None:
        return None
    return decide_rig(
        rig,
        terms or kept_terms(log, slug),
        log.history(slug),
        draws=draws,
        seed=seed,
        progress=progress,
        today=log.today,
    )


def kept_terms(log: "Log", slug: str) -> Terms:
    """What this rig's owner pays and how it is used, as told last; else the rough figures."""
    told = [
        each
        for each in log.history(slug, ("remark",))
        if isinstance(each.body, Remark) and each.body.about == ABOUT
    ]
    if not told:
        return Terms()
    last = max(told, key=lambda each: each.number)
    return read_terms(log.store.upload(last.note), "your prices")


def parts_that_gave(conditions: Sequence[Condition]) -> tuple[frozenset[str], frozenset[str]]:
    """Kinds of part that have given so far, and those that did so in one bad moment."""
    from axlewright.views import kinds_meant

    kinds = [key.removesuffix("_left").removesuffix("_right") for key in consequences()]
    gave: set[str] = set()
    at_once: set[str] = set()
    for each in conditions:
        if each.what in GAVE:
            meant = kinds_meant(each.part, kinds)
            gave.update(meant)
            if each.what in AT_ONCE:
                at_once.update(meant[:1])
    return frozenset(gave), frozenset(at_once)


def mends_faster(
    conditions: Sequence[Condition], history: Sequence[Kept] = ()
) -> tuple[Faster, ...]:
    """Parts whose mends come round faster, by the record's jobs, else by what is listed."""
    jobs = [
        (each, each.body)
        for each in history
        if isinstance(each.body, Job) and each.body.part and not each.body.interval
        if not each.replaced
    ]
    by_distance = bool(jobs) and all(each.odometer is not None for each, _ in jobs)
    mends = [
        Mend(
            part=f"{job.part} {job.side}".strip(),
            at=each.odometer or 0.0 if by_distance else each.on.toordinal() * SECONDS,
        )
        for each, job in jobs
    ]
    if not mends:
        mends = [
            Mend(part=f"{each.part} {each.where}".strip(), at=each.date.toordinal() * SECONDS)
            for each in conditions
            if each.what == "mended" and each.date is not None
        ]
    return coming_faster(mends, by_distance=by_distance)


def write_decision(answer: DecisionAnswer, path: Path, system: str = "metric") -> None:
    """Typeset the memo; an old file stays whole until the new one is."""
    from axlewright.actions.report import written

    written(decision_paper(answer, system), path)


def decision_paper(answer: DecisionAnswer, system: str = "metric") -> bytes:
    """Memo of a choice as the bytes of a PDF."""
    from axlewright.report import decision_memo
    from axlewright.views import decision_data

    return decision_memo(decision_data(answer.decision, answer.grid, answer.still, system))
