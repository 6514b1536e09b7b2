"""The propeller shaft between pinion and transfer case: its joints at any pose, and its speeds.

Points are (n, 3) in m and axes unit vectors (n, 3), in the body's axes and along the torque: out
of the transfer case, into the axle. One row each for every pose or draw.
"""

from dataclasses import dataclass

import numpy as np

from axlewright.physics import driveline, driveline_speed, linkage
from axlewright.physics.quantities import Radian
from axlewright.rig import Column, Columns

RPM = 2.0 * np.pi / 60.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """A shaft's joints at each pose.

    ``joints`` (n, 2) are the angles at transfer case and pinion, rad; ``whole`` the one joint's
    angle that would shake as much as all of them, by the small-angle rule; ``swing`` the exact
    swing of speed in a turn; ``length`` between the joints, m; ``pinion_rise`` and ``shaft_rise``
    how far the pinion and the shaft, seen from the axle, point up.
    """

    joints: Column
    double: bool
    whole: Column
    swing: Column
    length: Column
    pinion_rise: Column
    shaft_rise: Column


@dataclass(frozen=True, slots=True, kw_only=True)
class Shaking:
    """Angular accelerations at one shaft speed, rad/s2: the line's end, the tube on drive, coast.

    Behind a centred double joint the tube turns evenly under drive.
    """

    torsional: Column
    drive: Column
    coast: Column


@dataclass(frozen=True, slots=True, kw_only=True)
class Whirl:
    """A tube's first whirling speed against the speeds it is driven at.

    ``speed`` and each of ``tops`` in rad/s, ``roads`` in m/s: the same tops as road speeds;
    ``half`` are the road speeds about half of it at which an unevenness is felt.
    """

    speed: Column
    road: Column
    half: tuple[Column, Column]
    names: tuple[str, ...]
    tops: tuple[Column, ...]
    roads: tuple[Column, ...]

    @property
    def share(self) -> Column:
        """Fastest speed driven over the whirling speed."""
        return np.asarray(np.max(np.stack(self.tops), axis=0) / self.speed)


def driveline_of(
    pinion_joint: Column,
    transfer_joint: Column,
    pinion_axis: Column,
    output_axis: Column,
    *,
    double: bool = False,
    phase: Radian = 0.0,
) -> Line:
    """Work out a shaft's joints; every array is (n, 3) or broadcasts to it.

    Parameters
    ----------
    double
        Whether the joint at the transfer case is a centred double one.
    phase
        Turn of the yoke at the pinion's end from the one at the case, about the shaft, rad.
    """
    shaft = driveline.unit_vectors(np.asarray(pinion_joint) - transfer_joint)
    axes = np.stack(np.broadcast_arrays(output_axis, shaft, pinion_axis), axis=-2)
    joints = driveline.joint_angles(axes)
    phases = np.asarray([phase], dtype=np.float64)
    if double:
        axes, phases = driveline.double_joint_line(axes), np.array([0.0, float(phase)])
    return Line(
        joints=np.asarray(joints),
        double=double,
        whole=np.asarray(driveline.line_angle(axes, phases)),
        swing=np.asarray(driveline.line_swing(axes, phases)),
        length=linkage.rod_lengths(pinion_joint, transfer_joint),
        pinion_rise=np.asarray(driveline.elevation(-np.asarray(pinion_axis))),
        shaft_rise=np.asarray(driveline.elevation(-shaft)),
    )


def turned_about_wheels(vector: Column, by: Column | float, way: float) -> Column:
    """Vectors (n, 3) from the wheels' line after the housing has been turned, pinion up.

    ``way`` is 1 where the pinion looks ahead, -1 where it looks back.
    """
    x, y, z = vector[..., 0], vector[..., 1], vector[..., 2]
    cos, sin = np.cos(by), way * np.sin(by)
    return np.stack(np.broadcast_arrays(cos * x - sin * z, y, sin * x + cos * z), axis=-1)


def shaking(line: Line, speed: Column) -> Shaking:
    """Accelerations of a line at a shaft speed, rad/s."""
    first = np.zeros_like(line.joints[..., 0]) if line.double else line.joints[..., 0]
    torsional, drive, coast = (
        np.asarray(driveline_speed.joint_acceleration(speed, bend))
        for bend in (line.whole, first, line.joints[..., 1])
    )
    return Shaking(torsional=torsional, drive=drive, coast=coast)


def least_joint(line: Line) -> Column:
    """The least angle at any cross: a double joint halves its own between two."""
    first = 0.5 * line.joints[..., 0] if line.double else line.joints[..., 0]
    return np.minimum(first, line.joints[..., 1])


def whirl(length: Column, columns: Columns, road: Column, avoid: tuple[float, float]) -> Whirl:
    """Whirling speed of a tube, and what it turns at in each gear that is known.

    In low range and first gear the engine is the limit, in high range the road speed as well.
    """
    outer = columns["line_tube_outer"]
    inner = np.maximum(outer - 2.0 * columns["line_tube_wall"], 0.0)
    speed = np.asarray(driveline_speed.whirling_speed(length, outer, inner))
    radius, ratio = columns["radius"], columns["axle_ratio"]
    engine = columns["line_engine_top"] * RPM
    one, low, top = columns["first_ratio"], columns["low_ratio"], columns["line_top_ratio"]
    fastest = road * ratio / radius
    names = ("first gear, low range", "first gear, high range", "highest gear")
    tops = tuple(
        np.minimum(np.asarray(driveline_speed.top_shaft_speed(engine, gear, transfer)), fastest)
        for gear, transfer in ((one, low), (one, 1.0), (top, 1.0))
    )

    def on_road(turning: Column) -> Column:
        return np.asarray(driveline_speed.road_speed_at(turning, radius, ratio))

    return Whirl(
        speed=speed,
        road=on_road(speed),
        half=(on_road(avoid[0] * speed), on_road(avoid[1] * speed)),
        names=names,
        tops=tops,
        roads=tuple(on_road(each) for each in tops),
    )
