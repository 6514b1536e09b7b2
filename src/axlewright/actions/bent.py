"""Where is it bent: what is on record and what was typed in, to shares with bands over causes."""

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING, Final, TypeAlias

from axlewright.actions.bay_cache import Latest, content_hash
from axlewright.actions.locate import evidence_of
from axlewright.actions.readings import own_limits
from axlewright.errors import AxlewrightError
from axlewright.upkeep import (
    Bent,
    Evidence,
    Located,
    ShareBand,
    located,
    on_record,
    share_bands,
)

if TYPE_CHECKING:
    from axlewright.actions.log import Log
    from axlewright.rig import Rig

Weighed: TypeAlias = tuple[Located, Mapping[str, ShareBand]]
_WEIGHED: Final[Latest[tuple[object, ...], Weighed]] = Latest(16)


def typed_readings(texts: Sequence[str]) -> dict[str, str]:
    """Readings by name out of texts such as "camber_out_left=-0.9 deg"."""
    told: dict[str, str] = {}
    for text in texts:
        name, given, value = text.partition("=")
        if not given:
            raise AxlewrightError(
                f"{text[:60]!r} is no reading.", remedy='As in "camber_out_left=-0.9 deg".'
            )
        if name.strip() in told:
            raise AxlewrightError(
                f"{name[:40]!r} is given twice.", remedy='Put ";" between repeats of one reading.'
            )
        told[name.strip()] = value
    return told


def where_bent(
    log: "Log",
    slug: str,
    typed: Mapping[str, str] | None = None,
    *,
    after_hit: bool | None = None,
    floor_mapped: bool | None = None,
) -> Bent:
    """Shares over causes for a rig, from its record, with what is typed in standing before it.

    Without a word a hit on record counts as one just now, and the floor as mapped where its slope
    was taken off every reading that it blurs. Raises `UnknownEntry` or `BadQuantity`.
    """
    rig = log.desk.rig(slug)
    if rig is None:
        raise AxlewrightError(
            "Where it is bent follows from this axle's own sizes, and answers are missing.",
            remedy="Answer the rest of the thirteen questions first.",
        )
    history = log.history(slug)
    record = on_record(history, rig.axle, rig.tyre.outer_diameter, own_limits(history))
    said = evidence_of(rig, {name: text for name, text in (typed or {}).items() if text.strip()})
    evidence = evidence_of(
        rig,
        {},
        after_hit=record.hit is not None if after_hit is None else after_hit,
        floor_mapped=record.mapped if floor_mapped is None else floor_mapped,
        taken={**record.taken, **said.taken},
        seen={**record.seen, **said.seen},
    )
    found, bands = _weighed(rig, evidence)
    mine = {*said.taken, *said.seen}
    return Bent(
        found=found,
        bands=bands,
        used=tuple(piece for piece in record.used if piece.key not in mine),
        left_out=record.left_out,
        typed=tuple(sorted(mine)),
        hit=None if record.hit is None else record.hit.on,
    )


def _weighed(rig: "Rig", evidence: Evidence) -> Weighed:
    """Shares and their bands, worked out once for the same rig and evidence."""
    key = (
        content_hash(rig, 0),
        frozenset(evidence.taken.items()),
        frozenset(evidence.seen.items()),
        evidence.after_hit,
        evidence.floor_mapped,
    )

    def made() -> Weighed:
        found = located(rig, evidence)
        return found, share_bands(rig, evidence, found)

    return _WEIGHED.get(key, made)
