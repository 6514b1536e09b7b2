"""Forces between a wheel, its steering axis and the rods that hold it.

Axes x forward, y left, z up. A ``Vector`` is SI with its x, y and z on the last axis. ``side`` is
+1 for the left wheel and -1 for the right.
"""

from typing import NamedTuple, TypeAlias

import numpy as np
from numpy.typing import NDArray

from axlewright.physics.quantities import Metre, Newton, NewtonMetre, Pascal, Radian, Ratio

Vector: TypeAlias = NDArray[np.float64]


class JointReactions(NamedTuple):
    """Forces of the axle on the knuckle at its two joints, N, and the moment left to the rods."""

    upper: Newton
    lower: Newton
    steering_moment: NewtonMetre


def axis_direction(caster: Radian, inclination: Radian, side: Ratio) -> Vector:
    """Unit vector up the steering axis.

    Parameters
    ----------
    caster
        Positive when the top leans back.
    inclination
        Positive when the top leans inward.

    References
    ----------
    iso8855
    """
    lean_back, lean_in = np.broadcast_arrays(
        -np.tan(caster), -np.asarray(side) * np.tan(inclination)
    )
    axis = np.stack([lean_back, lean_in, np.ones_like(lean_back)], axis=-1)
    return np.asarray(axis / np.linalg.norm(axis, axis=-1, keepdims=True))


def moment_about(axis: Vector, through: Vector, point: Vector, force: Vector) -> NewtonMetre:
    """Moment of a force at a point about an axis, right-handed (positive steers left).

    References
    ----------
    statics
    """
    arm = np.asarray(point) - np.asarray(through)
    return np.asarray(np.sum(np.cross(arm, np.asarray(force)) * axis, axis=-1))


def steering_moment(
    longitudinal: Newton,
    lateral: Newton,
    vertical: Newton,
    aligning: NewtonMetre,
    caster: Radian,
    inclination: Radian,
    scrub: Metre,
    trail: Metre,
    side: Ratio,
) -> NewtonMetre:
    """Moment of a tyre about its steering axis, positive steering left.

    Parameters
    ----------
    longitudinal, lateral, vertical
        Ground forces on the tyre along x, y and z.
    aligning
        Moment of the ground about z.
    scrub
        Contact point outboard of where the axis meets the ground.
    trail
        Contact point behind where the axis meets the ground.

    References
    ----------
    statics
    """
    axis = np.asarray(axis_direction(caster, inclination, side))
    back, out = -np.asarray(trail), np.asarray(side) * scrub
    # Contact point at (back, out, 0) from the foot of the axis: r x F, then along the axis.
    about_x, about_y = out * vertical, -back * np.asarray(vertical)
    about_z = back * lateral - out * np.asarray(longitudinal) + aligning
    return np.asarray(axis[..., 0] * about_x + axis[..., 1] * about_y + axis[..., 2] * about_z)


def joint_reactions(
    force: Vector,
    point: Vector,
    moment: Vector,
    upper: Vector,
    lower: Vector,
) -> JointReactions:
    """Forces at the upper and lower steering joints that balance a load on the knuckle.

    Parameters
    ----------
    force, point
        Outside force on the knuckle and where it acts.
    moment
        Outside free moment on the knuckle.
    upper, lower
        Centres of the joints. The lower one takes the load along the axis.

    Notes
    -----
    A braked wheel passes its ground force at the ground; a wheel driven through its shaft
    passes it at the height of the axle.

    References
    ----------
    statics
    """
    line = np.asarray(upper) - np.asarray(lower)
    height = np.linalg.norm(line, axis=-1, keepdims=True)
    axis = line / height
    total = np.cross(np.asarray(point) - np.asarray(lower), np.asarray(force)) + moment
    along = np.sum(total * axis, axis=-1)
    above = np.cross(axis, total) / height
    return JointReactions(above, -np.asarray(force) - above, along)


def brake_joint_forces(
    longitudinal: Newton, radius: Metre, above: Metre, below: Metre
) -> tuple[Newton, Newton]:
    """Fore-and-aft force at the upper and lower joint under braking.

    Parameters
    ----------
    radius
        Wheel centre above the ground.
    above, below
        Joints above and below the wheel centre.

    References
    ----------
    statics
    """
    upper = np.asarray(longitudinal) * (np.asarray(radius) - below) / (np.asarray(above) + below)
    return upper, upper + longitudinal


def drive_joint_forces(longitudinal: Newton, above: Metre, below: Metre) -> tuple[Newton, Newton]:
    """Fore-and-aft force at the upper and lower joint of a wheel driven through its shaft.

    References
    ----------
    statics
    """
    height = np.asarray(above) + below
    return np.asarray(longitudinal) * below / height, np.asarray(longitudinal) * above / height


def caliper_force(longitudinal: Newton, radius: Metre, disc_radius: Metre) -> Newton:
    """Force of the caliper on its bracket.

    References
    ----------
    statics
    """
    return np.asarray(longitudinal) * radius / disc_radius


def rod_force(moment: NewtonMetre, arm: Metre, angle: Radian = 0.0) -> Newton:
    """Force in a tie rod or drag link that holds a moment about a steering axis.

    Parameters
    ----------
    arm
        Steering arm, from the axis to the rod's joint.
    angle
        Between the rod and the line square to the arm.

    References
    ----------
    statics
    """
    return np.asarray(np.asarray(moment) / (np.asarray(arm) * np.cos(angle)))


def rod_force_in_space(
    moment: NewtonMetre, axis: Vector, through: Vector, joint: Vector, direction: Vector
) -> Newton:
    """Tension in a rod that balances a moment about a steering axis.

    Parameters
    ----------
    direction
        Unit vector from the rod's joint on the arm along the rod.

    References
    ----------
    statics
    """
    reach = moment_about(axis, through, joint, direction)
    with np.errstate(divide="ignore"):
        return -np.asarray(moment) / reach


def drag_link_force(
    left: NewtonMetre, right: NewtonMetre, arm: Metre, angle: Radian = 0.0
) -> Newton:
    """Force in a drag link that steers both wheels of an axle joined by a tie rod.

    References
    ----------
    statics
    """
    return np.asarray(rod_force(np.asarray(left) + right, arm, angle))


def arm_bending_stress(force: Newton, lever: Metre, width: Metre, depth: Metre) -> Pascal:
    """Bending stress of a steering arm of rectangular section.

    Parameters
    ----------
    width
        Along the force.
    depth
        Square to it.

    References
    ----------
    budynas9, ch. 3
    """
    return 6 * np.asarray(force) * lever / (np.square(width) * depth)


def toe_angle(difference: Metre, diameter: Metre) -> Radian:
    """Toe of both wheels together from rear less front distance, taped at a diameter.

    References
    ----------
    geometry: each wheel turned by half
    """
    return np.asarray(2 * np.arcsin(np.asarray(difference) / (2 * np.asarray(diameter))))


def toe_length(angle: Radian, diameter: Metre) -> Metre:
    """Rear less front distance that goes with a toe of both wheels together.

    References
    ----------
    geometry: each wheel turned by half
    """
    return 2 * np.asarray(diameter) * np.sin(np.asarray(angle) / 2)


def scrub_radius(height: Metre, inboard: Metre, inclination: Radian) -> Metre:
    """Contact point outboard of where the steering axis meets the ground.

    Parameters
    ----------
    height, inboard
        A point of the axis: above the ground, and inboard of the tyre's centre line.

    References
    ----------
    geometry
    """
    return np.asarray(np.asarray(inboard) - np.asarray(height) * np.tan(inclination))
