"""Welds treated as lines: their stress on the throat.

Fatigue of welded details comes from ``weld_fatigue`` and is offered here too.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from axlewright.physics.quantities import (
    Metre,
    Metre2,
    Metre3,
    Newton,
    NewtonMetre,
    NewtonPerMetre,
    Num,
    Pascal,
    Ratio,
)
from axlewright.physics.weld_fatigue import (
    damage,
    endurance,
    endurance_2025,
    endured_range,
    exponential_damage,
    knee_2025,
    one_slope_exponential_damage,
    relieved_range,
    shear_endurance,
    unwelded_endurance_2025,
)

__all__ = [
    "THROAT",
    "LineGroup",
    "allowable_by_electrode",
    "allowable_by_ultimate",
    "circle_group",
    "damage",
    "endurance",
    "endurance_2025",
    "endured_range",
    "exponential_damage",
    "knee_2025",
    "line_force",
    "line_group",
    "one_slope_exponential_damage",
    "relieved_range",
    "round_line_force",
    "shear_endurance",
    "throat",
    "throat_area",
    "throat_needed",
    "throat_stress",
    "unwelded_endurance_2025",
]

THROAT = 0.707  # throat over leg of an equal-legged fillet, as the textbooks round it


@dataclass(frozen=True, slots=True)
class LineGroup:
    """A weld group as lines of no width: metres, and metres cubed for the second moments."""

    length: Metre
    x: Metre
    y: Metre
    about_x: Metre3
    about_y: Metre3
    product: Metre3

    @property
    def polar(self) -> Metre3:
        """Second moment about the centroid, in the plane of the weld."""
        return np.asarray(self.about_x) + self.about_y


def line_group(segments: NDArray[np.float64]) -> LineGroup:
    """Properties of straight weld lines.

    Parameters
    ----------
    segments
        Shape (..., n, 2, 2): n lines, start and end, x and y.

    References
    ----------
    budynas9, tables 9-1 and 9-2
    """
    lines = np.asarray(segments, dtype=float)
    middle, run = lines.mean(axis=-2), lines[..., 1, :] - lines[..., 0, :]
    length = np.hypot(run[..., 0], run[..., 1])
    total = length.sum(axis=-1)
    centre = (middle * length[..., np.newaxis]).sum(axis=-2) / total[..., np.newaxis]
    away = middle - centre[..., np.newaxis, :]

    def second(i: int, j: int) -> Metre3:
        each = away[..., i] * away[..., j] + run[..., i] * run[..., j] / 12
        return np.asarray((length * each).sum(axis=-1))

    return LineGroup(
        total, centre[..., 0], centre[..., 1], second(1, 1), second(0, 0), second(0, 1)
    )


def circle_group(radius: Metre) -> LineGroup:
    """Properties of a weld all round a tube.

    References
    ----------
    budynas9, tables 9-1 and 9-2
    """
    radius = np.asarray(radius)
    moment, zero = np.pi * radius**3, radius * 0.0
    return LineGroup(2 * np.pi * radius, zero, zero, moment, moment, zero)


def line_force(
    group: LineGroup, point: Metre, force: Newton, moment: NewtonMetre
) -> NewtonPerMetre:
    """Force per metre of weld at a point of the group, three components on the last axis.

    Parameters
    ----------
    point
        x and y on the last axis.
    force
        Three components, acting at the centroid of the group.
    moment
        Three components about the centroid; x and y bend the group, z twists it in its plane.

    References
    ----------
    budynas9, ch. 9
    """
    where, force, moment = np.asarray(point), np.asarray(force), np.asarray(moment)
    x, y = where[..., 0] - group.x, where[..., 1] - group.y
    length, polar = np.asarray(group.length), group.polar
    inertia = np.asarray(group.about_x) * group.about_y - np.square(group.product)
    slope_y = (moment[..., 0] * group.about_y + moment[..., 1] * group.product) / inertia
    slope_x = -(moment[..., 1] * group.about_x + moment[..., 0] * group.product) / inertia
    spin = moment[..., 2] / polar
    parts = np.broadcast_arrays(
        force[..., 0] / length - spin * y,
        force[..., 1] / length + spin * x,
        force[..., 2] / length + slope_x * x + slope_y * y,
    )
    return np.stack(parts, axis=-1)


def round_line_force(
    radius: Metre, bending: NewtonMetre, torque: NewtonMetre, shear: Newton, axial: Newton = 0.0
) -> NewtonPerMetre:
    """Largest force per metre of a weld all round a tube: every part taken at one point.

    References
    ----------
    budynas9, ch. 9
    """
    round_ = 2 * np.pi * np.asarray(radius)
    across = 2 * np.abs(bending) / (round_ * radius) + np.abs(axial) / round_
    along = np.abs(torque) / (round_ * radius) + np.abs(shear) / round_
    return np.hypot(across, along)


def throat_stress(line: NewtonPerMetre, throat: Metre) -> Pascal:
    """Stress on the throat: vector sum of the line force, three components on the last axis.

    Notes
    -----
    The vector sum takes the whole force as shear of the throat; the largest-shear theory of
    some textbooks gives as little as half of it for a weld in bending.

    References
    ----------
    budynas9, ch. 9
    """
    return np.asarray(np.sqrt(np.sum(np.square(line), axis=-1)) / throat)


def throat(leg: Metre) -> Metre:
    """Throat of an equal-legged fillet weld.

    References
    ----------
    budynas9, ch. 9
    """
    return THROAT * np.asarray(leg)


def throat_needed(line: NewtonPerMetre, allowable: Pascal) -> Metre:
    """Throat that keeps the vector-sum stress at an allowable one.

    References
    ----------
    budynas9, ch. 9
    """
    return np.asarray(np.sqrt(np.sum(np.square(line), axis=-1)) / allowable)


def allowable_by_ultimate(
    ultimate: Pascal, correlation: Ratio, partial_factor: Num = 1.25
) -> Pascal:
    """Design shear strength of a fillet weld by the simplified method.

    Parameters
    ----------
    ultimate
        Of the weaker part joined.
    correlation
        0.8 for S235, 0.85 for S275, 0.9 for S355.

    References
    ----------
    en1993-1-8, 4.5.3.3
    """
    return np.asarray(
        np.asarray(ultimate) / (np.sqrt(3) * np.asarray(correlation) * partial_factor)
    )


def allowable_by_electrode(electrode: Pascal) -> Pascal:
    """Allowable stress on the throat by the strength of the filler.

    References
    ----------
    aws-d1.1 (memory): 0.30 of the electrode's strength
    """
    return 0.30 * np.asarray(electrode)


def throat_area(group: LineGroup, throat_size: Metre) -> Metre2:
    """Area of all throats of a group.

    References
    ----------
    budynas9, ch. 9
    """
    return np.asarray(group.length) * throat_size
