"""Bevel gear tooth strength: bending and contact stress, and what the teeth allow.

The standard prints its size and speed factors for inches and feet a minute; the constants here
are the same ones written for metres and metres a second.
"""

import numpy as np

from axlewright.physics.quantities import Cycles, Metre, MetrePerSecond, Newton, Pascal, Ratio

_SPEED = 196.8504  # printed feet a minute in one metre a second
_MODULE = 8.393701  # per m; printed 0.2132 for inches
_WIDTH = 5.580011  # per m2; printed 0.0036 for square inches
_FACE = 4.921260  # per m; printed 0.125 for inches
_BENDING = (303.3693e3, 14.47899e6)  # Pa a Brinell number, Pa; printed 44 and 2100 psi
_CONTACT = (2.351112e6, 162.8542e6)  # Pa a Brinell number, Pa; printed 341 and 23 620 psi
BOTH_STRADDLED, ONE_STRADDLED, NONE_STRADDLED = 1.00, 1.10, 1.25  # mounting factors
CROWNED, UNCROWNED = 1.5, 2.0  # crowning factors for contact


def dynamic_factor(speed: MetrePerSecond, quality: Ratio) -> Ratio:
    """Extra load from tooth errors at a pitch-line speed; quality number 5 to 11.

    References
    ----------
    agma2003-b97, as in budynas9 eq. 15-5
    """
    bend = 0.25 * (12 - np.asarray(quality)) ** (2 / 3)
    level = 50 + 56 * (1 - bend)
    return ((level + np.sqrt(_SPEED * np.asarray(speed))) / level) ** bend


def fastest_speed(quality: Ratio) -> MetrePerSecond:
    """Pitch-line speed up to which the dynamic factor may be used.

    References
    ----------
    agma2003-b97, as in budynas9 eq. 15-8
    """
    bend = 0.25 * (12 - np.asarray(quality)) ** (2 / 3)
    return np.asarray((50 + 56 * (1 - bend) + np.asarray(quality) - 3) ** 2 / _SPEED)


def bending_size_factor(module: Metre) -> Ratio:
    """Size factor for bending, outer transverse module of 1.6 to 50 mm.

    References
    ----------
    agma2003-b97, as in budynas9 eq. 15-10
    """
    return 0.4867 + _MODULE * np.asarray(module)


def contact_size_factor(face: Metre) -> Ratio:
    """Size factor for contact, face width of 13 to 114 mm.

    References
    ----------
    agma2003-b97, as in budynas9 eq. 15-9
    """
    return np.clip(_FACE * np.asarray(face) + 0.4375, 0.5, 1.0)


def load_distribution(face: Metre, mounting: Ratio) -> Ratio:
    """Load concentration along the tooth; ``mounting`` is one of the three named above.

    References
    ----------
    agma2003-b97, as in budynas9 eq. 15-11
    """
    return np.asarray(mounting) + _WIDTH * np.square(face)


def bending_cycle_factor(cycles: Cycles) -> Ratio:
    """Stress cycle factor for bending of carburised teeth, critical service beyond 3e6.

    References
    ----------
    agma2003-b97, as in budynas9 eq. 15-15
    """
    count = np.maximum(cycles, 1.0)
    short = np.where(count < 1e3, 2.7, 6.1514 * count**-0.1182)
    return np.where(count < 3e6, short, 1.683 * count**-0.0323)


def contact_cycle_factor(cycles: Cycles) -> Ratio:
    """Stress cycle factor for pitting: 2.0 up to ten thousand cycles, then falling.

    References
    ----------
    agma2003-b97, as in budynas9 eq. 15-14
    """
    count = np.maximum(cycles, 1.0)
    return np.where(count < 1e4, 2.0, 3.4822 * count**-0.0602)


