"""What a rule of the order sheet is: some fields, and what is wrong where they do not go together.

Numbers are told apart from the words, so that a reader sees them in his own units.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Literal, TypeAlias

from axlewright.swap.order_fill import Filled

Value: TypeAlias = float | str
Weight: TypeAlias = Literal["blocks", "settle", "ask"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Wrong:
    """What a rule says: words with ``{0}``… for numbers (SI value and kind), and a way out.

    ``blocks`` lets nothing be ordered, ``settle`` is put right before metal is cut, ``ask`` wants
    somebody to say that it is meant.
    """

    says: str
    do: str
    weight: Weight = "settle"
    numbers: tuple[tuple[float, str], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Misfit:
    """Fields that do not go together, by rule."""

    rule: str
    fields: tuple[str, ...]
    wrong: Wrong


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    """One rule, tried where all its fields are told."""

    name: str
    fields: tuple[str, ...]
    test: Callable[..., Wrong | None]

    def misfit(self, values: Mapping[str, Filled]) -> Misfit | None:
        """Try it; None where it holds or where a field is not told."""
        told = [values[key].value for key in self.fields if key in values and values[key].holds]
        if len(told) < len(self.fields):
            return None
        wrong = self.test(*told)
        return Misfit(rule=self.name, fields=self.fields, wrong=wrong) if wrong else None


def about(*fields: str) -> Callable[[Callable[..., Wrong | None]], Rule]:
    """Make a rule about some fields out of a function of their values, in their order."""

    def made(test: Callable[..., Wrong | None]) -> Rule:
        return Rule(name=test.__name__, fields=fields, test=test)

    return made


def length(value: float) -> tuple[float, str]:
    """A length to be told."""
    return value, "length"


def angle(value: float) -> tuple[float, str]:
    """An angle to be told."""
    return value, "angle"


def plain(value: float) -> tuple[float, str]:
    """A bare number to be told."""
    return value, "plain"
