"""Write the report of an assessment to a file."""

import os
from pathlib import Path

from axlewright.errors import AxlewrightError
from axlewright.strength import Assessment, Comparison


def write_report(answer: Assessment | Comparison, path: Path, system: str = "metric") -> None:
    """Typeset the report; an old file stays whole until the new one is."""
    from axlewright.report import assessment_report
    from axlewright.views import report_data

    made = assessment_report(report_data(answer, system))
    draft = path.with_name(path.name + ".part")
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        draft.write_bytes(made)
        os.replace(draft, path)  # noqa: PTH105
    except OSError as trouble:
        raise AxlewrightError(
            f"The report cannot be written to {path}: {trouble.strerror}.",
            remedy="Give another folder.",
        ) from trouble
