"""The garage alignment of one axle, in its order: height, play, square, caster, toe, wheel."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final, Literal, TypeAlias

import numpy as np

from axlewright.errors import BadFile, Fault
from axlewright.geometry.alignment_caster import (
    Sweep,
    at_a_level_frame,
    camber_of,
    caster_on_a_flat,
    difference,
    sweep_of,
)
from axlewright.geometry.alignment_layout import layout_of
from axlewright.geometry.alignment_measured import (
    Judged,
    Measured,
    combined,
    judged,
    read_mean,
    tool_of,
)
from axlewright.geometry.alignment_turn import (
    Recentring,
    RodTurn,
    tie_rod_turn,
    track_bar_growth,
)
from axlewright.geometry.wedges import Wedge, caster_wedges
from axlewright.physics import alignment, steering
from axlewright.rig import (
    Columns,
    Finding,
    Readings,
    Rig,
    findings,
    has_track_bar,
    point_columns,
    stops,
)
from axlewright.tables import AlignmentTarget, alignment_mark, alignment_target

Play: TypeAlias = Literal["none", "some", "not looked at"]
SIDES: Final = ("left", "right")
ORDER: Final = ("ride_height", "play", "square", "caster", "toe", "steering_wheel")
STEP_OF: Final[Mapping[str, str]] = {
    "ride_height": "ride_height",
    "wheelbase": "square",
    "diagonal": "square",
    "off_centre": "square",
    "camber": "caster",
    "caster": "caster",
    "cross_caster": "caster",
    "cross_camber": "caster",
    "included": "caster",
    "toe": "toe",
}
MOST_TOE: Final = 0.06  # rad; more is no reading of toe
MOST_BAR: Final = 0.03  # m of track bar; more is no adjustment


@dataclass(frozen=True, slots=True, kw_only=True)
class Alignment:
    """Everything that the readings of one rig's axle tell.

    ``judged`` are the quantities in garage order. ``toe_length`` is rear less front at
    ``diameter``, m. ``turn`` and ``recentring`` say what to turn, where toe was read and is not
    within; ``track_bar`` is by how much the bar would grow to bring the axle to the middle.
    ``setback`` is the axle's turn in plan, rad, left side ahead; ``wedges`` would bring back a
    caster that is out, on leaf springs.
    """

    rig: Rig
    readings: Readings
    stops: tuple[Finding, ...]
    findings: tuple[Finding, ...]
    play: Play
    judged: tuple[Judged, ...]
    sweeps: tuple[Sweep, ...] = ()
    flats: Mapping[str, Measured]
    level_frame: Mapping[str, Measured]
    toe: Measured | None = None
    toe_length: Measured | None = None
    diameter: float
    diameter_given: bool
    turn: RodTurn | None = None
    recentring: Recentring | None = None
    track_bar: float | None = None
    setback: Measured | None = None
    wedges: tuple[Wedge, ...] = ()

    @property
    def axle(self) -> str:
        """Which axle: front or rear."""
        return self.rig.axle

    def of(self, key: str, side: str = "") -> Judged | None:
        """Find one judged quantity, None where it was not read."""
        for each in self.judged:
            if each.key == key and (not side or each.side == side):
                return each
        return None

    def state(self, step: str) -> str:
        """How one step of the order stands: done, put right, cannot tell or not read."""
        if step == "play":
            return {"none": "done", "some": "put right"}.get(self.play, "not read")
        if step == "steering_wheel":
            return "not read" if self.recentring is None else "put right"
        found = [each.verdict for each in self.judged if STEP_OF[each.key] == step]
        if not found:
            return "not read"
        if "out" in found:
            return "put right"
        return "cannot tell" if "cannot tell" in found else "done"

    @property
    def first_in_the_way(self) -> str:
        """First step before toe that wants to be put right; nothing where none does."""
        before = ORDER[: ORDER.index("toe")]
        return next((step for step in before if self.state(step) == "put right"), "")


def align(rig: Rig, readings: Readings) -> Alignment:
    """Judge the readings of a rig's axle and work out what to turn.

    Raises `BadFile` where readings contradict each other.
    """
    _checked(readings)
    columns = point_columns(rig)
    found = [
        *_height(rig, readings),
        *_square(rig, readings),
        *_cambers(rig, readings),
    ]
    front = rig.axle == "front"
    sweeps = tuple(
        sweep for side in SIDES if front and (sweep := sweep_of(readings, side)) is not None
    )
    flats = {
        side: flat
        for side in SIDES
        if front and (flat := caster_on_a_flat(readings, side)) is not None
    }
    if front:
        found += _casters(rig, readings, sweeps, flats)
    diameter, told = _diameter(rig, readings)
    length = _toe_length(readings)
    toe = None if length is None else _toe(length, diameter, told=told)
    turn = recentring = None
    if toe is not None:
        verdict = judged("toe", "", toe, toe_target(rig, readings))
        found.append(verdict)
        wheel_said = bool(readings.values("steering_wheel.off_left"))
        far = verdict.verdict == "out" or (
            verdict.verdict == "cannot tell" and abs(verdict.aim - toe.value) > toe.standard
        )  # a step smaller than what the readings leave open is no step
        if front and (far or wheel_said):
            layout = layout_of(rig, readings)
            aim = verdict.aim if far else toe.value
            turn, recentring = tie_rod_turn(layout, readings, rig, toe, aim)
            turn = turn if far else None
    seen = findings(rig)
    return Alignment(
        rig=rig,
        readings=readings,
        stops=stops(seen),
        findings=seen,
        play=_play(readings),
        judged=tuple(found),
        sweeps=sweeps,
        flats=flats,
        level_frame=_level(readings, sweeps, flats),
        toe=toe,
        toe_length=length,
        diameter=diameter,
        diameter_given=told,
        turn=turn,
        recentring=recentring,
        track_bar=_track_bar(rig, columns, found),
        setback=_setback(readings, columns),
        wedges=caster_wedges(rig, found),
    )


def toe_target(rig: Rig, readings: Readings) -> AlignmentTarget | tuple[float, float, float, str]:
    """Give the range of whole toe, rad: the manual's where it was given, else the table's."""
    if (told := _told(readings, "target.toe")) is not None:
        return told
    if rig.axle == "rear":
        return alignment_target("toe_rear", "rear", rig.tyre.outer_diameter)
    entry = alignment_target("toe", rig.axle, rig.tyre.outer_diameter)
    low, aim, high = (
        float(steering.toe_angle(end, rig.tyre.outer_diameter))
        for end in (entry.low, entry.aim, entry.high)
    )
    return low, aim, high, f"{entry.origin.source.kind}: {entry.as_printed}; {entry.scope}"


def _told(readings: Readings, path: str) -> tuple[float, float, float, str] | None:
    """Range that was typed in, with its middle as the aim."""
    answers = readings.answers.get(path, ())
    if not answers:
        return None
    answer = answers[0]
    aim = float(answer.value)
    half = answer.uncertainty or 0.0
    low, high = answer.band or (aim - half, aim + half)
    if low == high:
        slack = {"target.toe": 0.0009, "target.caster": 0.0087}.get(path, 0.0087)
        low, high = aim - slack, aim + slack
    return low, aim, high, f"given: {readings.word('target.from', 'as typed')}"


def _height(rig: Rig, readings: Readings) -> list[Judged]:
    return _sides(rig, readings, "ride_height", "ride_height", "ride_height.with")


def _square(rig: Rig, readings: Readings) -> list[Judged]:
    found = _sides(rig, readings, "wheelbase", "square.wheelbase", "square.with")
    found += _sides(rig, readings, "diagonal", "square.diagonal", "square.with")
    gaps = _pair(readings, "square.gap", "square.with")
    if gaps is not None:
        off = combined(gaps, lambda left, right: 0.5 * (left - right))
        found.append(judged("off_centre", "", off, _target(rig, "off_centre")))
    return found


def _sides(rig: Rig, readings: Readings, key: str, path: str, tool: str) -> list[Judged]:
    """Left less right of one thing."""
    pair = _pair(readings, path, tool)
    if pair is None:
        return []
    apart = combined(pair, lambda left, right: left - right)
    return [judged(key, "", apart, _target(rig, key))]


def _pair(readings: Readings, path: str, tool: str) -> tuple[Measured, Measured] | None:
    used = tool_of(readings, tool, "length")
    left, right = (read_mean(readings, f"{path}.{side}", used) for side in SIDES)
    return None if left is None or right is None else (left, right)


def _cambers(rig: Rig, readings: Readings) -> list[Judged]:
    found, sides = [], {}
    target = _told(readings, "target.camber") or _target(rig, "camber")
    for side in SIDES:
        camber = camber_of(readings, side)
        if camber is not None:
            sides[side] = camber
            found.append(judged("camber", side, camber, target))
    if len(sides) == 2:
        apart = difference(sides["left"], sides["right"])
        found.append(judged("cross_camber", "", apart, _target(rig, "cross_camber")))
    return found


def _casters(
    rig: Rig, readings: Readings, sweeps: tuple[Sweep, ...], flats: Mapping[str, Measured]
) -> list[Judged]:
    """Caster by the better of what was read on each side."""
    found, best = [], {}
    target = _told(readings, "target.caster") or _target(rig, "caster")
    swept = {sweep.side: sweep for sweep in sweeps}
    for side in SIDES:
        ways = [swept[side].caster] if side in swept else []
        ways += [flats[side]] if side in flats else []
        if ways:
            best[side] = min(ways, key=lambda way: way.standard)
            found.append(judged("caster", side, best[side], target))
    if len(best) == 2:
        apart = difference(best["left"], best["right"], same_tool=len(flats) == 2)
        found.append(judged("cross_caster", "", apart, _target(rig, "cross_caster")))
    together = [swept[side].included for side in SIDES if side in swept]
    if len(together) == 2 and together[0] is not None and together[1] is not None:
        apart = difference(together[0], together[1])
        found.append(judged("included", "", apart, _target(rig, "included")))
    return found


def _level(
    readings: Readings, sweeps: tuple[Sweep, ...], flats: Mapping[str, Measured]
) -> dict[str, Measured]:
    read = {sweep.side: sweep.caster for sweep in sweeps} | dict(flats)
    made = {side: at_a_level_frame(caster, readings) for side, caster in read.items()}
    return {side: caster for side, caster in made.items() if caster is not None}


def _target(rig: Rig, key: str) -> AlignmentTarget:
    return alignment_target(key, rig.axle, rig.tyre.outer_diameter)


def _play(readings: Readings) -> Play:
    said = readings.word("play.found", "not looked at")
    return "none" if said == "none" else "some" if said == "some" else "not looked at"


def _diameter(rig: Rig, readings: Readings) -> tuple[float, bool]:
    told = readings.value("toe.diameter")
    return (rig.tyre.outer_diameter, False) if told is None else (told, True)


def _toe_length(readings: Readings) -> Measured | None:
    """Rear less front, with the marks' own doubt and what the instrument leaves."""
    tool = tool_of(readings, "toe.with", "length")
    front, rear = (read_mean(readings, f"toe.{place}", tool) for place in ("front", "rear"))
    if front is None or rear is None:
        return None
    marks = alignment_mark(readings.word("toe.marks", "same_mark")).doubt
    fixed = float(np.hypot(marks, tool.own_error / np.sqrt(3.0)))
    return combined((front, rear), lambda ahead, behind: behind - ahead, fixed=fixed)


