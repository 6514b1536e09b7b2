"""What a field of the rig file is: one entry of the catalogue.

One catalogue drives the reader, the errors, the JSON Schema, the questions, the paper sheet and
the docs, so a question is worded and bounded in one place only.
"""

from dataclasses import dataclass
from typing import Final

from axlewright.units import known

KILOGRAM: Final = known("weight")["kg"]  # weight of one, N


@dataclass(frozen=True, slots=True, kw_only=True)
class Field:
    """One thing a person can say about a rig.

    ``low`` and ``high`` bound what is accepted, in SI; ``doubt`` and ``relative_doubt`` are the
    standard uncertainty of a careful reading, absolute (SI) and relative; "about" trebles them.
    ``caution`` stands wherever the question is asked of somebody who then reaches for it.
    """

    path: str
    kind: str
    asks: str
    how: str
    example: str
    low: float | None = None
    high: float | None = None
    doubt: float = 0.0
    relative_doubt: float = 0.0
    question: int | None = None
    choices: tuple[str, ...] = ()
    axle: str = "both"
    required: bool = False
    caution: str = ""
    quantity: str = ""
