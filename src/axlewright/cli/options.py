"""What several commands take alike, and how they end."""

from pathlib import Path
from typing import Annotated, Final, Literal, TypeAlias

from cyclopts import Parameter

from axlewright.errors import AxlewrightError

STOPPED: Final = 3  # an answer that contains a STOP

Changes: TypeAlias = Annotated[list[Path] | None, Parameter(name="--with", negative="")]
Json: TypeAlias = Annotated[bool, Parameter(name="--json", negative="")]
Units: TypeAlias = Literal["metric", "us", "mixed"]


def checked_draws(draws: int, most: int = 1_000_000) -> int:
    """Give the number of draws back, or say which can be used."""
    if not 0 <= draws <= most:
        raise AxlewrightError(
            f"--draws {draws} cannot be used.", remedy=f"Give a number from 0 to {most:,}."
        )
    return draws
