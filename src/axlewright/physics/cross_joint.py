"""Cross joints: how they turn, and what their trunnions, needles and ears carry.

``bend`` is the angle between the two shafts, ``arm`` the distance from the joint centre to the
middle of a trunnion's needles. Steering-lock joints see the 1/cos(bend) too.
"""

import numpy as np

from axlewright.physics.quantities import (
    Cycles,
    Metre,
    Newton,
    NewtonMetre,
    Pascal,
    Radian,
    Ratio,
)

_RATED_TURNS = 5000.0 * 60.0 * 100.0  # 5000 h at 100 rev/min, where the rated torque is defined
_RATED_BEND = np.radians(3.0)
_NEEDLE_SHARE = 4.6  # busiest needle against the mean, Stribeck with play (memory)


def speed_ratio(bend: Radian, turn: Radian) -> Ratio:
    """Output over input speed of a single cross joint.

    Parameters
    ----------
    turn
        Turn of the input yoke from the plane that contains both shafts.

    References
    ----------
    khurmi-machines, Hooke's joint

    Examples
    --------
    >>> f"{speed_ratio(np.radians(20), turn=0.0):.4f}"
    '1.0642'
    """
    return np.asarray(np.cos(bend) / (1 - (np.sin(bend) * np.cos(turn)) ** 2))


def acceleration_ratio(bend: Radian, turn: Radian) -> Ratio:
    """Output angular acceleration over the square of a steady input speed.

    References
    ----------
    khurmi-machines, Hooke's joint
    """
    sine = np.sin(bend)
    return np.asarray(
        -np.cos(bend)
        * sine**2
        * np.sin(2 * np.asarray(turn))
        / (1 - (sine * np.cos(turn)) ** 2) ** 2
    )


def speed_swing(bend: Radian) -> Ratio:
    """Fastest less slowest output speed, over input speed: sin(bend)*tan(bend).

    References
    ----------
    khurmi-machines, Hooke's joint
    """
    return np.sin(bend) * np.tan(bend)


def largest_lead(bend: Radian) -> Radian:
    """Most that the output runs ahead of, or behind, the input.

    References
    ----------
    khurmi-machines, Hooke's joint
    """
    cosine = np.cos(bend)
    return np.asarray(np.arctan((1 - cosine) / (2 * np.sqrt(cosine))))


def compound_bend(plan: Radian, side: Radian) -> Radian:
    """Bend of a joint whose angle is seen as two, in plan and in side view.

    References
    ----------
    derived: the slopes of a direction add at right angles
    """
    return np.arctan(np.hypot(np.tan(plan), np.tan(side)))


def equivalent_angle(bends: Radian, signs: Ratio = 1.0) -> Radian:
    """One joint's bend that would shake as much as a whole line does; joints on the last axis.

    Parameters
    ----------
    signs
        +1 where the driving yoke lies as the first joint's does, -1 where it is a quarter turn
        away: +1, -1 for a shaft with its two yokes in phase.

    References
    ----------
    sae-ae7 (memory): small-angle rule, exact for two equal bends
    """
    return np.asarray(np.sqrt(np.abs(np.sum(np.square(bends) * np.asarray(signs), axis=-1))))


def phase_error_swing(bend: Radian, error: Radian) -> Ratio:
    """Swing left in a shaft with two equal bends whose yokes are out of phase.

    References
    ----------
    derived for small bends
    """
    return 2 * np.asarray(speed_swing(bend)) * np.sin(error)


def trunnion_force(torque: NewtonMetre, arm: Metre, bend: Radian) -> Newton:
    """Force on each trunnion of the cross, in the worst position of a turn.

    References
    ----------
    ivanovic2011

    Examples
    --------
    >>> f"{trunnion_force(2500.0, arm=0.040, bend=np.radians(35)):.0f}"
    '38149'
    """
    return np.asarray(np.asarray(torque) / (2 * np.asarray(arm) * np.cos(bend)))


def trunnion_bending(force: Newton, trunnion: Metre, bore: Metre, lever: Metre) -> Pascal:
    """Bending stress at a trunnion's root.

    Parameters
    ----------
    bore
        Grease hole along the trunnion.
    lever
        From the middle of the needles to the root.

    References
    ----------
    ivanovic2011
    """
    modulus = np.pi / 32 * (np.asarray(trunnion) ** 4 - np.asarray(bore) ** 4) / trunnion
    return np.asarray(np.asarray(force) * lever / modulus)


def trunnion_shear(force: Newton, trunnion: Metre, bore: Metre = 0.0) -> Pascal:
    """Mean shear stress across a trunnion.

    References
    ----------
    ivanovic2011
    """
    return np.asarray(force) / (np.pi / 4 * (np.square(trunnion) - np.square(bore)))


