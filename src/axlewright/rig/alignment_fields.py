"""What can be read when an axle is aligned in the garage: the catalogue of the readings file."""

from math import radians
from typing import Final

from axlewright.rig.field import Field

ON_LENGTHS: Final = ("tape", "tape_coarse", "straightedge", "string", "toe_bar")
ON_ANGLES: Final = ("phone", "angle_finder", "dial_finder", "camber_gauge")
ON_TURNS: Final = ("turn_plates", "floor_marks")
TOE_MARKS: Final = ("scribed_line", "same_mark", "tread_block")
SIDES: Final = ("left", "right")
MANY: Final = 30  # readings of one thing


def _length(
    path: str, asks: str, how: str, example: str, low: float, high: float, *, axle: str = "both"
) -> Field:
    return Field(
        path=path, kind="length", asks=asks, how=how, example=example, low=low, high=high, axle=axle
    )


def _angle(
    path: str, asks: str, how: str, example: str, most: float = radians(25), *, axle: str = "both"
) -> Field:
    return Field(
        path=path, kind="angle", asks=asks, how=how, example=example, low=-most, high=most,
        axle=axle,
    )  # fmt: skip


def _word(path: str, asks: str, how: str, choices: tuple[str, ...], *, axle: str = "both") -> Field:
    return Field(
        path=path, kind="word", asks=asks, how=how, example=choices[0], choices=choices, axle=axle
    )


