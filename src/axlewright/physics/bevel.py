"""Bevel gears: pitch cones, mesh forces, blank geometry and ring size.

``pressure`` is the normal pressure angle, ``spiral`` the mean spiral angle. The rating factors
are in ``bevel_rating``.
"""

from dataclasses import dataclass
from typing import NamedTuple

import numpy as np

from axlewright.physics.quantities import Metre, Newton, NewtonMetre, Num, Radian, Ratio

RING_SIZE = (0.0130, 0.0153)  # m per cube root of N.m: usual span of a truck design rule (memory)


class MeshForces(NamedTuple):
    """Forces on one member at the mean point of its face, N.

    Axial is positive away from the cone's apex, radial is positive away from the mate.
    """

    tangential: Newton
    axial: Newton
    radial: Newton


@dataclass(frozen=True, slots=True)
class Member:
    """Blank of one member: depths at mid-face in m, angles in rad."""

    mean_diameter: Metre
    addendum: Metre
    dedendum: Metre
    pitch_angle: Radian
    face_angle: Radian
    root_angle: Radian
    addendum_angle: Radian
    dedendum_angle: Radian


@dataclass(frozen=True, slots=True)
class Blank:
    """Blank of a pair by ISO 23509 Method 0, lengths in m."""

    outer_cone: Metre
    mean_cone: Metre
    mean_transverse_module: Metre
    mean_normal_module: Metre
    whole_depth: Metre
    clearance: Metre
    pinion: Member
    gear: Member


def pitch_angle(teeth: Ratio, mate_teeth: Ratio, shaft_angle: Radian = np.pi / 2) -> Radian:
    """Pitch cone angle of the member with ``teeth``.

    References
    ----------
    budynas9, ch. 13
    """
    ratio = np.asarray(mate_teeth) / teeth
    return np.arctan2(np.sin(shaft_angle), ratio + np.cos(shaft_angle))


def outer_cone_distance(outer_diameter: Metre, pitch: Radian) -> Metre:
    """Length of the pitch cone from apex to heel.

    References
    ----------
    iso23509
    """
    return np.asarray(np.asarray(outer_diameter) / (2 * np.sin(pitch)))


def tangential_force(torque: NewtonMetre, mean_diameter: Metre) -> Newton:
    """Tangential force at mid-face.

    References
    ----------
    budynas9, ch. 13
    """
    return 2 * np.asarray(torque) / mean_diameter


def separating_force(tangential: Newton, pressure: Radian) -> Newton:
    """Force that pushes two straight bevel gears apart, square to the pitch cone.

    References
    ----------
    budynas9, ch. 13
    """
    return np.asarray(tangential) * np.tan(pressure)


def straight_forces(tangential: Newton, pressure: Radian, pitch: Radian) -> MeshForces:
    """Mesh forces on a straight bevel gear whose pitch cone angle is ``pitch``.

    References
    ----------
    budynas9, ch. 13
    """
    apart = np.asarray(separating_force(tangential, pressure))
    return MeshForces(tangential, apart * np.sin(pitch), apart * np.cos(pitch))


def spiral_forces(
    tangential: Newton, pressure: Radian, spiral: Radian, pitch: Radian, driving: Ratio = 1.0
) -> MeshForces:
    """Mesh forces on a spiral bevel pinion; for the gear swap axial and radial.

    Parameters
    ----------
    driving
        +1 for the pinion driving on its concave side (the usual drive side), -1 for the other
        flank: coast, or a front axle that was cut for a rear one.

    References
    ----------
    budynas9, ch. 13 (memory)
    """
    lean = np.asarray(driving) * np.sin(spiral)
    push, cone, across = np.tan(pressure), np.sin(pitch), np.cos(pitch)
    share = np.asarray(tangential) / np.cos(spiral)
    return MeshForces(
        tangential, share * (push * cone + lean * across), share * (push * across - lean * cone)
    )


def hypoid_pinion_force(tangential: Newton, pinion_spiral: Radian, gear_spiral: Radian) -> Newton:
    """Tangential force on a hypoid pinion from the one on its ring gear.

    References
    ----------
    iso10300 (memory)
    """
    return np.asarray(tangential) * np.cos(pinion_spiral) / np.cos(gear_spiral)


