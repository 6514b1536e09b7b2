"""Where the rods end, to be taped: every place with its number, for the page and for paper."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from axlewright.geometry import hardpoints
from axlewright.rig import (
    POINT_FIELDS,
    Columns,
    Field,
    Rig,
    findings,
    geometry_columns,
    has_place,
    stops,
)
from axlewright.views.answer import CAUTION, drive_lines
from axlewright.views.ends_drawing import EndsView, ends_views
from axlewright.views.phrases import quantity
from axlewright.views.travel import length

PLACE: Final = "place"
_MARKS: Final = (
    "Plumb a point on the floor below each hub of this axle. The line between the two marks is "
    "nought fore and aft; its middle, checked against the frame, is nought left and right."
)
_BOLTS: Final = (
    "Plumb each bolt's middle to the floor and read three lengths: ahead of that line or behind, "
    "left or right of the middle, and up from the floor. Ball joints: the middle of the ball."
)
HOW: Final = (
    "Level ground, load as carried, tyres at road pressure, bounced and settled.",
    _MARKS,
    _BOLTS,
    "One side is enough where the axle is alike on both: the other is its mirror image.",
)
CAUTIONS: Final = (
    "Both ends chocked, engine off, on its wheels; if lifted, on stands under the frame.",
    "Nobody under it while it is rolled, bounced or steered; never under a jack alone.",
)
GROUPS: Final[tuple[tuple[str, str, tuple[str, ...]], ...]] = (
    (
        "rods", "Arms and track bar",
        ("points.arm_", "points.upper_arm", "points.third_arm", "points.leaf", "points.track_bar",
         "longer."),
    ),
    (
        "steering", "Kingpins, tie rod, drag link",
        ("points.kingpin", "points.tie_rod", "points.drag_link", "points.pitman_shaft",
         "steering.drag_link_on", "travel.forgings"),
    ),
    (
        "springs", "Springs, dampers and stops",
        ("points.spring", "points.damper", "travel.bump_gap", "travel.damper",
         "travel.spring_", "travel.lift", "travel.clamped", "travel.crossing"),
    ),
    (
        "shaft", "The propeller shaft",
        ("points.pinion", "points.transfer", "driveline.", "engine.", "gearbox."),
    ),
    (
        "room", "Room under it",
        ("travel.bumper", "travel.belly", "travel.step", "travel.road_pressure",
         "travel.trail_pressure"),
    ),
    ("wheels", "What a wheel weighs", ("wheel.",)),
)  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class EndRow:
    """One thing to tape: its number on the drawing, what it is, what stands in so far."""

    path: str
    ident: str
    number: str
    asks: str
    how: str
    example: str
    stands: str
    given: bool
    place: bool
    choices: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class EndGroup:
    """Things that are taped together."""

    key: str
    title: str
    rows: tuple[EndRow, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class EndsData:
    """The whole sheet."""

    title: str
    stops: tuple[str, ...]
    how: tuple[str, ...]
    cautions: tuple[str, ...]
    views: tuple[EndsView, ...]
    groups: tuple[EndGroup, ...]
    taped: int
    places: int
    caution: str


def ends_data(rig: Rig, system: str = "metric") -> EndsData:
    """Everything to tape under one rig, with what is given or assumed so far."""
    columns = geometry_columns(rig)
    fields = [field for field in POINT_FIELDS if _asked(field, rig, columns)]
    grouped = [
        (key, title, [field for field in fields if field.path.startswith(begins)])
        for key, title, begins in GROUPS
    ]
    placed = [field for _, _, some in grouped for field in some if field.kind == PLACE]
    numbers = {field.path: number for number, field in enumerate(placed, 1)}
    at = hardpoints(columns, rig.words).at
    marked = {_point(path): number for path, number in numbers.items() if _point(path) in at}
    halts = stops(findings(rig))
    return EndsData(
        title=f"{rig.name}: where the rods of its {rig.axle} axle end",
        stops=tuple(drive_lines(halts)) if halts else (),
        how=HOW,
        cautions=CAUTIONS,
        views=ends_views(rig, columns, marked),
        groups=tuple(
            EndGroup(
                key=key,
                title=title,
                rows=tuple(_row(field, rig, columns, numbers, system) for field in some),
            )
            for key, title, some in grouped
            if some
        ),
        taped=sum(f"{_stem(field.path)}_ahead" in rig.given for field in placed),
        places=len(placed),
        caution=CAUTION,
    )


def _asked(field: Field, rig: Rig, columns: Columns) -> bool:
    if field.axle not in {"both", rig.axle}:
        return False
    room, _, name = field.path.partition(".")
    if room == "points":
        return has_place(name.removesuffix(".left").removesuffix(".right"), rig.words)
    if room == "longer":
        names = {rod.name for rod in hardpoints(columns, rig.words).rods}
        return name in names
    return not field.quantity or field.quantity in columns


def _point(path: str) -> str:
    return path.removeprefix("points.").replace(".", "_")


def _stem(path: str) -> str:
    return f"point_{_point(path)}"


def _row(
    field: Field, rig: Rig, columns: Columns, numbers: Mapping[str, int], system: str
) -> EndRow:
    place = field.kind == PLACE
    given = f"{_stem(field.path)}_ahead" in rig.given if place else field.quantity in rig.given
    if place:
        stands = _place_words(columns, _stem(field.path), system)
    elif field.quantity in columns:
        value = float(columns[field.quantity][0])
        stands = (
            length(value, system)
            if field.kind == "length"
            else quantity(value, field.kind, system, 3)
        )
    else:
        stands = rig.words.get(field.path, "")
        given = False
    return EndRow(
        path=field.path,
        ident=field.path.replace(".", "-").replace("_", "-"),
        number=str(numbers.get(field.path, "")),
        asks=field.asks,
        how="" if place else field.how,
        example=field.example,
        stands=stands,
        given=given,
        place=place,
        choices=tuple(field.choices),
    )


def _place_words(columns: Columns, stem: str, system: str) -> str:
    ahead, left, up = (float(columns[f"{stem}_{axis}"][0]) for axis in ("ahead", "left", "up"))
    told = [length(abs(each), system) for each in (ahead, left, up)]
    return (
        f"{told[0]} {'behind' if ahead < 0.0 else 'ahead'}, "
        f"{told[1]} {'right' if left < 0.0 else 'left'}, {told[2]} up"
    )
