"""Bolts: stress area, torque and preload, slip, and groups of bolts."""

import numpy as np
from numpy.typing import NDArray

from axlewright.physics.quantities import (
    Metre,
    Metre2,
    Newton,
    NewtonMetre,
    NewtonPerMetre,
    Num,
    Pascal,
    Radian,
    Ratio,
)


def flank_diameter(diameter: Metre, pitch: Metre) -> Metre:
    """Pitch diameter d2 of a 60 degree thread.

    References
    ----------
    iso724
    """
    return np.asarray(diameter) - 0.649519 * np.asarray(pitch)


def core_diameter(diameter: Metre, pitch: Metre) -> Metre:
    """Root diameter d3 of a 60 degree thread.

    References
    ----------
    iso724
    """
    return np.asarray(diameter) - 1.226869 * np.asarray(pitch)


def stress_area(diameter: Metre, pitch: Metre) -> Metre2:
    """Tensile stress area of a metric thread.

    References
    ----------
    iso898-1

    Examples
    --------
    >>> f"{stress_area(12e-3, 1.75e-3) * 1e6:.1f}"
    '84.3'
    """
    return np.pi / 4 * (np.asarray(diameter) - 0.9382 * np.asarray(pitch)) ** 2


def unified_stress_area(diameter: Metre, pitch: Metre) -> Metre2:
    """Tensile stress area of a unified thread; ``pitch`` is one over the threads a length.

    References
    ----------
    sae-j429; asme-b1.1
    """
    return 0.7854 * (np.asarray(diameter) - 0.9743 * np.asarray(pitch)) ** 2


def proof_load(stress_area: Metre2, proof_stress: Pascal) -> Newton:
    """Load a bolt must bear without taking a set; with tensile strength, the load that parts it.

    References
    ----------
    iso898-1
    """
    return np.asarray(stress_area) * proof_stress


def preload_from_torque(torque: NewtonMetre, diameter: Metre, nut_factor: Ratio) -> Newton:
    """Preload from a tightening torque by T = K F d.

    References
    ----------
    budynas9, ch. 8
    """
    return np.asarray(torque) / (np.asarray(nut_factor) * diameter)


def torque_from_preload(preload: Newton, diameter: Metre, nut_factor: Ratio) -> NewtonMetre:
    """Tightening torque for a preload by T = K F d.

    References
    ----------
    budynas9, ch. 8
    """
    return np.asarray(nut_factor) * preload * diameter


def torque_by_friction(
    preload: Newton,
    diameter: Metre,
    pitch: Metre,
    bearing_diameter: Metre,
    thread_friction: Ratio,
    head_friction: Ratio,
) -> NewtonMetre:
    """Tightening torque out of thread, thread friction and head friction.

    Parameters
    ----------
    bearing_diameter
        Mean diameter under the head: half of washer face plus hole.

    References
    ----------
    vdi2230
    """
    thread = 0.16 * np.asarray(pitch) + 0.58 * np.asarray(thread_friction) * flank_diameter(
        diameter, pitch
    )
    return np.asarray(preload) * (thread + np.asarray(bearing_diameter) / 2 * head_friction)


def nut_factor(
    diameter: Metre,
    pitch: Metre,
    bearing_diameter: Metre,
    thread_friction: Ratio,
    head_friction: Ratio,
) -> Ratio:
    """K of T = K F d that goes with the frictions.

    References
    ----------
    vdi2230
    """
    torque = torque_by_friction(
        1.0, diameter, pitch, bearing_diameter, thread_friction, head_friction
    )
    return np.asarray(torque) / diameter


def tightening_preload(
    diameter: Metre,
    pitch: Metre,
    yield_stress: Pascal,
    thread_friction: Ratio,
    used: Ratio = 0.9,
) -> Newton:
    """Preload when pull and twist together use up a share of the bolt's yield.

    References
    ----------
    vdi2230
    """
    flank = np.asarray(flank_diameter(diameter, pitch))
    stress_diameter = (flank + core_diameter(diameter, pitch)) / 2
    slope = np.asarray(pitch) / (np.pi * flank) + 1.155 * np.asarray(thread_friction)
    twist = 1.5 * flank / stress_diameter * slope
    pull = np.asarray(used) * yield_stress * np.pi / 4 * stress_diameter**2
    return pull / np.sqrt(1 + 3 * twist**2)


