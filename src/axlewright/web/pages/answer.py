"""The answer of one axle, and why each row stands where it stands."""

import json
from typing import Final

from markupsafe import Markup
from starlette.concurrency import run_in_threadpool
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import BaseRoute, Route

from axlewright.actions import Bay
from axlewright.views import answer_page, as_json, broke_line, drive_words, why_page
from axlewright.web.framing import framed
from axlewright.web.page import bay_of, page
from axlewright.web.pages.axle import slug_of
from axlewright.web.settings import settings_of

NOT_YET: Final = (
    "There is no answer yet: the rest of the thirteen questions comes first. They stand on the "
    "page of your axle."
)


async def answer(request: Request) -> Response:
    """What gives first, what is wearing out, and whether anybody has looked."""
    slug, system = slug_of(request), settings_of(request).units
    told = await run_in_threadpool(_answer, bay_of(request), slug, system)
    return page(request, "answer.html", told)


async def why(request: Request) -> Response:
    """One row of one bad moment, opened down to formula and source."""
    slug, system = slug_of(request), settings_of(request).units
    rank = int(request.path_params["rank"])
    told = await run_in_threadpool(_why, bay_of(request), slug, rank, system)
    return page(request, "why.html", told)


async def answer_json(request: Request) -> Response:
    """The answer for a machine, in SI."""
    slug = slug_of(request)
    found = await run_in_threadpool(bay_of(request).assessment, slug)
    if found is None:
        raise HTTPException(404, NOT_YET)
    body = json.dumps(as_json(found), ensure_ascii=False, allow_nan=False, indent=1)
    name = {"Content-Disposition": f'attachment; filename="{slug}-answer.json"'}
    return Response(body, media_type="application/json", headers=name)


def _answer(bay: Bay, slug: str, system: str) -> dict[str, object]:
    draft = bay.draft(slug)
    drive = bay.log().drive(slug)
    told = {**framed(slug, draft, bay, drive), "drive": drive_words(drive, system)}
    assessment = bay.assessment(slug)
    if assessment is None:
        return {**told, "answer": None, "missing": len(draft.missing())}
    made = answer_page(assessment, system)
    # The drawing is made by views, which escapes what was typed.
    return {
        **told,
        "answer": made,
        "broke": broke_line(assessment, bay.log().broke(slug)),
        "picture": Markup(made.picture.svg),  # noqa: S704
        "changes": bay.changes(slug),
    }


def _why(bay: Bay, slug: str, rank: int, system: str) -> dict[str, object]:
    draft = bay.draft(slug)
    assessment = bay.assessment(slug)
    if assessment is None:
        raise HTTPException(404, NOT_YET)
    if not 1 <= rank <= len(assessment.order):
        raise HTTPException(404, "The order has no such row. Open a row from the answer.")
    return {**framed(slug, draft, bay), "why": why_page(assessment, rank, system)}


ROUTES: Final[tuple[BaseRoute, ...]] = (
    Route("/axle/{slug}/answer", answer),
    Route("/axle/{slug}/why/{rank:int}", why),
    Route("/axle/{slug}/answer.json", answer_json),
)
