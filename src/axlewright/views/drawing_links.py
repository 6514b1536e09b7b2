"""What can be tapped in a drawing: parts and dimension lines, as links or as plain groups."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from dataclasses import field as made
from xml.sax.saxutils import quoteattr

from axlewright.rig import FIELDS
from axlewright.tables import consequences
from axlewright.views.questions import field_name

# What the shape of a part is drawn from, among the first thirteen questions.
SHAPED_BY: Mapping[str, tuple[str, ...]] = {
    "tyre": ("tyre.sidewall",),
    **dict.fromkeys(("wheel", "wheel_studs", "hub_bearing", "spindle"), ("track.tyres",)),
    "spacer": ("wheel.spacer",),
    "locking_hub": ("track.tyres",),
    **dict.fromkeys(("tube", "sleeve"), ("tube.girth.{side}", "tube.bare.{side}")),
    **dict.fromkeys(("tube_joint", "inner_shaft", "spline"), ("tube.bare.{side}",)),
    **dict.fromkeys(
        ("centre", "cover", "ring_and_pinion", "side_gears", "carrier_caps", "propeller_shaft"),
        ("tube.bare.left", "tube.bare.right"),
    ),
    **dict.fromkeys(("end_forging", "knuckle", "gusset", "stub_shaft"), ("track.tyres",)),
    **dict.fromkeys(("ball_joints", "kingpins", "steering_arm"), ("track.tyres",)),
    **dict.fromkeys(("tie_rod", "drag_link"), ("track.tyres",)),
    **dict.fromkeys(("cross_joint", "yoke_ears"), ("joint.cap_across", "joint.cap_to_cap")),
    **dict.fromkeys(
        ("spring", "spring_seat", "damper_bracket"), ("held_by.weight_on", "track.springs")
    ),
    **dict.fromkeys(("links", "link_brackets", "bracket_bolts"), ("held_by.arms",)),
    **dict.fromkeys(
        ("track_bar", "track_bar_bracket_axle", "track_bar_bracket_frame"), ("held_by.arms",)
    ),
}
# Where a tap on a part leads while its questions are asked.
ASKED_AT: Mapping[str, str] = {
    "tyre": "tyre.sidewall",
    "wheel": "wheel.offset",
    "spacer": "wheel.spacer",
    "wheel_studs": "wheel.studs",
    "locking_hub": "drive.unlocking_hubs",
    "hub_bearing": "hub.kind",
    "spindle": "hub.spindle",
    "tube": "tube.girth.{side}",
    "tube_joint": "tube.bare.{side}",
    "sleeve": "sleeve.wall.{side}",
    "truss": "truss.height",
    "gusset": "forging.gussets",
    "end_forging": "forging.gussets",
    "knuckle": "knuckle.lock",
    "ball_joints": "kingpin.kind",
    "kingpins": "kingpin.kind",
    "steering_arm": "steering.arm",
    "tie_rod": "steering.tie_rod",
    "drag_link": "steering.drag_link",
    "inner_shaft": "shaft.inner",
    "stub_shaft": "shaft.stub",
    "spline": "shaft.spline_teeth",
    "cross_joint": "joint.cap_across",
    "yoke_ears": "joint.cap_to_cap",
    "centre": "drive.lock",
    "side_gears": "drive.lock",
    "carrier_caps": "gear.ring",
    "ring_and_pinion": "gear.ring",
    "cover": "gear.ring",
    "propeller_shaft": "gear.ratio",
    "spring": "held_by.weight_on",
    "spring_seat": "track.springs",
    "damper_bracket": "damper_bracket.behind",
    "links": "held_by.arms",
    "link_brackets": "links.bracket_plate",
    "track_bar": "track_bar.outer",
    "track_bar_bracket_axle": "track_bar.bracket_plate",
    "track_bar_bracket_frame": "track_bar.span",
    "bracket_bolts": "track_bar.bolt",
}
_BY_PATH = {each.path: each for each in FIELDS}


def kind_of_part(part: str) -> str:
    """Part without its side."""
    return part.removesuffix("_left").removesuffix("_right")


def assumed(part: str, known: Collection[str] | None) -> bool:
    """Whether a part still has a usual shape, because what it is drawn from was not told."""
    if known is None:
        return False
    side = "left" if part.endswith("_left") else "right"
    wanted = SHAPED_BY.get(kind_of_part(part), ())
    return any(path.format(side=side) not in known for path in wanted)


def unsaid(path: str, known: Collection[str] | None) -> bool:
    """Whether a measurement waits for its number."""
    return known is not None and path not in known


def ident(name: str) -> str:
    """A field's path or a part's key as the end of an address."""
    return name.replace(".", "-").replace("_", "-")


def called(part: str) -> str:
    """What a drawn part is called, "either" where its key names no side of twins."""
    names, kind = consequences(), kind_of_part(part)
    if part in names:
        return names[part].label
    if f"{kind}_left" in names:
        return f"either {names[f'{kind}_left'].label.removeprefix('left ')}"
    side = part.removeprefix(kind).strip("_")
    return f"{side} {kind.replace('_', ' ')}".strip()


@dataclass(frozen=True, slots=True, kw_only=True)
class Link:
    """One place that a tap leads to: its address, what it is called, and what it asks for."""

    address: str = ""
    told: str = ""
    asks: str = ""


@dataclass(slots=True, kw_only=True)
class Links:
    """Where parts and dimension lines of a drawing lead: the first half of each address.

    A dimension line leads to ``field`` and its field, a part to ``part`` and its kind, or where
    ``part`` is empty to the question that tells of it; with both empty nothing is a link. Each
    place is met by the Tab key once a sheet, and can be tapped wherever it is drawn.
    """

    part: str = ""
    field: str = ""
    reached: set[str] = made(default_factory=set)

    def to_part(self, part: str, closeness: str) -> Link:
        """Where a part leads; nowhere where nothing is told of it."""
        kind, name = kind_of_part(part), called(part)
        if self.part and (kind in consequences() or f"{kind}_left" in consequences()):
            return Link(
                address=f"{self.part}{ident(kind)}", told=f"{name}: {closeness}".removesuffix(": ")
            )
        if kind in ASKED_AT and self.field:
            side = "left" if part.endswith("_left") else "right"
            path = ASKED_AT[kind].format(side=side)
            return Link(address=f"{self.field}{ident(path)}", told=name, asks=path)
        return Link()

    def to_field(self, path: str, told: str) -> Link:
        """Where a dimension line leads, with what it says, or that it is empty."""
        if not self.field:
            return Link()
        says = f"{field_name(_BY_PATH[path])}: {told or 'not yet said'}"
        return Link(address=f"{self.field}{ident(path)}", told=says)

    def opened(self, link: Link, attributes: str) -> str:
        """Start of a link; only the first to an address is met by the Tab key and read out."""
        told = f" aria-label={quoteattr(link.told)}"
        if link.address in self.reached:
            told = ' tabindex="-1" aria-hidden="true"'
        self.reached.add(link.address)
        asks = f' data-asks="{link.asks}"' if link.asks else ""
        return f"<a href={quoteattr(link.address)}{told}{asks}{attributes}>"
