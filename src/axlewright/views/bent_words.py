"""What stays bent after a bad moment, in words and numbers: wheels, shafts, seals, splines."""

from dataclasses import dataclass
from math import degrees, isfinite, isnan
from typing import Any, Final

from axlewright.duty import live_cases
from axlewright.physics import spline
from axlewright.rig import Column
from axlewright.strength import (
    Assessment,
    Bent,
    Place,
    ShaftRun,
    bent_after,
    standing_camber,
)
from axlewright.tables import limit
from axlewright.views.phrases import plain, quantity

KINDS: Final = frozenset({"tube", "tube_joint", "end_forging", "sleeve"})
SHARES: Final = (0.8, 0.9, 1.0, 1.1)  # of the moment at which the row gives
TRACE: Final = 3.5e-4  # rad, 0.02 deg; nobody measures less
SEAL_WEEPS: Final = 3e-4  # m off the middle, from which a lip seal does not follow; memory
RUNS_TRUE: Final = 5e-5  # m; less is not told
SIDES: Final = ("left", "right")


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """One share of the moment at which a row gives, and what the tubes keep of it."""

    share: float
    bent: Bent

    @property
    def folds(self) -> bool:
        """Whether the tube folds instead."""
        return isnan(float(self.bent.camber_left[0]))

    @property
    def straight(self) -> bool:
        """Whether nothing stays that anybody could measure."""
        return not self.folds and all(
            abs(float(angle[0])) < TRACE
            for angle in (
                self.bent.camber_left,
                self.bent.camber_right,
                self.bent.toe_left,
                self.bent.toe_right,
                self.bent.shaft_left.spline_angle,
                self.bent.shaft_right.spline_angle,
            )
        )


def bent_steps(assessment: Assessment, place: Place) -> list[Step]:
    """What the tubes keep around the moment at which a row gives, at the middle of everything."""
    point = assessment.point
    gives = float(point.solved.hardness[place.row, 0, place.case])
    if place.kind not in KINDS or not isfinite(gives):
        return []
    return [
        Step(
            share=share,
            bent=bent_after(assessment.columns, point.housing, place.case, share * gives),
        )
        for share in SHARES
    ]


def bent_lines(assessment: Assessment, place: Place, system: str = "metric") -> list[str]:
    """The same in lines, with what it does."""
    steps = bent_steps(assessment, place)
    if not steps:
        return []
    lines = [f"   what the tubes keep after: {live_cases()[place.case].label}"]
    straight = [step for step in steps if step.straight]
    if straight:
        upto = f"up to {_share(straight[-1])}"
        lines.append(f"   - {upto} of the moment at which this row gives: nothing to measure")
    for step in steps:
        if step.folds:
            lines.append(f"   - from {_share(step)}: a tube folds")
            break
        if not step.straight:
            lines += _step_lines(assessment, step, system)
    return [*lines, _standing_line(assessment)]


def bent_json(assessment: Assessment) -> list[dict[str, Any]]:
    """What stays, for every row that bends a tube: SI, null where the tube folds."""
    return [
        {
            "part": place.part,
            "load_case": live_cases()[place.case].key,
            "share_of_its_moment": step.share,
            "folds": step.folds,
            "camber": _angles(step.bent.camber_left, step.bent.camber_right),
            "toe": _angles(step.bent.toe_left, step.bent.toe_right),
            "shafts": {
                "left": _run_json(step.bent.shaft_left),
                "right": _run_json(step.bent.shaft_right),
            },
        }
        for place in assessment.order
        for step in bent_steps(assessment, place)
    ]


def standing_json(assessment: Assessment) -> dict[str, Any]:
    """Camber of the sound axle under its standing load."""
    return _angles(*standing_camber(assessment.point.housing))


