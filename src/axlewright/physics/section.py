"""Round sections: areas, moments, moduli, plastic strength, and what reinforcement adds.

Arguments broadcast. ``outer`` and ``inner`` are diameters; a solid bar has an inner one of zero.
"""

from dataclasses import dataclass

import numpy as np

from axlewright.physics.quantities import (
    Metre,
    Metre2,
    Metre3,
    Metre4,
    Newton,
    NewtonMetre,
    Pascal,
    Ratio,
)


def area(outer: Metre, inner: Metre = 0.0) -> Metre2:
    """Area of a round section.

    References
    ----------
    geometry
    """
    return np.asarray(np.pi / 4.0 * (np.asarray(outer) ** 2 - np.asarray(inner) ** 2))


def second_moment(outer: Metre, inner: Metre = 0.0) -> Metre4:
    """Second moment of area about a diameter.

    References
    ----------
    budynas9, table A-18
    """
    return np.asarray(np.pi / 64.0 * (np.asarray(outer) ** 4 - np.asarray(inner) ** 4))


def polar_moment(outer: Metre, inner: Metre = 0.0) -> Metre4:
    """Polar second moment of area.

    References
    ----------
    budynas9, table A-18
    """
    return np.asarray(2.0 * second_moment(outer, inner))


def elastic_modulus(outer: Metre, inner: Metre = 0.0) -> Metre3:
    """Elastic section modulus.

    References
    ----------
    budynas9, table A-18

    Examples
    --------
    >>> f"{elastic_modulus(0.0762, 0.0635) * 1e9:.1f}"
    '22489.6'
    """
    return np.asarray(2.0 * second_moment(outer, inner) / np.asarray(outer))


def plastic_modulus(outer: Metre, inner: Metre = 0.0) -> Metre3:
    """Plastic section modulus.

    References
    ----------
    geometry: first moment of both halves about the diameter
    """
    return np.asarray((np.asarray(outer) ** 3 - np.asarray(inner) ** 3) / 6.0)


def trussed_plastic_modulus(
    outer: Metre,
    inner: Metre,
    truss_outer: Metre,
    truss_inner: Metre,
    truss_height: Metre,
    truss_bond: Ratio,
) -> Metre3:
    """Plastic modulus against vertical bending of a tube under a truss tube, one material.

    Notes
    -----
    The truss tube yields along its length, as far as the bond passes it force; the axle tube
    gives the opposite force and bends with what that leaves, cos(pi n / 2) of a thin tube.

    References
    ----------
    statics: lower bound, with the closed form of a thin tube under moment and direct force
    """
    tube = area(outer, inner)
    pull = np.minimum(np.asarray(truss_bond) * area(truss_outer, truss_inner), tube)
    left = np.cos(0.5 * np.pi * pull / tube)
    return np.asarray(plastic_modulus(outer, inner) * left + pull * truss_height)


def torsion_modulus(outer: Metre, inner: Metre = 0.0) -> Metre3:
    """Torsional section modulus.

    References
    ----------
    budynas9, ch. 3
    """
    return np.asarray(2.0 * polar_moment(outer, inner) / np.asarray(outer))


def shape_factor(outer: Metre, inner: Metre = 0.0) -> Ratio:
    """Plastic over elastic modulus: how far past first yield a section carries.

    Examples
    --------
    >>> f"{shape_factor(0.0762, 0.0635):.4f}"
    '1.3814'
    """
    return np.asarray(plastic_modulus(outer, inner) / elastic_modulus(outer, inner))


def yield_torque(outer: Metre, inner: Metre, shear_yield: Pascal) -> NewtonMetre:
    """Torque at which the surface first yields.

    References
    ----------
    budynas9, ch. 3
    """
    return np.asarray(torsion_modulus(outer, inner) * shear_yield)


def plastic_torque(outer: Metre, inner: Metre, shear_yield: Pascal) -> NewtonMetre:
    """Torque at which the whole section yields.

    References
    ----------
    beer-mechanics, ch. 3
    """
    return np.asarray(
        np.pi / 12.0 * (np.asarray(outer) ** 3 - np.asarray(inner) ** 3) * shear_yield
    )


