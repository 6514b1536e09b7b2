"""The drawing told in words, for a screen reader and for SVG's own title and description."""

from collections.abc import Sequence
from typing import Protocol

from axlewright import units
from axlewright.views.drawing_ink import CLOSENESS
from axlewright.views.drawing_links import called
from axlewright.views.drawing_places import Axle, spots


class Flagged(Protocol):
    """A numbered flag with its part's key and closeness."""

    @property
    def number(self) -> int:
        """Its number."""

    @property
    def part(self) -> str:
        """Its part's key."""

    @property
    def closeness(self) -> str:
        """How close the part is."""


def picture_words(
    axle: Axle, flags: Sequence[Flagged], stops: Sequence[str], system: str, views: Sequence[str]
) -> list[str]:
    """Say what the drawing shows, one sentence an entry, the title first."""
    held = "leaf springs" if axle.arms == "leaves" else axle.arms
    kind = "front" if axle.front else "rear"
    seen = {"across": "from behind", "side": "from the left", "plan": "from above"}
    shown = ", ".join(seen[view] for view in views)
    out = [f"Line drawing to scale of this {kind} axle, held by {held}, seen {shown}."]
    out += [f"STOP: {stop.removeprefix('STOP: ')}" for stop in stops]
    out += [_flag(axle, flag, system) for flag in flags]
    out += [
        (
            f"Tyre centre to tyre centre {_told(axle, 'track', system)}; "
            f"spring to spring {_told(axle, 'spring_spacing', system)}."
        ),
        *(
            f"{side.capitalize()}: hub {_told(axle, f'hub_height_{side}', system)} above "
            f"the ground, "
            f"tube {_told(axle, f'tube_outer_{side}', system)} across and "
            f"{_told(axle, f'tube_bare_{side}', system)} bare."
            for side in ("left", "right")
        ),
        (
            f"Wheel offset {units.show(axle.mm['wheel_offset'] / 1e3, 'offset', system)}, "
            f"spacer {_told(axle, 'wheel_spacer', system)}."
        ),
        (
            f"Tyre {units.show(round(axle.tyre_outer / 1e3, 3), 'length', system)} in diameter, "
            f"carrying {units.show(axle.weight, 'weight', system)} on the axle."
        ),
    ]
    return out


def _flag(axle: Axle, flag: Flagged, system: str) -> str:
    places = spots(axle, flag.part)
    told = " and ".join(_place(place[1], system) for place in places)
    close = f", {flag.closeness}: {CLOSENESS[flag.closeness]}" if flag.closeness else ""
    return f"Flag {flag.number}: {called(flag.part)}, {told}{close}."


def _place(y: float, system: str) -> str:
    if abs(y) < 15.0:
        return "in the middle"
    unit = "in" if units.SYSTEMS[system]["length"] == "in" else "cm"
    away = abs(y) / 1e3 / units.known("length")[unit]
    return f"{away:.0f} {unit} {'left' if y > 0 else 'right'} of the middle"


def _told(axle: Axle, name: str, system: str) -> str:
    return units.show(axle.mm[name] / 1e3, "length", system)
