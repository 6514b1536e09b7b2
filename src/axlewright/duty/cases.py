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

    ``standing`` tells whether the standing weight is there as well; ``cycles`` is how many load
    cycles of this kind come in 1,000 km of hard trail (for the coarse wear estimate).
    """

    key: str
    label: str
    kind: Kind
    standing: bool
    severity: str
    cycles: float
    ceiling: bool = False


CASES: tuple[Case, ...] = (
    Case(key="standing", label="standing still", kind="standing", standing=False,
         severity="", cycles=0.0),
    Case(key="braking", label="hard braking", kind="grip-limited", standing=True,
         severity="grip", cycles=2.0e3, ceiling=True),
    Case(key="pull_both", label="full pull in low range, both wheels", kind="grip-limited",
         standing=True, severity="", cycles=3.0e2, ceiling=True),
    Case(key="pull_left", label="full pull, left wheel wedged at full lock", kind="grip-limited",
         standing=True, severity="grip_wedged", cycles=1.0e2, ceiling=True),
    Case(key="pull_right", label="full pull, right wheel wedged at full lock",
         kind="grip-limited", standing=True, severity="grip_wedged", cycles=1.0e2, ceiling=True),
    Case(key="slide_left", label="side slide into a rut, left wheel", kind="energy-limited",
         standing=True, severity="slide_speed", cycles=3.0e2),
    Case(key="slide_right", label="side slide into a rut, right wheel", kind="energy-limited",
         standing=True, severity="slide_speed", cycles=3.0e2),
    Case(key="hung_left", label="right wheel hung, all on the left", kind="factor",
         standing=False, severity="hung_factor", cycles=2.0e2),
    Case(key="hung_right", label="left wheel hung, all on the right", kind="factor",
         standing=False, severity="hung_factor", cycles=2.0e2),
    Case(key="landing", label="landing on both wheels", kind="energy-limited", standing=False,
         severity="landing_drop", cycles=3.0e4),
    Case(key="strike_left", label="left wheel strikes a ledge", kind="energy-limited",
         standing=True, severity="strike_speed", cycles=5.0e3),
    Case(key="strike_right", label="right wheel strikes a ledge", kind="energy-limited",
         standing=True, severity="strike_speed", cycles=5.0e3),
    Case(key="rock", label="a rock under the differential", kind="factor", standing=False,
         severity="rock_factor", cycles=5.0e1),
    Case(key="cornering_left", label="hard left turn", kind="grip-limited", standing=True,
         severity="corner_share", cycles=2.0e3),
    Case(key="cornering_right", label="hard right turn", kind="grip-limited", standing=True,
         severity="corner_share", cycles=2.0e3),
)


def live_cases() -> tuple[Case, ...]:
    """Every case but standing still, in the order of the load arrays."""
    return CASES[1:]
