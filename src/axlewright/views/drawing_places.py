"""Where everything of one axle stands, in millimetres: x forward, y left, z up from the hubs.

Lengths come from the rig's columns. Heights of joints and arms that nobody measures are those of
the mechanical model; castings, coils and leaves have their usual shape.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from axlewright.rig import Columns, TyreCode, Words, has_track_bar
from axlewright.strength import stations

Spot = tuple[float, float, float]
SIDES = ("left", "right")
SIGN: Mapping[str, float] = {"left": 1.0, "right": -1.0}


@dataclass(frozen=True, slots=True, kw_only=True)
class Axle:
    """One axle ready to be drawn: ``mm`` are its lengths, ``y`` its stations across."""

    words: Words
    mm: Mapping[str, float]
    y: Mapping[str, float]
    tyre_outer: float
    tyre_width: float
    rim: float
    weight: float
    caster: float

    @property
    def front(self) -> bool:
        """Whether the axle steers."""
        return self.words["rig.axle"] == "front"

    @property
    def arms(self) -> str:
        """What holds the axle."""
        return self.words["held_by.arms"]

    @property
    def barred(self) -> bool:
        """Whether a track bar holds it sideways."""
        return has_track_bar(self.words)

    @property
    def tube(self) -> float:
        """Half the larger tube's diameter."""
        return 0.5 * max(self.mm["tube_outer_left"], self.mm["tube_outer_right"])

    @property
    def ball(self) -> float:
        """Radius of the centre casting over its ring gear."""
        return 0.5 * self.mm["ring_diameter"] + 30.0

    @property
    def nose(self) -> float:
        """Way in which the pinion points: back on a front axle, forward on a rear one."""
        return -1.0 if self.front else 1.0

    @property
    def reach(self) -> float:
        """Way in which the arms reach from the axle to the frame."""
        return -1.0 if self.front else 1.0

    @property
    def rods(self) -> float:
        """Way in which the steering arms point: ahead (1) or behind (-1)."""
        return 1.0 if self.words.get("steering.tie_rod_ahead") == "yes" else -1.0

    @property
    def beside(self) -> float:
        """Fore-and-aft place of the track bar, clear of the tube; usual, not measured."""
        return -self.rods * (self.tube + 55.0)

    def hub_face(self, side: str) -> float:
        """Where the hub's mounting face stands across."""
        half = 0.5 * self.mm["track"]
        return SIGN[side] * (half + self.mm["wheel_offset"] - self.mm["wheel_spacer"])

    def joint_spots(self, side: str) -> tuple[Spot, Spot]:
        """Upper and lower joint of one knuckle."""
        high, low = 0.5 * self.mm["kingpin_height"], 0.5 * self.mm["kingpin_spacing"]
        lean = 2.0 * (low - abs(self.y[f"kingpin_{side}"]))
        return (0.0, SIGN[side] * (low - lean), high), (0.0, SIGN[side] * low, -high)

    def arm_tip(self, side: str) -> Spot:
        """Where the tie rod meets the steering arm; arms point at the middle of the other axle."""
        pivot, arm = abs(self.y[f"kingpin_{side}"]), self.mm["steering_arm"]
        lean = arm * pivot / self.mm["wheelbase"]
        return (
            self.rods * arm,
            SIGN[side] * (pivot + self.rods * lean),
            -0.34 * self.mm["kingpin_height"],
        )

    def drag_ends(self) -> tuple[Spot, Spot]:
        """Drag link from the knuckle far from the driver to the steering box's arm."""
        far = "right" if self.words.get("steering.drive_side", "left") == "left" else "left"
        x, y, z = self.arm_tip(far)
        y, z = y - SIGN[far] * 14.0, z + 52.0
        back, up = 70.0 * self.rods, 60.0
        run = max(self.mm["drag_link_length"] ** 2 - back**2 - up**2, 1.0) ** 0.5
        return (x, y, z), (x + back, y - SIGN[far] * run, z + up)

    def track_bar_ends(self) -> tuple[Spot, Spot]:
        """Track bar from its bracket on the axle to the one on the frame."""
        side = self.words["track_bar.on_axle"]
        y, high = self.y[f"track_bar_{side}"], self.tube + self.mm["track_bar_bracket_height"]
        drop, span = self.mm["track_bar_drop"], self.mm["track_bar_span"]
        run = max(span**2 - drop**2, 1.0) ** 0.5
        return (self.beside, y, high), (self.beside, y - SIGN[side] * run, high + drop)

    def lower_arm_ends(self, side: str) -> tuple[Spot, Spot]:
        """Lower (or radius) arm from the axle to the frame."""
        low = -(self.tube + self.mm["arm_bracket_height"])
        y, length = self.y[f"arm_{side}"], self.mm["arm_length"]
        rise = 60.0 - low
        run = max(length**2 - rise**2, 1.0) ** 0.5
        inward = SIGN[side] * 0.12 * length if self.arms == "radius arms" else 0.0
        return (0.0, y, low), (self.reach * run, y - inward, 60.0)

    def upper_arm_ends(self) -> tuple[tuple[Spot, Spot], ...]:
        """Upper arms of a four-arm or three-arm axle, none of others."""
        length = 0.8 * self.mm["arm_length"]
        if self.arms == "three arms":
            y = self.y["centre"]
            return (((0.0, y, 160.0), (self.reach * length, y, 180.0)),)
        if self.arms == "four arms":
            ends = [self.y[f"joint_{side}"] for side in SIDES]
            return tuple(((0.0, y, 140.0), (self.reach * length, y, 160.0)) for y in ends)
        if self.arms == "angled arms":
            near, far = 70.0, 0.45 * self.mm["arm_apart"]
            run = max(length**2 - (far - near) ** 2, 1.0) ** 0.5
            return tuple(
                (
                    (0.0, SIGN[side] * near, 160.0),
                    (self.reach * run, SIGN[side] * far, 180.0),
                )
                for side in SIDES
            )
        return ()


