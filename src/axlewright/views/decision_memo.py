"""A choice as the words of its memo on paper."""

from collections.abc import Sequence
from dataclasses import dataclass

from axlewright.decide import Carried, Decision
from axlewright.views.decision import decision_words
from axlewright.views.decision_tyres import TYRE_GRID_NOTE, still_line, tyre_rows

OPENED = 4  # changes whose facts are printed: the first ones and leaving it


@dataclass(frozen=True, slots=True, kw_only=True)
class DecisionData:
    """Everything that the memo says, ready to be laid out."""

    title: str
    stops: list[str]
    sentence: str
    mends: list[str]
    reasons: list[str]
    against: str
    sorry: str
    looks: list[str]
    flips: list[str]
    resale: list[str]
    rows: list[list[str]]
    opened: list[tuple[str, list[tuple[str, str]]]]
    tyres: list[list[str]]
    tyres_note: str
    refused: list[str]
    rests: list[str]
    caution: str


def decision_data(
    decision: Decision,
    grid: Sequence[Carried] = (),
    still: tuple[float, str, str] | None = None,
    system: str = "metric",
) -> DecisionData:
    """Words of the memo of a choice."""
    words = decision_words(decision, system)
    wanted = [decision.advised, decision.runner_up, "leave"]
    keys = dict.fromkeys([*wanted, *(row.key for row in words.rows[:OPENED])])
    by_key = {row.key: row for row in words.rows}
    return DecisionData(
        title=words.title,
        stops=list(words.stops),
        sentence=words.sentence,
        mends=list(words.mends),
        reasons=list(words.reasons),
        against=words.against,
        sorry=words.sorry,
        looks=list(words.looks),
        flips=list(words.flips),
        resale=[*words.resale, *([still_line(still, system)] if grid else [])],
        rows=[
            [row.label, row.total, row.price, row.first, row.gone, row.hours, row.days, row.mark]
            for row in words.rows
        ],
        opened=[
            (by_key[key].label[:1].upper() + by_key[key].label[1:], list(by_key[key].facts))
            for key in list(keys)[:OPENED]
        ],
        tyres=[list(row) for row in tyre_rows(grid)] if grid else [],
        tyres_note=TYRE_GRID_NOTE,
        refused=list(words.refused),
        rests=list(words.rests),
        caution=words.caution,
    )
