"""A small network from causes to readings: which sets of causes explain what was read, how well.

Nought, one or two causes at once. Each cause has a few classes of size; in each class the readings
are normal about what the geometry says, and share what blurs several of them at once (the slope of
the floor). Signs are there or not, each cause by its own chance (noisy or).
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations
from typing import Final, NamedTuple, TypeAlias

import numpy as np
from numpy.typing import NDArray

from axlewright.physics.measurement import NINETY
from axlewright.tables import (
    LocatorCause,
    LocatorDoubt,
    LocatorJob,
    LocatorLikelihood,
    LocatorReading,
    locator_causes,
    locator_doubts,
    locator_jobs,
    locator_likelihoods,
    locator_readings,
)
from axlewright.upkeep.signatures import SIDES, Effect, Sizes, Way, ways

Array: TypeAlias = NDArray[np.float64]

CLASSES: Final = (3, 2)  # of size, of equal chance: of a cause alone, of one beside another
MODEL: Final = 0.15  # of each effect: the doubt of small-angle geometry and assumed sizes; memory
# An axle comes to a bench for a reason, and the smallest harms look like none: of the share that
# causes leave to "none of these" so much is taken. Set on benches, as `belief.TRUST`.
SELDOM_NOTHING: Final = 0.87
SURE: Final = 1e-3  # no sign is surer to come or to stay away; memory


@dataclass(frozen=True, slots=True, kw_only=True)
class Tables:
    """Everything that the network is built from."""

    causes: tuple[LocatorCause, ...]
    likelihoods: tuple[LocatorLikelihood, ...]
    readings: tuple[LocatorReading, ...]
    jobs: tuple[LocatorJob, ...]
    doubts: tuple[LocatorDoubt, ...]


def house_tables() -> Tables:
    """The tables that the house keeps."""
    return Tables(
        causes=tuple(locator_causes().values()),
        likelihoods=tuple(locator_likelihoods().values()),
        readings=tuple(locator_readings().values()),
        jobs=tuple(locator_jobs().values()),
        doubts=tuple(locator_doubts().values()),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Cause:
    """One cause on one side, or on none."""

    key: str
    side: str
    row: LocatorCause

    @property
    def label(self) -> str:
        """Its name with its side, the vehicle's."""
        return f"{self.side} {self.row.label}" if self.side else self.row.label


@dataclass(frozen=True, slots=True, kw_only=True)
class Network:
    """Sets of causes, and the classes of readings that they make.

    ``holds`` (sets, causes) says which causes a set holds, ``prior`` (sets,) its share before any
    reading, ``of`` (classes,) the set of a class, ``share`` its part of that set, ``mean``
    (classes, numbers) and ``spread`` (classes, numbers, numbers) its readings on a perfect
    instrument, ``chance`` (classes, signs) the chance of each sign.
    """

    causes: tuple[Cause, ...]
    numbers: tuple[str, ...]
    signs: tuple[str, ...]
    rows: Mapping[str, LocatorReading]
    jobs: tuple[LocatorJob, ...]
    holds: NDArray[np.bool_]
    prior: Array
    of: NDArray[np.int64]
    share: Array
    mean: Array
    spread: Array
    chance: Array


def network(
    sizes: Sizes,
    *,
    after_hit: bool,
    floor_mapped: bool = False,
    held: tuple[str, ...] = (),
    tables: Tables | None = None,
) -> Network:
    """The network of one axle.

    Parameters
    ----------
    after_hit
        Whether something was just hit: it changes the shares before any reading.
    floor_mapped
        Whether the floor's slope is known and taken off.
    held
        Rods whose bow was plainly measured: every set holds them, and up to two causes besides
        (one beside both rods), so that what they leave unexplained is still looked into.
    """
    told = tables or house_tables()
    causes = _causes(told, sizes.axle)
    rows = {
        key: row
        for row in told.readings
        if row.axle in {sizes.axle, "both"}
        for key in _keys(row.key, row.each)
    }
    numbers = tuple(key for key, row in rows.items() if row.kind != "sign")
    signs = tuple(key for key, row in rows.items() if row.kind == "sign")
    still = np.array([1.0 - rows[key].usual for key in signs])
    sound, blur = _sound(told, rows, numbers, sizes.axle, mapped=floor_mapped)
    shows = _shows(told, rows, signs)
    alone, beside = (
        [_classes(cause, sizes, numbers, shows(cause), count) for cause in causes]
        for count in CLASSES
    )
    sure = tuple(i for i, cause in enumerate(causes) if cause.key in held)
    rest = [i for i in range(len(causes)) if i not in sure]
    more = 2 if len(sure) < 2 else 1
    sets = [sure + some for count in range(more + 1) for some in combinations(rest, count)]
    of, made = [], []
    for at, members in enumerate(sets):
        few = len(members) - len(sure) > 1
        parts = [(beside if few and i not in sure else alone)[i] for i in members]
        classes = _together(parts, _Class(1.0, sound, blur, still))
        of += [at] * len(classes)
        made += classes
    holds = np.zeros((len(sets), len(causes)), dtype=bool)
    for at, members in enumerate(sets):
        holds[at, list(members)] = True
    each = np.array([c.row.after_hit if after_hit else c.row.in_use for c in causes])
    each[list(sure)] = 1.0
    prior = _priors(each, holds)
    prior[~holds.any(axis=1)] *= SELDOM_NOTHING
    prior /= prior.sum()
    return Network(
        causes=causes,
        numbers=numbers,
        signs=signs,
        rows=rows,
        jobs=tuple(job for job in told.jobs if job.axle in {sizes.axle, "both"}),
        holds=holds,
        prior=prior,
        of=np.array(of),
        share=np.array([each.share for each in made]),
        mean=np.array([each.mean for each in made]),
        spread=np.array([each.spread for each in made]),
        chance=np.clip(1.0 - np.array([each.still for each in made]), SURE, 1.0 - SURE),
    )