def axle_places(columns: Columns, words: Words, tyre: TyreCode) -> Axle:
    """Read one axle's places from the first draw of its columns."""
    names, across = stations(columns, words)
    mm = {name: 1e3 * float(values[0]) for name, values in columns.items()}
    return Axle(
        words=words,
        mm=mm,
        y={name: 1e3 * float(place) for name, place in zip(names, across[0], strict=True)},
        tyre_outer=max(
            1e3 * tyre.outer_diameter,
            2.0 * max(mm["hub_height_left"], mm["hub_height_right"]) + 6.0,
        ),
        tyre_width=1e3 * tyre.section_width,
        rim=1e3 * tyre.rim_diameter,
        weight=float(columns["axle_weight"][0]),
        caster=float(columns["caster"][0]) if "caster" in columns else 0.0,
    )


def spots(axle: Axle, part: str) -> list[Spot]:
    """Where a part is; both places of a sided part whose key names no side."""
    kind = part.removesuffix("_left").removesuffix("_right")
    if kind not in SIDED:
        return [_single(axle, kind)]
    sides = [side for side in SIDES if part.endswith(f"_{side}")] or list(SIDES)
    return [_sided(axle, kind, side) for side in sides]


SIDED = frozenset(
    {
        "tube",
        "tube_joint",
        "sleeve",
        "end_forging",
        "knuckle",
        "ball_joints",
        "kingpins",
        "hub_bearing",
        "spindle",
        "inner_shaft",
        "stub_shaft",
        "spline",
        "cross_joint",
        "yoke_ears",
        "link_brackets",
        "locking_hub",
        "spring_seat",
        "damper_bracket",
        "wheel_studs",
    }
)


