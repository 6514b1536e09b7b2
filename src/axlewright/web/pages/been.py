"""Where it has been: the past, trips, parts, notes and photos, and what became of each entry."""

from collections.abc import Callable
from typing import Final

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import BaseRoute, Route

from axlewright.actions import (
    Bay,
    chapter_from,
    entry_number,
    fit_from,
    log_sheet,
    note_from,
    off_from,
    part_from,
    trip_from,
    withdrawn_from,
)
from axlewright.rig import COMPONENTS, Chapter, Kept, Remark, Trip
from axlewright.tables import duties
from axlewright.units import show
from axlewright.upkeep import driven
from axlewright.views import broke_line, chapter_rows, driven_sentence, history_rows, part_rows
from axlewright.web.framing import framed
from axlewright.web.page import bay_of, form_and_file, page
from axlewright.web.pages.axle import slug_of
from axlewright.web.pages.looks import Refusal, Words, entered, looker_of
from axlewright.web.settings import settings_of

A_PAGE: Final = 20  # entries
FORMS: Final[dict[str, Callable[..., int]]] = {
    "trip": trip_from,
    "chapter": chapter_from,
    "part": part_from,
    "fit": fit_from,
    "off": off_from,
    "note": note_from,
    "withdraw": withdrawn_from,
}
FORM_OF: Final = {Trip: "trip", Chapter: "chapter", Remark: "note"}


async def been(request: Request) -> Response:
    """The page; ``page`` counts back through the history, ``right`` puts one entry right."""
    slug = slug_of(request)
    asked = {name: request.query_params.get(name, "") for name in ("page", "right")}
    return await _been(request, slug, asked["page"], asked["right"])


async def enter(request: Request) -> Response:
    """Take what one form of the page says."""
    slug, form = slug_of(request), request.path_params["form"]
    said, upload = await form_and_file(request)
    if form not in FORMS:
        return await _been(request, slug)
    fault = await entered(request, slug, said, upload, FORMS[form])
    if fault is None:
        return RedirectResponse(
            f"/axle/{slug}/been#{'parts' if form in PARTED else 'history'}", 303
        )
    place = f"withdraw-{said.get('number', '')[:10]}" if form == "withdraw" else form
    return await _been(request, slug, refused=Refusal(place=place, fault=fault, said=Words(said)))


PARTED: Final = ("part", "fit", "off")


async def paper(request: Request) -> Response:
    """The log as PDF; what is open, hits, welds and bends stand in it whatever else does."""
    slug, system = slug_of(request), settings_of(request).units
    made = await run_in_threadpool(lambda: log_sheet(bay_of(request).log(), slug, system))
    saved = {"Content-Disposition": f'attachment; filename="{slug}-log.pdf"'}
    return Response(made, media_type="application/pdf", headers=saved)


async def _been(
    request: Request, slug: str, at: str = "", right: str = "", refused: Refusal | None = None
) -> Response:
    system = settings_of(request).units
    told = await run_in_threadpool(_told, bay_of(request), slug, at, right, system)
    who, odometer = looker_of(request, slug)
    if refused is None and told["right"]:
        refused = told["right"]  # type: ignore[assignment]
    answer = page(
        request,
        "been.html",
        told,
        status=422 if refused is not None and refused.fault else 200,
        who=who,
        odometer=odometer,
        refused=refused or Refusal(),
    )
    if refused is not None and refused.fault:
        answer.headers["X-Not-Kept"] = "1"
    return answer


def _told(bay: Bay, slug: str, at: str, right: str, system: str) -> dict[str, object]:
    log, draft = bay.log(), bay.draft(slug)
    framing = framed(slug, draft, bay)
    number = entry_number(at) or 1
    whole = log.history(slug, replaced=True)
    pages = max(1, -(-len(whole) // A_PAGE))
    number = min(max(number, 1), pages)
    rows = history_rows(whole, log.readings(slug)[1], system)
    still = [kept for kept in whole if not kept.replaced]
    return {
        **framing,
        "driven": driven_sentence(driven(still), system),
        "broke": broke_line(bay.assessment(slug), log.broke(slug)),
        "chapters": chapter_rows(still, system),
        "parts": part_rows(log.parts(), slug, system),
        "rows": rows[(number - 1) * A_PAGE : number * A_PAGE],
        "count": len(rows),
        "number": number,
        "pages": pages,
        "grounds": {key: duty.words for key, duty in duties().items()},
        "kinds": COMPONENTS,
        "today": log.today.isoformat(),
        "right": _right(whole, right, system),
    }


def _right(whole: list[Kept], right: str, system: str) -> Refusal | None:
    """The form of one entry, filled in as it was entered, to be put right."""
    kept = next((each for each in whole if str(each.number) == right), None)
    if kept is None or kept.replaced or type(kept.body) not in FORM_OF:
        return None
    said = {"right": right, "on": kept.on.isoformat(), "note": kept.note, "who": kept.who}
    if kept.odometer is not None:
        said["odometer"] = show(kept.odometer, "distance", system, 7)
    match kept.body:
        case Trip() as trip:
            said |= {"name": trip.name, "distance": show(trip.distance, "distance", system, 6)}
            said |= {"ground": next((name for name, _ in trip.grounds), "")}
            if trip.water:
                said["water"] = show(trip.water, "length", system)
        case Chapter() as chapter:
            ends = [show(far, "distance", system, 6) for far in (chapter.shortest, chapter.longest)]
            said |= {"title": chapter.title, "tyre": chapter.tyre, "load": chapter.load_state}
            said |= {"distance": " to ".join(ends), "broke": ", ".join(chapter.broke)}
            said |= {"ground": next((name for name, _ in chapter.grounds), "")}
        case Remark() as remark:
            said["about"] = remark.about
    return Refusal(place=FORM_OF[type(kept.body)], said=Words(said))


ROUTES: Final[tuple[BaseRoute, ...]] = (
    Route("/axle/{slug}/been", been),
    Route("/axle/{slug}/been/log.pdf", paper),
    Route("/axle/{slug}/been/{form}", enter, methods=["POST"]),
)
