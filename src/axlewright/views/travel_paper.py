"""The travel of an axle as the words of its report."""

from dataclasses import dataclass

from axlewright.geometry import Driveline, Travel, pose_of, reach_of
from axlewright.rig import findings, stops
from axlewright.views.answer import drive_lines
from axlewright.views.driveline import driveline_lines
from axlewright.views.pose_drawing import PoseView, pose_views
from axlewright.views.pose_words import pose_told, still_poses
from axlewright.views.room import (
    RoomPicture,
    changed_lines,
    room_lines,
    room_picture,
    room_why_lines,
)
from axlewright.views.travel import (
    CAUTION,
    bind_lines,
    fix_lines,
    limit_lines,
    rests_line,
    travel_rows,
    travel_sentence,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class PosePaper:
    """One pose on paper: what it is, how it stands, and two views of it."""

    said: str
    told: list[str]
    views: list[PoseView]


@dataclass(frozen=True, slots=True, kw_only=True)
class TravelData:
    """Everything that the report says, ready to be laid out."""

    title: str
    stops: list[str]
    findings: list[str]
    sentence: str
    changed: list[str]
    rows: list[list[str]]
    limits: list[str]
    bind: list[str]
    cures: list[str]
    driveline: list[str]
    room: list[str]
    rests: str
    caution: str
    poses: list[PosePaper]
    room_picture: RoomPicture
    room_deeper: list[str]


def travel_data(
    before: Travel,
    after: Travel | None = None,
    system: str = "metric",
    line: Driveline | None = None,
) -> TravelData:
    """Words of the report of a study, or of a rig with changes."""
    shown = after or before
    rows = travel_rows(shown, system)
    seen = findings(before.rig)
    halts = stops(seen)
    rest = tuple(each for each in seen if each not in halts)
    return TravelData(
        title=f"{before.rig.name}: travel of its {before.rig.axle} axle",
        stops=drive_lines(halts) if halts else [],
        findings=[] if halts == seen and halts else drive_lines(rest),
        sentence=travel_sentence(before, system),
        changed=[] if after is None else changed_lines(before, after, system),
        rows=[[row.what, row.hanging, row.ride, row.bump] for row in rows],
        limits=limit_lines(shown, system),
        bind=bind_lines(shown, system),
        cures=fix_lines(shown, system),
        driveline=[] if line is None else driveline_lines(line, system),
        room=room_lines(shown, system),
        rests=rests_line(shown),
        caution=CAUTION,
        poses=_poses(shown, system),
        room_picture=room_picture(shown, None if after is None else before, system),
        room_deeper=[line.strip() for line in room_why_lines(shown, system)[1:]],
    )


def _poses(shown: Travel, system: str) -> list[PosePaper]:
    """Hanging, at ride, in bump, crossed and at full lock, two views of each."""
    made = []
    for still in still_poses(reach_of(shown), steers=shown.points.steers):
        pose = pose_of(shown, still.bump, still.roll, still.arm)
        told = pose_told(pose, system)
        views = ("above", "behind") if still.key == "lock" else ("side", "behind")
        made.append(
            PosePaper(
                said=still.said.capitalize(),
                told=list(told.lines),
                views=list(pose_views(shown, pose, told, name=still.key, views=views)),
            )
        )
    return made
