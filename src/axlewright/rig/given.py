"""A number that a person gave, with the doubt it carries."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Given:
    """One given quantity: value and standard uncertainty in SI, and the text it came from."""

    quantity: str
    path: str
    value: float
    doubt: float
    about: bool
    text: str
    kind: str
