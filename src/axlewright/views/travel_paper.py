"""The travel of an axle as the words of its report."""

from dataclasses import dataclass

from axlewright.geometry import Driveline, Travel
from axlewright.views.driveline import driveline_lines
from axlewright.views.travel import (
    CAUTION,
    bind_lines,
    change_lines,
    fix_lines,
    limit_lines,
    rests_line,
    room_lines,
    travel_rows,
    travel_sentence,
)
from axlewright.views.travel_drawing import travel_picture


@dataclass(frozen=True, slots=True, kw_only=True)
class TravelData:
    """Everything that the report says, ready to be laid out."""

    title: str
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
    picture: str
    picture_wide: float
    picture_high: float
    picture_words: str


def travel_data(
    before: Travel,
    after: Travel | None = None,
    system: str = "metric",
    line: Driveline | None = None,
) -> TravelData:
    """Words of the report of a study, or of a rig with changes."""
    shown = after or before
    picture = travel_picture(shown, system)
    rows = travel_rows(shown, system)
    return TravelData(
        title=f"{before.rig.name}: travel of its {before.rig.axle} axle",
        sentence=travel_sentence(before, system),
        changed=[] if after is None else change_lines(before, after, system),
        rows=[[row.what, row.hanging, row.ride, row.bump] for row in rows],
        limits=limit_lines(shown, system),
        bind=bind_lines(shown, system),
        cures=fix_lines(shown, system),
        driveline=[] if line is None else driveline_lines(line, system),
        room=room_lines(shown, system),
        rests=rests_line(shown),
        caution=CAUTION,
        picture=picture.svg,
        picture_wide=picture.wide,
        picture_high=picture.high,
        picture_words=picture.words,
    )
