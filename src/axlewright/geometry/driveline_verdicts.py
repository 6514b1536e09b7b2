"""A driveline against published limits: for the road, or for slow use where hubs unlock."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final, Literal, TypeAlias

import numpy as np

from axlewright.geometry.driveline import Line, least_joint, shaking, whirl
from axlewright.rig import Column, Columns
from axlewright.tables import DrivelineLimit, driveline_limit

Standing: TypeAlias = Literal["within", "beyond", "cannot tell"]
ROAD: Final = ("torsional", "inertial_drive", "inertial_coast", "needles")
ENDS: Final = ("single_road", "ends_apart")
DOUBLE_ENDS: Final = ("double_road", "double_pinion")
SLOW: Final = ("torsional", "inertial_drive", "inertial_coast")
ALWAYS: Final = ("bind_case", "bind_pinion", "whirl_share", "slip_out", "slip_in")
LIMIT_OF: Final = {"slip_out": "slip_left", "slip_in": "slip_left", "bind_pinion": "single_slow"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Check:
    """One value beside its limit, SI: with a 90 % band, and how it stands.

    `what` names the value, `speed` the road speed at which it holds, m/s, or nought.
    """

    what: str
    value: float
    band: tuple[float, float]
    limit: DrivelineLimit
    standing: Standing

    @property
    def allowed(self) -> float:
        """The limit's end that counts."""
        end = self.limit.low if self.limit.kind == "min" else self.limit.high
        return float("nan") if end is None else end


def speed_judged(columns: Columns, *, on_road: bool) -> Column:
    """Road speed for which a driveline is judged, m/s."""
    top = columns["line_top_speed"]
    slow = driveline_limit("slow_speed").high or 0.0
    return np.asarray(top if on_road else np.minimum(top, slow))


def values_judged(line: Line, columns: Columns, reach: Mapping[str, float]) -> dict[str, Column]:
    """Everything that is held against a limit, for both uses, each (n,).

    ``reach`` is what travel adds to ride at its worst: to the joint angles ``case`` and
    ``pinion``, rad, and to the slip ``out`` and ``in``, m.
    """
    first, last = line.joints[..., 0], line.joints[..., 1]
    found = {
        "single_road": last if line.double else np.maximum(first, last),
        "ends_apart": np.abs(first - last),
        "double_road": first,
        "double_pinion": last,
        "needles": least_joint(line),
        "bind_case": first + reach["case"],
        "bind_pinion": last + reach["pinion"],
        "slip_out": columns["line_slip_out"] - reach["out"],
        "slip_in": columns["line_slip_in"] - reach["in"],
    }
    for use, on_road in (("road", True), ("slow", False)):
        road = speed_judged(columns, on_road=on_road)
        shaken = shaking(line, road * columns["axle_ratio"] / columns["radius"])
        found[f"torsional_{use}"] = shaken.torsional
        found[f"inertial_drive_{use}"] = shaken.drive
        found[f"inertial_coast_{use}"] = shaken.coast
        found[f"whirl_share_{use}"] = whirl(line.length, columns, road, (0.0, 0.0)).share
    return found


def checks(
    values: Mapping[str, Column], drawn: Mapping[str, Column], *, double: bool, on_road: bool
) -> tuple[Check, ...]:
    """Hold the values against the limits of one use."""
    use = "road" if on_road else "slow"
    names = [*((DOUBLE_ENDS if double else ENDS) if on_road else ())]
    names += [*(ROAD if on_road else SLOW), *ALWAYS]
    made = []
    for name in names:
        key = f"{name}_{use}" if f"{name}_{use}" in values else name
        case = "double_slow" if double else "single_slow"
        limit = driveline_limit(case if name == "bind_case" else LIMIT_OF.get(name, name))
        value, band = float(np.ravel(values[key])[0]), _band(drawn.get(key))
        made.append(
            Check(what=name, value=value, band=band, limit=limit,
                  standing=_standing(limit, value, band))
        )  # fmt: skip
    return tuple(made)


def _band(drawn: Column | None) -> tuple[float, float]:
    if drawn is None:
        return (float("nan"), float("nan"))
    good = drawn[np.isfinite(drawn)]
    if not good.size:
        return (float("nan"), float("nan"))
    low, high = np.quantile(good, (0.05, 0.95))
    return (float(low), float(high))


def _standing(limit: DrivelineLimit, value: float, band: tuple[float, float]) -> Standing:
    """Where all of the band lies; without a band, the value.

    A limit from memory is passed only where its own doubt is passed too.
    """
    low, high = (value, value) if np.isnan(band[0]) else band
    doubt = limit.origin.spread if limit.origin.remembered else 1.0
    if limit.kind == "min":
        end = limit.low or 0.0
        within, beyond = low >= end, high < end / doubt
    else:
        end = limit.high or 0.0
        within, beyond = high <= end, low > end * doubt
    return "within" if within else "beyond" if beyond else "cannot tell"