def _step_lines(assessment: Assessment, step: Step, system: str) -> list[str]:
    bent = step.bent
    camber = _both(bent.camber_left, bent.camber_right)
    toe = _both(bent.toe_left, bent.toe_right)
    lines = [f"   - at {_share(step)}: camber {camber}; toe {toe}"]
    rear = assessment.rig.axle == "rear"
    where = "at the tube's end" if rear else "beside the carrier"
    runs = (bent.shaft_left, bent.shaft_right)
    offs = [float((run.outer_seal if rear else run.inner_seal)[0]) for run in runs]
    for side, run, off in zip(SIDES, runs, offs, strict=True):
        if off >= RUNS_TRUE:
            lines.append(
                f"     the {side} shaft now runs {_length(off, system)} off the middle of its seal "
                f"{where}, {_angle(float(run.spline_angle[0]))} askew in its side gear"
            )
    does = _seal_words(max(offs), system)
    does += _camber_words(bent, assessment.rig.axle) + _spline_words(assessment, bent)
    return lines + [f"     so: {told}" for told in does]


def _seal_words(off: float, system: str) -> list[str]:
    if off < SEAL_WEEPS:
        return []
    weeps = _length(SEAL_WEEPS, system)
    return [f"the seal weeps (from about {weeps} off; memory), and so will a new one"]


def _camber_words(bent: Bent, axle: str) -> list[str]:
    """Against a published limit, with its scope."""
    read = limit("camber")
    if read.high is None or max(abs(float(each[0])) for each in _cambers(bent)) <= read.high:
        return []
    what = "the inner shoulders of the tyres wear" if _leans_in(bent) else "the tyres wear askew"
    steers = ", it pulls" if axle == "front" else ""
    return [f"{what}{steers} (beyond {read.as_printed}, {read.scope})"]


def _spline_words(assessment: Assessment, bent: Bent) -> list[str]:
    """How much of the load the hardest-worked teeth then take."""
    askew = max(float(run.spline_angle[0]) for run in (bent.shaft_left, bent.shaft_right))
    engaged = float(assessment.columns["spline_engaged"][0])
    factor = float(spline.sharing_factor(askew, engaged))
    if factor < 1.05:
        return []
    return [
        f"the splines' hardest-worked teeth carry {plain(factor, 2)} times their share (Dudley)"
    ]


def _standing_line(assessment: Assessment) -> str:
    told = _both(*standing_camber(assessment.point.housing))
    return f"   sound and unbent, standing loaded: camber {told}; take that off a reading first"


def _cambers(bent: Bent) -> tuple[Column, Column]:
    return bent.camber_left, bent.camber_right


def _leans_in(bent: Bent) -> bool:
    return min(float(each[0]) for each in _cambers(bent)) < 0.0


def _both(left: Column, right: Column) -> str:
    if max(abs(float(left[0])), abs(float(right[0]))) < TRACE:
        return "not to be measured"
    return f"{_angle(float(left[0]))} left, {_angle(float(right[0]))} right"


def _angle(angle: float) -> str:
    turned = degrees(angle)
    return f"{turned:.1f} deg" if abs(turned) >= 0.5 else f"{turned:.2f} deg"


def _length(length: float, system: str) -> str:
    if system == "metric":
        return f"{length * 1e3:.1f} mm"
    return quantity(length, "length", system, 1)


def _share(step: Step) -> str:
    return f"{100.0 * step.share:.0f} %"


def _angles(left: Column, right: Column) -> dict[str, Any]:
    return {"unit": "rad", "left": _number(left), "right": _number(right)}


def _run_json(run: ShaftRun) -> dict[str, Any]:
    return {
        "spline_angle": {"value": _number(run.spline_angle), "unit": "rad"},
        "end_angle": {"value": _number(run.end_angle), "unit": "rad"},
        "off_inner_seal": {"value": _number(run.inner_seal), "unit": "m"},
        "off_outer_seal": {"value": _number(run.outer_seal), "unit": "m"},
    }


def _number(value: Column) -> float | None:
    number = float(value[0])
    return number if isfinite(number) else None
