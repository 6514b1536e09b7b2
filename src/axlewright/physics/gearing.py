"""Ratios, tyres and speed."""

import numpy as np

from axlewright.physics.quantities import (
    Metre,
    MetrePerSecond,
    PerMetre,
    RadianPerSecond,
    Ratio,
)

_LAW_SHARE, _LAW_SPEED = 0.1, 4 / 3.6  # un-r39: a tenth of true speed, and 4 km/h


def road_speed(
    shaft_speed: RadianPerSecond, radius: Metre, ratio: Ratio, slip: Ratio = 0.0
) -> MetrePerSecond:
    """Speed over the ground from engine or shaft speed.

    Parameters
    ----------
    ratio
        Every ratio from that shaft to the wheel, multiplied.
    slip
        Share of the wheel's turning lost to slip.

    References
    ----------
    definition of a gear ratio
    """
    return np.asarray(np.asarray(shaft_speed) * radius / ratio * (1 - np.asarray(slip)))


def shaft_speed(road_speed: MetrePerSecond, radius: Metre, ratio: Ratio) -> RadianPerSecond:
    """Engine or shaft speed that goes with a speed over the ground.

    References
    ----------
    definition of a gear ratio
    """
    return np.asarray(road_speed) * ratio / radius


def rolling_radius(road_speed: MetrePerSecond, shaft_speed: RadianPerSecond, ratio: Ratio) -> Metre:
    """Rolling radius that a measured speed and shaft speed imply.

    References
    ----------
    definition of a gear ratio
    """
    return np.asarray(road_speed) * ratio / shaft_speed


def crawl_ratio(gear: Ratio, transfer: Ratio, axle: Ratio, extra: Ratio = 1.0) -> Ratio:
    """Engine turns to a turn of the wheel in the lowest gears.

    References
    ----------
    definition of a gear ratio

    Examples
    --------
    >>> f"{crawl_ratio(3.5, 2.7, 4.10):.3f}"
    '38.745'
    """
    return np.asarray(gear) * transfer * axle * extra


def effective_ratio(ratio: Ratio, fitted: Metre, original: Metre) -> Ratio:
    """Ratio that would have felt the same on the original tyres.

    Parameters
    ----------
    fitted, original
        Tyre diameters (or radii) now and before.

    References
    ----------
    definition of a gear ratio
    """
    return np.asarray(ratio) * original / fitted


def ratio_for_tyre(ratio: Ratio, fitted: Metre, original: Metre) -> Ratio:
    """Ratio that brings back the original gearing on other tyres.

    References
    ----------
    definition of a gear ratio
    """
    return np.asarray(ratio) * fitted / original


def turns_per_distance(diameter: Metre) -> PerMetre:
    """Turns of a tyre for each metre, by its rolling diameter.

    References
    ----------
    geometry
    """
    return 1 / (np.pi * np.asarray(diameter))


def speed_error(fitted: Metre, original: Metre) -> Ratio:
    """True speed over shown speed, less one, for other tyres on an unchanged speedometer.

    References
    ----------
    geometry
    """
    return np.asarray(fitted) / original - 1


def true_speed(shown: MetrePerSecond, fitted: Metre, original: Metre) -> MetrePerSecond:
    """Speed over the ground when a speedometer set for other tyres shows a speed.

    References
    ----------
    geometry
    """
    return np.asarray(shown) * fitted / original


def highest_lawful_reading(true: MetrePerSecond) -> MetrePerSecond:
    """Most that a speedometer may show at a true speed; the least is the true speed.

    References
    ----------
    un-r39
    """
    return (1 + _LAW_SHARE) * np.asarray(true) + _LAW_SPEED


def distance_correction(fitted: Metre, original: Metre) -> Ratio:
    """Factor on an odometer's count for other tyres.

    References
    ----------
    geometry
    """
    return np.asarray(fitted) / original
