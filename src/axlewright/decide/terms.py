"""What an owner pays and how the rig is used: the table's rough figures, or the owner's own."""

import datetime as dt
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from math import isfinite
from typing import Final

from axlewright.errors import BadFile, Fault
from axlewright.rig import decoded, tables_of
from axlewright.tables import Band, option_doubts, options

VERSION: Final = 1
SKILLS: Final = ("first-timer", "practised", "shop")
EXAMPLE: Final = 'who = "the shop in the valley"'
YOU: Final = ("skill", "hoist", "papers", "km_a_year", "years", "help_km")
COSTS: Final = tuple(
    key for key in option_doubts() if "." not in key and key not in {"years", "help_km"}
)
_PRICE: Final = ("low", "high", "date", "who")
_TOP: Final = ("axlewright_prices", "currency", "one_usd", "you", "costs", "prices")


@dataclass(frozen=True, slots=True, kw_only=True)
class Price:
    """A band of money, its currency, its day, who told it, and whether it is the owner's own."""

    band: Band
    currency: str
    dated: str
    told_by: str
    own: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Terms:
    """What an owner pays and how the rig is used.

    ``one_usd`` is what one dollar of the tables costs in ``currency``. ``prices`` are by the key
    of a change and ``bands`` by that of a doubt; ``own`` names the bands that are the owner's.
    ``skill`` is one of `SKILLS`.
    """

    currency: str = "USD"
    one_usd: float = 1.0
    skill: str = "practised"
    hoist: bool = False
    papers: bool = False
    prices: Mapping[str, Price] = field(default_factory=dict)
    bands: Mapping[str, Band] = field(default_factory=dict)
    own: frozenset[str] = frozenset()

    def price(self, key: str) -> Price:
        """Price of a change in the owner's currency."""
        if key in self.prices:
            return self.prices[key]
        entry = options()[key]
        return Price(
            band=scaled(entry.money, self.one_usd),
            currency=self.currency,
            dated=entry.dated,
            told_by=entry.told_by,
        )

    def band(self, key: str) -> Band:
        """Band of a doubt in the owner's currency."""
        if key in self.bands:
            return self.bands[key]
        entry = option_doubts()[key]
        money = entry.unit.startswith("USD")
        return scaled(entry.band, self.one_usd) if money else entry.band

    def with_band(self, key: str, low: float, high: float) -> "Terms":
        """Give the same terms with one band of the owner's own."""
        bands = {**self.bands, key: Band(low=low, high=high)}
        return replace(self, bands=bands, own=self.own | {key})


def scaled(band: Band, factor: float) -> Band:
    """Give a band times a factor."""
    return Band(low=band.low * factor, high=band.high * factor)


def read_terms(text: str | bytes, file: str = "prices.toml") -> Terms:
    """Read a file of prices; raises `BadFile` with every fault.

    Amounts are in its ``currency``. Where that is not the tables', ``one_usd`` says what one
    dollar costs in it, for the figures that are still the tables'.
    """
    tables, lines = tables_of(decoded(text, file), file)
    desk = _Desk(file, lines.near)
    desk.known(tables, "", _TOP)
    if tables.get("axlewright_prices") != VERSION:
        desk.fault(
            "axlewright_prices",
            "the file does not say that it is one of prices",
            f"{VERSION}",
            f"axlewright_prices = {VERSION}",
        )
    currency = desk.word(tables, "currency", "USD")
    if not (
        currency.isascii() and currency.isalpha() and currency.isupper() and len(currency) == 3
    ):
        desk.fault("currency", "this is no currency", "three capital letters", 'currency = "EUR"')
    one_usd = desk.number(tables, "one_usd", 1.0)
    if currency != "USD" and "one_usd" not in tables:
        desk.fault(
            "one_usd",
            f"prices are in {currency}, and the rough figures of the tables are in USD",
            f"what one USD costs in {currency}",
            "one_usd = 0.92",
        )
    terms = Terms(currency=currency, one_usd=one_usd)
    terms = _you(desk, desk.table(tables, "you"), terms)
    costs = desk.table(tables, "costs")
    desk.known(costs, "costs", COSTS)
    for key in COSTS:
        if key in costs and (band := desk.band(costs[key], f"costs.{key}")) is not None:
            terms = terms.with_band(key, band.low, band.high)
    prices = desk.table(tables, "prices")
    desk.known(prices, "prices", tuple(options()))
    told = {
        key: desk.price(desk.table(prices, key, "prices."), f"prices.{key}", currency)
        for key in options()
        if key in prices
    }
    if desk.faults:
        raise BadFile(file, desk.faults)
    return replace(terms, prices={key: price for key, price in told.items() if price is not None})


