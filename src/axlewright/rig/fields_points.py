"""The second hour under the vehicle: where its rods, springs and stops end, and how far it moves.

Places are taped at ride height on level ground, from the point straight below the line through
the wheel centres, on the vehicle's centre plane. None of them is required.
"""

from math import radians
from typing import Final, NamedTuple

from axlewright.rig.field import Field
from axlewright.rig.fields_shaft import SHAFT_FIELDS

PLACE: Final = "place"
DOUBT: Final = 0.004  # m: a tape and a plumb line, each coordinate; common practice, no source
HOW: Final = (
    "Tape from below the wheel centres at ride height: ahead or behind, left or right of the "
    "vehicle's middle, up from the floor."
)


class Point(NamedTuple):
    """One place: its name, what it is, whether it has a twin, an example."""

    name: str
    what: str
    sided: bool
    example: tuple[float, float, float]
    axle: str = "both"


# ruff: noqa: E501  (one line a place)
POINTS: Final = (
    Point("arm_frame", "the lower (or radius) arm's bolt at the frame", True, (-740, 400, 470)),
    Point("arm_axle", "the lower arm's bolt at the axle (radius arm: the nearer)", True, (0, 410, 330)),
    Point("arm_axle_far", "the radius arm's far bolt at the axle", True, (90, 410, 330)),
    Point("upper_arm_frame", "the upper arm's bolt at the frame", True, (-600, 300, 590)),
    Point("upper_arm_axle", "the upper arm's bolt at the axle", True, (10, 330, 560)),
    Point("leaf_eye", "the leaf spring's fixed eye", True, (600, 430, 560)),
    Point("leaf_pad", "the main leaf at its centre bolt", True, (0, 430, 500)),
    Point("kingpin_upper", "the upper ball joint or kingpin", True, (-8, 642, 520), "front"),
    Point("kingpin_lower", "the lower ball joint or kingpin", True, (8, 670, 330), "front"),
    Point("tie_rod_end", "the tie rod's end", True, (-170, 610, 360), "front"),
    Point("spring_seat", "the middle of the spring's seat on the axle", True, (0, 460, 525)),
    Point("spring_top", "the middle of the spring's upper seat", True, (0, 460, 855)),
    Point("damper_axle", "the damper's eye at the axle", True, (60, 430, 430)),
    Point("damper_frame", "the damper's eye at the frame", True, (60, 400, 930)),
    Point("third_arm_frame", "the single upper arm's bolt at the frame", False, (-600, 0, 610)),
    Point("third_arm_axle", "the single upper arm's bolt at the axle", False, (0, 0, 590)),
    Point("track_bar_frame", "the track bar's bolt at the frame", False, (95, 420, 600)),
    Point("track_bar_axle", "the track bar's bolt at the axle", False, (95, -420, 540)),
    Point("drag_link_wheel", "the drag link's end at the wheels", False, (-170, -620, 420), "front"),
    Point("drag_link_pitman", "the drag link's end at the drop arm", False, (-200, 340, 480), "front"),
    Point("pitman_shaft", "the drop arm on the steering box's shaft", False, (-50, 340, 510), "front"),
    Point("pinion_joint", "the middle of the propeller shaft's joint at the axle", False, (-310, 0, 430)),
    Point("transfer_joint", "the middle of its joint at the transfer case", False, (-1150, 0, 640)),
)  # fmt: skip
BY_NAME: Final = {point.name: point for point in POINTS}
AXES: Final = ("ahead", "left", "up")
ROD_LENGTHS: Final = (
    ("arm_left", "left lower arm"),
    ("arm_right", "right lower arm"),
    ("upper_arm_left", "left upper arm"),
    ("upper_arm_right", "right upper arm"),
    ("third_arm", "single upper arm"),
    ("track_bar", "track bar"),
)


def place_quantities(path: str) -> tuple[str, str, str]:
    """Names of the three columns that a place of the rig file fills."""
    stem = f"point_{path.removeprefix('points.').replace('.', '_')}"
    return f"{stem}_ahead", f"{stem}_left", f"{stem}_up"


def said(place: tuple[float, float, float]) -> str:
    """One place in mm as the rig file says it."""
    ahead, left, up = place
    return (
        f"{abs(ahead):.0f} mm {'behind' if ahead < 0 else 'ahead'}, "
        f"{abs(left):.0f} mm {'right' if left < 0 else 'left'}, {up:.0f} mm up"
    )


def _places(point: Point) -> list[Field]:
    ahead, left, up = point.example
    made = []
    for side, sign in (("left", 1.0), ("right", -1.0)) if point.sided else (("", 1.0),):
        made.append(
            Field(
                path=f"points.{point.name}" + (f".{side}" if side else ""),
                kind=PLACE,
                asks=f"Where is {point.what}{f', {side} side' if side else ''}?",
                how=HOW,
                example=said((ahead, sign * left, up)),
                doubt=DOUBT,
                axle=point.axle,
            )
        )
    return made


def _length(
    path: str, asks: str, how: str, example: str, low: float, high: float, doubt: float = 0.004
) -> Field:
    return Field(
        path=path,
        kind="length",
        asks=asks,
        how=how,
        example=example,
        low=low,
        high=high,
        doubt=doubt,
        quantity=path.replace(".", "_"),
    )


