"""Troubles a person can put right.

A part that is too weak is not an error: it is a check that fails. A bug in the program is not an
error here either: let it crash. What remains is input, and each of these says what is wrong,
where it stands, and what to do about it.

    AxlewrightError        problem and remedy
    ├── BadQuantity        a number or unit that cannot be read
    ├── UnknownEntry       a name that no table holds
    ├── NotKept            something that could not be kept: no room, no leave, no turn
    └── BadFile            a file that cannot be used, with every fault in it

They are all ValueErrors.
"""

from collections.abc import Iterable
from dataclasses import dataclass


class AxlewrightError(ValueError):
    """Base of every error meant to be read by the person using the tool."""

    def __init__(self, problem: str, *, remedy: str = "") -> None:
        self.problem, self.remedy = problem, remedy
        super().__init__(f"{problem} {remedy}".strip())


class BadQuantity(AxlewrightError):  # noqa: N818
    """A value that cannot be read: no unit, a unit that does not fit, or more than one meaning."""


class UnknownEntry(AxlewrightError):  # noqa: N818
    """A name that no table holds."""


class NotKept(AxlewrightError):  # noqa: N818
    """Something said or handed in that could not be kept; what was kept before is untouched."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Fault:
    """One thing wrong with a file: where it stands, what was given and what is accepted.

    ``beside`` holds other answers that it hangs on, each with its line. What is accepted may be
    a sentence on what to do; it is then told as such.
    """

    problem: str
    file: str = ""
    line: int | None = None
    field: str = ""
    given: str = ""
    accepted: str = ""
    example: str = ""
    near: tuple[str, ...] = ()
    beside: tuple[str, ...] = ()

    def __str__(self) -> str:
        """One line on what is wrong, then what would put it right."""
        place = self.file + (f", line {self.line}" if self.line else "")
        head = ": ".join(part for part in (place, self.field, self.problem) if part)
        notes = (
            ("given", self.given),
            ("beside", "; ".join(self.beside)),
            ("how" if self.accepted[:1].isupper() else "accepted", self.accepted),
            ("for example", self.example),
            ("did you mean", " or ".join(self.near) + "?" if self.near else ""),
        )
        return "\n".join([head, *(f"    {word}: {text}" for word, text in notes if text)])


class BadFile(AxlewrightError):  # noqa: N818
    """A file that cannot be used as written. Carries every fault, for a terminal or a form."""

    def __init__(self, file: str, faults: Iterable[Fault]) -> None:
        self.file, self.faults = file, tuple(faults)
        count = len(self.faults)
        told = "\n".join(f"  {fault}".replace("\n", "\n  ") for fault in self.faults)
        things = "one thing" if count == 1 else f"{count} things"
        super().__init__(f"{file} cannot be used yet: {things} to put right.\n{told}")
