"""Involute splines, and the factors of their strength."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from axlewright.tables.reading import look_up, number, number_or_none, rows
from axlewright.tables.sources import Origin, origin


@dataclass(frozen=True, slots=True, kw_only=True)
class Spline:
    """One external spline, diameters in metre; the root is at the minor diameter."""

    key: str
    teeth: int
    diametral_pitch: float
    pitch_diameter: float
    major: float
    minor: float
    origin: Origin


@cache
def splines() -> Mapping[str, Spline]:
    """Read the whole table."""
    return {
        row["key"]: Spline(
            key=row["key"],
            teeth=int(row["teeth"]),
            diametral_pitch=number(row, "diametral_pitch"),
            pitch_diameter=number(row, "pitch_diameter_mm"),
            major=number(row, "major_mm"),
            minor=number(row, "minor_mm"),
            origin=origin(row),
        )
        for row in rows("splines")
    }


def spline(key: str) -> Spline:
    """Find one spline by key, such as 24/48x30."""
    return look_up(splines(), key, what="spline")


@dataclass(frozen=True, slots=True, kw_only=True)
class SplineAllowable:
    """Allowable stresses in pascal by hardness; None where the source gives none."""

    key: str
    words: str
    shear: float
    bearing_straight: float | None
    bearing_crowned: float | None
    origin: Origin


@cache
def spline_allowables() -> Mapping[str, SplineAllowable]:
    """Read the whole table."""
    return {
        row["key"]: SplineAllowable(
            key=row["key"],
            words=row["words"],
            shear=number(row, "shear_MPa"),
            bearing_straight=number_or_none(row, "bearing_straight_MPa"),
            bearing_crowned=number_or_none(row, "bearing_crowned_MPa"),
            origin=origin(row),
        )
        for row in rows("spline_allowables")
    }


def spline_allowable(key: str) -> SplineAllowable:
    """Find one row by key."""
    return look_up(spline_allowables(), key, what="spline hardness")


@dataclass(frozen=True, slots=True, kw_only=True)
class SplineApplication:
    """Application factor of one source of torque, by the shock of what it drives."""

    key: str
    source_of_torque: str
    uniform: float
    light_shock: float
    intermittent_shock: float
    heavy_shock: float
    origin: Origin


@cache
def spline_applications() -> Mapping[str, SplineApplication]:
    """Read the whole table."""
    return {
        row["key"]: SplineApplication(
            key=row["key"],
            source_of_torque=row["source_of_torque"],
            uniform=number(row, "uniform"),
            light_shock=number(row, "light_shock"),
            intermittent_shock=number(row, "intermittent_shock"),
            heavy_shock=number(row, "heavy_shock"),
            origin=origin(row),
        )
        for row in rows("spline_application")
    }


@dataclass(frozen=True, slots=True, kw_only=True)
class SplineLife:
    """Fatigue factor (torque one way, or reversed) and wear factor at a count of cycles."""

    key: str
    cycles: float
    fatigue_one_way: float | None
    fatigue_reversed: float | None
    wear: float | None
    origin: Origin


@cache
def spline_lives() -> Mapping[str, SplineLife]:
    """Read the whole table."""
    return {
        row["key"]: SplineLife(
            key=row["key"],
            cycles=number(row, "cycles"),
            fatigue_one_way=number_or_none(row, "fatigue_one_way"),
            fatigue_reversed=number_or_none(row, "fatigue_reversed"),
            wear=number_or_none(row, "wear"),
            origin=origin(row),
        )
        for row in rows("spline_life")
    }


@dataclass(frozen=True, slots=True, kw_only=True)
class SplineMisalignment:
    """Load-distribution factor at a slope (1) and a face width in metre."""

    key: str
    slope: float
    face_width: float
    factor: float
    origin: Origin


@cache
def spline_misalignments() -> Mapping[str, SplineMisalignment]:
    """Read the whole table."""
    return {
        row["key"]: SplineMisalignment(
            key=row["key"],
            slope=number(row, "slope"),
            face_width=number(row, "face_width_mm"),
            factor=number(row, "factor"),
            origin=origin(row),
        )
        for row in rows("spline_misalignment")
    }