def cross_bending(
    torque: NewtonMetre,
    bend: Radian,
    span: Metre,
    bearing_length: Metre,
    root_distance: Metre,
    trunnion: Metre,
) -> Pascal:
    """Trunnion bending in the form of a published capacity check.

    Parameters
    ----------
    span
        Over the ends of two opposite trunnions.
    root_distance
        From the trunnion's end to the section looked at.

    Notes
    -----
    The force sits in the middle of each bearing, so its couple arm is ``span - bearing_length``.

    References
    ----------
    ivanovic2011
    """
    force = np.asarray(torque) / np.cos(bend) / (np.asarray(span) - bearing_length)
    lever = np.asarray(root_distance) - np.asarray(bearing_length) / 2
    return trunnion_bending(force, trunnion, 0.0, lever)


def needle_pressure(
    force: Newton,
    trunnion: Metre,
    roller: Metre,
    rollers: Ratio,
    length: Metre,
    modulus: Pascal = 206e9,
    poisson: Ratio = 0.3,
) -> Pascal:
    """Hertz pressure of the busiest needle on the trunnion.

    Parameters
    ----------
    rollers
        Needles round one cap, all rows together.

    References
    ----------
    budynas9, line contact; load share of 4.6 (memory)
    """
    busiest = _NEEDLE_SHARE * np.asarray(force) / rollers
    curvature = 1 / np.asarray(trunnion) + 1 / np.asarray(roller)
    stiffness = np.asarray(modulus) / (np.pi * (1 - np.square(poisson)))
    return np.sqrt(stiffness * curvature * busiest / length)


def cap_pressure(force: Newton, cap: Metre, thickness: Metre) -> Pascal:
    """Mean pressure of the cap on the bore of the yoke ear.

    References
    ----------
    budynas9, ch. 8: projected area
    """
    return np.asarray(force) / (np.asarray(cap) * thickness)


def eye_stress(force: Newton, wall: Metre, thickness: Metre) -> Pascal:
    """Mean tension in the metal round the cap bore, both sides of the eye sharing the force.

    References
    ----------
    budynas9, ch. 8: net section of a lug
    """
    return np.asarray(force) / (2 * np.asarray(wall) * thickness)


def ear_root_stress(force: Newton, reach: Metre, width: Metre, thickness: Metre) -> Pascal:
    """Bending stress where the ear joins the yoke.

    Parameters
    ----------
    reach
        From the centre of the cap bore to the section.
    width
        Of that section, along the force.
    thickness
        Of that section, along the trunnion.

    References
    ----------
    budynas9, ch. 3: straight cantilever
    """
    return 6 * np.asarray(force) * reach / (np.square(width) * thickness)


def ear_stress(force: Newton, wall: Metre, thickness: Metre, reach: Metre, width: Metre) -> Pascal:
    """Greater of eye tension and ear-root bending: nominal, no stress concentration.

    References
    ----------
    budynas9, ch. 3 and 8
    """
    eye = eye_stress(force, wall, thickness)
    return np.maximum(eye, ear_root_stress(force, reach, width, thickness))


def secondary_couple(torque: NewtonMetre, bend: Radian) -> NewtonMetre:
    """Largest bending couple on the yoke shafts, twice a turn; the other shaft sees T*sin(bend).

    References
    ----------
    khurmi-machines, Hooke's joint (memory)
    """
    return np.asarray(torque) * np.tan(bend)


def joint_capacity(
    trunnion: Metre, bore: Metre, arm: Metre, lever: Metre, yield_stress: Pascal, bend: Radian
) -> NewtonMetre:
    """Torque at which a trunnion's root starts to yield in bending.

    References
    ----------
    ivanovic2011, turned round
    """
    per_newton_metre = trunnion_force(1.0, arm, bend)
    return yield_stress / np.asarray(trunnion_bending(per_newton_metre, trunnion, bore, lever))


def plastic_joint_capacity(
    trunnion: Metre, bore: Metre, arm: Metre, lever: Metre, yield_stress: Pascal, bend: Radian
) -> NewtonMetre:
    """Torque at which a trunnion's root has yielded right through in bending.

    Notes
    -----
    For a tough core only: a through-hard cross cracks before it gets here.

    References
    ----------
    ivanovic2011 with the plastic modulus of a round section
    """
    modulus = (np.asarray(trunnion) ** 3 - np.asarray(bore) ** 3) / 6
    return np.asarray(np.asarray(yield_stress) * modulus / lever * 2 * arm * np.cos(bend))


def life_turns(torque: NewtonMetre, bend: Radian, rated_torque: NewtonMetre) -> Cycles:
    """Turns that nine joints in ten outlive.

    Parameters
    ----------
    rated_torque
        For 5000 h at 100 rev/min and 3 degrees.

    Notes
    -----
    A mean life is about five times as long. Infinite at no bend, where needles only fret.

    References
    ----------
    joint-sizing: industrial sizing rule, 10/3 power of torque
    """
    with np.errstate(divide="ignore"):
        ratio = np.asarray(rated_torque) / np.abs(torque)
        return np.asarray(_RATED_TURNS * (_RATED_BEND / np.abs(bend)) * ratio ** (10 / 3))
