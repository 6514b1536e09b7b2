"""Align it: the steps in their order, readings kept as they are taken, and what to turn."""

from collections.abc import Mapping
from typing import Final

from markupsafe import Markup
from starlette.concurrency import run_in_threadpool
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import BaseRoute, Route

from axlewright.actions import Bay, ReadingsSaid, align_paper
from axlewright.errors import AxlewrightError, BadFile
from axlewright.geometry import Alignment
from axlewright.views import align_page, align_sentence, steering_lines
from axlewright.web.framing import framed
from axlewright.web.page import bay_of, device_of, form_of, page
from axlewright.web.pages.answer import NOT_YET
from axlewright.web.pages.axle import slug_of
from axlewright.web.settings import settings_of

EARLIER: Final = 6
STEPS: Final = frozenset(
    {"ride_height", "play", "square", "caster", "toe", "steering_wheel"}
)  # fmt: skip


async def aligning(request: Request) -> Response:
    """The page: sentence, drawing, steps with their readings, what to turn, papers."""
    slug, system = slug_of(request), settings_of(request).units
    at = request.query_params.get("at", "")
    told = await run_in_threadpool(_page, bay_of(request), slug, at, None, system)
    return page(request, "align.html", told)


async def say(request: Request) -> Response:
    """Take the readings of one step."""
    slug, system = slug_of(request), settings_of(request).units
    fields = dict(await form_of(request))
    step, key = fields.pop("step", ""), fields.pop("key", "")
    texts = {path: text for path, text in fields.items() if "." in path}
    bay, device = bay_of(request), device_of(request)
    said = await run_in_threadpool(lambda: bay.read(slug, texts, device, key=key[:64]))
    at = step if step in STEPS else "toe"
    if said.stored:
        return RedirectResponse(f"/axle/{slug}/align?at={at}#step-{at}", 303)
    told = await run_in_threadpool(_page, bay, slug, at, said, system)
    return page(request, "align.html", told, status=422)


async def close(request: Request) -> Response:
    """Close the readings: they stay on record, the next begin anew."""
    slug = slug_of(request)
    key = (await form_of(request)).get("key", "")
    bay, device = bay_of(request), device_of(request)
    await run_in_threadpool(lambda: bay.close_reading(slug, device, key=key[:64]))
    return RedirectResponse(f"/axle/{slug}/align", 303)


async def worksheet(request: Request) -> Response:
    """The worksheet as read, with the brief for the alignment shop."""
    slug, system = slug_of(request), settings_of(request).units
    bay = bay_of(request)
    made = await run_in_threadpool(lambda: align_paper(_whole(bay, slug), system))
    return _file(made, f"{slug}-aligned.pdf", "application/pdf")


async def sheet(request: Request) -> Response:
    """An empty worksheet, to be written on."""
    slug, system = slug_of(request), settings_of(request).units
    bay = bay_of(request)
    made = await run_in_threadpool(lambda: align_paper(_whole(bay, slug), system, blank=True))
    return _file(made, f"{slug}-align-sheet.pdf", "application/pdf")


async def readings(request: Request) -> Response:
    """The readings as a file."""
    slug = slug_of(request)
    text = await run_in_threadpool(bay_of(request).readings_file, slug)
    return _file(text.encode(), f"{slug}-readings.toml", "application/toml")


def _whole(bay: Bay, slug: str) -> Alignment:
    found = bay.alignment(slug)
    if found is None:
        raise HTTPException(404, NOT_YET)
    return found


def _page(
    bay: Bay, slug: str, at: str, said: ReadingsSaid | None, system: str
) -> dict[str, object]:
    draft = bay.draft(slug)
    told = {
        **framed(slug, draft, bay),
        "missing": len(draft.missing()),
        "found": None,
        "at": at,
        "begun": None,
        "earlier": (),
        "steering": (),
        "unfit": "",
        "refused": said is not None,
    }
    session = bay.reading(slug)
    try:
        found = bay.alignment(slug)
    except BadFile as trouble:  # the rig has changed under readings that fitted it before
        told["unfit"] = str(trouble)
        found = bay.alignment(slug, type(session)())
    if found is None:
        return told
    texts: Mapping[str, str] = said.texts if said else session.said
    made = align_page(found, texts, said.faults if said else {}, system)
    opened = at or next((each.key for each in made.steps if each.state == "not read"), "")
    return {
        **told,
        "found": made,
        "at": opened,
        "svg": Markup(made.svg),  # noqa: S704  (made by views, which escapes)
        "begun": session.began,
        "earlier": _earlier(bay, slug, system),
        "steering": _steering(bay, slug, system),
    }


def _earlier(bay: Bay, slug: str, system: str) -> list[tuple[str, str]]:
    """Day and sentence of alignments closed before, the last first."""
    lines = []
    for session in reversed(bay.readings_before(slug)[-EARLIER:]):
        day = session.last.astimezone().date().isoformat() if session.last else ""
        try:
            found = bay.alignment(slug, session)
        except BadFile:
            lines.append((day, "these readings no longer fit the axle as it is told now"))
            continue
        if found is not None:
            lines.append((day, align_sentence(found, system)))
    return lines


def _steering(bay: Bay, slug: str, system: str) -> list[tuple[str, str]]:
    try:
        found = bay.moves(slug)
    except AxlewrightError:
        return []
    return [] if found is None else steering_lines(found.before, system)


def _file(content: bytes, name: str, kind: str) -> Response:
    saved = {"Content-Disposition": f'attachment; filename="{name}"'}
    return Response(content, media_type=kind, headers=saved)


ROUTES: Final[tuple[BaseRoute, ...]] = (
    Route("/axle/{slug}/align", aligning),
    Route("/axle/{slug}/align/say", say, methods=["POST"]),
    Route("/axle/{slug}/align/close", close, methods=["POST"]),
    Route("/axle/{slug}/align/worksheet.pdf", worksheet),
    Route("/axle/{slug}/align/sheet.pdf", sheet),
    Route("/axle/{slug}/align/readings.toml", readings),
)
