"""What a stop asks of the brakes, and how other wheels change it."""

import numpy as np

from axlewright.physics.quantities import (
    Joule,
    Kilogram,
    KilogramMetre2,
    Metre,
    MetrePerSecond,
    MetrePerSecond2,
    NewtonMetre,
    Ratio,
)

_HOOP, _RIM = 0.9, 0.8  # where a tyre's mass and a wheel's sit, of their own radius; memory


def brake_torque(
    mass: Kilogram, deceleration: MetrePerSecond2, radius: Metre, share: Ratio = 1.0
) -> NewtonMetre:
    """Torque that the brakes must give, all of them or those with a share.

    References
    ----------
    statics: force at the ground times the loaded radius
    """
    return np.asarray(mass) * deceleration * radius * share


def torque_asked(fitted: Metre, original: Metre) -> Ratio:
    """Brake torque for the same stop on other tyres, over that on the old ones.

    References
    ----------
    statics: the ground's force is the same, its lever is the radius
    """
    return np.asarray(fitted) / original


def stop_heat(
    mass: Kilogram, speed: MetrePerSecond, inertia: KilogramMetre2 = 0.0, radius: Metre = 1.0
) -> Joule:
    """Heat of a stop from a true road speed: the vehicle's and that of its turning wheels.

    Parameters
    ----------
    inertia
        Of all wheels together.

    References
    ----------
    energy
    """
    turning = np.asarray(inertia) / np.square(radius)
    return np.asarray(0.5 * (np.asarray(mass) + turning) * np.square(speed))


def wheel_inertia(
    tyre_mass: Kilogram, wheel_mass: Kilogram, radius: Metre, rim_radius: Metre
) -> KilogramMetre2:
    """Inertia of one tyre on its wheel about the axle.

    References
    ----------
    derived: the tyre as a hoop at 0.9 of its radius, the wheel at 0.8 of the rim's (memory)
    """
    return np.asarray(
        np.asarray(tyre_mass) * np.square(_HOOP * np.asarray(radius))
        + np.asarray(wheel_mass) * np.square(_RIM * np.asarray(rim_radius))
    )