def bending_stress(moment: NewtonMetre, outer: Metre, inner: Metre = 0.0) -> Pascal:
    """Stress of the outer fibre in elastic bending.

    References
    ----------
    budynas9, ch. 3
    """
    return np.asarray(np.asarray(moment) / elastic_modulus(outer, inner))


def axial_stress(force: Newton, outer: Metre, inner: Metre = 0.0) -> Pascal:
    """Mean stress of a pull.

    References
    ----------
    budynas9, ch. 3
    """
    return np.asarray(np.asarray(force) / area(outer, inner))


def shear_stress(torque: NewtonMetre, outer: Metre, inner: Metre = 0.0) -> Pascal:
    """Shear stress of the surface in elastic torsion.

    References
    ----------
    budynas9, ch. 3
    """
    return np.asarray(np.asarray(torque) / torsion_modulus(outer, inner))


def von_mises(direct: Pascal, shear: Pascal) -> Pascal:
    """Equivalent stress of one direct and one shear stress.

    References
    ----------
    budynas9, ch. 5
    """
    return np.asarray(np.sqrt(np.asarray(direct) ** 2 + 3.0 * np.asarray(shear) ** 2))


def inner_at_area(outer: Metre, area: Metre2) -> Metre:
    """Inside diameter of a tube of given outside diameter and area; NaN where it is too small.

    References
    ----------
    geometry
    """
    left = np.asarray(outer) ** 2 - 4.0 * np.asarray(area) / np.pi
    return np.asarray(np.sqrt(np.where(left >= 0.0, left, np.nan)))


@dataclass(frozen=True, slots=True)
class Composite:
    """An axle tube with its sleeve and a second tube above it; bending up and fore-aft.

    ``centroid`` is the height of the neutral line above the middle of the tube. The moduli give
    the stress at the lowest fibre of the tube, the highest of the second tube, and the widest.
    """

    area: Metre2
    centroid: Metre
    vertical: Metre4
    fore_aft: Metre4
    lower_modulus: Metre3
    upper_modulus: Metre3
    fore_modulus: Metre3


def composite(
    outer: Metre,
    inner: Metre,
    sleeve_outer: Metre,
    sleeve_bond: Ratio,
    truss_outer: Metre,
    truss_inner: Metre,
    truss_height: Metre,
    truss_bond: Ratio,
) -> Composite:
    """Second moments and moduli of a tube, a close sleeve over it, and a truss tube above.

    Parameters
    ----------
    sleeve_outer
        Equal to ``outer`` where there is no sleeve.
    sleeve_bond, truss_bond
        Share of full shear connection, 0 to 1. A loose sleeve (0) is not counted; a loose truss
        tube bends along with the axle tube but passes it no direct force.
    truss_outer, truss_inner, truss_height
        The second tube and its height, middle to middle; equal diameters where there is none.

    Notes
    -----
    All of one material. With part of the connection, the pair of direct forces that full
    connection would give is reduced in proportion.

    References
    ----------
    parallel-axis theorem; a share of connection is ours
    """
    sleeve = np.asarray(sleeve_bond) * second_moment(sleeve_outer, outer)
    tube_area = area(outer, inner) + np.asarray(sleeve_bond) * area(sleeve_outer, outer)
    chord_area = area(truss_outer, truss_inner)
    total = tube_area + chord_area
    alone = second_moment(outer, inner) + sleeve + second_moment(truss_outer, truss_inner)
    bond, height = np.asarray(truss_bond), np.asarray(truss_height)
    shift = bond * height * chord_area / total
    vertical = alone + bond * height**2 * tube_area * chord_area / total
    counted = np.where(np.asarray(sleeve_bond) > 0.0, sleeve_outer, outer)
    below = 0.5 * counted
    above = 0.5 * np.asarray(truss_outer) + bond * height - shift
    return Composite(
        area=np.asarray(total),
        centroid=np.asarray(shift),
        vertical=np.asarray(vertical),
        fore_aft=np.asarray(alone),
        lower_modulus=np.asarray(vertical / (below + shift)),
        upper_modulus=np.asarray(vertical / np.where(chord_area > 0.0, above, below)),
        fore_modulus=np.asarray(alone / (0.5 * np.maximum(counted, truss_outer))),
    )
