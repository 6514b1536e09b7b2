"""Pages for what cannot be done: what is wrong, and what to do about it, in plain words."""

from collections.abc import Sequence
from typing import Final

from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import Response

from axlewright.errors import AxlewrightError, BadFile, NotKept, UnknownEntry
from axlewright.web.page import page

SAID: Final[dict[int, tuple[str, str]]] = {
    400: ("That could not be read.", "Go back and try once more."),
    403: ("That is not allowed from here.", "Open the page again and try once more."),
    404: ("There is no such page.", "It may have been mistyped, or its axle has another name."),
    405: ("That page cannot be used in this way.", "Open it from one of the pages of the bay."),
    413: ("That is too large.", "A rig file is a few kilobytes; a photo may be taken smaller."),
    422: ("That cannot be used as it is.", "Put it right and send it again."),
    429: ("That was wrong too often.", "Wait a minute, then try again."),
}
OURS: Final = (
    "Something is wrong with the bay itself.",
    (
        "What was said so far is kept. Load the page again; if this comes back, stop the bay in "
        "the terminal, start it again, and send us the lines that the terminal shows."
    ),
)


def trouble_page(request: Request, trouble: Exception | None) -> Response:
    """Page for a trouble; None stands for a bug of ours."""
    if isinstance(trouble, BadFile):
        faults = [str(fault) for fault in trouble.faults]
        return _page(request, 422, f"{trouble.file} cannot be used yet.", SAID[422][1], faults)
    if isinstance(trouble, UnknownEntry):
        return _page(request, 404, trouble.problem, trouble.remedy or SAID[404][1])
    if isinstance(trouble, NotKept):
        return _page(request, 503, trouble.problem, trouble.remedy)
    if isinstance(trouble, AxlewrightError):
        return _page(request, 422, trouble.problem, trouble.remedy or SAID[422][1])
    if isinstance(trouble, HTTPException):
        status = trouble.status_code
        problem, remedy = SAID.get(status, SAID[400])
        own = trouble.detail if trouble.detail.endswith(".") else problem
        return _page(request, status, own, remedy, headers=trouble.headers)
    return _page(request, 500, *OURS)


def _page(
    request: Request,
    status: int,
    problem: str,
    remedy: str,
    faults: Sequence[str] = (),
    headers: object = None,
) -> Response:
    answer = page(
        request,
        "trouble.html",
        status=status,
        problem=problem,
        remedy=remedy,
        faults=faults,
    )
    if isinstance(headers, dict):
        answer.headers.update({key: value for key, value in headers.items() if key == "Allow"})
    return answer
