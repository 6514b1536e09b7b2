"""Which tyre the axle can carry, at which duty, and the part that says no."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import log
from typing import Final, Literal, TypeAlias

import numpy as np

from axlewright.decide.money import is_grave
from axlewright.decide.offers import ALIKE, QUANTITY, change_text, on_tyre
from axlewright.decide.tried import Tried, counts, tried
from axlewright.duty import hard_trail_share
from axlewright.errors import BadFile, UnknownEntry
from axlewright.rig import (
    SEED,
    Column,
    Rig,
    change_from_text,
    changed_rig,
    parse_tyre,
    point_columns,
)
from axlewright.tables import duties, load_index, option_tyres

Verdict: TypeAlias = Literal["carries", "cannot tell", "no", "not judged"]
DRAWS: Final = 256
GRAVITY: Final = 9.80665
TYRE_ITSELF: Final = "tyre"


@dataclass(frozen=True, slots=True, kw_only=True)
class Carried:
    """One tyre at one duty: the verdict, and the kind of part that says no or might.

    ``part`` is `TYRE_ITSELF` where the tyre's own load index is too low, and empty where nothing
    objects. ``margin`` is (middle, low, high): how hard a moment of this duty it takes, over the
    one that comes once in 1,000 km of it.
    """

    tyre: str
    duty: str
    verdict: Verdict
    part: str
    margin: tuple[float, float, float]
    why: str = ""


def tyre_grid(rig: Rig, *, draws: int = DRAWS, seed: int = SEED) -> tuple[Carried, ...]:
    """Every usual tyre and the rig's own against every duty, tyres by height.

    *Carries* holds at the unkind end of nine draws in ten; a part that steers or holds a wheel
    says no already where it cannot be told.
    """
    rows: list[Carried] = []
    for sidewall, after in _tyres(rig):
        if isinstance(after, str):
            rows += [
                Carried(
                    tyre=sidewall, duty=duty, verdict="not judged", part="", margin=NONE, why=after
                )
                for duty in duties()
            ]
            continue
        found = tried(after, draws, seed)
        rows += [_carried(after, sidewall, duty, found) for duty in duties()]
    return tuple(rows)


NONE: Final = (float("nan"),) * 3


def usual_moment(duty: str) -> Column:
    """Hardness of each case's moment that comes once in 1,000 km of a duty, (cases,)."""
    share = hard_trail_share(duty)
    return np.asarray(np.maximum(1.0 - log(share) / np.log(counts()), 0.05))


def _tyres(rig: Rig) -> Sequence[tuple[str, Rig | str]]:
    columns = point_columns(rig)
    own = rig.tyre.outer_diameter
    made: list[tuple[float, str, Rig | str]] = [(own, "as it is", rig)]
    for each in option_tyres().values():
        across = parse_tyre(each.sidewall).outer_diameter
        if abs(across / own - 1.0) < ALIKE:
            continue
        try:
            made.append((across, each.sidewall, on_tyre(rig, columns, each.sidewall)))
        except BadFile as trouble:
            made.append((across, each.sidewall, trouble.faults[0].problem))
    return [(sidewall, after) for _, sidewall, after in sorted(made, key=lambda one: one[0])]


def _carried(rig: Rig, sidewall: str, duty: str, found: Tried) -> Carried:
    if (short := _overloaded(rig)) > 1.0:
        return Carried(
            tyre=sidewall, duty=duty, verdict="no", part=TYRE_ITSELF, margin=(1.0 / short,) * 3
        )
    over = found.reach / usual_moment(duty)[:, None]
    least = np.min(over, axis=0)
    low, middle, high = (
        float(end) for end in np.quantile(least, [0.05, 0.5, 0.95], method="nearest")
    )
    case = np.argmin(over, axis=0)
    says = np.take_along_axis(found.gives, case[None], axis=0)[0]
    says = says[least < 1.0] if np.any(least < 1.0) else says
    part = found.parts[int(np.argmax(np.bincount(says)))]
    if low >= 1.0:
        return Carried(
            tyre=sidewall, duty=duty, verdict="carries", part="", margin=(middle, low, high)
        )
    verdict: Verdict = "no" if middle < 1.0 or is_grave(part) else "cannot tell"
    return Carried(tyre=sidewall, duty=duty, verdict=verdict, part=part, margin=(middle, low, high))


def _overloaded(rig: Rig) -> float:
    """Weight on one wheel over what the tyre's load index carries; 0 where it prints none."""
    if rig.tyre.load_index is None:
        return 0.0
    try:
        carries = load_index(str(rig.tyre.load_index)).mass
    except UnknownEntry:
        return 0.0
    weight = float(point_columns(rig)["axle_weight"][0])
    return 0.5 * weight / GRAVITY / carries


def still_carries(
    rig: Rig, *, draws: int = DRAWS, seed: int = SEED
) -> tuple[float, str, str] | None:
    """Weight on the axle (N) that it would still carry on a lighter rig, with tyre and duty.

    On the smallest usual tyre and forest roads, at the unkind end; None where nothing as light
    as 60 % of today's would do.
    """
    lighter = [(sidewall, after) for sidewall, after in _tyres(rig) if not isinstance(after, str)]
    if not lighter:
        return None
    sidewall, small = lighter[0]
    weight = float(point_columns(rig)["axle_weight"][0])
    duty = "forest_roads"
    if QUANTITY["weight.axle"] not in small.given:
        return None
    for share in (1.0, 0.95, 0.9, 0.85, 0.8, 0.75, 0.7, 0.65, 0.6):
        lighter_still = {"weight.axle": f"{share * weight / GRAVITY:.0f} kg"}
        after, _ = changed_rig(small, change_from_text(change_text("lighter", lighter_still)))
        if _carried(after, sidewall, duty, tried(after, draws, seed)).verdict == "carries":
            return share * weight, sidewall, duty
    return None
