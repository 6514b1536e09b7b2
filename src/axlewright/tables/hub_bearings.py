"""Hub bearings by kind, bore and width."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from axlewright.tables.reading import look_up, number, number_or_none, rows
from axlewright.tables.sources import Origin, origin


@dataclass(frozen=True, slots=True, kw_only=True)
class HubBearing:
    """One bearing: metre, newton, degrees for the contact angle.

    `kind` is one of: paired tapered (load ratings are of one row), unit ball, unit tapered (load
    ratings are of both rows together). `pressure_spread` is the distance of the two pressure
    centres of a unit; None for a pair, where it follows from how far apart the two sit.
    """

    key: str
    kind: str
    bore: float
    outside: float
    width: float
    rows: int
    dynamic: float
    static: float
    contact_angle_deg: float
    pressure_spread: float | None
    origin: Origin


@cache
def hub_bearings() -> Mapping[str, HubBearing]:
    """Read the whole table."""
    return {
        row["key"]: HubBearing(
            key=row["key"],
            kind=row["kind"],
            bore=number(row, "bore_mm"),
            outside=number(row, "outside_mm"),
            width=number(row, "width_mm"),
            rows=int(row["rows"]),
            dynamic=number(row, "dynamic_kN"),
            static=number(row, "static_kN"),
            contact_angle_deg=number(row, "contact_angle_deg"),
            pressure_spread=number_or_none(row, "pressure_spread_mm"),
            origin=origin(row),
        )
        for row in rows("hub_bearings")
    }


def hub_bearing(key: str) -> HubBearing:
    """Find one bearing by key."""
    return look_up(hub_bearings(), key, what="hub bearing")


@dataclass(frozen=True, slots=True, kw_only=True)
class HubBearingFit:
    """Load rating: dynamic * (bore / reference_bore) ** exponent, in newton and metre."""

    kind: str
    reference_bore: float
    dynamic: float
    exponent: float
    static_to_dynamic: float
    pressure_spread_to_bore: float | None
    origin: Origin


@cache
def hub_bearing_fits() -> Mapping[str, HubBearingFit]:
    """Read the whole table."""
    return {
        row["key"]: HubBearingFit(
            kind=row["key"],
            reference_bore=number(row, "reference_bore_mm"),
            dynamic=number(row, "dynamic_kN"),
            exponent=number(row, "exponent"),
            static_to_dynamic=number(row, "static_to_dynamic"),
            pressure_spread_to_bore=number_or_none(row, "pressure_spread_to_bore"),
            origin=origin(row),
        )
        for row in rows("hub_bearing_fits")
    }


def hub_bearing_fit(key: str) -> HubBearingFit:
    """Find the fit of one kind."""
    return look_up(hub_bearing_fits(), key, what="kind of hub bearing")


def dynamic_load_rating(kind: str, bore: float) -> float:
    """Dynamic load rating in newton of a hub bearing of which only kind and bore (metre) are known.

    Examples
    --------
    >>> dynamic_load_rating("unit ball", 0.045)
    49000.0
    """
    fit = hub_bearing_fit(kind)
    return float(fit.dynamic * (bore / fit.reference_bore) ** fit.exponent)
