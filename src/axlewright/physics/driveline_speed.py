"""What a propeller shaft's speed makes of its angles and its length.

Joint angles that shake do so with the square of the shaft's speed; a tube whirls when its speed
meets its own bending frequency.
"""

import numpy as np

from axlewright.physics import cross_joint
from axlewright.physics.quantities import (
    KilogramPerMetre3,
    Metre,
    MetrePerSecond,
    Pascal,
    Radian,
    RadianPerSecond,
    RadianPerSecond2,
    Ratio,
)


def joint_acceleration(speed: RadianPerSecond, bend: Radian) -> RadianPerSecond2:
    """Greatest angular acceleration behind a joint whose driving shaft turns evenly.

    For the angle of a whole line it is the torsional acceleration, of the first joint the
    inertial one of the tube under drive, of the last joint the one when coasting.

    References
    ----------
    sae-ae7 (memory): small-angle rule, speed times angle squared
    """
    return np.asarray(np.square(speed) * np.square(bend))


def exact_joint_acceleration(speed: RadianPerSecond, bend: Radian) -> RadianPerSecond2:
    """Greatest angular acceleration behind one joint, at any angle.

    References
    ----------
    khurmi-machines, Hooke's joint; derived for the place of the greatest

    Examples
    --------
    >>> f"{exact_joint_acceleration(157.0796, np.radians(20)):.0f}"
    '3083'
    """
    square = np.sin(bend) ** 2
    share = square / (2.0 - square)
    with np.errstate(invalid="ignore", divide="ignore"):
        place = (np.sqrt(1.0 + 8.0 * share**2) - 1.0) / (2.0 * share)
    place = np.where(share > 1e-9, place, 2.0 * share)
    ratio = cross_joint.acceleration_ratio(bend, 0.5 * np.arccos(place))
    return np.asarray(np.square(speed) * np.abs(ratio))


def angle_at_acceleration(acceleration: RadianPerSecond2, speed: RadianPerSecond) -> Radian:
    """Angle that gives so much acceleration at a speed; turns ``joint_acceleration`` round.

    References
    ----------
    sae-ae7 (memory): small-angle rule
    """
    return np.asarray(np.sqrt(acceleration) / np.asarray(speed))


def allowed_second_angle(
    first: Radian, acceleration: RadianPerSecond2, speed: RadianPerSecond
) -> Radian:
    """Greatest angle at the other end of a shaft, yokes in line, for a torsional acceleration.

    References
    ----------
    sae-ae7 (memory): small-angle rule for two joints
    """
    spare = np.asarray(acceleration) / np.square(speed)
    return np.asarray(np.sqrt(np.square(first) + spare))


def whirling_speed(
    length: Metre,
    outer: Metre,
    inner: Metre,
    modulus: Pascal = 206e9,
    density: KilogramPerMetre3 = 7850.0,
) -> RadianPerSecond:
    """Lowest speed at which a tube between two joints bows out and whirls.

    Parameters
    ----------
    length
        Between joint centres; the ends count as pinned and the tube as even all along.

    References
    ----------
    budynas9, ch. 7: critical speed of a uniform shaft on simple supports
    """
    radius2 = (np.square(outer) + np.square(inner)) / 16.0  # second moment over area
    return np.asarray(
        np.square(np.pi / np.asarray(length)) * np.sqrt(modulus * radius2 / np.asarray(density))
    )


def road_speed_at(speed: RadianPerSecond, radius: Metre, axle_ratio: Ratio) -> MetrePerSecond:
    """Road speed at which the propeller shaft turns so fast.

    References
    ----------
    definition of a gear ratio
    """
    return np.asarray(speed) * radius / axle_ratio


def top_shaft_speed(engine_speed: RadianPerSecond, gear: Ratio, transfer: Ratio) -> RadianPerSecond:
    """Propeller shaft's speed at an engine speed, gearbox and transfer case counted.

    References
    ----------
    definition of a gear ratio
    """
    return np.asarray(engine_speed) / (np.asarray(gear) * transfer)