def screw_torque(
    preload: Newton,
    mean_diameter: Metre,
    lead: Metre,
    collar_diameter: Metre,
    thread_friction: Ratio,
    collar_friction: Ratio,
    half_angle: Radian = np.pi / 6,
) -> NewtonMetre:
    """Tightening torque by the mechanics of a screw, nothing rounded.

    References
    ----------
    budynas9, ch. 8
    """
    rise = np.asarray(lead) / (np.pi * np.asarray(mean_diameter))
    rub = np.asarray(thread_friction) / np.cos(half_angle)
    thread = np.asarray(mean_diameter) / 2 * (rise + rub) / (1 - rise * rub)
    return np.asarray(preload) * (thread + np.asarray(collar_friction) * collar_diameter / 2)


def member_stiffness(diameter: Metre, grip: Metre, modulus: Pascal) -> NewtonPerMetre:
    """Stiffness of one material clamped by a bolt, by two 30 degree cones.

    References
    ----------
    budynas9, eq. 8-22
    """
    grip, diameter = np.asarray(grip), np.asarray(diameter)
    cone = np.log(5 * (0.5774 * grip + 0.5 * diameter) / (0.5774 * grip + 2.5 * diameter))
    return np.asarray(0.5774 * np.pi * np.asarray(modulus) * diameter / (2 * cone))


def bolt_share(bolt: NewtonPerMetre, members: NewtonPerMetre) -> Ratio:
    """Share of an outside pull that the bolt feels, while the joint stays closed.

    References
    ----------
    budynas9, ch. 8
    """
    return np.asarray(bolt) / (np.asarray(bolt) + members)


def bolt_load(preload: Newton, pull: Newton, share: Ratio) -> Newton:
    """Load in the bolt under an outside pull; the whole pull once the joint has opened.

    References
    ----------
    budynas9, ch. 8
    """
    return np.maximum(np.asarray(preload) + np.asarray(share) * pull, pull)


def opening_pull(preload: Newton, share: Ratio) -> Newton:
    """Outside pull at which the joint opens.

    References
    ----------
    budynas9, ch. 8
    """
    return np.asarray(np.asarray(preload) / (1 - np.asarray(share)))


def slip_resistance(preload: Newton, friction: Ratio, faces: Ratio = 1.0) -> Newton:
    """Side force that a clamped joint holds by friction.

    References
    ----------
    coulomb friction
    """
    return np.asarray(preload) * friction * faces


def design_slip_resistance(
    stress_area: Metre2,
    ultimate: Pascal,
    friction: Ratio,
    faces: Ratio = 1.0,
    partial_factor: Num = 1.25,
) -> Newton:
    """Design slip resistance of a preloaded structural bolt in a normal hole.

    References
    ----------
    en1993-1-8, 3.9 (memory)
    """
    preload = 0.7 * np.asarray(ultimate) * stress_area
    return np.asarray(slip_resistance(preload, friction, faces)) / partial_factor


def ring_friction_torque(
    preload: Newton, bolts: Ratio, friction: Ratio, circle: Metre
) -> NewtonMetre:
    """Torque that a ring of bolts passes by friction before it slips.

    Parameters
    ----------
    circle
        Diameter of the bolt circle.

    References
    ----------
    coulomb friction
    """
    return np.asarray(np.asarray(preload) * bolts * friction * np.asarray(circle) / 2)


def group_loads(
    points: NDArray[np.float64], force: NDArray[np.float64], at: NDArray[np.float64]
) -> Newton:
    """Side force on each bolt of a group, x and y on the last axis, bolts on the one before.

    Parameters
    ----------
    points
        Shape (..., n, 2).
    force, at
        Force in the plane of the bolts and where it acts, x and y on the last axis.

    References
    ----------
    budynas9, ch. 8: equal bolts, rigid plates
    """
    points, force, at = np.asarray(points), np.asarray(force), np.asarray(at)
    centre = points.mean(axis=-2)
    away, arm = points - centre[..., np.newaxis, :], at - centre
    moment = arm[..., 0] * force[..., 1] - arm[..., 1] * force[..., 0]
    spin = (moment / np.square(away).sum(axis=(-1, -2)))[..., np.newaxis]
    share = force / points.shape[-2]
    return np.stack(
        [
            share[..., np.newaxis, 0] - spin * away[..., 1],
            share[..., np.newaxis, 1] + spin * away[..., 0],
        ],
        axis=-1,
    )


def shear_stress(force: Newton, area: Metre2, planes: Ratio = 1.0) -> Pascal:
    """Mean shear stress of a bolt that has gone into shear.

    References
    ----------
    budynas9, ch. 8
    """
    return np.asarray(force) / (np.asarray(area) * planes)


def hole_pressure(force: Newton, diameter: Metre, thickness: Metre) -> Pascal:
    """Mean pressure of a bolt on the side of its hole.

    References
    ----------
    budynas9, ch. 8
    """
    return np.asarray(force) / (np.asarray(diameter) * thickness)
