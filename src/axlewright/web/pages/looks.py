"""Look it over: may I drive, the lists of looks taken with a tap, what is open, what is due."""

import datetime as dt
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Final
from urllib.parse import quote, unquote

from starlette.concurrency import run_in_threadpool
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import BaseRoute, Route

from axlewright.actions import Bay, entry_number, look_from, take_back_look, work_from
from axlewright.errors import AxlewrightError, NotKept, UnknownEntry
from axlewright.rig import FOUND
from axlewright.views import (
    LEADS,
    LISTS,
    drive_words,
    due_words,
    last_hit,
    look_cards,
    open_words,
)
from axlewright.web.framing import framed
from axlewright.web.page import bay_of, device_of, form_and_file, form_of, page
from axlewright.web.pages.axle import PARTS, slug_of
from axlewright.web.settings import YEAR, settings_of

LOOKER: Final = "bay_looker"
LONGEST: Final = 60
DAY: Final = 12 * 3600  # s; an odometer said in the morning is not tomorrow's
BEGINS: Final[Mapping[str, str]] = {
    "wheel_fitted": "a wheel was off and on again",
    "hub_fitted": "a hub or its bearings were fitted or set",
    "suspension_fitted": "springs, arms or their clamps were fitted",
    "steering_fitted": "a rod, joint or clamp of the steering was fitted",
    "gears_fitted": "ring and pinion were fitted",
}
PHOTO_NAMES: Final[Mapping[str, str]] = {
    "image/jpeg": "jpg",
    "image/png": "png",
    "image/webp": "webp",
    "image/heic": "heic",
    "image/avif": "avif",
}


class Words(dict[str, str]):
    """Fields of a form; what was not filled in is empty."""

    def __missing__(self, _: str) -> str:
        """Nothing was said."""
        return ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Refusal:
    """Something said on the page that was not kept: where, why, and what was filled in."""

    place: str = ""
    fault: str = ""
    said: Words = field(default_factory=Words)
    blank: Words = field(default_factory=Words)


async def looks(request: Request) -> Response:
    """The page of looks; ``list`` says which list."""
    return await _looks(request, slug_of(request), request.query_params.get("list", ""))


async def take(request: Request) -> Response:
    """Take one look."""
    slug = slug_of(request)
    said, upload = await form_and_file(request)
    shown, look = said.get("list", ""), said.get("look", "")[:LONGEST]
    fault = await entered(request, slug, said, upload, look_from)
    if fault is None and "x-fragment" not in request.headers:
        return RedirectResponse(f"/axle/{slug}/looks?list={quote(shown)}#look-{quote(look)}", 303)
    refused = Refusal(place=f"look-{look}", fault=fault or "", said=Words(said))
    return await _looks(request, slug, shown, refused if fault else None)


async def work(request: Request) -> Response:
    """Enter work that was done: what closes a look, a standing job, what begins a reminder."""
    slug = slug_of(request)
    said, upload = await form_and_file(request)
    place = said.get("place", "")[:LONGEST]
    fault = await entered(request, slug, said, upload, work_from)
    if fault is None and "x-fragment" not in request.headers:
        return RedirectResponse(f"/axle/{slug}/looks?list={quote(said.get('list', ''))}#open", 303)
    refused = Refusal(place=place, fault=fault or "", said=Words(said))
    return await _looks(request, slug, said.get("list", ""), refused if fault else None)


async def take_back(request: Request) -> Response:
    """Enter that a look was a slip."""
    slug = slug_of(request)
    said, fault = await taken_back(request, slug)
    look, shown = said.get("look", "")[:LONGEST], said.get("list", "")
    if fault is None and "x-fragment" not in request.headers:
        return RedirectResponse(f"/axle/{slug}/looks?list={quote(shown)}#look-{quote(look)}", 303)
    refused = Refusal(place=f"look-{look}", fault=fault or "")
    return await _looks(request, slug, shown, refused if fault else None)


async def taken_back(request: Request, slug: str) -> tuple[Mapping[str, str], str | None]:
    """Enter that a look was a slip; gives what was said, and what is wrong with it."""
    said = await form_of(request)
    number = entry_number(said.get("number", ""))
    if number is None:
        raise HTTPException(422, "Which look?")

    def taken() -> None:
        log = bay_of(request).log()
        take_back_look(log, slug, number, said.get("reason", ""), looker_of(request, slug)[0])

    return said, await _tried(taken)


