"""One contradiction between answers."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Clash:
    """One contradiction: the field to look at again, what is wrong, what to do."""

    path: str
    problem: str
    remedy: str
