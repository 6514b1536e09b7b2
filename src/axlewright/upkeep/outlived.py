"""Readings that outlived the part they were taken on: they no longer count, and that is said."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from axlewright.rig import Fitted, Job, Kept, Reading, TakenOff
from axlewright.tables import reading_parts

SPOKE: Final = "it spoke against driving"  # why a new part has to be read
RENEWED: Final = {
    "wheel_fitted": "wheel",
    "hub_fitted": "hub",
    "gears_fitted": "ring-and-pinion",
    "steering_fitted": "rod",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Outlived:
    """One reading that no longer counts, and the entry by which its part was replaced."""

    reading: Kept
    by: Kept

    @property
    def why(self) -> str:
        """In words."""
        return (
            f"its part was replaced on {self.by.on} (entry {self.by.number}): "
            "a reading on the old one says nothing of the new one"
        )


def still_of(history: Sequence[Kept]) -> tuple[list[Kept], tuple[Outlived, ...]]:
    """Give a history without the readings whose part was replaced after them, and those.

    A reading that names its part goes with that part alone; any other goes where a part that such
    a reading is of was fitted or taken off, on its side or on no side.
    """
    swaps = [each for each in history if isinstance(each.body, Fitted | TakenOff | Job)]
    still, gone = [], []
    for kept in history:
        by = _replaced(kept, swaps)
        if by is None:
            still.append(kept)
        else:
            gone.append(Outlived(reading=kept, by=by))
    return still, tuple(gone)


def _replaced(kept: Kept, swaps: Sequence[Kept]) -> Kept | None:
    reading = kept.body
    if not isinstance(reading, Reading):
        return None
    after = [each for each in swaps if each.order > kept.order]
    return next((each for each in after if _ends(each, reading, swaps)), None)


def _ends(swap: Kept, reading: Reading, swaps: Sequence[Kept]) -> bool:
    body = swap.body
    if isinstance(body, Fitted | TakenOff) and reading.component:
        return isinstance(body, TakenOff) and body.component == reading.component
    parts = reading_parts().get(reading.quantity, ())
    if isinstance(body, Fitted | TakenOff):
        place = body.place if isinstance(body, Fitted) else _place(body, swap, swaps)
        return body.component.rpartition("-")[0] in parts and _same_side(place, reading.side)
    if isinstance(body, Job):
        return RENEWED.get(body.interval, "") in parts and _same_side(body.side, reading.side)
    return False


def _place(body: TakenOff, swap: Kept, swaps: Sequence[Kept]) -> str:
    """Where a part was until it was taken off."""
    before = [
        each.body.place
        for each in swaps
        if isinstance(each.body, Fitted)
        and each.body.component == body.component
        and each.order < swap.order
    ]
    return before[-1] if before else ""


def _same_side(place: str, side: str) -> bool:
    named = {each for each in ("left", "right") if each in place.casefold().split()}
    return not named or side not in {"left", "right"} or side in named
