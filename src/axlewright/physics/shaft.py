"""Round shafts in torsion: first yield, full plasticity, twist and what is left of it."""

import numpy as np

from axlewright.physics.quantities import Metre, Metre3, Metre4, NewtonMetre, Pascal, Radian, Ratio

_HALVINGS = 60  # bisection steps: past double precision


def polar_moment(diameter: Metre, bore: Metre = 0.0) -> Metre4:
    """Polar second moment of area of a round bar or tube.

    References
    ----------
    beer-mechanics, ch. 3
    """
    return np.asarray(np.pi / 32 * (np.asarray(diameter) ** 4 - np.asarray(bore) ** 4))


def torsion_modulus(diameter: Metre, bore: Metre = 0.0) -> Metre3:
    """Torque per unit of surface shear stress while elastic.

    References
    ----------
    beer-mechanics, ch. 3
    """
    return 2 * np.asarray(polar_moment(diameter, bore)) / diameter


def yield_torque(diameter: Metre, bore: Metre, shear_yield: Pascal) -> NewtonMetre:
    """Torque at which the surface of a round shaft starts to yield.

    References
    ----------
    beer-mechanics, ch. 3

    Examples
    --------
    >>> f"{yield_torque(0.050, 0.0, shear_yield=150e6):.0f}"
    '3682'
    """
    return np.asarray(torsion_modulus(diameter, bore)) * shear_yield


def plastic_torque(diameter: Metre, bore: Metre, shear_yield: Pascal) -> NewtonMetre:
    """Torque at which the whole section has yielded: 4/3 of first yield for a solid bar.

    Notes
    -----
    No hardening, so a real shaft goes on a little further before it parts.

    References
    ----------
    beer-mechanics, ch. 3
    """
    return np.asarray(
        np.pi / 12 * (np.asarray(diameter) ** 3 - np.asarray(bore) ** 3) * shear_yield
    )


def shear_stress(torque: NewtonMetre, diameter: Metre, bore: Metre = 0.0) -> Pascal:
    """Elastic shear stress at the surface.

    References
    ----------
    beer-mechanics, ch. 3
    """
    return torque / np.asarray(torsion_modulus(diameter, bore))


def part_plastic_torque(
    core: Metre, diameter: Metre, bore: Metre, shear_yield: Pascal
) -> NewtonMetre:
    """Torque when everything outside the elastic core has yielded.

    Parameters
    ----------
    core
        Diameter of the elastic core, from ``bore`` to ``diameter``.

    References
    ----------
    beer-mechanics, ch. 3
    """
    radius, outer, inner = np.asarray(core) / 2, np.asarray(diameter) / 2, np.asarray(bore) / 2
    with np.errstate(divide="ignore", invalid="ignore"):
        elastic = np.where(radius > 0, np.pi / 2 * (radius**3 - inner**4 / radius), 0.0)
    return (elastic + 2 * np.pi / 3 * (outer**3 - radius**3)) * shear_yield


def elastic_core(torque: NewtonMetre, diameter: Metre, bore: Metre, shear_yield: Pascal) -> Metre:
    """Diameter of the part of the section that is still elastic.

    Returns
    -------
    Metre
        ``diameter`` up to first yield, ``bore`` at the plastic torque, ``nan`` beyond it.

    Notes
    -----
    Found by bisection, which a monotonic curve cannot upset.

    References
    ----------
    beer-mechanics, ch. 3
    """
    torque, diameter, bore, shear_yield = np.broadcast_arrays(
        np.abs(torque), diameter, bore, shear_yield
    )
    low, high = np.asarray(bore, dtype=float), np.asarray(diameter, dtype=float)
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        stronger = np.asarray(part_plastic_torque(middle, diameter, bore, shear_yield)) > torque
        low, high = np.where(stronger, middle, low), np.where(stronger, high, middle)
    full = np.asarray(plastic_torque(diameter, bore, shear_yield))
    core = np.where(torque <= yield_torque(diameter, bore, shear_yield), diameter, (low + high) / 2)
    return np.where(torque <= full * (1 + 1e-12), core, np.nan)