def _sided(axle: Axle, kind: str, side: str) -> Spot:  # noqa: PLR0911, PLR0912 (one line a part)
    y, sign, mm = axle.y, SIGN[side], axle.mm
    joint, end, bearing = y[f"joint_{side}"], y[f"end_{side}"], y[f"bearing_{side}"]
    pivot = y.get(f"kingpin_{side}", 0.5 * (end + bearing))
    half = 0.5 * mm["kingpin_height"] if axle.front else 0.0
    match kind:
        case "tube":
            return 0.0, _between(joint, end, 0.55), 0.0
        case "sleeve":
            bore = 0.5 * mm[f"tube_outer_{side}"] - mm["tube_wall"]
            return 0.0, _between(joint, end, 0.3), bore - 0.5 * mm[f"sleeve_wall_{side}"]
        case "tube_joint":
            return 0.0, joint, 0.0
        case "end_forging":
            return 0.0, _between(end, pivot, 0.3), 0.3 * half
        case "knuckle":
            return 0.0, pivot + sign * 40.0, -0.35 * half
        case "ball_joints" | "kingpins" if axle.front:
            return axle.joint_spots(side)[1]
        case "hub_bearing":
            out = 0.5 * mm["spindle_outer"] + 11.0
            return out, bearing - sign * 0.5 * mm["row_spread"], out
        case "spindle":
            return 0.0, _between(pivot + sign * 52.0, bearing, 0.5), 0.3 * mm["spindle_outer"]
        case "inner_shaft":
            return 0.0, _between(joint, end, 0.8), 0.0
        case "stub_shaft":
            return 0.0, _between(pivot, bearing, 0.6), 0.0
        case "spline":
            return 0.0, y["centre"] + sign * 42.0, 0.0
        case "cross_joint":
            if not axle.front:
                return _single(axle, "propeller_shaft")
            return 0.0, pivot, 0.0
        case "locking_hub":
            return 0.0, axle.hub_face(side) + sign * 24.0, 0.0
        case "yoke_ears":
            return 0.0, pivot - sign * 0.62 * mm["cap_to_cap"], 20.0
        case "link_brackets":
            if f"arm_{side}" in y:
                return axle.lower_arm_ends(side)[0]
            return 0.0, y[f"seat_{side}"], axle.tube
        case "spring_seat":
            leaf = axle.words["held_by.weight_on"] == "leaf"
            return 0.0, y[f"seat_{side}"], axle.tube + (21.0 if leaf else 14.0)
        case "damper_bracket":
            return -mm["damper_bracket_behind"], y[f"seat_{side}"], axle.tube + 14.0
        case _:
            return 0.5 * mm["stud_circle"], axle.hub_face(side), 0.5 * mm["stud_circle"]


def _single(axle: Axle, kind: str) -> Spot:  # noqa: PLR0911, PLR0912 (one line a part)
    centre = axle.y["centre"]
    match kind:
        case "cover":
            return -axle.nose * axle.ball, centre, -0.3 * axle.ball
        case "ring_and_pinion":
            return 0.0, centre + 30.0, -0.4 * axle.mm["ring_diameter"]
        case "side_gears":
            return 25.0, centre, 25.0
        case "carrier_caps":
            return 0.0, centre - 62.0, 34.0
        case "propeller_shaft":
            return axle.nose * (axle.ball + 150.0), centre, -20.0
        case "tie_rod" if axle.front:
            x, _, z = axle.arm_tip("left")
            return x, 0.0, z
        case "drag_link" if axle.front:
            return _middle(*axle.drag_ends())
        case "steering_arm" if axle.front:
            far = "right" if axle.words.get("steering.drive_side", "left") == "left" else "left"
            x, y, z = axle.arm_tip(far)
            return 0.6 * x, _between(axle.y[f"kingpin_{far}"], y, 0.6), z
        case "track_bar" if axle.barred:
            return _middle(*axle.track_bar_ends())
        case "track_bar_bracket_axle" | "bracket_bolts" if axle.barred:
            return axle.track_bar_ends()[0]
        case "track_bar_bracket_frame" if axle.barred:
            return axle.track_bar_ends()[1]
        case "links" if axle.arms != "leaves":
            (x0, y, z), (x1, _, _) = axle.lower_arm_ends("left")
            return _between(x0, x1, 0.4), y, z
        case "bracket_bolts":
            return 0.0, axle.y["seat_left"], -axle.tube
        case _:
            return 0.0, centre, -0.6 * axle.ball


def _between(start: float, end: float, share: float) -> float:
    return start + share * (end - start)


def _middle(start: Spot, end: Spot) -> Spot:
    x, y, z = (0.5 * (one + other) for one, other in zip(start, end, strict=True))
    return x, y, z