_STATE = (
    _word("state.load", "How is it loaded?", "As it usually travels.", ("as for a trip", "empty")),
    _word(
        "state.standing",
        "Does it stand on its wheels?",
        "Joints unload when an axle hangs on stands; say which.",
        ("on its wheels", "on stands"),
    ),
    Field(
        path="state.rolled",
        kind="yes",
        asks="Was it rolled forward a turn of the wheels before reading?",
        how="Back, then forward, and no turning of the wheels after it.",
        example="yes",
    ),
    Field(
        path="state.tyres_alike",
        kind="yes",
        asks="Have both tyres the same size and pressure?",
        how="Gauge, cold.",
        example="yes",
    ),
)
_PLAY = (
    _word(
        "play.found",
        "Did anything move that should not?",
        "Somebody rocks the steering wheel, engine off; a hand on each joint, the track bar's ends "
        "among them. Fingers clear of pinch points.",
        ("none", "some", "not looked at"),
    ),
    Field(
        path="play.where",
        kind="text",
        asks="Which joint moved?",
        how="Name the part and its side.",
        example="track bar, right end",
    ),
)
_HEIGHT = (
    *(
        _length(
            f"ride_height.{side}",
            f"How high does the {side} side ride?",
            "From the hub's centre straight up to the same edge of the body on both sides.",
            "560 mm",
            0.1,
            1.5,
        )
        for side in SIDES
    ),
    _word("ride_height.with", "Read with what?", "Each has its own doubt.", ON_LENGTHS),
)
_SQUARE = (
    *(
        _length(
            f"square.wheelbase.{side}",
            f"How far is it from the front to the rear hub's centre on the {side}?",
            "Plumb both hub centres to the floor, wheels straight; tape between the marks.",
            "2622 mm",
            1.5,
            6.0,
        )
        for side in SIDES
    ),
    _length(
        "square.diagonal.left",
        "How far is it from the front left to the rear right mark?",
        "The same marks on both axles, left and right alike.",
        "3050 mm",
        1.5,
        7.0,
    ),
    _length(
        "square.diagonal.right",
        "How far is it from the front right to the rear left mark?",
        "The same marks on both axles, left and right alike.",
        "3052 mm",
        1.5,
        7.0,
    ),
    *(
        _length(
            f"square.gap.{side}",
            f"How far does the {side} tyre stand out from the frame?",
            "From the frame rail's outer face to a straightedge upright against the tyre.",
            "310 mm",
            0.0,
            1.2,
        )
        for side in SIDES
    ),
    _word("square.with", "Read with what?", "Each has its own doubt.", ON_LENGTHS),
)
_FLOOR = (
    _angle(
        "floor.along",
        "How much does the floor rise to the front?",
        "Finder on a board from the rear to the front tyre; falling is negative.",
        "0.3 deg",
        radians(10),
    ),
    _angle(
        "floor.across",
        "How much does the floor rise to the left?",
        "Finder on a board across, under both tyres; falling to the left is negative.",
        "-0.2 deg",
        radians(10),
    ),
    _angle(
        "floor.frame_nose_down",
        "How much does the frame slope down to the front?",
        "Finder on the frame rail between the axles; tail-down is negative.",
        "0.8 deg",
        radians(10),
    ),
)
_CAMBER = (
    *(
        _angle(
            f"camber.{side}{turned}",
            f"What camber does the {side} wheel show{', finder turned round' if turned else ''}?",
            "Against hub or rim, wheels straight; top outwards is positive. Three clock places "
            "take out a bent rim."
            if not turned
            else "The same place with the finder the other way round, as it reads.",
            "-0.3 deg" if not turned else "0.4 deg",
        )
        for side in SIDES
        for turned in ("", "_turned")
    ),
    _word("camber.with", "Read with what?", "Each has its own doubt.", ON_ANGLES),
)
_CASTER = (
    *(
        _angle(
            f"caster.{side}.{place}",
            f"What camber does the {side} wheel show {told}?",
            "Brakes held, gauge kept level along the wheel; top outwards is positive.",
            example,
            axle="front",
        )
        for side in SIDES
        for place, told, example in (
            ("out", "with its front turned out", "2.6 deg"),
            ("straight", "straight ahead", "0 deg"),
            ("in", "with its front turned in by as much", "-1.5 deg"),
        )
    ),
    *(
        _angle(
            f"caster.{side}.finder{turned}",
            f"What does a finder on the {side} knuckle's flat show"
            f"{', turned round' if turned else ''}?",
            "On a flat square to the steering axis, in line with the vehicle; top back is positive."
            if not turned
            else "The same flat with the finder the other way round, as it reads.",
            "5.2 deg" if not turned else "-5 deg",
            axle="front",
        )
        for side in SIDES
        for turned in ("", "_turned")
    ),
    Field(
        path="caster.sweep",
        kind="angle",
        asks="By how much was the wheel turned each way?",
        how="20 deg is usual; the rule of one and a half holds for it alone.",
        example="20 deg",
        low=radians(4),
        high=radians(40),
        axle="front",
    ),
    _word("caster.with", "Read with what?", "Each has its own doubt.", ON_ANGLES, axle="front"),
    _word("caster.turned_on", "Turned by what?", "Each has its own doubt.", ON_TURNS, axle="front"),
)
_TOE = (
    *(
        _length(
            f"toe.{place}",
            f"How far apart are the two tyres' marks {told}?",
            "At hub height, tape tight and level, the same marks front and rear.",
            example,
            0.4,
            3.0,
        )
        for place, told, example in (
            ("front", "in front of the axle", "1571 mm"),
            ("rear", "behind it", "1574 mm"),
        )
    ),
    _length(
        "toe.diameter",
        "At what diameter were the marks?",
        "Twice the height of hub to mark: the tread's diameter at hub height, or a bar's length.",
        "890 mm",
        0.25,
        1.4,
    ),
    _word("toe.with", "Read with what?", "Each has its own doubt.", ON_LENGTHS),
    _word("toe.marks", "Taken to which marks?", "Each has its own doubt.", TOE_MARKS),
)
_ROD = (
    Field(
        path="tie_rod.ahead",
        kind="yes",
        asks="Is the tie rod ahead of the axle?",
        how="Seen from above; where it is said here and in the rig file, this one counts.",
        example="no",
        axle="front",
    ),
    *(
        field
        for rod, told in (("tie_rod", "tie rod"), ("drag_link", "drag link"))
        for field in (
            _length(
                f"{rod}.arm",
                f"How long is the arm that the {told} pulls?",
                "From the kingpin axis to the joint, seen from above.",
                "170 mm",
                0.08,
                0.4,
                axle="front",
            ),
            Field(
                path=f"{rod}.thread",
                kind="text",
                asks=f"What thread has the {told}'s adjuster?",
                how="As in 7/8-18 or M22x1.5; or the pitch, as in 1.5 mm.",
                example="7/8-18",
                axle="front",
            ),
            _word(
                f"{rod}.threaded",
                f"Which ends of the {told} screw?",
                "A sleeve or rod with left- and right-hand thread turns in place; with one thread "
                "the end comes off and is turned.",
                ("left and right hand", "one end"),
                axle="front",
            ),
            _word(
                f"{rod}.right_hand_end",
                f"On which side is the {told}'s right-hand thread?",
                "The vehicle's left or right.",
                SIDES,
                axle="front",
            ),
        )
    ),
    Field(
        path="drag_link.ahead",
        kind="yes",
        asks="Does the drag link pull ahead of the axle?",
        how="Where its end on the knuckle stands, seen from above.",
        example="yes",
        axle="front",
    ),
    _word(
        "drag_link.on",
        "Where does the drag link end?",
        "On a knuckle, the vehicle's left or right, or on the tie rod.",
        ("right knuckle", "left knuckle", "tie rod"),
        axle="front",
    ),
)
_WHEEL = (
    _angle(
        "steering_wheel.off_left",
        "Driving straight, how far to the left does the steering wheel stand?",
        "Level road, from memory or a passenger's photo; to the right is negative.",
        "12 deg",
        radians(120),
        axle="front",
    ),
    Field(
        path="steering_wheel.ratio",
        kind="ratio",
        asks="How many degrees of steering wheel make one at the road wheels?",
        how="Count the turns lock to lock; 14 to 20 is usual.",
        example="16",
        low=8.0,
        high=35.0,
        axle="front",
    ),
)
_TARGET = (
    Field(
        path="target.toe",
        kind="toe",
        asks="What whole toe does the manual want?",
        how="As an angle or a length at its diameter; toe-in is positive.",
        example="0.10 to 0.20 deg",
        low=radians(-2),
        high=radians(2),
    ),
    *(
        _angle(
            f"target.{what}",
            f"What {what} does the manual want?",
            "From the manual, with its tolerance.",
            example,
            axle=axle,
        )
        for what, example, axle in (
            ("caster", "4 to 6 deg", "front"),
            ("camber", "-0.5 to 0.5 deg", "both"),
        )
    ),
    Field(
        path="target.from",
        kind="text",
        asks="Where do these come from?",
        how="Manual and page.",
        example="workshop manual, page 3-12",
    ),
)
ALIGNMENT_FIELDS: Final[tuple[Field, ...]] = (
    *_STATE, *_HEIGHT, *_PLAY, *_SQUARE, *_FLOOR, *_CAMBER, *_CASTER, *_TOE, *_ROD, *_WHEEL,
    *_TARGET,
)  # fmt: skip
# What is read again and again: a list of readings will do as well as one.
_REPEATED_ROOMS: Final = ("ride_height.", "square.", "floor.", "camber.", "caster.", "toe.")
REPEATED: Final = frozenset(
    field.path
    for field in ALIGNMENT_FIELDS
    if field.path.startswith(_REPEATED_ROOMS)
    and field.kind in {"length", "angle"}
    and field.path not in {"toe.diameter", "caster.sweep"}
)
