"""I just hit something: what stops, the hit, five looks, the sum, and whether it goes on slowly."""

from collections.abc import Callable
from functools import partial
from typing import Final
from urllib.parse import quote

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import BaseRoute, Route

from axlewright.actions import (
    Bay,
    hit_from,
    look_from,
    off_centre_from,
    rods_of,
    work_from,
)
from axlewright.views import hit_words
from axlewright.web.page import bay_of, form_and_file
from axlewright.web.pages.axle import slug_of
from axlewright.web.pages.looks import (
    LONGEST,
    Refusal,
    Words,
    answered,
    entered,
    looks_told,
    taken_back,
)
from axlewright.web.settings import settings_of

WHATS: Final = ("a rock", "a ledge", "a hole", "a stump or a tree", "a hard landing", "a kerb")


async def hit(request: Request) -> Response:
    """The page after a hit."""
    return await _hit(request, slug_of(request))


async def enter(request: Request) -> Response:
    """Enter what was hit."""
    return await _posted(request, hit_from, "hit", lambda said: "five")


async def take(request: Request) -> Response:
    """Take one of the five looks."""
    return await _posted(
        request, look_from, "look", lambda said: f"look-{said.get('look', '')[:LONGEST]}"
    )


async def work(request: Request) -> Response:
    """Enter work that was done."""
    return await _posted(request, work_from, "work", lambda said: said.get("place", "")[:LONGEST])


async def weigh(request: Request) -> Response:
    """Enter how far the wheel stands off, and how far a rod is bowed."""
    system = settings_of(request).units
    return await _posted(
        request, partial(off_centre_from, system=system), "sum", lambda said: "sum"
    )


async def take_back(request: Request) -> Response:
    """Enter that a look was a slip."""
    slug = slug_of(request)
    said, fault = await taken_back(request, slug)
    look = said.get("look", "")[:LONGEST]
    if fault is None and "x-fragment" not in request.headers:
        return RedirectResponse(f"/axle/{slug}/hit#look-{quote(look)}", 303)
    refused = Refusal(place=f"look-{look}", fault=fault) if fault else None
    return await _hit(request, slug, refused)


async def _posted(
    request: Request,
    act: Callable[..., int],
    room: str,
    place_of: Callable[[dict[str, str]], str],
) -> Response:
    slug = slug_of(request)
    fields, upload = await form_and_file(request)
    said = dict(fields)
    place = place_of(said)
    fault = await entered(request, slug, said, upload, act)
    if fault is None and "x-fragment" not in request.headers:
        return RedirectResponse(f"/axle/{slug}/hit#{quote(place)}", 303)
    where = room if room in {"hit", "sum"} else place
    refused = Refusal(place=where, fault=fault or "", said=Words(said)) if fault else None
    return await _hit(request, slug, refused)


async def _hit(request: Request, slug: str, refused: Refusal | None = None) -> Response:
    system = settings_of(request).units
    told = await run_in_threadpool(_told, bay_of(request), slug, system)
    return answered(request, "hit.html", told, slug, refused)


def _told(bay: Bay, slug: str, system: str) -> dict[str, object]:
    log = bay.log()
    rods = rods_of(log, slug, system)
    return {
        **looks_told(bay, slug, "after_hit", system, slowly=True),
        "words": hit_words(log.history(slug), log.axle(slug), rods, system),
        "whats": WHATS,
    }


ROUTES: Final[tuple[BaseRoute, ...]] = (
    Route("/axle/{slug}/hit", hit),
    Route("/axle/{slug}/hit/enter", enter, methods=["POST"]),
    Route("/axle/{slug}/hit/take", take, methods=["POST"]),
    Route("/axle/{slug}/hit/work", work, methods=["POST"]),
    Route("/axle/{slug}/hit/sum", weigh, methods=["POST"]),
    Route("/axle/{slug}/hit/back", take_back, methods=["POST"]),
)
