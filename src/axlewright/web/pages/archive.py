"""Everything that the bay keeps as one file, out and in."""

from typing import Final

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import BaseRoute, Route

from axlewright.actions import archive_given, archive_taken
from axlewright.errors import AxlewrightError, NotKept
from axlewright.web.page import bay_of, form_and_file, page


async def archive(request: Request) -> Response:
    """The page of the archive."""
    return await _archive(request)


async def give(request: Request) -> Response:
    """The archive itself."""
    made = await run_in_threadpool(lambda: archive_given(bay_of(request).log()))
    saved = {"Content-Disposition": 'attachment; filename="axlewright-archive.zip"'}
    return Response(made, media_type="application/zip", headers=saved)


async def take(request: Request) -> Response:
    """Take an archive into an empty bay, whole or not at all."""
    _, upload = await form_and_file(request)
    bay = bay_of(request)
    if upload is None or not upload[1]:
        return await _archive(request, "No file was picked.")
    if await run_in_threadpool(bay.axles):
        return await _archive(request, "This bay keeps axles already: nothing was entered.")
    try:
        await run_in_threadpool(lambda: archive_taken(bay.log(), upload[0]))
    except NotKept:
        raise
    except AxlewrightError as trouble:
        return await _archive(request, f"{trouble.problem} {trouble.remedy}".strip())
    return RedirectResponse("/", 303)


async def _archive(request: Request, fault: str = "") -> Response:
    axles = await run_in_threadpool(bay_of(request).axles)
    status = 422 if fault else 200
    return page(request, "archive.html", status=status, kept=len(axles), fault=fault)


ROUTES: Final[tuple[BaseRoute, ...]] = (
    Route("/archive", archive),
    Route("/archive", take, methods=["POST"]),
    Route("/archive/axlewright-archive.zip", give),
)