def _toe(length: Measured, diameter: float, *, told: bool) -> Measured:
    """Whole toe; the diameter is known to 10 mm, or to 3 % where it is the tyre's own."""
    across = 0.01 if told else 0.03 * diameter
    doubt = abs(length.value) / diameter**2 * across
    return combined(
        (length,), lambda gap: float(steering.toe_angle(gap, diameter)), fixed=doubt, kind="angle"
    )


def _track_bar(rig: Rig, columns: Columns, found: list[Judged]) -> float | None:
    off = next((each for each in found if each.key == "off_centre"), None)
    if off is None or off.verdict == "within" or not has_track_bar(rig.words):
        return None
    if "track_bar_span" not in columns or "track_bar_drop" not in columns:
        return None
    grown = track_bar_growth(
        -off.measured.value,
        float(columns["track_bar_drop"][0]),
        float(columns["track_bar_span"][0]),
        on_axle=rig.words["track_bar.on_axle"],
    )
    return grown if abs(grown) <= MOST_BAR else None


def _setback(readings: Readings, columns: Columns) -> Measured | None:
    pair = _pair(readings, "square.wheelbase", "square.with")
    if pair is None:
        return None
    track = float(columns["track"][0])
    return combined(
        pair,
        lambda left, right: float(alignment.axle_setback(left, right, track)),
        kind="angle",
    )


def _checked(readings: Readings) -> None:
    """Refuse what cannot stand together, in words."""
    faults = []
    length, across = _toe_length(readings), readings.value("toe.diameter")
    if length is not None and abs(length.value) > MOST_TOE * (across or 0.7):
        faults.append(
            _fault(
                readings,
                "toe.rear",
                "front and rear are too far apart to be toe; is one of them a slip of the pen?",
                "two readings that differ by a few millimetres",
            )
        )
    for place in ("front", "rear"):
        values = readings.values(f"toe.{place}")
        if values and max(values) - min(values) > 0.03:
            faults.append(
                _fault(
                    readings,
                    f"toe.{place}",
                    "these readings of one thing differ by more than 30 mm",
                    "readings of the same two marks",
                )
            )
    if faults:
        raise BadFile(readings.file or "what was typed", faults)


def _fault(readings: Readings, path: str, problem: str, accepted: str) -> Fault:
    answers = readings.answers[path]
    return Fault(
        file=readings.file or "what was typed",
        line=answers[0].line,
        field=path,
        problem=problem,
        given=", ".join(each.text for each in answers[:4]),
        accepted=accepted,
    )