def jobs_readings(net: Network, job: str) -> tuple[str, ...]:
    """Readings that one job gives."""
    return tuple(key for key, row in net.rows.items() if row.job == job)


def _priors(each: Array, holds: NDArray[np.bool_]) -> Array:
    """Causes come by themselves; larger sets than are listed lend their share to the largest."""
    prior = np.prod(np.where(holds, each, 1.0 - each), axis=1)
    count = holds.sum(axis=1)
    two = count == count.max()
    prior[two] *= (1.0 - prior[~two].sum()) / prior[two].sum()
    return np.asarray(prior)


def _keys(key: str, each: bool) -> tuple[str, ...]:
    return tuple(f"{key}_{side}" for side in SIDES) if each else (key,)


def _causes(told: Tables, axle: str) -> tuple[Cause, ...]:
    return tuple(
        Cause(key=f"{row.key}_{side}" if side else row.key, side=side, row=row)
        for row in told.causes
        if row.axle in {axle, "both"}
        for side in (SIDES if row.each else ("",))
    )


def _vector(seen: Effect, numbers: Sequence[str]) -> Array:
    return np.array([seen.get(key, 0.0) for key in numbers])


def _sound(
    told: Tables,
    rows: Mapping[str, LocatorReading],
    numbers: tuple[str, ...],
    axle: str,
    *,
    mapped: bool,
) -> tuple[Array, Array]:
    """Middle and spread of a sound axle's readings."""
    middle = np.array([rows[key].usual for key in numbers])
    wide = np.diag(np.array([rows[key].as_built for key in numbers]) ** 2)
    given = {row.key for row in told.doubts if row.only} if mapped else set()
    dropped = {key.removesuffix("_mapped") for key in given}
    for row in told.doubts:
        if row.axle not in {axle, "both"} or row.key in dropped:
            continue
        if row.only and row.key not in given:
            continue
        load = row.spread * _vector(dict(row.loads), numbers)
        wide += np.outer(load, load)
    return middle, wide


def _size_classes(low: float, high: float, count: int) -> list[tuple[float, float]]:
    """Middle and standard deviation of each of so many equal parts of a lognormal size."""
    score = np.linspace(-3.5, 3.5, 7001)
    weight = np.exp(-0.5 * score**2)
    below = np.cumsum(weight) / weight.sum()
    size = np.sqrt(low * high) * np.exp(score * np.log(high / low) / (2.0 * NINETY))
    found = []
    for part in range(count):
        inside = (below > part / count) & (below <= (part + 1) / count)
        middle = float(np.average(size[inside], weights=weight[inside]))
        around = np.average((size[inside] - middle) ** 2, weights=weight[inside])
        found.append((middle, float(np.sqrt(around))))
    return found


class _Class(NamedTuple):
    """Share, middle and spread of numbers, and the chance of each sign to stay away."""

    share: float
    mean: Array
    spread: Array
    still: Array


def _classes(
    cause: Cause, sizes: Sizes, numbers: tuple[str, ...], shows: Array, count: int
) -> list[_Class]:
    """What one cause adds, class by class; a sign comes in proportion to the rank of the size."""
    row = cause.row
    found = []
    for way in ways(row.key, cause.side, sizes, row.across):
        for sense, part in ((1.0, row.main_way), (-1.0, 1.0 - row.main_way)):
            if part <= 0.0:
                continue
            for at, (size, around) in enumerate(_size_classes(row.low, row.high, count)):
                middle, wide = _class(way, sense * size, around, numbers)
                still = 1.0 - np.minimum(shows * (2 * at + 1) / count, 1.0 - SURE)
                found.append(_Class(way.share * part / count, middle, wide, still))
    return found


def _class(way: Way, size: float, around: float, numbers: tuple[str, ...]) -> tuple[Array, Array]:
    middle = _vector(way.effect(size), numbers)
    step = 0.01 * size
    slope = _vector(way.effect(size + step), numbers) - _vector(way.effect(size - step), numbers)
    load = slope / (2.0 * step) * around
    wide = np.outer(load, load) + np.diag((MODEL * middle) ** 2)
    blur = size * _vector(way.blur, numbers)
    wide += np.outer(blur, blur)
    for more, doubt, effect in way.beside:
        beside = _vector(effect, numbers)
        middle = middle + more * beside
        wide = wide + np.outer(doubt * beside, doubt * beside)
    return middle, wide


def _together(parts: Sequence[Sequence[_Class]], sound: _Class) -> list[_Class]:
    """Causes add up in numbers; a sign stays away only if each of them lets it (noisy or)."""
    found = [sound]
    for classes in parts:
        found = [
            _Class(
                one.share * two.share,
                one.mean + two.mean,
                one.spread + two.spread,
                one.still * two.still,
            )
            for one in found
            for two in classes
        ]
    return found


def _shows(
    told: Tables, rows: Mapping[str, LocatorReading], signs: tuple[str, ...]
) -> Callable[[Cause], Array]:
    """Chance of each sign by one cause alone: on its own side where both have sides."""
    by = {(row.cause, row.sign): row.chance for row in told.likelihoods}

    def shows(cause: Cause) -> Array:
        return np.array(
            [
                by.get((cause.row.key, rows[sign].key), 0.0)
                if not cause.side or not rows[sign].each or sign.endswith(cause.side)
                else 0.0
                for sign in signs
            ]
        )

    return shows
