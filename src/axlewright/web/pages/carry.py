"""What to carry for a trip, ticked off as it is packed; and the repair cards of the axle."""

import json
from collections.abc import Mapping
from typing import Final

from starlette.concurrency import run_in_threadpool
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import BaseRoute, Route

from axlewright.actions import (
    Bay,
    card_done,
    carry_pdf,
    carrying,
    outing_said,
    tick,
    usual_outing,
)
from axlewright.errors import AxlewrightError
from axlewright.tables import duties
from axlewright.upkeep import Carrying, Ticked
from axlewright.views import carry_data, carry_json
from axlewright.web.framing import framed
from axlewright.web.page import bay_of, device_of, form_of, page
from axlewright.web.pages.axle import slug_of
from axlewright.web.settings import settings_of

TRIP: Final = ("days", "people", "mass", "far", "ground", "distance")
SIDES: Final = {"": "not said", "left": "left", "right": "right", "both": "both"}


async def carry(request: Request) -> Response:
    """The least set, the rest by what it saves for its mass, and the list to tick."""
    return await _shown(request, _trip(request.query_params))


async def kept(request: Request) -> Response:
    """Keep the list as it was ticked, with the trip that it was packed for."""
    slug, fields = slug_of(request), await form_of(request)
    device, trip = device_of(request), _trip(fields)
    bay = bay_of(request)

    def entered() -> None:
        log = bay.log()
        outing_said(trip, usual_outing(log, slug))
        tick(log, slug, _ticks(fields), trip, device=device)

    try:
        await run_in_threadpool(entered)
    except AxlewrightError as trouble:
        return await _shown(request, trip, f"{trouble}")
    return RedirectResponse(f"/axle/{slug}/carry#list", 303)


async def carry_file(request: Request) -> Response:
    """The same for a machine, in SI."""
    told = await run_in_threadpool(_carrying, bay_of(request), slug_of(request), _asked(request))
    body = json.dumps(carry_json(told), ensure_ascii=False, allow_nan=False, indent=1)
    return _file(body.encode(), f"{told.slug}-carry.json", "application/json")


async def carry_paper(request: Request) -> Response:
    """Packing list and repair cards on paper."""
    system = settings_of(request).units

    def made() -> tuple[str, bytes]:
        told = _carrying(bay_of(request), slug_of(request), _asked(request))
        return told.slug, carry_pdf(told, system)

    slug, content = await run_in_threadpool(made)
    return _file(content, f"{slug}-carry.pdf", "application/pdf")


async def cards(request: Request) -> Response:
    """Every repair card of this axle, those of the parts most at risk first."""
    slug, system = slug_of(request), settings_of(request).units
    bay, done = bay_of(request), request.query_params.get("done", "")

    def told() -> dict[str, object]:
        draft = bay.draft(slug)
        shown = carry_data(_carrying(bay, slug, {}), system)
        return {**framed(slug, draft, bay), "cards": shown.cards, "done": done, "sides": SIDES}

    return page(request, "cards.html", await run_in_threadpool(told))


async def card_kept(request: Request) -> Response:
    """Enter that a card was worked through; what it needs next is a look."""
    slug, fields = slug_of(request), await form_of(request)
    device, card = device_of(request), fields.get("card", "")
    bay = bay_of(request)

    def entered() -> None:
        card_done(
            bay.log(),
            slug,
            card,
            side=fields.get("side", ""),
            who=fields.get("who", ""),
            odometer=fields.get("odometer", ""),
            note=fields.get("note", ""),
            device=device,
        )

    await run_in_threadpool(entered)
    return RedirectResponse(f"/axle/{slug}/cards?done={card}#card-{card}", 303)


def _asked(request: Request) -> dict[str, str]:
    return _trip(request.query_params)


def _trip(given: Mapping[str, str]) -> dict[str, str]:
    return {name: given.get(name, "") for name in TRIP}


def _ticks(fields: Mapping[str, str]) -> dict[str, Ticked]:
    return {
        name.removeprefix("state."): Ticked(
            state=word, lies=fields.get(f"lies.{name.removeprefix('state.')}", "")
        )
        for name, word in fields.items()
        if name.startswith("state.")
    }


def _carrying(bay: Bay, slug: str, said: Mapping[str, str]) -> Carrying:
    if not bay.last_entry(slug):
        raise HTTPException(404, "There is no axle of that name here.")
    return carrying(bay.log(), slug, said, bay.assessment(slug))


async def _shown(request: Request, said: Mapping[str, str], fault: str = "") -> Response:
    slug, system = slug_of(request), settings_of(request).units
    told = await run_in_threadpool(_told, bay_of(request), slug, said, system, fault)
    return page(request, "carry.html", told, status=422 if told["fault"] else 200)


def _told(
    bay: Bay, slug: str, said: Mapping[str, str], system: str, fault: str
) -> dict[str, object]:
    draft = bay.draft(slug)
    asked: Mapping[str, str] = {} if fault else said
    try:
        told = _carrying(bay, slug, asked)
    except AxlewrightError as trouble:
        fault, told = f"{trouble}", _carrying(bay, slug, {})
    usual = usual_outing(bay.log(), slug)
    return {
        **framed(slug, draft, bay),
        "data": carry_data(told, system),
        "trip": {name: said.get(name, "") or usual[name] for name in TRIP},
        "grounds": {key: each.words for key, each in duties().items()},
        "missing": len(draft.missing()),
        "fault": fault,
    }


def _file(content: bytes, name: str, kind: str) -> Response:
    saved = {"Content-Disposition": f'attachment; filename="{name}"'}
    return Response(content, media_type=kind, headers=saved)


ROUTES: Final[tuple[BaseRoute, ...]] = (
    Route("/axle/{slug}/carry", carry),
    Route("/axle/{slug}/carry/keep", kept, methods=["POST"]),
    Route("/axle/{slug}/carry/list.pdf", carry_paper),
    Route("/axle/{slug}/carry.json", carry_file),
    Route("/axle/{slug}/cards", cards),
    Route("/axle/{slug}/cards/done", card_kept, methods=["POST"]),
)
