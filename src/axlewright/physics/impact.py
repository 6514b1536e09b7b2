"""Blows limited by the energy there is: wheel strikes, landings, slides into a rut.

Each has its inverse: the speed, drop or slide at which a force is reached. The spring is the
tyre (with whatever gives in series), linear, no damping.
"""

import numpy as np

from axlewright.physics.quantities import (
    Kilogram,
    Metre,
    MetrePerSecond,
    Newton,
    NewtonPerMetre,
    Ratio,
)


def strike_slope(ledge_height: Metre, radius: Metre) -> tuple[Ratio, Ratio]:
    """Rearward and upward parts of the unit push of a ledge's edge on a round wheel.

    Notes
    -----
    The push runs from the edge to the wheel centre; an edge above the centre meets the wheel
    square on.

    References
    ----------
    geometry of a circle on an edge
    """
    upward = np.clip((np.asarray(radius) - ledge_height) / radius, 0.0, 1.0)
    return np.sqrt(1 - upward**2), upward


def strike_force(
    speed: MetrePerSecond,
    ledge_height: Metre,
    radius: Metre,
    stiffness: NewtonPerMetre,
    mass: Kilogram,
) -> tuple[Newton, Newton]:
    """Peak rearward and upward force on a wheel that strikes a square ledge.

    Parameters
    ----------
    radius
        Of the wheel.
    stiffness
        Of the tyre on an edge.
    mass
        That has to be turned aside: the wheel's share of the axle at least.

    Notes
    -----
    The speed toward the edge is stopped by the spring; along the tangent the wheel goes on.

    References
    ----------
    energy: m v^2 = F^2 / k

    Examples
    --------
    >>> rear, up = strike_force(2.0, 0.2, 0.4, stiffness=300e3, mass=250.0)
    >>> f"{rear:.0f} {up:.0f}"
    '12990 7500'
    """
    rearward, upward = strike_slope(ledge_height, radius)
    peak = np.asarray(speed) * rearward * np.sqrt(np.asarray(stiffness) * mass)
    return peak * rearward, peak * upward


def strike_speed(
    force: Newton,
    ledge_height: Metre,
    radius: Metre,
    stiffness: NewtonPerMetre,
    mass: Kilogram,
) -> MetrePerSecond:
    """Speed at which a ledge strikes with a peak force along its push; ``inf`` for no ledge.

    References
    ----------
    energy: m v^2 = F^2 / k
    """
    rearward, _ = strike_slope(ledge_height, radius)
    with np.errstate(divide="ignore"):
        return np.asarray(
            np.asarray(force) / (np.asarray(rearward) * np.sqrt(np.asarray(stiffness) * mass))
        )


def strike_ledge(
    force: Newton,
    speed: MetrePerSecond,
    radius: Metre,
    stiffness: NewtonPerMetre,
    mass: Kilogram,
) -> Metre:
    """Lowest ledge that strikes with a peak force along its push; ``inf`` if none can.

    References
    ----------
    energy: m v^2 = F^2 / k
    """
    with np.errstate(divide="ignore"):
        rearward = np.asarray(force) / (np.asarray(speed) * np.sqrt(np.asarray(stiffness) * mass))
    height = np.asarray(radius) * (1 - np.sqrt(1 - np.minimum(rearward, 1.0) ** 2))
    return np.where(rearward > 1, np.inf, height)


def landing_force(drop: Metre, weight: Newton, stiffness: NewtonPerMetre) -> Newton:
    """Peak force of a weight that falls on a spring: twice the weight from no height at all.

    References
    ----------
    energy: W (h + x) = k x^2 / 2

    Examples
    --------
    >>> f"{landing_force(0.0, weight=6000.0, stiffness=300e3):.0f}"
    '12000'
    """
    weight = np.asarray(weight)
    return np.asarray(weight * (1 + np.sqrt(1 + 2 * np.asarray(drop) * stiffness / weight)))


def landing_drop(force: Newton, weight: Newton, stiffness: NewtonPerMetre) -> Metre:
    """Drop from which a landing reaches a force; nought if a bare twice the weight does.

    References
    ----------
    energy: W (h + x) = k x^2 / 2
    """
    weight = np.asarray(weight)
    over = np.maximum(np.asarray(force) / weight - 1, 1.0)
    return np.asarray(weight / (2 * np.asarray(stiffness)) * (over**2 - 1))


def slide_force(lateral_speed: MetrePerSecond, stiffness: NewtonPerMetre, mass: Kilogram) -> Newton:
    """Peak side force of a wheel that slides square into a rut or kerb.

    References
    ----------
    energy: m v^2 = F^2 / k
    """
    return np.asarray(lateral_speed) * np.sqrt(np.asarray(stiffness) * mass)


def slide_speed(force: Newton, stiffness: NewtonPerMetre, mass: Kilogram) -> MetrePerSecond:
    """Sideways speed at which a slide reaches a force.

    References
    ----------
    energy: m v^2 = F^2 / k
    """
    return np.asarray(force) / np.sqrt(np.asarray(stiffness) * mass)
