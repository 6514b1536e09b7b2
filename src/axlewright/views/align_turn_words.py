"""What to turn in words: the tie rod, the drag link, the track bar, and the steering wheel last."""

from math import degrees
from typing import Final

from axlewright.geometry import Alignment, Recentring, RodTurn
from axlewright.views.align_phrases import angle, fine, length, turns_words, way_words
from axlewright.views.wedge_words import wedge_lines, wedge_mind

STRAIGHT: Final = 0.017  # rad at the steering wheel; nobody sees less


def turn_lines(alignment: Alignment, system: str = "metric") -> list[str]:
    """What to turn, which way and how far, in the order of doing."""
    lines = []
    if alignment.track_bar is not None:
        what = "longer" if alignment.track_bar > 0.0 else "shorter"
        lines.append(
            f"Track bar {length(abs(alignment.track_bar), system)} {what}: it moves the axle to "
            "the middle and sets no toe. Its adjuster turns with one end off or by its own sleeve."
        )
    if alignment.wedges:
        lines += [*wedge_lines(alignment.wedges, system), *wedge_mind(alignment.wedges)]
        lines.append(
            "What the caster gains the pinion loses, degree for degree; `travel` tells the price."
        )
    turn, centre = alignment.turn, alignment.recentring
    if turn is not None:
        lines += rod_lines(turn, system)
    if centre is not None:
        if turn is not None and centre.moves:
            lines.append(
                f"Only the {centre.moves} wheel moves while the drag link holds the other: that "
                "is right, the drag link shares it out afterwards."
            )
        lines += recentring_lines(centre, system)
    return lines


def rod_lines(turn: RodTurn, system: str = "metric") -> list[str]:
    """What to do to the tie rod."""
    what = "longer" if turn.longer else "shorter"
    place = "ahead of" if turn.ahead else "behind"
    grown, sure = length(abs(turn.growth), system), length(1.645 * turn.doubt, system)
    lines = [
        f"Tie rod {grown} {what} (± {sure}): {turns_words(turn)}; {way_words(turn)}.",
        (
            f"The rod lies {place} the axle; on its other side the same toe would ask for the "
            "opposite turn. Toe is set here, never on the track bar."
        ),
        (
            "Mark sleeve and rod, loosen clamps or jam nuts, turn, tighten, roll forward a turn of "
            "the wheels, read again."
        ),
        (
            f"Solved in space it is {fine(turn.growth, system)}; the simple sum, toe times arm, "
            f"says {fine(turn.simple, system)}."
        ),
    ]
    if turn.one_flat is not None and turn.in_place:
        lines.append(f"One flat is worth {angle(turn.one_flat)} of toe.")
    return lines


def recentring_lines(centre: Recentring, system: str = "metric") -> list[str]:
    """What to do to the drag link."""
    rod = centre.rod
    what = "longer" if rod.longer else "shorter"
    if abs(centre.wheel_off) < STRAIGHT:
        return ["The steering wheel stays where it is, as far as this can be told; drive and look."]
    lines = [
        (
            f"Left alone, the steering wheel would stand {wheel_off(centre)}. "
            f"Drag link {length(abs(rod.growth), system)} {what}: "
            f"{turns_words(rod)}; {way_words(rod)}."
        )
    ]
    if rod.turns is not None and rod.turns > 1.0:
        lines.append(
            "More than a turn of the drag link: first see that the steering box is at its centre; "
            "only then is the wheel itself put over."
        )
    return lines


def wheel_off(centre: Recentring) -> str:
    """Where the steering wheel would stand."""
    side = "left" if centre.wheel_off > 0.0 else "right"
    return f"{degrees(abs(centre.wheel_off)):.0f} deg to the {side} when driving straight"


def wheel_lines(alignment: Alignment) -> list[str]:
    """The steering wheel as a step: last, by the drag link."""
    centre = alignment.recentring
    if centre is None:
        return ["last, on the drag link; say where it stands when driving straight"]
    if abs(centre.wheel_off) < STRAIGHT:
        return ["stays where it is, as far as this can be told; drive and look"]
    return [f"would stand {wheel_off(centre)}; set it on the drag link, below"]
