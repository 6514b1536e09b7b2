"""Papers and files of one axle."""

from typing import Final

from starlette.concurrency import run_in_threadpool
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import BaseRoute, Route

from axlewright.actions import Bay, carrying, take_html, take_pdf
from axlewright.strength import Assessment
from axlewright.upkeep import Carrying
from axlewright.views import PAPERS
from axlewright.web.framing import framed
from axlewright.web.page import bay_of, page
from axlewright.web.pages.answer import NOT_YET
from axlewright.web.pages.axle import slug_of
from axlewright.web.settings import settings_of


async def paper(request: Request) -> Response:
    """Everything that can be printed or carried off."""
    slug = slug_of(request)
    told = await run_in_threadpool(_paper, bay_of(request), slug)
    return page(request, "paper.html", told, papers=PAPERS)


async def report(request: Request) -> Response:
    """The report as PDF; with ``change`` the number of a kept change, with that beside it."""
    slug, system = slug_of(request), settings_of(request).units
    bay, number = bay_of(request), request.query_params.get("change", "")

    def made() -> bytes:
        if bay.assessment(slug) is None:
            raise HTTPException(404, NOT_YET)
        if not number:
            return bay.paper(slug, "report", system)
        kept = [each for each in bay.changes(slug) if str(each.number) == number]
        if not kept:
            raise HTTPException(404, "That change is not kept here, or no longer.")
        return bay.paper(slug, "report", system, kept[0].text)

    return _file(await run_in_threadpool(made), f"{slug}-report.pdf", "application/pdf")


async def sheet(request: Request) -> Response:
    """The thirteen questions as a sheet to fill in."""
    slug = slug_of(request)
    made = await run_in_threadpool(bay_of(request).paper, slug, "sheet")
    return _file(made, f"{slug}-questions.pdf", "application/pdf")


async def take_paper(request: Request) -> Response:
    """The file to take along, on paper."""
    slug, system = slug_of(request), settings_of(request).units
    bay = bay_of(request)
    made = await run_in_threadpool(
        lambda: take_pdf(
            _whole(bay, slug), system, carrying=_packing(bay, slug), met=bay.log().met(slug)
        )
    )
    return _file(made, f"{slug}-take.pdf", "application/pdf")


async def take_file(request: Request) -> Response:
    """The file to take along, for a phone."""
    slug, system = slug_of(request), settings_of(request).units
    bay = bay_of(request)
    made = await run_in_threadpool(
        lambda: take_html(
            _whole(bay, slug), system, carrying=_packing(bay, slug), met=bay.log().met(slug)
        )
    )
    return _file(made, f"{slug}.html", "text/html")


def _whole(bay: Bay, slug: str) -> Assessment:
    found = bay.assessment(slug)
    if found is None:
        raise HTTPException(404, NOT_YET)
    return found


def _packing(bay: Bay, slug: str) -> Carrying:
    """What to carry on the trip that was last packed for."""
    return carrying(bay.log(), slug, {}, _whole(bay, slug))


def _paper(bay: Bay, slug: str) -> dict[str, object]:
    draft = bay.draft(slug)
    return {
        **framed(slug, draft, bay),
        "missing": len(draft.missing()),
        "changes": list(reversed(bay.changes(slug))),
    }


def _file(content: bytes, name: str, kind: str) -> Response:
    """A file to save: never opened inside the bay's own pages."""
    saved = {"Content-Disposition": f'attachment; filename="{name}"'}
    return Response(content, media_type=kind, headers=saved)


ROUTES: Final[tuple[BaseRoute, ...]] = (
    Route("/axle/{slug}/paper", paper),
    Route("/axle/{slug}/paper/report.pdf", report),
    Route("/axle/{slug}/paper/sheet.pdf", sheet),
    Route("/axle/{slug}/paper/take.pdf", take_paper),
    Route("/axle/{slug}/take.html", take_file),
)