async def looker(request: Request) -> Response:
    """Remember on this device who looks, and what the odometer says today."""
    slug = slug_of(request)
    said = await form_of(request)
    who, read = (said.get(name, "").strip()[:LONGEST] for name in ("who", "odometer"))
    bay = bay_of(request)
    fault = await _tried(lambda: bay.log().odometer_reads(slug, read))
    if fault:
        refused = Refusal(place="looker", fault=fault, said=Words(said))
        return await _looks(request, slug, said.get("list", ""), refused)
    back = said.get("back", "looks")
    shown = f"?list={quote(said.get('list', ''))}" if back == "looks" else ""
    tail = back if back in {"looks", "hit"} else "looks"
    answer = RedirectResponse(f"/axle/{slug}/{tail}{shown}", 303)
    told = "|".join((quote(who), quote(read), slug, dt.date.today().isoformat()))  # noqa: DTZ011
    answer.set_cookie(LOOKER, told, max_age=YEAR, httponly=True, samesite="strict")
    return answer


async def photo(request: Request) -> Response:
    """One photo of this axle's book; only ever shown as the picture that it is."""
    slug, digest = slug_of(request), request.path_params["digest"]
    data, kind = await run_in_threadpool(lambda: bay_of(request).log().photo(slug, digest))
    name = f"{slug}-{digest[:8]}.{PHOTO_NAMES[kind]}"
    headers = {
        "Content-Disposition": f'inline; filename="{name}"',
        "Cache-Control": "private, max-age=31536000, immutable",
    }
    return Response(data, media_type=kind, headers=headers)


def looker_of(request: Request, slug: str) -> tuple[str, str]:
    """Who looks on this device, and the odometer as it was said today for this axle."""
    parts = request.cookies.get(LOOKER, "").split("|")
    if len(parts) != 4:
        return "", ""
    who, read, axle, day = parts
    fresh = axle == slug and day == dt.date.today().isoformat()  # noqa: DTZ011
    return unquote(who)[:LONGEST], unquote(read)[:LONGEST] if fresh else ""


async def entered(
    request: Request,
    slug: str,
    said: Mapping[str, str],
    upload: tuple[bytes, str] | None,
    enter: Callable[..., int],
) -> str | None:
    """Enter what a form says, with whoever looks; gives what is wrong with it, or None."""
    who, odometer = looker_of(request, slug)
    photo = upload if upload is not None and (upload[0] or upload[1]) else None
    device, key = device_of(request), said.get("key", "")[:LONGEST]
    bay = bay_of(request)
    return await _tried(
        lambda: enter(
            bay.log(), slug, said, photo, who=who, odometer=odometer, device=device, key=key
        )
    )


async def _tried(call: Callable[[], object]) -> str | None:
    try:
        await run_in_threadpool(call)
    except (NotKept, UnknownEntry):
        raise
    except AxlewrightError as trouble:
        return f"{trouble.problem} {trouble.remedy}".strip()
    return None


async def _looks(
    request: Request, slug: str, shown: str, refused: Refusal | None = None
) -> Response:
    system = settings_of(request).units
    told = await run_in_threadpool(_told, bay_of(request), slug, shown, system)
    return answered(request, "looks.html", told, slug, refused)


def answered(
    request: Request, template: str, told: Mapping[str, object], slug: str, refused: Refusal | None
) -> Response:
    """A page of looks, with what was refused beside where it was said."""
    who, odometer = looker_of(request, slug)
    ours = "x-fragment" in request.headers  # a browser would report a 422 as an error of the page
    answer = page(
        request,
        template,
        told,
        status=422 if refused and not ours else 200,
        who=who,
        odometer=odometer,
        refused=refused or Refusal(),
    )
    if refused:
        answer.headers["X-Not-Kept"] = "1"
    return answer


def looks_told(
    bay: Bay, slug: str, occasion: str, system: str, *, slowly: bool
) -> dict[str, object]:
    """What every page of looks shows: the answer, one list, what it is said with."""
    log, draft = bay.log(), bay.draft(slug)
    history, drive = log.history(slug), log.drive(slug, beside_the_track=slowly)
    return {
        **framed(slug, draft, bay, drive),
        "drive": drive_words(drive, system, slowly=slowly),
        "list": occasion,
        "cards": look_cards(log.wanted(slug, occasion), history, log.today, system),
        "open_ones": open_words(history),
        "hit": last_hit(history),
        "found_words": FOUND,
        "parts": PARTS,
        "today": log.today.isoformat(),
    }


def _told(bay: Bay, slug: str, shown: str, system: str) -> dict[str, object]:
    occasion = shown if shown in LISTS else "before_trip"
    return {
        **looks_told(bay, slug, occasion, system, slowly=False),
        "lists": LISTS,
        "lead": LEADS[occasion],
        "dues": due_words(bay.log().due(slug), system),
        "begins": BEGINS,
    }


ROUTES: Final[tuple[BaseRoute, ...]] = (
    Route("/axle/{slug}/looks", looks),
    Route("/axle/{slug}/looks/take", take, methods=["POST"]),
    Route("/axle/{slug}/looks/work", work, methods=["POST"]),
    Route("/axle/{slug}/looks/back", take_back, methods=["POST"]),
    Route("/axle/{slug}/looks/who", looker, methods=["POST"]),
    Route("/axle/{slug}/photo/{digest}", photo),
)
