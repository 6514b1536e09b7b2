"""What a few readings are worth, and whether they are within a target, out, or cannot tell."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from math import inf, isfinite, sqrt
from typing import Final, Literal, TypeAlias

import numpy as np

from axlewright.physics import measurement
from axlewright.physics.measurement import NINETY
from axlewright.rig import Readings
from axlewright.tables import AlignmentTarget, Instrument, instrument, instruments

Verdict: TypeAlias = Literal["within", "out", "cannot tell", "no target"]
VERDICTS: Final[dict[int, Verdict]] = {
    measurement.WITHIN: "within",
    measurement.OUT: "out",
    measurement.CANNOT_TELL: "cannot tell",
}
USUAL: Final = {"length": "tape", "angle": "angle_finder", "turn": "floor_marks"}
COVERED: Final = 0.90  # share that a band covers, as everywhere in the house
ABOUT: Final = 3.0  # "about" trebles the scatter
PATIENCE: Final = 12  # readings of one thing that somebody will take


@dataclass(frozen=True, slots=True, kw_only=True)
class Measured:
    """A mean of readings, m or rad.

    ``standard`` is its uncertainty with ``freedom`` degrees of freedom; of that, ``fixed`` is
    what more readings do not lessen, and ``scatter`` the standard deviation of one reading.
    """

    value: float
    standard: float
    freedom: float
    fixed: float
    scatter: float
    count: int
    kind: str
    instrument: str

    @property
    def half(self) -> float:
        """Half the 90 % band."""
        return self.standard * _coverage(self.freedom)

    @property
    def band(self) -> tuple[float, float]:
        """The 90 % band."""
        return self.value - self.half, self.value + self.half


@dataclass(frozen=True, slots=True, kw_only=True)
class Judged:
    """One measured quantity beside its target: range, aim, who says so, and the verdict.

    Where it cannot tell, ``repeats`` readings in all would settle it if their mean stays (inf
    where no number would), and ``better`` is an instrument with which a few would; one or the
    other may be all that helps. ``fallback`` is said where neither does.
    """

    key: str
    side: str
    measured: Measured
    low: float
    aim: float
    high: float
    said_by: str
    scope: str
    verdict: Verdict
    repeats: float = inf
    better: str = ""


def tool_of(readings: Readings, path: str, measures: str) -> Instrument:
    """Find the instrument that was named, or the usual one."""
    return instrument(readings.word(path, USUAL[measures]))


def read_mean(readings: Readings, path: str, tool: Instrument) -> Measured | None:
    """Give the mean of one thing's readings, resolution and scatter counted; None if not read."""
    answers = readings.answers.get(path, ())
    if not answers:
        return None
    values = readings.values(path)
    spread = [_own_doubt(each.uncertainty, each.band) for each in answers]
    rough = ABOUT if any(each.about for each in answers) else 1.0
    told = max(spread)
    pooled = told if told > 0.0 else rough * tool.scatter
    steps = () if told > 0.0 else (0.5 * tool.resolution,)
    found = measurement.combined_uncertainty(values, half_width=steps, pooled=pooled)
    own = float(np.std(values, ddof=1)) if len(values) > 1 else 0.0
    return Measured(
        value=float(found.mean),
        standard=float(found.standard),
        freedom=float(found.freedom),
        fixed=steps[0] / sqrt(3.0) if steps else 0.0,
        scatter=max(own, pooled),
        count=len(values),
        kind="length" if tool.measures == "length" else "angle",
        instrument=tool.key,
    )


def combined(
    parts: Sequence[Measured],
    value: Callable[..., float],
    *,
    fixed: float = 0.0,
    kind: str = "",
) -> Measured:
    """Give a quantity made of measured ones, by the slope of ``value`` in each of them.

    ``fixed`` is one more standard doubt of the result, that readings do not lessen. As many
    readings of every part are thought to go together when ``scatter`` is told.

    References
    ----------
    jcgm100, 5.1, G.4
    """
    at = [part.value for part in parts]
    slopes = []
    for place, part in enumerate(parts):
        step = max(part.standard, 1e-7)
        up, down = at.copy(), at.copy()
        up[place] += step
        down[place] -= step
        slopes.append((value(*up) - value(*down)) / (2.0 * step))
    each = [slope * part.standard for slope, part in zip(slopes, parts, strict=True)]
    total = sqrt(sum(one**2 for one in each) + fixed**2)
    lost = sum(one**4 / part.freedom for one, part in zip(each, parts, strict=True))
    still = sum((slope * part.fixed) ** 2 for slope, part in zip(slopes, parts, strict=True))
    varies = sum((slope * part.scatter) ** 2 for slope, part in zip(slopes, parts, strict=True))
    return Measured(
        value=value(*at),
        standard=total,
        freedom=total**4 / lost if lost > 0.0 else inf,
        fixed=sqrt(still + fixed**2),
        scatter=sqrt(varies),
        count=min(part.count for part in parts),
        kind=kind or parts[0].kind,
        instrument=parts[0].instrument,
    )


def judged(
    key: str,
    side: str,
    measured: Measured,
    target: AlignmentTarget | tuple[float, float, float, str],
) -> Judged:
    """Hold a quantity against a target of the table, or (low, aim, high, who says so)."""
    if isinstance(target, AlignmentTarget):
        low, aim, high = target.low, target.aim, target.high
        said_by, scope = target.origin.source.kind, f"{target.as_printed}; {target.scope}"
    else:
        low, aim, high, said_by = target
        scope = ""
    verdict = VERDICTS[
        int(measurement.guarded_verdict(measured.value, measured.standard, low, high))
    ]
    repeats, better = inf, ""
    if verdict == "cannot tell":
        limits = {"low": low, "high": high}
        repeats = float(
            measurement.repeats_to_tell(measured.value, measured.scatter, measured.fixed, **limits)
        )
        better = _better(measured, limits)
    return Judged(
        key=key,
        side=side,
        measured=measured,
        low=low,
        aim=aim,
        high=high,
        said_by=said_by,
        scope=scope,
        verdict=verdict,
        repeats=repeats,
        better=better,
    )


def _better(measured: Measured, limits: dict[str, float]) -> str:
    """Find the coarsest finer instrument with which a few readings would settle it."""
    now = instruments()[measured.instrument]
    unit_fixed = max(now.resolution / sqrt(12.0), 1e-9)
    found = []
    for tool in instruments().values():
        if tool.measures != now.measures or tool.scatter >= now.scatter:
            continue
        finer = tool.resolution / sqrt(12.0) / unit_fixed
        need = measurement.repeats_to_tell(
            measured.value,
            measured.scatter * tool.scatter / now.scatter,
            measured.fixed * min(finer, 1.0),
            **limits,
        )
        if isfinite(float(need)) and float(need) <= PATIENCE:
            found.append((tool.scatter, tool.key))
    return max(found)[1] if found else ""


def _own_doubt(uncertainty: float | None, band: tuple[float, float] | None) -> float:
    if uncertainty is not None:
        return uncertainty / NINETY
    return 0.5 * (band[1] - band[0]) / NINETY if band is not None else 0.0


def _coverage(freedom: float) -> float:
    if not isfinite(freedom) or freedom > 1e6:
        return NINETY
    return float(measurement.coverage_factor(max(freedom, 1.0), COVERED))
