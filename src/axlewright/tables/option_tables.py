"""Changes to choose from: what each asks, what it does not help, and what breaking down costs."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from axlewright.tables.reading import number, rows
from axlewright.tables.sources import Origin, origin


@dataclass(frozen=True, slots=True, kw_only=True)
class Band:
    """Nine cases in ten lie between ``low`` and ``high``, in the unit of the column."""

    low: float
    high: float

    @property
    def middle(self) -> float:
        """Middle of the band: geometric, arithmetic where it begins at nothing."""
        if self.low <= 0.0:
            return 0.5 * (self.low + self.high)
        return float((self.low * self.high) ** 0.5)


@dataclass(frozen=True, slots=True, kw_only=True)
class Option:
    """One change to choose from.

    ``group`` is wait, repair, reinforce, ease the load or replace. ``only_if`` is a field and the
    word it must hold; what ``needs_straight`` goes on no bent housing. ``heat`` is how far a
    weld's heat may pull a tube's end, m; ``detail`` the weld detail that it adds to the tube,
    ``weld_class`` how it is to be welded, ``check`` what
    proves it straight. ``hours`` are a practised hand's on a hoist, ``days`` off the road, ``mass``
    what geometry does not tell, kg. ``sells`` is the share of the old axle that is freed,
    ``kept`` the share of the price that comes back at the end. ``renews`` names what comes new.
    """

    key: str
    label: str
    group: str
    axle: str
    only_if: str
    needs_straight: bool
    in_place: str
    undo: str
    gears: str
    warranty: str
    helps_not: str
    geometry: str
    brakes: str
    weld_class: str
    detail: str
    heat: Band
    check: str
    hours: Band
    days: Band
    mass: Band
    money: Band
    currency: str
    dated: str
    told_by: str
    reuse: str
    sells: float
    kept: Band
    renews: tuple[str, ...]
    origin: Origin

    @property
    def housing_is_new(self) -> bool:
        """Whether another housing takes the place of the old one."""
        return bool({"housing", "all"} & set(self.renews)) or self.group == "replace"


@dataclass(frozen=True, slots=True, kw_only=True)
class OptionStep:
    """One step of a change: a field and its new value, or how it is filled from the rig.

    ``housing`` tells that it comes with a housing.
    """

    key: str
    option: str
    axle: str
    housing: bool
    path: str
    to: str
    origin: Origin


@dataclass(frozen=True, slots=True, kw_only=True)
class OptionMend:
    """What it takes to mend one kind of part after it gave; ``housing``: the axle is done."""

    key: str
    housing: bool
    money: Band
    hours: Band
    days: Band
    currency: str
    origin: Origin


@dataclass(frozen=True, slots=True, kw_only=True)
class OptionDoubt:
    """One thing that a choice hangs on and nobody knows sharply; ``unit`` as it is spoken of."""

    key: str
    words: str
    band: Band
    unit: str
    origin: Origin


@dataclass(frozen=True, slots=True, kw_only=True)
class OptionTyre:
    """One usual tyre by its sidewall."""

    key: str
    sidewall: str
    origin: Origin


@cache
def options() -> Mapping[str, Option]:
    """Read the whole table."""
    return {
        row["key"]: Option(
            key=row["key"],
            label=row["label"],
            group=row["group"],
            axle=row["axle"],
            only_if=row["only_if"],
            needs_straight=row["needs_straight"] == "yes",
            in_place=row["in_place"],
            undo=row["undo"],
            gears=row["gears"],
            warranty=row["warranty"],
            helps_not=row["helps_not"],
            geometry=row["geometry"],
            brakes=row["brakes"],
            weld_class=row["weld_class"],
            detail=row["detail"],
            heat=_band(row, "heat", "_mm"),
            check=row["check"],
            hours=_band(row, "hours"),
            days=_band(row, "days"),
            mass=_band(row, "mass", "_kg"),
            money=_band(row, "money"),
            currency=row["currency"],
            dated=row["dated"],
            told_by=row["told_by"],
            reuse=row["reuse"],
            sells=number(row, "sells"),
            kept=_band(row, "kept"),
            renews=tuple(word for word in row["renews"].split() if word != "no"),
            origin=origin(row),
        )
        for row in rows("options")
    }


@cache
def option_steps() -> Mapping[str, OptionStep]:
    """Read the whole table."""
    return {
        row["key"]: OptionStep(
            key=row["key"],
            option=row["option"],
            axle=row["axle"],
            housing=row["housing"] == "yes",
            path=row["path"],
            to=row["to"],
            origin=origin(row),
        )
        for row in rows("options_steps")
    }


@cache
def option_mends() -> Mapping[str, OptionMend]:
    """Read the whole table."""
    return {
        row["key"]: OptionMend(
            key=row["key"],
            housing=row["housing"] == "yes",
            money=_band(row, "money"),
            hours=_band(row, "hours"),
            days=_band(row, "days"),
            currency=row["currency"],
            origin=origin(row),
        )
        for row in rows("options_mends")
    }


@cache
def option_doubts() -> Mapping[str, OptionDoubt]:
    """Read the whole table."""
    return {
        row["key"]: OptionDoubt(
            key=row["key"],
            words=row["words"],
            band=_band(row, ""),
            unit=row["unit"],
            origin=origin(row),
        )
        for row in rows("options_doubts")
    }


@cache
def option_tyres() -> Mapping[str, OptionTyre]:
    """Read the whole table."""
    return {
        row["key"]: OptionTyre(key=row["key"], sidewall=row["sidewall"], origin=origin(row))
        for row in rows("options_tyres")
    }


def _band(row: Mapping[str, str], name: str, unit: str = "") -> Band:
    start = f"{name}_" if name else ""
    return Band(low=number(row, f"{start}low{unit}"), high=number(row, f"{start}high{unit}"))
