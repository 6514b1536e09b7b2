"""Your axles: begin one, open a rig file, or copy an invented example."""

from dataclasses import dataclass
from typing import Final

from starlette.concurrency import run_in_threadpool
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import BaseRoute, Route

from axlewright.errors import AxlewrightError, BadFile
from axlewright.web.asking import progress_line
from axlewright.web.guard import MOST_UPLOAD
from axlewright.web.page import bay_of, device_of, form_and_file, form_of, page

EXAMPLES: Final[dict[str, str]] = {
    "wagtail": "Wagtail, a standard wagon, front axle",
    "heron": "Heron, a loaded wagon on big tyres, front axle",
    "stork-rear": "Stork, the long wagon that carries the boats, rear axle",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Begun:
    """What was typed into the form that begins an axle, and what is wrong with it."""

    name: str = ""
    axle: str = "front"
    fault: str = ""


async def axles(request: Request) -> Response:
    """Every axle that the bay keeps."""
    return await _axles(request, Begun())


async def begin(request: Request) -> Response:
    """Begin an axle that nothing is known of but its name."""
    fields = await form_of(request)
    name, axle = fields.get("name", ""), fields.get("axle", "")
    try:
        slug = await run_in_threadpool(bay_of(request).begin, name, axle, device_of(request))
    except AxlewrightError as trouble:
        begun = Begun(name=name[:80], axle=axle, fault=f"{trouble.problem} {trouble.remedy}")
        return await _axles(request, begun, status=422)
    return RedirectResponse(f"/axle/{slug}", 303)


async def open_file(request: Request) -> Response:
    """Take in a rig file; where it has faults they are told and nothing is kept."""
    told: tuple[str, ...]
    _, upload = await form_and_file(request)
    if upload is None or not upload[1]:
        return await _axles(request, Begun(), faults=("No file was picked.",), status=422)
    content, name = upload
    if len(content) > MOST_UPLOAD:
        raise HTTPException(413, "A rig file larger than one megabyte is none.")
    if not name.casefold().endswith(".toml"):
        told = (f"{name[:80]} is no rig file: its name would end in .toml.",)
        return await _axles(request, Begun(), faults=told, status=422)
    try:
        slug = await run_in_threadpool(
            bay_of(request).take_file, content, name[-80:], device_of(request)
        )
    except BadFile as trouble:
        told = tuple(str(fault) for fault in trouble.faults)
        return await _axles(request, Begun(), faults=told, status=422)
    return RedirectResponse(f"/axle/{slug}", 303)


async def copy(request: Request) -> Response:
    """Copy an invented example, to see what an answer looks like."""
    name = (await form_of(request)).get("example", "")
    slug = await run_in_threadpool(bay_of(request).copy_example, name, device_of(request))
    return RedirectResponse(f"/axle/{slug}", 303)


async def _axles(
    request: Request, begun: Begun, *, faults: tuple[str, ...] = (), status: int = 200
) -> Response:
    cards = await run_in_threadpool(bay_of(request).axles)
    return page(
        request,
        "axles.html",
        status=status,
        cards=cards,
        begun=begun,
        faults=faults,
        examples=EXAMPLES,
        progress_line=progress_line,
    )


ROUTES: Final[tuple[BaseRoute, ...]] = (
    Route("/", axles),
    Route("/begin", begin, methods=["POST"]),
    Route("/open", open_file, methods=["POST"]),
    Route("/copy", copy, methods=["POST"]),
)
