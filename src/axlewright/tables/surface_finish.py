"""Surface factor of a steel's endurance limit, by how its skin was made."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from axlewright.tables.reading import look_up, number, rows
from axlewright.tables.sources import Origin, origin


@dataclass(frozen=True, slots=True, kw_only=True)
class SurfaceFinish:
    """One finish: the surface factor is factor * (ultimate in MPa) ** exponent."""

    key: str
    words: str
    factor: float
    exponent: float
    origin: Origin

    def surface_factor(self, ultimate: float) -> float:
        """Share of the polished endurance limit that is left, for an ultimate in pascal; at most 1.

        Examples
        --------
        >>> round(surface_finish("machined").surface_factor(690e6), 3)
        0.798
        """
        return float(min(1.0, self.factor * (ultimate / 1e6) ** self.exponent))


@cache
def surface_finishes() -> Mapping[str, SurfaceFinish]:
    """Read the whole table."""
    return {
        row["key"]: SurfaceFinish(
            key=row["key"],
            words=row["words"],
            factor=number(row, "factor"),
            exponent=number(row, "exponent"),
            origin=origin(row),
        )
        for row in rows("surface_finish")
    }


def surface_finish(key: str) -> SurfaceFinish:
    """Find one finish by key."""
    return look_up(surface_finishes(), key, what="surface finish")