def _you(desk: "_Desk", you: Mapping[str, object], terms: Terms) -> Terms:
    desk.known(you, "you", YOU)
    skill = desk.word(you, "skill", terms.skill, "you.")
    if skill not in SKILLS:
        desk.fault(
            "you.skill",
            f"{skill[:40]!r} is not one of the words for this",
            " | ".join(SKILLS),
            'skill = "practised"',
        )
    terms = replace(
        terms,
        skill=skill,
        hoist=desk.yes(you, "hoist", "you."),
        papers=desk.yes(you, "papers", "you."),
    )
    for key in ("km_a_year", "years", "help_km"):
        if key in you and (band := desk.band(you[key], f"you.{key}")) is not None:
            terms = terms.with_band(key, band.low, band.high)
    return terms


class _Desk:
    """One file being read, and its faults."""

    def __init__(self, file: str, line_of: Callable[[str], int | None]) -> None:
        self.file, self.faults = file, list[Fault]()
        self._line_of = line_of

    def fault(
        self, path: str, problem: str, accepted: str, example: str, given: object = ""
    ) -> None:
        self.faults.append(
            Fault(
                file=self.file,
                line=self._line_of(path),
                field=path,
                problem=problem,
                given=str(given)[:60],
                accepted=accepted,
                example=example,
            )
        )

    def known(self, table: Mapping[str, object], at: str, names: tuple[str, ...]) -> None:
        for key in table:
            if key not in names:
                path = f"{at}.{key}" if at else key
                self.fault(path, "there is no such name here", " | ".join(names), "")

    def table(self, tables: Mapping[str, object], key: str, at: str = "") -> Mapping[str, object]:
        given = tables.get(key, {})
        if isinstance(given, dict):
            return given
        self.fault(
            f"{at}{key}", "this needs a heading of its own", f"[{at}{key}]", f"[{at}{key}]", given
        )
        return {}

    def word(self, table: Mapping[str, object], key: str, usual: str, at: str = "") -> str:
        given = table.get(key, usual)
        if isinstance(given, str):
            return given.strip()
        self.fault(
            f"{at}{key}", "this is not a text", "a text in quotes", f'{key} = "{usual}"', given
        )
        return usual

    def yes(self, table: Mapping[str, object], key: str, at: str = "") -> bool:
        given = table.get(key, False)
        if isinstance(given, bool):
            return given
        self.fault(
            f"{at}{key}", "this is neither true nor false", "true or false", f"{key} = true", given
        )
        return False

    def number(self, table: Mapping[str, object], key: str, usual: float) -> float:
        given = table.get(key, usual)
        if isinstance(given, bool) or not isinstance(given, int | float) or not 0.0 < given < 1e9:
            self.fault(
                key, "this is not a number above nothing", "a number", f"{key} = 0.92", given
            )
            return usual
        return float(given)

    def band(self, given: object, path: str) -> Band | None:
        pair = given if isinstance(given, list) else [given, given]
        ends = [
            float(end)
            for end in pair
            if isinstance(end, int | float) and not isinstance(end, bool) and isfinite(end)
        ]
        if len(pair) != 2 or len(ends) != 2 or not 0.0 <= ends[0] <= ends[1] <= 1e9:
            example = f"{path.rpartition('.')[2]} = [200, 400]"
            problem = "this is no number and no pair of them, the smaller first"
            self.fault(path, problem, "a number, or [low, high]", example, given)
            return None
        return Band(low=ends[0], high=ends[1])

    def price(self, table: Mapping[str, object], path: str, currency: str) -> Price | None:
        self.known(table, path, _PRICE)
        missing = [key for key in _PRICE if key not in table]
        if missing:
            example = {"low": "low = 400", "high": "high = 700", "date": "date = 2026-10-01"}
            for key in missing:
                self.fault(
                    f"{path}.{key}",
                    "this is missing",
                    "low, high, date and who told it",
                    example.get(key, EXAMPLE),
                )
            return None
        band = self.band([table["low"], table["high"]], f"{path}.low")
        day = table["date"]
        if not isinstance(day, dt.date):
            self.fault(
                f"{path}.date", "this is not a date", "year-month-day", "date = 2026-10-01", day
            )
        who = self.word(table, "who", "", f"{path}.")
        if not who or len(who) > 80:
            self.fault(
                f"{path}.who", "this does not say who told the price", "a short text", EXAMPLE, who
            )
        if band is None:
            return None
        return Price(band=band, currency=currency, dated=str(day), told_by=who, own=True)