def elastic_twist(
    torque: NewtonMetre, length: Metre, diameter: Metre, bore: Metre, shear_modulus: Pascal
) -> Radian:
    """Twist of a shaft that stays elastic; also how far it springs back when let go.

    References
    ----------
    beer-mechanics, ch. 3
    """
    return np.asarray(torque) * length / (np.asarray(polar_moment(diameter, bore)) * shear_modulus)


def twist(
    torque: NewtonMetre,
    length: Metre,
    diameter: Metre,
    bore: Metre,
    shear_yield: Pascal,
    shear_modulus: Pascal,
) -> Radian:
    """Twist under torque, elastic or partly plastic.

    Returns
    -------
    Radian
        Signed as ``torque``; ``nan`` beyond the plastic torque, ``inf`` at it for a solid bar.

    References
    ----------
    beer-mechanics, ch. 3
    """
    core = np.asarray(elastic_core(torque, diameter, bore, shear_yield))
    with np.errstate(divide="ignore"):
        yielded = 2 * np.asarray(shear_yield) * length / (shear_modulus * core)
    elastic = np.asarray(elastic_twist(torque, length, diameter, bore, shear_modulus))
    return np.where(core >= diameter, elastic, np.sign(torque) * yielded)


def residual_twist(
    torque: NewtonMetre,
    length: Metre,
    diameter: Metre,
    bore: Metre,
    shear_yield: Pascal,
    shear_modulus: Pascal,
) -> Radian:
    """Twist that stays in a shaft after the torque has gone.

    References
    ----------
    beer-mechanics, ch. 3
    """
    loaded = np.asarray(twist(torque, length, diameter, bore, shear_yield, shear_modulus))
    return loaded - elastic_twist(torque, length, diameter, bore, shear_modulus)


def residual_shear(
    radius: Metre, torque: NewtonMetre, diameter: Metre, bore: Metre, shear_yield: Pascal
) -> Pascal:
    """Shear stress locked in at a radius after the torque has gone.

    References
    ----------
    beer-mechanics, ch. 3
    """
    core = np.asarray(elastic_core(torque, diameter, bore, shear_yield))
    with np.errstate(divide="ignore", invalid="ignore"):
        loaded = np.minimum(2 * np.asarray(radius) / core, 1.0) * shear_yield * np.sign(torque)
    back = np.asarray(torque) * radius / polar_moment(diameter, bore)
    kept = np.asarray(loaded) - back
    return np.where(core >= diameter, kept * 0.0, kept)


def fixed_end_share(near: Metre, far: Metre) -> Ratio:
    """Share of a torque that goes to the near end of a uniform bar held at both ends.

    References
    ----------
    beer-mechanics, ch. 3
    """
    return np.asarray(far) / (np.asarray(near) + far)


def bending_stress(moment: NewtonMetre, diameter: Metre, bore: Metre = 0.0) -> Pascal:
    """Elastic bending stress at the surface of a round shaft.

    References
    ----------
    beer-mechanics, ch. 4
    """
    return 2 * np.asarray(moment) / torsion_modulus(diameter, bore)


def von_mises(direct: Pascal, shear: Pascal) -> Pascal:
    """Equivalent stress of a direct and a shear stress at one point.

    References
    ----------
    budynas9, ch. 5
    """
    return np.asarray(np.sqrt(np.square(direct) + 3 * np.square(shear)))


def tresca(direct: Pascal, shear: Pascal) -> Pascal:
    """Twice the largest shear stress of a direct and a shear stress at one point.

    References
    ----------
    budynas9, ch. 5
    """
    return np.asarray(np.sqrt(np.square(direct) + 4 * np.square(shear)))
