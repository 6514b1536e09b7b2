"""The load cases: what happens, how its hardness is measured, and what it rests on.

Each case is a standing part (or none) plus a live part at its reference hardness, "once per
1,000 km of hard trail". Hardness 1 is that reference; a check gives at the hardness at which its
demand meets its capacity.
"""

from dataclasses import dataclass
from typing import Literal, TypeAlias

Kind: TypeAlias = Literal["standing", "grip-limited", "energy-limited", "factor"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """One thing that the ground or the driver does to the axle.

    ``standing`` tells whether the standing weight is there as well; ``severity`` names the
    quantity that sets the reference hardness, and ``ceiling`` marks cases that grip or engine
    keep near it; ``on_stop`` names the sides whose spring is hard on its bump stop.
    """

    key: str
    label: str
    kind: Kind
    standing: bool
    severity: str
    ceiling: bool = False
    on_stop: tuple[str, ...] = ()


CASES: tuple[Case, ...] = (
    Case(key="standing", label="standing still", kind="standing", standing=False, severity=""),
    Case(
        key="braking",
        label="hard braking",
        kind="grip-limited",
        standing=True,
        severity="grip",
        ceiling=True,
    ),
    Case(
        key="pull_both",
        label="full pull in low range, both wheels",
        kind="grip-limited",
        standing=True,
        severity="",
        ceiling=True,
    ),
    Case(
        key="pull_left",
        label="full pull, left wheel wedged at full lock",
        kind="grip-limited",
        standing=True,
        severity="grip_wedged",
        ceiling=True,
    ),
    Case(
        key="pull_right",
        label="full pull, right wheel wedged at full lock",
        kind="grip-limited",
        standing=True,
        severity="grip_wedged",
        ceiling=True,
    ),
    Case(
        key="slide_left",
        label="side slide into a rut, left wheel",
        kind="energy-limited",
        standing=True,
        severity="slide_speed",
        on_stop=("right",),
    ),
    Case(
        key="slide_right",
        label="side slide into a rut, right wheel",
        kind="energy-limited",
        standing=True,
        severity="slide_speed",
        on_stop=("left",),
    ),
    Case(
        key="hung_left",
        label="right wheel hung, all on the left",
        kind="factor",
        standing=False,
        severity="hung_factor",
        on_stop=("left",),
    ),
    Case(
        key="hung_right",
        label="left wheel hung, all on the right",
        kind="factor",
        standing=False,
        severity="hung_factor",
        on_stop=("right",),
    ),
    Case(
        key="landing",
        label="landing on both wheels",
        kind="energy-limited",
        standing=False,
        severity="landing_drop",
        on_stop=("left", "right"),
    ),
    Case(
        key="strike_left",
        label="left wheel strikes a ledge",
        kind="energy-limited",
        standing=True,
        severity="strike_speed",
        on_stop=("left",),
    ),
    Case(
        key="strike_right",
        label="right wheel strikes a ledge",
        kind="energy-limited",
        standing=True,
        severity="strike_speed",
        on_stop=("right",),
    ),
    Case(
        key="rock",
        label="a rock under the differential",
        kind="factor",
        standing=False,
        severity="rock_factor",
        on_stop=("left", "right"),
    ),
    Case(
        key="cornering_left",
        label="hard left turn",
        kind="grip-limited",
        standing=True,
        severity="corner_share",
    ),
    Case(
        key="cornering_right",
        label="hard right turn",
        kind="grip-limited",
        standing=True,
        severity="corner_share",
    ),
)


def live_cases() -> tuple[Case, ...]:
    """Every case but standing still, in the order of the load arrays."""
    return CASES[1:]
