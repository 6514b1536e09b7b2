"""From words to PDF: the templates beside this file, laid out by the typesetter.

Nothing is fetched and no font of the machine is used, so that a report looks the same anywhere
and its bytes depend on its words alone.
"""

import json
import re
from dataclasses import asdict
from importlib.resources import files
from typing import Final

from axlewright.views import (
    AlignData,
    CarryData,
    DecisionData,
    EndsData,
    LogData,
    OrderData,
    ReportData,
    SheetData,
    SwapData,
    TakeData,
    TravelData,
    sheet_data,
)

STANDARD: Final = "ua-1"
MOST_SHEETS, TIGHTEST = 4, 3
PAGE: Final = re.compile(rb"/Type\s*/Page\b")


def assessment_report(data: ReportData) -> bytes:
    """Give the report of an assessment as PDF/UA-1 on A4: four sheets where they suffice.

    Where a few lines would fall on a sheet of their own, its small print becomes a little smaller.
    """
    made = [typeset("assessment.typ", data)]
    while sheets(made[-1]) > MOST_SHEETS and len(made) <= TIGHTEST:
        made.append(typeset("assessment.typ", data, tight=len(made)))
    return min(made, key=sheets)


def sheets(paper: bytes) -> int:
    """How many pages a typeset paper has."""
    return len(PAGE.findall(paper))


def questions_sheet(data: SheetData | None = None) -> bytes:
    """Give the thirteen questions as PDF/UA-1 on A4, to write on."""
    return typeset("questions.typ", sheet_data() if data is None else data)


def alignment_sheet(data: AlignData) -> bytes:
    """Give the alignment's worksheet and the shop's brief as PDF/UA-1 on A4."""
    return typeset("align.typ", data)


def decision_memo(data: DecisionData) -> bytes:
    """Give the memo of a choice as PDF/UA-1 on A4."""
    return typeset("decision.typ", data)


def log_paper(data: LogData) -> bytes:
    """Give the log of an axle as PDF/UA-1 on A4."""
    return typeset("log.typ", data)


def ends_report(data: EndsData) -> bytes:
    """Give the sheet of places to tape as PDF/UA-1 on A4."""
    return typeset("ends.typ", data)


def typeset(
    template: str,
    data: ReportData
    | SheetData
    | TakeData
    | TravelData
    | AlignData
    | EndsData
    | OrderData
    | DecisionData
    | SwapData
    | LogData
    | CarryData,
    *,
    tight: int = 0,
) -> bytes:
    """Lay words out by a template beside this file, as PDF/UA-1; ``tight`` makes it smaller."""
    import typst

    room = files("axlewright.report")
    text = "\n".join((room / name).read_text("utf-8") for name in ("house.typ", template))
    return typst.compile(
        text.encode(),
        format="pdf",
        ignore_system_fonts=True,
        sys_inputs={"data": json.dumps(asdict(data)), "tight": f"{tight}"},
        pdf_standards=STANDARD,
    )