def bending_reliability(reliability: Ratio) -> Ratio:
    """Reliability factor for bending, 0.9 up to 0.9999.

    References
    ----------
    agma2003-b97, as in budynas9 eq. 15-19 and 15-20
    """
    short = np.log10(1 - np.asarray(reliability))
    return np.asarray(
        np.where(np.asarray(reliability) < 0.99, 0.70 - 0.15 * short, 0.50 - 0.25 * short)
    )


def contact_reliability(reliability: Ratio) -> Ratio:
    """Reliability factor for pitting: square root of the one for bending.

    References
    ----------
    agma2003-b97, as in budynas9 table 15-3
    """
    return np.sqrt(bending_reliability(reliability))


def bending_allowable(hardness: Ratio) -> Pascal:
    """Allowable bending stress number of through-hardened steel, grade 1, by Brinell number.

    References
    ----------
    agma2003-b97, as in budynas9 eq. 15-23
    """
    return _BENDING[0] * np.asarray(hardness) + _BENDING[1]


def contact_allowable(hardness: Ratio) -> Pascal:
    """Allowable contact stress number of through-hardened steel, grade 1, by Brinell number.

    References
    ----------
    agma2003-b97, as in budynas9 eq. 15-21
    """
    return _CONTACT[0] * np.asarray(hardness) + _CONTACT[1]


def contact_stiffness(modulus: Pascal, poisson: Ratio = 0.3) -> Pascal:
    """Square of the elastic coefficient of two gears of one material.

    References
    ----------
    budynas9, eq. 14-13
    """
    return np.asarray(modulus) / (2 * np.pi * (1 - np.square(poisson)))


def bending_stress(
    tangential: Newton,
    face: Metre,
    module: Metre,
    geometry: Ratio,
    overload: Ratio = 1.0,
    dynamic: Ratio = 1.0,
    size: Ratio = 1.0,
    distribution: Ratio = 1.0,
    curvature: Ratio = 1.0,
) -> Pascal:
    """Bending stress at the tooth root.

    Parameters
    ----------
    module
        Outer transverse module: inverse of the diametral pitch.
    geometry
        Bending geometry factor J, read from a chart or typed in.
    curvature
        Lengthwise curvature factor, 1 for straight teeth.

    References
    ----------
    agma2003-b97, as in budynas9 eq. 15-3
    """
    load = np.asarray(tangential) * overload * dynamic * size * distribution
    return load / (np.asarray(face) * module * curvature * geometry)


def contact_stress(
    tangential: Newton,
    face: Metre,
    pinion_diameter: Metre,
    geometry: Ratio,
    stiffness: Pascal,
    overload: Ratio = 1.0,
    dynamic: Ratio = 1.0,
    size: Ratio = 1.0,
    distribution: Ratio = 1.0,
    crowning: Ratio = CROWNED,
) -> Pascal:
    """Contact stress on the flanks.

    Parameters
    ----------
    geometry
        Pitting geometry factor I, read from a chart or typed in.
    stiffness
        From ``contact_stiffness``.

    References
    ----------
    agma2003-b97, as in budynas9 eq. 15-1
    """
    load = np.asarray(tangential) * overload * dynamic * size * distribution * crowning
    return np.sqrt(stiffness * load / (np.asarray(face) * pinion_diameter * geometry))


def bending_force(stress: Pascal, face: Metre, module: Metre, geometry: Ratio) -> Newton:
    """Tangential force that reaches a bending stress when every load factor is one.

    References
    ----------
    agma2003-b97, as in budynas9 eq. 15-3, turned round
    """
    return np.asarray(stress) * face * module * geometry


def contact_force(
    stress: Pascal, face: Metre, pinion_diameter: Metre, geometry: Ratio, stiffness: Pascal
) -> Newton:
    """Tangential force that reaches a contact stress when every load factor is one.

    References
    ----------
    agma2003-b97, as in budynas9 eq. 15-1, turned round
    """
    return np.square(stress) * face * pinion_diameter * geometry / stiffness
