"""Caster, inclination and camber of one side, from a sweep or from an angle finder on a flat."""

from dataclasses import dataclass, replace
from math import degrees, inf, radians, sqrt
from typing import Final

from axlewright.geometry.alignment_measured import Measured, combined, read_mean, tool_of
from axlewright.physics import alignment
from axlewright.rig import Readings
from axlewright.tables import Instrument, instrument

USUAL_SWEEP: Final = radians(20.0)
RULE_HOLDS: Final = radians(1.0)  # off 20 degrees; further, nobody would use the rule
OUTWARD: Final = {"left": 1.0, "right": -1.0}


@dataclass(frozen=True, slots=True, kw_only=True)
class Sweep:
    """What a sweep of one wheel tells.

    ``caster`` is exact where the wheel was read straight ahead too, else all but exact
    (``three`` says which). ``rule`` is one and a half times the change of camber, rad, where the
    sweep was of 20 degrees. ``inclination`` and ``included`` need three readings.
    """

    side: str
    turn: float
    three: bool
    caster: Measured
    rule: float | None
    inclination: Measured | None = None
    included: Measured | None = None

    @property
    def rule_off(self) -> float | None:
        """How much the rule reads high, as a share; None where there is nothing to compare."""
        if self.rule is None or abs(self.caster.value) < radians(0.5):
            return None
        return self.rule / self.caster.value - 1.0


def sweep_of(readings: Readings, side: str) -> Sweep | None:
    """Give what one wheel's sweep tells; None where it was not read both ways."""
    tool = tool_of(readings, "caster.with", "angle")
    out, ahead, inward = (
        read_mean(readings, f"caster.{side}.{place}", tool) for place in ("out", "straight", "in")
    )
    if out is None or inward is None:
        return None
    asked = readings.value("caster.sweep")
    turn = _turn(USUAL_SWEEP if asked is None else asked, readings)
    own = _own(tool)
    rule = (
        float(alignment.caster_by_rule(out.value, inward.value))
        if abs(turn.value - USUAL_SWEEP) < RULE_HOLDS
        else None
    )
    if ahead is None:
        caster = combined(
            (out, inward, turn),
            lambda a, b, c: float(alignment.caster_from_two(a, b, c)),
        )
        return Sweep(side=side, turn=turn.value, three=False, caster=caster, rule=rule)
    parts = (ahead, out, inward, turn)
    return Sweep(
        side=side,
        turn=turn.value,
        three=True,
        caster=combined(parts, lambda *at: float(alignment.kingpin_from_three(*at).caster)),
        rule=rule,
        inclination=combined(
            parts, lambda *at: float(alignment.kingpin_from_three(*at).inclination)
        ),
        included=combined(
            parts,
            lambda *at: float(
                alignment.included_angle(at[0], alignment.kingpin_from_three(*at).inclination)
            ),
            fixed=own,
        ),
    )


def caster_on_a_flat(readings: Readings, side: str) -> Measured | None:
    """Give caster to the floor from a finder on the knuckle's flat."""
    return _to_the_floor(
        readings, f"caster.{side}.finder", tool_of(readings, "caster.with", "angle"), "along", 1.0
    )


def camber_of(readings: Readings, side: str) -> Measured | None:
    """Give camber to the floor."""
    tool = tool_of(readings, "camber.with", "angle")
    return _to_the_floor(readings, f"camber.{side}", tool, "across", -OUTWARD[side])


def at_a_level_frame(caster: Measured, readings: Readings) -> Measured | None:
    """Give caster as it would be with the frame level to the floor: nose-down is added.

    References
    ----------
    geometry: the axle pitches with the frame; practice
    """
    slope = read_mean(readings, "floor.frame_nose_down", tool_of(readings, "floor.", "angle"))
    if slope is None:
        return None
    return combined((caster, slope), lambda angle, nose_down: angle + nose_down)


def difference(left: Measured, right: Measured, *, same_tool: bool = True) -> Measured:
    """Give left less right; one instrument's own error drops out."""
    made = combined((left, right), lambda one, other: one - other)
    shares = min(left.fixed, right.fixed) if same_tool else 0.0
    own = _own(instrument(left.instrument))
    if shares < own:
        return made
    kept = sqrt(max(made.standard**2 - 2.0 * own**2, 1e-12))
    still = sqrt(max(made.fixed**2 - 2.0 * own**2, 0.0))
    return replace(made, standard=kept, fixed=still)


def rule_table() -> tuple[tuple[float, float], ...]:
    """How much the rule of one and a half reads high, in percent, by caster in degrees."""
    rows = []
    for angle in (2.0, 4.0, 6.0, 8.0, 10.0):
        caster = radians(angle)
        inward, out = (
            float(alignment.steered_camber(turn, caster, radians(8.5), 0.0, 1.0))
            for turn in (-USUAL_SWEEP, USUAL_SWEEP)
        )
        told = degrees(float(alignment.caster_by_rule(out, inward)))
        rows.append((angle, 100.0 * (told / angle - 1.0)))
    return tuple(rows)


def _turn(angle: float, readings: Readings) -> Measured:
    tool = tool_of(readings, "caster.turned_on", "turn")
    said = readings.answers.get("caster.sweep", ())
    if said and (said[0].uncertainty is not None or said[0].band is not None):
        typed = read_mean(readings, "caster.sweep", tool)
        if typed is not None:
            return typed
    boxes = (0.5 * tool.resolution) ** 2 / 3.0 + tool.own_error**2 / 3.0
    doubt = sqrt(0.5 * tool.scatter**2 + boxes)
    return Measured(
        value=angle,
        standard=doubt,
        freedom=inf,
        fixed=doubt,
        scatter=0.0,
        count=1,
        kind="angle",
        instrument=tool.key,
    )


def _to_the_floor(
    readings: Readings, path: str, tool: Instrument, slope: str, sign: float
) -> Measured | None:
    """Angle to the floor: own error out by reading both ways round, slope of the floor out."""
    one = read_mean(readings, path, tool)
    if one is None:
        return None
    turned = read_mean(readings, f"{path}_turned", tool)
    if turned is None:
        read = combined((one,), lambda angle: angle, fixed=_own(tool))
    else:
        read = combined(
            (one, turned), lambda angle, other: float(alignment.turned_average(angle, other))
        )
    floor = read_mean(readings, f"floor.{slope}", tool)
    if floor is None:
        return read
    return combined(
        (read, floor), lambda angle, rise: float(alignment.level_corrected(angle, sign * rise))
    )


def _own(tool: Instrument) -> float:
    return tool.own_error / sqrt(3.0)