def ring_diameter(torque: NewtonMetre, size: Num) -> Metre:
    """Ring gear diameter that a torque usually asks for.

    Parameters
    ----------
    size
        Metres per cube root of a newton metre, 0.0130 to 0.0153 in use.

    References
    ----------
    truck axle design rule (memory): D2 = K * T**(1/3)
    """
    return np.asarray(size) * np.cbrt(torque)


def torque_capacity_by_ring(diameter: Metre, size: Num) -> NewtonMetre:
    """Ring gear torque that goes with a ring diameter: a habit of design, not a breaking load.

    References
    ----------
    truck axle design rule (memory), turned round
    """
    return (np.asarray(diameter) / size) ** 3


def straight_face_angle(pitch: Radian, addendum: Metre, outer_cone: Metre) -> Radian:
    """Face cone angle of a straight bevel gear with tapering teeth.

    References
    ----------
    jindal-design, ch. 27
    """
    return np.asarray(pitch) + np.arctan(np.asarray(addendum) / outer_cone)


def straight_root_angle(pitch: Radian, dedendum: Metre, outer_cone: Metre) -> Radian:
    """Root cone angle of a straight bevel gear with tapering teeth.

    References
    ----------
    jindal-design, ch. 27
    """
    return np.asarray(pitch) - np.arctan(np.asarray(dedendum) / outer_cone)


def spiral_blank(
    pinion_teeth: Ratio,
    gear_teeth: Ratio,
    gear_diameter: Metre,
    face: Metre,
    spiral: Radian,
    pressure: Radian,
    cutter_radius: Metre,
    shift: Ratio,
    shaft_angle: Radian = np.pi / 2,
    clearance: Ratio = 0.125,
) -> Blank:
    """Blank of a face-milled spiral bevel pair with duplex taper, no offset.

    Parameters
    ----------
    gear_diameter
        Outer pitch diameter of the gear.
    shift
        Profile shift coefficient of the pinion at mid-face.
    clearance
        Over the working depth, which is two mean normal modules.

    References
    ----------
    iso23509, Method 0
    """
    gear_cone = np.asarray(pitch_angle(gear_teeth, pinion_teeth, shaft_angle))
    pinion_cone = np.asarray(shaft_angle) - gear_cone
    outer = np.asarray(outer_cone_distance(gear_diameter, gear_cone))
    mean = outer - np.asarray(face) / 2
    transverse = 2 * mean * np.sin(gear_cone) / gear_teeth
    normal = transverse * np.cos(spiral)
    working = 2 * normal
    gap = np.asarray(clearance) * working
    pinion_addendum, gear_addendum = (
        normal * (1 + np.asarray(shift)),
        normal * (1 - np.asarray(shift)),
    )
    whole = working + gap
    outer_module = np.asarray(gear_diameter) / gear_teeth
    taper = (
        (np.pi / 2)
        * outer_module
        / (outer * np.tan(pressure) * np.cos(spiral))
        * (1 - mean * np.sin(spiral) / cutter_radius)
    )
    gear_addendum_angle = taper * gear_addendum / working
    gear_dedendum_angle = taper - gear_addendum_angle

    def member(cone: Radian, teeth: Ratio, addendum: Metre, above: Radian, below: Radian) -> Member:
        return Member(
            mean_diameter=transverse * teeth,
            addendum=addendum,
            dedendum=whole - addendum,
            pitch_angle=cone,
            face_angle=np.asarray(cone) + above,
            root_angle=np.asarray(cone) - below,
            addendum_angle=above,
            dedendum_angle=below,
        )

    return Blank(
        outer_cone=outer,
        mean_cone=mean,
        mean_transverse_module=transverse,
        mean_normal_module=normal,
        whole_depth=whole,
        clearance=gap,
        pinion=member(
            pinion_cone, pinion_teeth, pinion_addendum, gear_dedendum_angle, gear_addendum_angle
        ),
        gear=member(gear_cone, gear_teeth, gear_addendum, gear_addendum_angle, gear_dedendum_angle),
    )
