"""Involute splines, 30 degree side fit: where they are thin and how hard they press.

``pitch`` is the diametral pitch in SI: teeth per metre of pitch diameter, the inverse of the
module. A trade "24/48" spline has 24 teeth per inch, so 945 teeth per metre.
The shaft under the tooth root, not the teeth, usually sets the torque.
"""

import numpy as np

from axlewright.physics.quantities import Cycles, Metre, NewtonMetre, Pascal, PerMetre, Ratio

FINE = 551.0  # teeth per metre (14 per inch): between the coarse and fine root rules
_MISALIGNMENT = np.array([0.001, 0.002, 0.004, 0.008])  # dudley, slope of the axes
_FACE = 0.0127 * np.array([1.0, 2.0, 4.0, 8.0])  # dudley, spline length, m
_SHARING = np.array(
    [[1, 1, 1, 1.5], [1, 1, 1.5, 2], [1, 1.5, 2, 2.5], [1.5, 2, 2.5, 3]]
)  # dudley, load distribution factor
_LIFE_DECADES = np.array([3.0, 4.0, 5.0, 6.0, 7.0])
_ONE_WAY = np.array([1.8, 1.0, 0.5, 0.4, 0.3])  # dudley, fatigue life factor
_BOTH_WAYS = np.array([1.8, 1.0, 0.4, 0.3, 0.2])
_WEAR_DECADES = np.array([4.0, 5.0, 6.0, 7.0, 8.0, 9.0, 10.0])
_WEAR = np.array([4.0, 2.8, 2.0, 1.4, 1.0, 0.7, 0.5])  # dudley, wear life factor


def pitch_diameter(teeth: Ratio, pitch: PerMetre) -> Metre:
    """Pitch diameter.

    References
    ----------
    ansi-b92.1
    """
    return np.asarray(teeth) / pitch


def major_diameter(teeth: Ratio, pitch: PerMetre) -> Metre:
    """Outside diameter of the external spline, side fit.

    References
    ----------
    ansi-b92.1 (memory)
    """
    return (np.asarray(teeth) + 1) / pitch


def minor_diameter(teeth: Ratio, pitch: PerMetre) -> Metre:
    """Root diameter of an external spline with a fillet root, 30 degrees, side fit.

    Notes
    -----
    Two modules under the pitch diameter from 16/32 upward, 1.8 for coarser teeth. Real shafts
    of other tooth forms differ: a measured root diameter beats this.

    References
    ----------
    ansi-b92.1 (memory)
    """
    return (np.asarray(teeth) - np.where(np.asarray(pitch) > FINE, 2.0, 1.8)) / pitch


def tooth_thickness(pitch: PerMetre) -> Metre:
    """Tooth thickness along the pitch circle.

    References
    ----------
    ansi-b92.1
    """
    return np.pi / (2 * np.asarray(pitch))


def contact_height(pitch: PerMetre, fillet_root: bool = True) -> Metre:
    """Radial height over which the teeth touch: 1/P with a fillet root, 0.9/P with a flat one.

    References
    ----------
    dudley (memory)
    """
    return (1.0 if fillet_root else 0.9) / np.asarray(pitch)


def root_shear(
    torque: NewtonMetre,
    root: Metre,
    bore: Metre = 0.0,
    service: Ratio = 1.0,
    life_factor: Ratio = 1.0,
) -> Pascal:
    """Shear stress at the surface of the shaft under the spline teeth.

    References
    ----------
    dudley
    """
    modulus = np.pi / 16 * (np.asarray(root) ** 4 - np.asarray(bore) ** 4) / root
    return np.asarray(np.asarray(torque) * service / (modulus * life_factor))


def tooth_shear(
    torque: NewtonMetre,
    teeth: Ratio,
    pitch: PerMetre,
    length: Metre,
    service: Ratio = 1.0,
    sharing: Ratio = 1.0,
    life_factor: Ratio = 1.0,
) -> Pascal:
    """Shear stress across the teeth at the pitch line, half of the teeth carrying.

    References
    ----------
    dudley
    """
    area = np.asarray(pitch_diameter(teeth, pitch)) * teeth * length * tooth_thickness(pitch)
    return 4 * np.asarray(torque) * service * sharing / (area * life_factor)


def side_pressure(
    torque: NewtonMetre,
    teeth: Ratio,
    pitch: PerMetre,
    length: Metre,
    height: Metre,
    service: Ratio = 1.0,
    sharing: Ratio = 1.0,
    life_factor: Ratio = 1.0,
) -> Pascal:
    """Pressure on the tooth sides of a spline that is clamped and does not slide.

    References
    ----------
    dudley (memory)
    """
    sliding = side_pressure_sliding(torque, teeth, pitch, length, height, service, sharing)
    return np.asarray(np.asarray(sliding) / (9 * np.asarray(life_factor)))


def side_pressure_sliding(
    torque: NewtonMetre,
    teeth: Ratio,
    pitch: PerMetre,
    length: Metre,
    height: Metre,
    service: Ratio = 1.0,
    sharing: Ratio = 1.0,
    wear: Ratio = 1.0,
) -> Pascal:
    """Pressure on the tooth sides of a spline that slides or rocks; compare with wear limits.

    References
    ----------
    dudley (memory)
    """
    area = np.asarray(pitch_diameter(teeth, pitch)) * teeth * length * height
    return 2 * np.asarray(torque) * service * sharing / (area * wear)


def fatigue_factor(cycles: Cycles, reversed_torque: bool = False) -> Ratio:
    """Factor on allowable shear for the number of torque cycles; ends of the table held.

    References
    ----------
    dudley, fatigue life factors
    """
    decades = np.log10(np.maximum(cycles, 1.0))
    printed = _BOTH_WAYS if reversed_torque else _ONE_WAY
    return np.asarray(10 ** np.interp(decades, _LIFE_DECADES, np.log10(printed)))


def wear_factor(turns: Cycles) -> Ratio:
    """Factor on allowable side pressure of a rocking spline; ends of the table held.

    References
    ----------
    dudley, wear life factors
    """
    decades = np.log10(np.maximum(turns, 1.0))
    return np.asarray(10 ** np.interp(decades, _WEAR_DECADES, np.log10(_WEAR)))


def sharing_factor(slope: Ratio, length: Metre) -> Ratio:
    """Load concentration from misaligned axes; ends of the table held.

    Parameters
    ----------
    slope
        Angle between the axes of shaft and hub, as a ratio.

    References
    ----------
    dudley, load distribution factors
    """
    row = np.interp(slope, _MISALIGNMENT, np.arange(4.0))
    column = np.interp(length, _FACE, np.arange(4.0))
    i, j = np.minimum(row.astype(int), 2), np.minimum(column.astype(int), 2)
    u, v = row - i, column - j
    near = _SHARING[i, j] * (1 - v) + _SHARING[i, j + 1] * v
    far = _SHARING[i + 1, j] * (1 - v) + _SHARING[i + 1, j + 1] * v
    return np.asarray(near * (1 - u) + far * u)
