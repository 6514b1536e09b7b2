"""May I drive? Out of dated looks at the real thing alone; a figure can only make it worse.

"Go" is given here and nowhere else, and nothing that was computed comes in as more than an
`Objection`, which cannot say it.
"""

import datetime as dt
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Final, Literal, TypeAlias

from axlewright.rig import Finding, Hit, Job, Kept, LookState, LookTaken, Noticed, Trip
from axlewright.tables import duties, looks, looks_lists

DriveState: TypeAlias = Literal["stop", "fix before trip", "not looked at", "watch", "go"]
DRIVE_STATES: Final[tuple[DriveState, ...]] = (
    "stop",
    "fix before trip",
    "not looked at",
    "watch",
    "go",
)
OCCASIONS: Final = ("before_trip", "after_trip", "after_hit", "apart", "buying")
FRESH: Final = 3  # days that a look before a trip is good for: common practice, no source
MONTH: Final = 30  # days; the question asks for the hardest thing done in one
WATER: Final = "water"
_NEVER: Final = (dt.date.min, 0)
SHAKING: Final = frozenset({"yes", "not driven since"})


@dataclass(frozen=True, slots=True, kw_only=True)
class WantedLook:
    """One look of a list as it is asked of this rig."""

    key: str
    occasion: str
    title: str
    how: str
    ends: Mapping[LookState, str]
    part: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Objection:
    """Something measured or reckoned that speaks against driving; it never speaks for it."""

    state: Literal["stop", "fix before trip", "not looked at", "watch"]
    what: str
    why: str
    do: str = "Look at the part itself."


@dataclass(frozen=True, slots=True, kw_only=True)
class Reason:
    """One reason for the answer: its state, what it is about, why, what to do, which entry."""

    state: DriveState
    what: str
    why: str
    do: str
    number: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Drive:
    """May I drive: the gravest state, and every reason, the gravest first."""

    state: DriveState
    reasons: tuple[Reason, ...]
    looked: int
    wanted: int


def ground_met(
    words: Mapping[str, str], history: Sequence[Kept] = (), today: dt.date | None = None
) -> frozenset[str]:
    """What asks for looks of its own: the hardest use, grounds of a month's trips, and water.

    Where nobody said how hard it is used, everything; where no trip of a month is on record,
    water as well.
    """
    hardest = words.get("use.hardest", "").replace(" ", "_")
    met = {hardest} if hardest in duties() else set(duties())
    trips = [
        each.body
        for each in history
        if isinstance(each.body, Trip) and (today is None or 0 <= (today - each.on).days <= MONTH)
    ]
    met |= {ground for trip in trips for ground, distance in trip.grounds if distance > 0.0}
    if not trips or any(trip.water for trip in trips):
        met.add(WATER)
    return frozenset(met)


def wanted_looks(
    occasion: str, axle: str, words: Mapping[str, str], met: Collection[str] | None = None
) -> tuple[WantedLook, ...]:
    """Looks of a list for an axle, the gravest consequence first.

    ``met`` is the ground it meets, out of `ground_met`; without it, as far as the words tell.
    """
    asked = ground_met(words) if met is None else frozenset(met)
    if occasion == "after_hit":
        ranked = sorted(
            (each for each in looks().values() if each.axle in {axle, "both"}),
            key=lambda each: each.rank,
        )
        return tuple(
            WantedLook(
                key=each.key,
                occasion=occasion,
                title=each.title,
                how=each.how,
                ends=_ends(each.stop, each.fix, each.watch, each.go),
                part=each.key,
            )
            for each in ranked
        )
    listed = [
        each
        for each in looks_lists().values()
        if each.occasion == occasion
        and each.axle in {axle, "both"}
        and _fits(each.only_if, words)
        and (not each.duties or asked & set(each.duties))
    ]
    return tuple(
        WantedLook(
            key=each.key,
            occasion=occasion,
            title=each.title,
            how=each.how,
            ends=_ends(each.stop, each.fix, each.watch, each.go),
            part=each.part,
        )
        for each in sorted(listed, key=lambda each: each.rank)
    )


def _ends(stop: str, fix: str, watch: str, go: str) -> dict[LookState, str]:
    return {"stop": stop, "fix before trip": fix, "watch": watch, "go": go}


def _fits(only_if: str, words: Mapping[str, str]) -> bool:
    field, _, word = only_if.partition("=")
    return not field or words.get(field) == word


