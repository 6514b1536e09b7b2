"""What is on record as evidence of where it is bent: the newest reading of each that still tells.

A reading on a part that was replaced tells nothing of the new one, what is from before the last hit
nothing of what that hit bent, and what a later look found good is gone: all that is left out, and
that is said.
"""

import datetime as dt
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from math import hypot
from typing import Final

from axlewright import units
from axlewright.physics import steering
from axlewright.physics.measurement import NINETY
from axlewright.rig import Hit, Kept, LookTaken, Noticed, OwnLimit, Reading
from axlewright.tables import (
    LocatorEvidence,
    locator_evidence,
    locator_readings,
    procedure,
    procedures,
)
from axlewright.upkeep.locator import Located, Taken
from axlewright.upkeep.looks import looked_again
from axlewright.upkeep.off_centre import answers_of, works_on
from axlewright.upkeep.outlived import still_of
from axlewright.upkeep.readings import judged_again
from axlewright.upkeep.share_bands import ShareBand

SIDES: Final = ("left", "right")
FLOORED: Final = frozenset({"camber_out", "camber_in", "tube_slope"})  # a floor's slope blurs them


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """One piece of evidence: which reading it answers, the entry it is from, why it is left out."""

    key: str
    label: str
    said: str
    number: int
    on: dt.date
    left_out: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class OnRecord:
    """Everything on record about one axle that answers the locator, and what was left out."""

    taken: Mapping[str, Taken]
    seen: Mapping[str, bool]
    used: tuple[Piece, ...]
    left_out: tuple[Piece, ...]
    hit: Kept | None
    mapped: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Bent:
    """Where it is bent, from the record and from what was typed in; never that it may be driven.

    ``bands`` are those of the shares by cause, ``typed`` the readings that were typed in, ``hit``
    the day of the last hit on record.
    """

    found: Located
    bands: Mapping[str, ShareBand]
    used: tuple[Piece, ...]
    left_out: tuple[Piece, ...]
    typed: tuple[str, ...]
    hit: dt.date | None


def on_record(
    history: Sequence[Kept], axle: str, diameter: float, own: Sequence[OwnLimit] = ()
) -> OnRecord:
    """Evidence out of a rig's book; ``diameter`` of the tyre (m) turns toe into an angle."""
    ordered = sorted(history, key=lambda each: each.order)
    still, gone = still_of(ordered)
    hit = next((each for each in reversed(ordered) if isinstance(each.body, Hit)), None)
    desk = _Desk(hit, diameter, own)
    known = {key: row for key, row in locator_readings().items() if row.axle in {axle, "both"}}
    for row in locator_evidence().values():
        if row.reading in known:
            each = known[row.reading].each
            if row.of in procedures():
                desk.readings(row, [k for k in still if _is_of(k, row.of)], each=each)
                for old in gone:
                    if _is_of(old.reading, row.of):
                        desk.leave_out(row, old.reading, old.why)
            else:
                desk.looks(row, still, each=each)
    desk.rods(ordered, known)
    return desk.told()


