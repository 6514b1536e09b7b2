"""How much torque and force can get to a wheel: what the engine gives, what the ground holds."""

import numpy as np

from axlewright.physics.quantities import Metre, Newton, NewtonMetre, Num, Radian, Ratio


def engine_torque(
    engine: NewtonMetre, ratios: Ratio, efficiency: Ratio = 1.0, share: Ratio = 1.0
) -> NewtonMetre:
    """Torque that the engine could put on an axle or a shaft.

    Parameters
    ----------
    ratios
        Product of every ratio between engine and wheel.
    share
        Part of it that goes this way: 1 for one axle that takes all, 0.5 for one of its shafts.

    References
    ----------
    definition of a gear ratio
    """
    return np.asarray(engine) * ratios * efficiency * share


def grip_torque(load: Newton, friction: Ratio, radius: Metre) -> NewtonMetre:
    """Torque at which a tyre slips.

    References
    ----------
    gillespie1992, ch. 2
    """
    return np.asarray(load) * friction * radius


def shaft_torque(engine: NewtonMetre, grip: NewtonMetre) -> NewtonMetre:
    """Torque in a shaft: the lower of what the engine gives and what the tyre holds.

    References
    ----------
    gillespie1992, ch. 2

    Examples
    --------
    >>> f"{shaft_torque(engine_torque(400, 3.5 * 2.7 * 4.10, 0.85), grip_torque(15e3, 1, 0.4)):.0f}"
    '6000'
    """
    return np.minimum(engine, grip)


def open_shaft_torques(
    axle: NewtonMetre, left_grip: NewtonMetre, right_grip: NewtonMetre, bias: Ratio = 1.0
) -> tuple[NewtonMetre, NewtonMetre]:
    """Torque in the left and right shaft of an open or torque-biasing differential.

    Parameters
    ----------
    axle
        Torque at the ring gear that the engine could give.
    bias
        Torque of the stronger side over the weaker, 1 for a plain open one.

    References
    ----------
    gillespie1992, ch. 2
    """
    half = np.asarray(axle) / 2
    weak = np.minimum(half, np.minimum(left_grip, right_grip))
    strong = np.minimum(np.asarray(bias) * weak, axle - weak)
    left = np.where(np.asarray(left_grip) <= right_grip, weak, np.minimum(strong, left_grip))
    right = np.where(np.asarray(left_grip) <= right_grip, np.minimum(strong, right_grip), weak)
    return left, right


def locked_shaft_torques(
    axle: NewtonMetre, left_grip: NewtonMetre, right_grip: NewtonMetre
) -> tuple[NewtonMetre, NewtonMetre]:
    """Most that the left and the right shaft can each see when the two turn as one.

    Notes
    -----
    Not at once: how a locked axle splits its torque depends on the ground, so each side is given
    its own worst. A wheel in the air has no grip, and the other shaft may then carry it all.

    References
    ----------
    gillespie1992, ch. 2
    """
    return np.minimum(axle, left_grip), np.minimum(axle, right_grip)


def air_shaft_torque(
    axle: NewtonMetre, load: Newton, friction: Ratio, radius: Metre, locked: Ratio
) -> NewtonMetre:
    """Torque in the shaft of the wheel on the ground while its mate hangs in the air.

    Parameters
    ----------
    load
        On the one wheel: the whole axle's load.
    locked
        1 for a locked differential, 0 for an open one, which then passes nothing.

    References
    ----------
    gillespie1992, ch. 2
    """
    return np.asarray(locked) * np.minimum(axle, grip_torque(load, friction, radius))


def shifted_load(static: Newton, total_force: Newton, height: Metre, wheelbase: Metre) -> Newton:
    """Load on an axle when the vehicle is pushed along at its tyres.

    Parameters
    ----------
    total_force
        At all tyres, positive when it pushes the vehicle away from this axle's end: pull for a
        rear axle, braking for a front one.
    height
        Of the centre of mass.

    References
    ----------
    gillespie1992, ch. 1
    """
    return np.maximum(static + np.asarray(total_force) * height / wheelbase, 0.0)


def braked_load(
    static: Newton, weight: Newton, friction: Ratio, height: Metre, wheelbase: Metre
) -> Newton:
    """Load on the front axle when every tyre brakes at the limit of grip.

    References
    ----------
    gillespie1992, ch. 1
    """
    return shifted_load(static, np.asarray(weight) * friction, height, wheelbase)


def locked_traction(load: Newton, friction: Ratio, height: Metre, wheelbase: Metre) -> Newton:
    """Pull of a driven rear axle with a locked differential, load shift counted.

    References
    ----------
    gillespie1992, ch. 2
    """
    return np.asarray(friction) * load / (1 - np.asarray(height) * friction / wheelbase)


def open_traction(
    load: Newton,
    friction: Ratio,
    height: Metre,
    wheelbase: Metre,
    radius: Metre,
    final_ratio: Ratio,
    track: Metre,
    front_roll_share: Ratio,
) -> Newton:
    """Pull of a driven rear beam axle with an open differential, counting pinion roll.

    Parameters
    ----------
    final_ratio
        Ring and pinion.
    front_roll_share
        Front roll stiffness over that of both ends.

    References
    ----------
    gillespie1992, ch. 2
    """
    roll = 2 * np.asarray(friction) * radius / (np.asarray(final_ratio) * track) * front_roll_share
    return np.asarray(friction) * load / (1 - np.asarray(height) * friction / wheelbase + roll)


def pinion_roll(axle: NewtonMetre, final_ratio: Ratio, track: Metre) -> Newton:
    """Load that pinion torque takes from one wheel and puts on the other.

    References
    ----------
    gillespie1992, ch. 2, nothing passed to the springs
    """
    return np.asarray(axle) / (np.asarray(final_ratio) * track)


def slope_force(weight: Newton, slope: Radian) -> Newton:
    """Force that gravity pulls down a slope.

    References
    ----------
    statics
    """
    return np.asarray(weight) * np.sin(slope)


def grip_slope(friction: Num) -> Radian:
    """Steepest slope that a vehicle with every wheel driven climbs on its grip.

    References
    ----------
    statics
    """
    return np.arctan(friction)
