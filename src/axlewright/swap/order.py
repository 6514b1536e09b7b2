"""The order sheet of a replacement axle: what it says, what is missing, what contradicts what."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from axlewright.rig import SEED, OrderSheet, Rig, sheet_fields
from axlewright.swap import (
    order_rules_ends,
    order_rules_fittings,
    order_rules_housing,
    order_rules_whole,
)
from axlewright.swap.order_fill import BUILT_IN, Filled, filled, needed_built_in
from axlewright.swap.order_rules import Misfit, Rule
from axlewright.tables import OrderField, order_fields

RULES: Final[tuple[Rule, ...]] = (
    *order_rules_whole.RULES,
    *order_rules_housing.RULES,
    *order_rules_fittings.RULES,
    *order_rules_ends.RULES,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderRow:
    """One field of the sheet: what is ordered, what the rig has beside it, what contradicts it."""

    field: OrderField
    filled: Filled | None
    beside: Filled | None
    misfits: tuple[Misfit, ...]

    @property
    def missing(self) -> bool:
        """Whether it is needed and nobody has said it."""
        return self.field.needed and not (self.filled and self.filled.holds)


@dataclass(frozen=True, slots=True, kw_only=True)
class Order:
    """One order: its rows from wheel to wheel, and what stands in its way."""

    name: str
    axle: str
    rows: tuple[OrderRow, ...]
    misfits: tuple[Misfit, ...]

    @property
    def missing(self) -> tuple[OrderField, ...]:
        """What is needed and not told."""
        return tuple(row.field for row in self.rows if row.missing)

    @property
    def blocked(self) -> bool:
        """Whether something does not go together at all."""
        return any(each.wrong.weight == "blocks" for each in self.misfits)

    @property
    def ready(self) -> bool:
        """Whether it can be sent: all told, and nothing to put right before metal is cut."""
        return not self.missing and all(each.wrong.weight == "ask" for each in self.misfits)


def ordered(
    sheet: OrderSheet,
    rig: Rig | None = None,
    *,
    needs: bool = True,
    seed: int = SEED,
) -> Order:
    """Lay an order out: the sheet first, then what the rig tells; both tried against each other.

    Without a rig the sheet is checked by itself, as a shop does with one that came by mail.
    """
    axle = rig.axle if rig is not None else sheet.axle
    keys = sheet_fields(axle)
    from_rig: Mapping[str, Filled] = {}
    if rig is not None:
        built_in = needed_built_in(rig) if needs else None
        from_rig = filled(rig, keys, built_in, seed=seed)
    said = {
        key: Filled(key=key, value=answer.value, band=None, whence="the sheet")
        for key, answer in sheet.answers.items()
        if key in keys
    }
    values = {**from_rig, **said}
    misfits = tuple(found for rule in RULES if (found := rule.misfit(values)))
    rows = tuple(
        OrderRow(
            field=order_fields()[key],
            filled=values.get(key),
            beside=from_rig.get(key) if key in said else None,
            misfits=tuple(each for each in misfits if key in each.fields),
        )
        for key in keys
    )
    name = rig.name if rig is not None else ""
    return Order(name=name, axle=axle, rows=rows, misfits=misfits)


def contradicted_by(key: str) -> tuple[str, ...]:
    """Other fields that a field is tried against, in the order of the rules."""
    beside = [rule.fields for rule in RULES if key in rule.fields]
    return tuple(dict.fromkeys(other for fields in beside for other in fields if other != key))


def differs(row: OrderRow) -> bool:
    """Whether the sheet says something else than the rig has, beyond the doubt."""
    if row.filled is None or row.beside is None:
        return False
    if row.beside.whence == "assumed" and row.field.key != BUILT_IN:
        return False
    if isinstance(row.filled.value, str) or isinstance(row.beside.value, str):
        return row.filled.value != row.beside.value
    low, high = row.beside.band or (row.beside.value, row.beside.value)
    room = max(row.field.tolerance or 0.0, 0.002 * abs(row.beside.value))
    return not low - room <= row.filled.value <= high + room