class _Desk:
    """Evidence as it is gathered."""

    def __init__(self, hit: Kept | None, diameter: float, own: Sequence[OwnLimit]) -> None:
        self.hit, self.diameter, self.own = hit, diameter, own
        self.mine = {each.limit: each for each in own}
        self.taken: dict[str, Taken] = {}
        self.seen: dict[str, bool] = {}
        self.used: dict[str, Piece] = {}
        self.left: list[Piece] = []
        self.levelled: list[bool] = []

    def readings(self, row: LocatorEvidence, kept: Sequence[Kept], *, each: bool) -> None:
        """Take the newest reading of each side."""
        for side in SIDES if each else ("",):
            mine = [k for k in kept if isinstance(k.body, Reading) and k.body.side == side]
            fresh = [k for k in mine if not self._before_hit(k)]
            if row.how != "less the one before":
                for old in (k for k in mine if self._before_hit(k)):
                    self.leave_out(row, old, self._hit_words())
            if fresh:
                self._reading(row, fresh[-1], mine, side)

    def _reading(self, row: LocatorEvidence, kept: Kept, mine: Sequence[Kept], side: str) -> None:
        reading = kept.body
        if not isinstance(reading, Reading):
            return
        key = f"{row.reading}_{side}" if side else row.reading
        value, standard = reading.value, reading.standard
        match row.how:
            case "less the manual's middle":
                limit = self.mine.get(reading.quantity)
                if limit is None or limit.low is None or limit.high is None:
                    why = "the manual's own value is wanted beside it, as a limit with both ends"
                    self.leave_out(row, kept, why)
                    return
                value -= 0.5 * (limit.low + limit.high)
            case "less the one before":
                before = [k for k in mine if k.number != kept.number]
                if self.hit is not None:
                    before = [k for k in before if self._before_hit(k)]
                if not before or not isinstance(before[-1].body, Reading):
                    self.leave_out(row, kept, "an earlier reading is wanted to tell the change")
                    return
                value -= before[-1].body.value
                standard = hypot(standard, before[-1].body.standard)
                turned = float(steering.toe_angle(1e-3, self.diameter)) / 1e-3
                value, standard = value * turned, standard * turned
            case "yes where out":
                self._verdict(row, kept, reading, key)
                return
            case _:
                pass
        self.taken[key] = Taken(values=(value,), give_or_take=NINETY * standard)
        self.used[key] = self._piece(row, kept, side)
        if reading.quantity in FLOORED:
            self.levelled.append(reading.corrected != 0.0)

    def _verdict(self, row: LocatorEvidence, kept: Kept, reading: Reading, key: str) -> None:
        _, verdicts = judged_again(reading, procedure(reading.quantity), self.own)
        told = {each.judged for each in verdicts}
        if told <= {"within", "out"} and told:
            self.seen[key] = "out" in told
            self.used[key] = self._piece(row, kept, "")
        else:
            self.leave_out(row, kept, "it cannot tell within from out")

    def looks(self, row: LocatorEvidence, history: Sequence[Kept], *, each: bool) -> None:
        """Take what looks found and no later look at the same place found good."""
        for place, kept in enumerate(history):
            look = kept.body
            if not isinstance(look, LookTaken):
                continue
            if row.of not in {"look", look.look} or (row.state and look.state != row.state):
                continue
            if row.found and (
                look.found != row.found or not any(part in look.part for part in row.parts)
            ):
                continue
            if self._before_hit(kept):
                self.leave_out(row, kept, self._hit_words())
                continue
            good = _found_good(history[place + 1 :], look) if row.how == "yes" else None
            if good is not None:
                self.leave_out(
                    row, kept, f"a look found it good on {good.on} (entry {good.number})"
                )
                continue
            for side in self._sides(look, each=each):
                key = f"{row.reading}_{side}" if side else row.reading
                self.seen[key] = row.how == "yes"
                self.used[key] = self._piece(row, kept, side)

    def rods(self, ordered: Sequence[Kept], known: Collection[str]) -> None:
        """Take the bow of a rod that was said after a hit, where none was read later."""
        for kept in ordered:
            said = answers_of(kept)
            key = f"{said.get('rod', '').replace(' ', '_')}_bow"
            if said.get("bowed") != "yes" or key not in known:
                continue
            row = next(one for one in locator_evidence().values() if one.reading == key)
            later = [each for each in ordered if each.order > kept.order]
            renewed = next((each for each in later if works_on(each, said["rod"])), None)
            read = self.used.get(key)
            if self._before_hit(kept):
                self.leave_out(row, kept, self._hit_words())
            elif renewed is not None:
                self.leave_out(row, kept, f"work was done on it on {renewed.on}")
            elif read is None or (read.on, read.number) < kept.order:
                self.taken[key] = Taken(values=(units.parse(said["bow"], "length").value,))
                self.used[key] = self._piece(row, kept, "")

    @staticmethod
    def _sides(look: LookTaken, *, each: bool) -> tuple[str, ...]:
        if not each:
            return ("",)
        return SIDES if look.side == "both" else (look.side,) if look.side in SIDES else ()

    def leave_out(self, row: LocatorEvidence, kept: Kept, why: str) -> None:
        """Say that something on record is no evidence, and why."""
        each = locator_readings()[row.reading].each
        side = kept.body.side if each and isinstance(kept.body, Reading | LookTaken) else ""
        piece = self._piece(row, kept, side, why)
        if not any(p.number == piece.number and p.key == piece.key for p in self.left):
            self.left.append(piece)

    def _piece(self, row: LocatorEvidence, kept: Kept, side: str, why: str = "") -> Piece:
        body = kept.body
        label = locator_readings()[row.reading].label
        said = body.given if isinstance(body, Reading) else ""
        if isinstance(body, Noticed):
            said = answers_of(kept)["bow"]
        if isinstance(body, LookTaken):
            said = f"a look found {body.found} at {body.part}" if row.found else body.state
        return Piece(
            key=f"{row.reading}_{side}" if side in SIDES else row.reading,
            label=f"{label}, {side}" if side in SIDES else label,
            said=said,
            number=kept.number,
            on=kept.on,
            left_out=why,
        )

    def _before_hit(self, kept: Kept) -> bool:
        return self.hit is not None and kept.order < self.hit.order

    def _hit_words(self) -> str:
        on = "" if self.hit is None else f" of {self.hit.on}"
        return f"it is from before the hit{on} and says nothing of what that bent"

    def told(self) -> OnRecord:
        """Everything, the newest first."""
        used = sorted(self.used.values(), key=lambda one: (one.on, one.number), reverse=True)
        left = sorted(self.left, key=lambda one: (one.on, one.number), reverse=True)
        return OnRecord(
            taken=self.taken,
            seen=self.seen,
            used=tuple(used),
            left_out=tuple(left),
            hit=self.hit,
            mapped=bool(self.levelled) and all(self.levelled),
        )


def _found_good(later: Sequence[Kept], look: LookTaken) -> Kept | None:
    """The first later look at the same place that ended in go; a watch may still be wet."""
    for kept in later:
        again = kept.body
        if isinstance(again, LookTaken) and again.state == "go" and looked_again(kept, look):
            return kept
    return None


def _is_of(kept: Kept, quantity: str) -> bool:
    return isinstance(kept.body, Reading) and kept.body.quantity == quantity
