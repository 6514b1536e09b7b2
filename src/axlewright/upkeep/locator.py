"""Where is it bent or worn: shares over causes, looks that rule them out, what to read next."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

import numpy as np

from axlewright.errors import UnknownEntry
from axlewright.physics import rod_bow
from axlewright.physics.measurement import NINETY, combined_uncertainty
from axlewright.rig import Rig, doubts
from axlewright.upkeep.belief import Read, cause_shares, gains, plain_rods, set_shares, unread
from axlewright.upkeep.network import Cause, Network, Tables, network
from axlewright.upkeep.signatures import WHEEL_RATIO, Sizes, sizes_of, ways

SHARES: Final = {"tie_rod": 0.5, "drag_link": 1.0}  # of the arm's turn that the wheels make, mean


@dataclass(frozen=True, slots=True, kw_only=True)
class Taken:
    """Repeats of one number in SI, and half the 90 % band where the person gave one."""

    values: tuple[float, ...]
    give_or_take: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Evidence:
    """What was read and seen, by key; what is not there was not looked at."""

    taken: Mapping[str, Taken]
    seen: Mapping[str, bool]
    after_hit: bool = False
    floor_mapped: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Echo:
    """One reading as it was understood: mean and standard uncertainty, or a sign there or not."""

    key: str
    label: str
    side: str
    unit: str
    value: float
    standard: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Suspect:
    """One cause and its share; ``danger`` says what it takes away, ``stop`` what then stops."""

    key: str
    label: str
    side: str
    share: float
    danger: str
    look: str
    stop: str
    minutes: float
    rank: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Explains:
    """How much of the steering wheel's angle one rod's bow explains, low and high, rad.

    ``way`` is 1 where it turns the wheel to the left, -1 to the right, 0 where either may be.
    """

    rod: str
    way: int
    bow: float
    low: float
    high: float


@dataclass(frozen=True, slots=True, kw_only=True)
class OpenJob:
    """One job that is still open: what it is, how long it takes, and what it is good for."""

    key: str
    label: str
    tool: str
    how: str
    minutes: float
    bits: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Located:
    """The answer: it never says that the rig may be driven.

    ``suspects`` go by share; ``dangerous`` are those that take steering, a wheel or the housing
    away, all of them, whatever their share, by the trade's order; ``nothing`` is the share of none
    of all these. ``remainder`` is what bowed rods leave unexplained of the steering wheel's angle.
    """

    rig: str
    axle: str
    after_hit: bool
    floor_mapped: bool
    echoes: tuple[Echo, ...]
    suspects: tuple[Suspect, ...]
    dangerous: tuple[Suspect, ...]
    nothing: float
    jobs: tuple[OpenJob, ...]
    explains: tuple[Explains, ...]
    remainder: tuple[float, float] | None


def located(rig: Rig, evidence: Evidence, *, tables: Tables | None = None) -> Located:
    """Shares over everything that can be bent or worn on one axle."""
    net, read = understood(sizes_of(rig), evidence, tables=tables)
    sets = set_shares(net, read.numbers[None], read.standard, read.signs[None])
    *shares, nothing = cause_shares(net, sets)[0]
    suspects = [_suspect(c, float(p)) for c, p in zip(net.causes, shares, strict=True)]
    labels = {job.key: job for job in net.jobs}
    explains = _explained(rig, evidence) if rig.axle == "front" else ()
    return Located(
        rig=rig.name,
        axle=rig.axle,
        after_hit=evidence.after_hit,
        floor_mapped=evidence.floor_mapped,
        echoes=_echoes(net, read),
        suspects=tuple(sorted(suspects, key=lambda one: -one.share)),
        dangerous=tuple(sorted((s for s in suspects if s.danger), key=lambda one: one.rank)),
        nothing=float(nothing),
        jobs=tuple(
            OpenJob(
                key=gain.job,
                label=labels[gain.job].label,
                tool=labels[gain.job].tool,
                how=labels[gain.job].how,
                minutes=gain.minutes,
                bits=gain.bits,
            )
            for gain in gains(net, read)
        ),
        explains=explains,
        remainder=_remainder(net, read, explains),
    )


def understood(
    sizes: Sizes, evidence: Evidence, *, tables: Tables | None = None
) -> tuple[Network, Read]:
    """The network for what was read, and the readings as it takes them."""

    def made(held: tuple[str, ...]) -> Network:
        return network(
            sizes,
            after_hit=evidence.after_hit,
            floor_mapped=evidence.floor_mapped,
            held=held,
            tables=tables,
        )

    net = made(())
    read = read_of(net, evidence)
    held = plain_rods(net, read.numbers, read.standard)
    return (made(held) if held else net), read


def read_of(net: Network, evidence: Evidence) -> Read:
    """Readings as the network takes them; raises `UnknownEntry` for one that it does not know.

    References
    ----------
    jcgm100, 4.2, 4.3, 5.1: repeats, resolution and scatter combined
    """
    known = {*net.numbers, *net.signs}
    for key in (*evidence.taken, *evidence.seen):
        if key not in known:
            problem = f"no reading of this axle is called {key!r}."
            raise UnknownEntry(problem, remedy=f"Known are {', '.join(sorted(known))}.")
    read = unread(net)
    for key, taken in evidence.taken.items():
        at, row = net.numbers.index(key), net.rows[key]
        own = taken.give_or_take
        found = combined_uncertainty(
            taken.values,
            half_width=() if own is not None else (row.half_width,),
            spread=() if own is None else (own / NINETY,),
            pooled=row.repeat if own is None else 0.0,
        )
        read.numbers[at] = float(found.mean)
        read.standard[at] = float(found.standard)
    for key, there in evidence.seen.items():
        read.signs[net.signs.index(key)] = float(there)
    return read


def looks_in_order(found: Located) -> tuple[Suspect, ...]:
    """Looks by share a minute: the shortest way to the cause, on the whole."""
    return tuple(sorted(found.suspects, key=lambda one: -one.share / one.minutes))


def _suspect(cause: Cause, share: float) -> Suspect:
    row = cause.row
    return Suspect(
        key=cause.key,
        label=cause.label,
        side=cause.side,
        share=share,
        danger=row.danger,
        look=row.look,
        stop=row.stop,
        minutes=row.minutes,
        rank=row.rank,
    )


def _echoes(net: Network, read: Read) -> tuple[Echo, ...]:
    found = []
    for keys, values, doubts_of in (
        (net.numbers, read.numbers, read.standard),
        (net.signs, read.signs, np.zeros(len(net.signs))),
    ):
        for key, value, doubt in zip(keys, values, doubts_of, strict=True):
            if np.isfinite(value):
                row = net.rows[key]
                found.append(
                    Echo(
                        key=key,
                        label=row.label,
                        side=key.rpartition("_")[2] if row.each else "",
                        unit=row.unit,
                        value=float(value),
                        standard=float(doubt),
                    )
                )
    return tuple(found)


def _explained(rig: Rig, evidence: Evidence) -> tuple[Explains, ...]:
    """From the mildest (one kink, long arm, low ratio) to the most (even bow, short arm, high)."""
    sizes = sizes_of(rig)
    arm = next((d for d in doubts(rig) if d.quantity == "steering_arm"), None)
    short, long = (arm.low, arm.high) if arm is not None else (sizes.arm, sizes.arm)
    found = []
    for rod, length in (("tie_rod", sizes.rod), ("drag_link", sizes.link)):
        taken = evidence.taken.get(f"{rod}_bow")
        if taken is None:
            continue
        bow = float(np.mean(taken.values))
        least = float(rod_bow.arm_turn(rod_bow.kink_shortening(bow, length), long))
        most = float(rod_bow.arm_turn(rod_bow.even_bow_shortening(bow, length), short))
        if np.isfinite(least + most):
            part = SHARES[rod]
            found.append(
                Explains(
                    rod=rod,
                    way=_way(sizes, bow) if rod == "tie_rod" else 0,
                    bow=bow,
                    low=part * least * WHEEL_RATIO[0],
                    high=part * most * WHEEL_RATIO[2],
                )
            )
    return tuple(found)


def _remainder(
    net: Network, read: Read, explains: tuple[Explains, ...]
) -> tuple[float, float] | None:
    """What bows leave of the steering wheel's angle, with the reading's own 90 % band."""
    if not explains or "wheel_off" not in net.numbers:
        return None
    at = net.numbers.index("wheel_off")
    if not np.isfinite(read.numbers[at]):
        return None
    value, doubt = float(read.numbers[at]), NINETY * float(read.standard[at])
    least, most = abs(value) - doubt, abs(value) + doubt
    for one in explains:
        if one.way * value < 0.0:  # it turns the other way: more is left, not less
            least, most = least + one.low, most + one.high
        else:
            least, most = least - one.high, most - one.low
    return max(0.0, least), max(0.0, most)


def _way(sizes: Sizes, bow: float) -> int:
    [way] = ways("tie_rod", "", sizes, 0.0)
    return int(np.sign(way.effect(bow)["wheel_off"]))
