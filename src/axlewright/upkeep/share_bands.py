"""How far shares move when the tables are off: every number by half, up or down at a coin's toss.

The tables are practice, not counts; a band over them is what a share is worth.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Final

import numpy as np

from axlewright.rig import Rig
from axlewright.tables import LocatorCause, LocatorReading
from axlewright.upkeep.belief import cause_shares, set_shares
from axlewright.upkeep.locator import Evidence, Located, understood
from axlewright.upkeep.network import Tables, house_tables
from axlewright.upkeep.signatures import sizes_of

OFF: Final = 1.5
TABLES: Final = 6  # three tosses, each with its opposite
SUREST: Final = 0.97  # chance of a sign
NOTHING: Final = "nothing"


@dataclass(frozen=True, slots=True, kw_only=True)
class ShareBand:
    """Lowest and highest share of one cause over the tables tried."""

    low: float
    high: float


def share_bands(rig: Rig, evidence: Evidence, found: Located) -> Mapping[str, ShareBand]:
    """Band of every cause's share by its key, and of none of them under ``nothing``."""
    seen: dict[str, list[float]] = {one.key: [one.share] for one in found.suspects}
    seen[NOTHING] = [found.nothing]
    for number in range(TABLES):
        tables = tables_off(number // 2, opposite=bool(number % 2))
        net, read = understood(sizes_of(rig), evidence, tables=tables)
        sets = set_shares(net, read.numbers[None], read.standard, read.signs[None])
        *shares, nothing = cause_shares(net, sets)[0]
        for cause, share in zip(net.causes, shares, strict=True):
            seen[cause.key].append(float(share))
        seen[NOTHING].append(float(nothing))
    return {key: ShareBand(low=min(all_), high=max(all_)) for key, all_ in seen.items()}


def tables_off(seed: int, *, opposite: bool = False) -> Tables:
    """The house's tables with every number multiplied or divided by 1.5 at a coin's toss."""
    coin = np.random.default_rng(seed)

    def off() -> float:
        return OFF if (coin.random() < 0.5) != opposite else 1.0 / OFF

    def cause(row: LocatorCause) -> LocatorCause:
        size = off()
        return replace(
            row,
            after_hit=row.after_hit * off(),
            in_use=row.in_use * off(),
            low=row.low * size,
            high=row.high * size,
            across=row.across * off(),
        )

    def reading(row: LocatorReading) -> LocatorReading:
        if row.kind == "sign":
            return replace(row, usual=row.usual * off())
        return replace(
            row,
            as_built=row.as_built * off(),
            half_width=row.half_width * off(),
            repeat=row.repeat * off(),
        )

    told = house_tables()
    return replace(
        told,
        causes=tuple(cause(row) for row in told.causes),
        likelihoods=tuple(
            replace(row, chance=min(SUREST, row.chance * off())) for row in told.likelihoods
        ),
        readings=tuple(reading(row) for row in told.readings),
        doubts=tuple(replace(row, spread=row.spread * off()) for row in told.doubts),
    )