SECOND_HOUR: Final[tuple[Field, ...]] = (
    _length(
        "travel.bump_gap",
        "How far is it from the bump stop to what it lands on?",
        "At ride height, the lesser of both sides.",
        "90 mm", 0.0, 0.4,
    ),
    _length(
        "travel.damper_longest",
        "How long is the damper pulled out?",
        "Eye to eye, off the vehicle or hanging free.",
        "620 mm", 0.15, 1.3,
    ),
    _length(
        "travel.damper_shortest",
        "How long is the damper pushed in?",
        "Eye to eye, until it stops.",
        "380 mm", 0.1, 1.0,
    ),
    _length(
        "travel.spring_free",
        "How long is the spring when nothing stands on it?",
        "Off the vehicle, or its maker's sheet.",
        "480 mm", 0.1, 1.0,
    ),
    _length(
        "travel.spring_pad",
        "How long is the pad that the leaf spring lies on?",
        "Along the spring, on the axle; leaf springs only.",
        "127 mm", 0.05, 0.3, 0.002,
    ),
    _length(
        "travel.lift",
        "How much higher does the vehicle stand than when the places were taped?",
        "Hub centre to wing edge now, less the same then.",
        "50 mm", -0.2, 0.3,
    ),
    _length(
        "travel.clamped_at",
        "How high was the axle when the arms' bolts were tightened?",
        "Against ride height: 0 mm at ride, -100 mm hanging 100 mm down.",
        "0 mm", -0.3, 0.2, 0.005,
    ),
    _length(
        "travel.crossing",
        "How far up goes one wheel, and down the other, on the hardest crossed ground of a month?",
        "Against ride: half the difference of both wheel-to-wing gaps, in a photo or a ditch.",
        "80 mm", 0.0, 0.3, 0.01,
    ),
    _length(
        "travel.step",
        "How high are the rocks and steps that usually pass between the wheels?",
        "A guess in hand breadths at ten of them on the hardest ground of a month.",
        "80 mm", 0.01, 0.4, 0.02,
    ),
    _length(
        "travel.bumper_ahead",
        "How far beyond the axle is the lowest edge of the bumper?",
        "Plumb line from the edge that a bank meets first, to below the wheel centres.",
        "750 mm", 0.1, 1.8, 0.01,
    ),
    _length(
        "travel.bumper_up",
        "How high is that edge?",
        "From a level floor.",
        "560 mm", 0.15, 1.2, 0.006,
    ),
    _length(
        "travel.belly_up",
        "How high is the lowest thing between the axles, halfway?",
        "From a level floor to the belly, about the middle of the wheelbase.",
        "320 mm", 0.1, 1.0, 0.01,
    ),
    Field(
        path="travel.forgings_turned",
        kind="angle",
        asks="How far were the end forgings turned on the tubes since the places were taped?",
        how="More caster counts as more; 0 deg where they are as they were.",
        example="3 deg",
        low=radians(-20),
        high=radians(20),
        doubt=0.004,
        axle="front",
        quantity="travel_forgings_turned",
    ),
    Field(
        path="travel.road_pressure",
        kind="pressure",
        asks="What pressure do the tyres have on the road?",
        how="Gauge, cold.",
        example="240 kPa",
        low=5e4,
        high=7e5,
        doubt=5e3,
        quantity="travel_road_pressure",
    ),
    Field(
        path="travel.trail_pressure",
        kind="pressure",
        asks="What pressure do they have on the trail?",
        how="Gauge, cold.",
        example="120 kPa",
        low=3e4,
        high=7e5,
        doubt=5e3,
        quantity="travel_trail_pressure",
    ),
    *(
        _length(
            f"longer.{name}",
            f"How much longer is the {what} than what fits between its bolts at ride height?",
            "Eye to eye against its mate, or what was screwed out since the places were taped.",
            "4 mm", -0.1, 0.15, 0.001,
        )
        for name, what in ROD_LENGTHS
    ),
    Field(
        path="steering.drag_link_on",
        kind="word",
        asks="What does the drag link push on?",
        how="A steering arm of the far wheel, or the tie rod.",
        example="knuckle",
        choices=("knuckle", "tie rod"),
        axle="front",
    ),
)  # fmt: skip
POINT_FIELDS: tuple[Field, ...] = (
    *(field for point in POINTS for field in _places(point)),
    *SECOND_HOUR,
    *SHAFT_FIELDS,
)
BUSHED: Final = ("travel_lift", "travel_clamped_at", "travel_bush_twist", "travel_crossing")
FIGHTING: Final = ("arm_frame", "arm_axle", "upper_arm_frame", "upper_arm_axle",
                   "track_bar_frame", "track_bar_axle")  # fmt: skip


def held_quantities(arms: str) -> tuple[str, ...]:
    """What the strength of an axle reads of the second hour: all that binds it with no load."""
    if arms == "leaves":
        return ()
    if arms != "four arms":
        return BUSHED
    ends = [
        f"point_{name}{side}_{axis}"
        for name in FIGHTING
        for side in (("_left", "_right") if BY_NAME[name].sided else ("",))
        for axis in AXES
    ]
    longer = [f"longer_{name}" for name, _ in ROD_LENGTHS if name != "third_arm"]
    return (*BUSHED, *ends, *longer)


GEOMETRY: Final = (
    "point_",
    "travel_",
    "longer_",
    "line_",
)  # how columns begin that only geometry reads