def open_looks(history: Sequence[Kept]) -> tuple[tuple[Kept, LookTaken], ...]:
    """Looks that ended in stop or fix and that nothing has closed since.

    Either is closed by the same look, or one at the same part and side, taken later and ending
    better; a stop as well by work that was entered for it in between.
    """
    ordered = sorted(history, key=lambda each: each.order)
    found = []
    for place, kept in enumerate(ordered):
        look = kept.body
        if not isinstance(look, LookTaken) or look.state not in {"stop", "fix before trip"}:
            continue
        later = ordered[place + 1 :]
        if look.state == "stop":
            mended = next((i for i, each in enumerate(later) if settles(each, kept, look)), None)
            later = [] if mended is None else later[mended + 1 :]
        if not any(looked_again(each, look) for each in later):
            found.append((kept, look))
    return tuple(found)


def settles(each: Kept, kept: Kept, look: LookTaken) -> bool:
    """Whether an entry is work for a look: it names that look, or its part and side."""
    job = each.body
    if not isinstance(job, Job):
        return False
    return job.settles == kept.number or bool(
        job.part and look.part and job.part == look.part and _same_side(job.side, look.side)
    )


def looked_again(each: Kept, look: LookTaken) -> bool:
    """Whether an entry is the same look, or one at the same part and side, that ended better."""
    again = each.body
    if not isinstance(again, LookTaken) or again.state not in {"watch", "go"}:
        return False
    same = again.look == look.look or bool(look.part and again.part == look.part)
    whole = again.look == look.look and not again.side  # a look of a list is taken at both sides
    return same and (whole or _same_side(again.side, look.side))


def _same_side(now: str, before: str) -> bool:
    return now in {before, "both"} or (not now and before in {"", "both", "centre"})


def may_drive(
    history: Sequence[Kept],
    findings: Iterable[Finding],
    axle: str,
    words: Mapping[str, str],
    today: dt.date,
    objections: Iterable[Objection] = (),
    odometer: float | None = None,
    *,
    beside_the_track: bool = False,
) -> Drive:
    """Answer from dated looks whether a rig may set out on a trip.

    ``beside_the_track`` asks after a hit whether it may go on slowly: the five looks alone.

    Parameters
    ----------
    history
        Everything in the rig's book that still holds.
    findings
        What the rig's own condition turned up.
    odometer
        As it stands now, m; where it is not known, distances are the trips'.
    """
    ordered = [kept for kept in sorted(history, key=lambda each: each.order) if kept.on <= today]
    reasons = [
        Reason(
            state=each.state,
            what=f"{each.where} {each.part}, {each.what}".strip(),
            why=each.why,
            do=each.do,
        )
        for each in findings
    ]
    reasons += [
        Reason(state=each.state, what=each.what, why=each.why, do=each.do) for each in objections
    ]
    reasons += [_open(kept, look) for kept, look in open_looks(ordered)]
    reasons += _shaking(ordered)
    met = ground_met(words, ordered, today)
    before = () if beside_the_track else wanted_looks("before_trip", axle, words, met)
    hit = next((each for each in reversed(ordered) if isinstance(each.body, Hit)), None)
    wanted = [(each, _since(ordered, Trip, Hit)) for each in before]
    if hit is not None:
        wanted += [(each, hit.order) for each in wanted_looks("after_hit", axle, words)]
    looked = 0
    for look, since in wanted:
        told = _latest(ordered, look, since, today, odometer)
        looked += told is None or told.state != "not looked at"
        reasons += [] if told is None else [told]
    state: DriveState = "not looked at" if not wanted or not looked else "go"
    for each in reasons:
        state = min(state, each.state, key=DRIVE_STATES.index)
    reasons.sort(key=lambda each: DRIVE_STATES.index(each.state))
    return Drive(state=state, reasons=tuple(reasons), looked=looked, wanted=len(wanted))


def _since(ordered: Sequence[Kept], *kinds: type) -> tuple[dt.date, int]:
    """Place of the last trip or hit: a look has to come after it."""
    after = [each.order for each in ordered if isinstance(each.body, kinds)]
    return after[-1] if after else _NEVER


def _open(kept: Kept, look: LookTaken) -> Reason:
    where = where_of(look)
    if look.state == "stop":
        return Reason(
            state="stop",
            what=f"{where}, {look.found or 'stopped'} ({kept.on})",
            why=kept.note or "a look ended in STOP",
            do="Do not drive. Mend or renew it, enter the work, then look again.",
            number=kept.number,
        )
    return Reason(
        state="fix before trip",
        what=f"{where}, {look.found or 'to be put right, or could not be told'} ({kept.on})",
        why=kept.note or "a look ended in fix before trip",
        do="Put it right or measure it, then look again.",
        number=kept.number,
    )


