"""Put paper on disk: the report of an assessment, and the thirteen questions to fill in."""

import os
from pathlib import Path

from axlewright.errors import AxlewrightError
from axlewright.strength import Assessment, Comparison


def write_report(answer: Assessment | Comparison, path: Path, system: str = "metric") -> None:
    """Typeset the report; an old file stays whole until the new one is."""
    written(report_paper(answer, system), path)


def write_questions(path: Path, axle: str = "front") -> None:
    """Typeset the thirteen questions as a sheet with the drawing and empty boxes."""
    written(questions_paper(axle), path)


def report_paper(answer: Assessment | Comparison, system: str = "metric") -> bytes:
    """Report of an assessment as the bytes of a PDF."""
    from axlewright.report import assessment_report
    from axlewright.views import report_data

    return assessment_report(report_data(answer, system))


def questions_paper(axle: str = "front") -> bytes:
    """Sheet of the thirteen questions about such an axle as the bytes of a PDF."""
    from axlewright.report import questions_sheet
    from axlewright.views import sheet_data

    return questions_sheet(sheet_data(axle))


def written(made: bytes, path: Path) -> None:
    """Put a file on disk; an old one stays whole until the new one is."""
    draft = path.with_name(path.name + ".part")
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        draft.write_bytes(made)
        os.replace(draft, path)  # noqa: PTH105
    except OSError as trouble:
        raise AxlewrightError(
            f"{path} cannot be written: {trouble.strerror}.", remedy="Give another folder."
        ) from trouble
