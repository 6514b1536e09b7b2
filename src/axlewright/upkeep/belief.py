"""From readings to shares: Bayes' rule over the network, and what a further job would tell.

A reading that was not taken is NaN; so is a sign that nobody looked for (else 1 there, 0 not).
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from axlewright.upkeep.network import Array, Network, jobs_readings

BLOCK = 64  # cases at a time: keeps the work inside the cache
KEPT = 400  # classes that a forecast looks at; the rest has no weight left
DRAWS = 96  # outcomes that a forecast draws
# A spread out of the tables is known to a factor of 1.5 at best (their column `spread`), so a class
# of readings is a mixture of four scales of its spread, the wide ones for what nobody thought of;
# and of a sign's logarithm so much is taken, for signs hang together more than the network says.
# Set on benches of axles made by geometry (docs/locator.md), with other seeds than the tests'.
SCALES = (1.0 / 1.5, 1.0, 1.5, 2.5)
WEIGHTS = (0.15, 0.4, 0.35, 0.1)
TRUST = 0.85
RODS = ("tie_rod", "drag_link")
PLAINLY = 4.0  # standard deviations
SEED = 20_260_501


@dataclass(frozen=True, slots=True, kw_only=True)
class Read:
    """Readings of one axle: numbers, their standard uncertainties, signs; NaN where not taken."""

    numbers: Array
    standard: Array
    signs: Array


@dataclass(frozen=True, slots=True, kw_only=True)
class Gain:
    """What one job is expected to tell, in bits, and how many minutes it takes."""

    job: str
    bits: float
    minutes: float

    @property
    def rate(self) -> float:
        """Bits a minute."""
        return self.bits / self.minutes


def unread(net: Network) -> Read:
    """Nothing read yet, by instruments as the tables have them, one reading each."""
    rows = [net.rows[key] for key in net.numbers]
    return Read(
        numbers=np.full(len(net.numbers), np.nan),
        standard=np.array([np.hypot(row.half_width / np.sqrt(3.0), row.repeat) for row in rows]),
        signs=np.full(len(net.signs), np.nan),
    )


def set_shares(net: Network, numbers: Array, standard: Array, signs: Array) -> Array:
    """Share of each set of causes, (cases, sets), for readings (cases, …).

    ``standard`` is (numbers,) or (cases, numbers).

    References
    ----------
    derived: Bayes' rule; the likelihood of a class is a normal density of the readings taken
    """
    blurs = np.broadcast_to(standard, numbers.shape)
    shares = np.empty((len(numbers), len(net.prior)))
    kinds: dict[bytes, list[int]] = {}
    for case, row in enumerate(numbers):
        taken = np.isfinite(row)
        kinds.setdefault(taken.tobytes() + blurs[case][taken].tobytes(), []).append(case)
    for cases in kinds.values():
        taken = np.flatnonzero(np.isfinite(numbers[cases[0]]))
        for start in range(0, len(cases), BLOCK):
            some = cases[start : start + BLOCK]
            weights = _class_logs(net, taken, numbers[some], blurs[some[0]])
            weights += _sign_logs(net, signs[some])
            shares[some] = _by_set(net, _normed(weights))
    return shares


def cause_shares(net: Network, sets: Array) -> Array:
    """Share of each cause, and last that of none of them, (cases, causes + 1)."""
    none = sets @ ~net.holds.any(axis=1)
    return np.concatenate([sets @ net.holds, none[:, None]], axis=1)


def plain_rods(net: Network, numbers: Array, standard: Array) -> tuple[str, ...]:
    """Rods whose bow, as measured, is plainly more than a sound rod and the string would show."""
    found = []
    for rod in RODS:
        key = f"{rod}_bow"
        if key in net.numbers:
            at = net.numbers.index(key)
            doubt = np.hypot(standard[at], net.rows[key].as_built)
            if np.isfinite(numbers[at]) and numbers[at] > PLAINLY * doubt:
                found.append(rod)
    return tuple(found)


def gains(net: Network, read: Read) -> tuple[Gain, ...]:
    """Jobs with something still to read, by bits a minute.

    Notes
    -----
    Outcomes are drawn from what is believed now, always with the same scores; the gain is the mean
    fall of the entropy over sets of causes.

    References
    ----------
    derived: mutual information of outcome and set, by drawing
    """
    weights = _class_logs(
        net, np.flatnonzero(np.isfinite(read.numbers)), read.numbers[None], read.standard
    )
    weights = _normed(weights + _sign_logs(net, read.signs[None]))[0]
    kept = np.argsort(weights)[-KEPT:]
    kept = kept[weights[kept] > 1e-6 * weights[kept[-1]]]
    share = weights[kept] / weights[kept].sum()
    middle, spread = _forecast(net, read, kept)
    draw = np.random.Generator(np.random.Philox(SEED))
    comb = (np.arange(DRAWS) + draw.random()) / DRAWS
    picked = np.minimum(np.searchsorted(np.cumsum(share), comb), len(kept) - 1)
    found = []
    for job in net.jobs:
        keys = jobs_readings(net, job.key)
        new = [net.numbers.index(key) for key in keys if key in net.numbers]
        new = [at for at in new if np.isnan(read.numbers[at])]
        marks = [net.signs.index(key) for key in keys if key in net.signs]
        marks = [at for at in marks if np.isnan(read.signs[at])]
        if not new and not marks:
            continue
        bits = _bits(net, kept, share, picked, (middle, spread, new, marks), draw)
        found.append(Gain(job=job.key, bits=bits, minutes=job.minutes))
    return tuple(sorted(found, key=lambda gain: -gain.rate))


def _class_logs(net: Network, taken: NDArray[np.int64], numbers: Array, standard: Array) -> Array:
    """Log of share and likelihood of each class, (cases, classes)."""
    with np.errstate(divide="ignore"):
        start = np.log(net.prior[net.of] * net.share)
    if not len(taken):
        return np.repeat(start[None], len(numbers), axis=0)
    wide = net.spread[:, taken[:, None], taken] + np.diag(standard[taken] ** 2)
    rooted = np.linalg.inv(np.linalg.cholesky(wide))
    off = numbers[:, taken].T[None] - net.mean[:, taken, None]
    square = np.sum(np.square(rooted @ off), axis=1).T
    size = np.sum(np.log(np.diagonal(rooted, axis1=1, axis2=2)), axis=1)
    return np.asarray(start + size + _mixed(square, len(taken)))


def _mixed(square: Array, count: int) -> Array:
    """Log of the mixture of normal densities of so many readings, less that of the spread itself.

    References
    ----------
    derived: a scale mixture of normals has heavier tails than each
    """
    parts = [
        np.log(weight) - count * np.log(scale) - 0.5 * square / scale**2
        for scale, weight in zip(SCALES, WEIGHTS, strict=True)
    ]
    return np.asarray(np.logaddexp.reduce(parts, axis=0))


def _sign_logs(net: Network, signs: Array) -> Array:
    """Log likelihood of the signs under each class, (cases, classes)."""
    there = np.nan_to_num(signs, nan=0.0)
    away = np.where(np.isnan(signs), 0.0, 1.0 - there)
    return np.asarray(TRUST * (there @ np.log(net.chance).T + away @ np.log1p(-net.chance).T))


def _normed(logs: Array) -> Array:
    weights = np.exp(logs - logs.max(axis=1, keepdims=True))
    return np.asarray(weights / weights.sum(axis=1, keepdims=True))


def _by_set(net: Network, weights: Array) -> Array:
    """Classes are in the order of their sets."""
    starts = np.flatnonzero(np.diff(net.of, prepend=-1))
    return np.asarray(np.add.reduceat(weights, starts, axis=1))


def _forecast(net: Network, read: Read, kept: NDArray[np.int64]) -> tuple[Array, Array]:
    """What each kept class still expects of every reading, given those taken."""
    mean = net.mean[kept]
    spread = net.spread[kept]
    taken = np.flatnonzero(np.isfinite(read.numbers))
    if len(taken):
        wide = spread[:, taken[:, None], taken] + np.diag(read.standard[taken] ** 2)
        pull = np.linalg.solve(wide, spread[:, taken, :])
        off = read.numbers[taken] - mean[:, taken]
        mean = mean + np.einsum("kt,ktn->kn", off, pull)
        spread = spread - np.swapaxes(spread[:, taken, :], 1, 2) @ pull
    return mean, spread + np.diag(read.standard**2)


def _bits(
    net: Network,
    kept: NDArray[np.int64],
    share: Array,
    picked: NDArray[np.int64],
    asked: tuple[Array, Array, list[int], list[int]],
    draw: np.random.Generator,
) -> float:
    middle, spread, new, marks = asked
    logs = np.repeat(np.log(share)[None], len(picked), axis=0)
    if new:
        at = np.array(new)
        rooted = np.linalg.cholesky(spread[:, at[:, None], at])
        scores = draw.standard_normal((len(picked), len(new), 1))
        drawn = middle[picked][:, at] + (rooted[picked] @ scores)[..., 0]
        turned = np.linalg.inv(rooted)
        off = drawn.T[None] - middle[:, at, None]
        logs = logs - 0.5 * np.sum(np.square(turned @ off), axis=1).T
        logs = logs + np.sum(np.log(np.diagonal(turned, axis1=1, axis2=2)), axis=1)
    if marks:
        chance = net.chance[kept][:, marks]
        there = (draw.random((len(picked), len(marks))) < chance[picked]).astype(float)
        logs = logs + there @ np.log(chance).T + (1.0 - there) @ np.log1p(-chance).T
    before = _entropy(_kept_by_set(net, kept, share[None]))
    after = _entropy(_kept_by_set(net, kept, _normed(logs)))
    return max(0.0, float(before[0]) - float(np.mean(after)))


def _kept_by_set(net: Network, kept: NDArray[np.int64], weights: Array) -> Array:
    sets, at = np.unique(net.of[kept], return_inverse=True)
    gathered = np.zeros((len(kept), len(sets)))
    gathered[np.arange(len(kept)), at] = 1.0
    return np.asarray(weights @ gathered)


def _entropy(shares: Array) -> Array:
    safe = np.where(shares > 0.0, shares, 1.0)
    return np.asarray(-np.sum(safe * np.log2(safe), axis=1))