def where_of(look: LookTaken) -> str:
    """Where a look found something, in words: the part with its side, else what was looked at."""
    after = looks().get(look.look)
    if after is not None and look.part in {"", look.look}:
        title = after.title[0].lower() + after.title[1:]
        return f"{title}, {look.side}" if look.side else title
    return f"{look.side} {look.part}".strip() or look.look


def _shaking(ordered: Sequence[Kept]) -> list[Reason]:
    said = [
        (each, dict(each.body.answers))
        for each in ordered
        if isinstance(each.body, Noticed) and each.body.about == "shimmy"
    ]
    if not said or said[-1][1].get("still", "yes") not in SHAKING:
        return []
    return [
        Reason(
            state="stop",
            what=f"a shake of the steering ({said[-1][0].on})",
            why="a shake that may still be there can take the steering away",
            do="Do not drive, and never try to bring it on. Work through the sheet; a cure is "
            "proved by play, run-out and readings.",
            number=said[-1][0].number,
        )
    ]


def _latest(  # noqa: PLR0911  (one way out for each state)
    ordered: Sequence[Kept],
    wanted: WantedLook,
    since: tuple[dt.date, int],
    today: dt.date,
    odometer: float | None,
) -> Reason | None:
    """Why a wanted look does not say go; None where it does."""
    taken = [
        each
        for each in ordered
        if isinstance(each.body, LookTaken) and each.body.look == wanted.key
    ]
    if not taken:
        return _unseen(wanted, "never looked at is never sound")
    last = taken[-1]
    look = last.body
    assert isinstance(look, LookTaken)  # noqa: S101  (chosen so above)
    if look.state in {"stop", "fix before trip"}:
        return None  # told among the open ones
    if last.order <= since and not _still_watched(ordered, last, look, today, odometer):
        return _unseen(wanted, f"last looked at on {last.on}, before the last trip or hit")
    if wanted.occasion == "before_trip" and (today - last.on).days > FRESH:
        return _unseen(wanted, f"last looked at on {last.on}, more than {FRESH} days ago")
    if look.state == "go":
        return None
    if not _still_watched(ordered, last, look, today, odometer):
        return _unseen(wanted, f"watched since {last.on}; its time to be looked at has come")
    return Reason(
        state="watch",
        what=wanted.title,
        why=last.note or wanted.ends["watch"],
        do=f"Look again {_until(look)}.",
        number=last.number,
    )


def looks_since(wanted: WantedLook, ordered: Sequence[Kept], today: dt.date) -> str:
    """Why the last look of a kind no longer counts: empty where it does, or was never taken."""
    ordered = [kept for kept in sorted(ordered, key=lambda each: each.order) if kept.on <= today]
    after = (Hit,) if wanted.occasion == "after_hit" else (Trip, Hit)
    since = _since(ordered, *after) if wanted.occasion in {"before_trip", "after_hit"} else _NEVER
    told = _latest(ordered, wanted, since, today, None)
    return told.why if told is not None and told.state == "not looked at" else ""


def _still_watched(
    ordered: Sequence[Kept], last: Kept, look: LookTaken, today: dt.date, odometer: float | None
) -> bool:
    if look.state != "watch":
        return False
    trips = [each.body for each in ordered if each.order > last.order]
    driven = [each for each in trips if isinstance(each, Trip)]
    if any(isinstance(each, Hit) for each in trips):
        return False
    distance = sum(each.distance for each in driven)
    if odometer is not None and last.odometer is not None:
        distance = max(distance, odometer - last.odometer)
    given = (look.until, look.until_distance, look.until_trips)
    if all(each is None for each in given):
        return not driven
    return (
        (look.until is None or today <= look.until)
        and (look.until_distance is None or distance <= look.until_distance)
        and (look.until_trips is None or len(driven) < look.until_trips)
    )


def _until(look: LookTaken) -> str:
    told = []
    if look.until is not None:
        told.append(f"by {look.until}")
    if look.until_distance is not None:
        told.append(f"within {look.until_distance / 1000:.0f} km")
    if look.until_trips is not None:
        next_one = look.until_trips == 1
        told.append("after the next trip" if next_one else f"in {look.until_trips} trips")
    return " or ".join(told) or "after the next trip"


def _unseen(wanted: WantedLook, why: str) -> Reason:
    return Reason(state="not looked at", what=wanted.title, why=why, do=wanted.how)
