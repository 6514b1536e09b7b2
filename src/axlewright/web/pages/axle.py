"""Your axle: its drawing, and every question about it, each answer kept as soon as it is said."""

import datetime as dt
import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from starlette.concurrency import run_in_threadpool
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import BaseRoute, Route

from axlewright.actions import Bay, Said
from axlewright.rig import FOUND, WHERE
from axlewright.web.asking import (
    Question,
    Refused,
    answered,
    further,
    progress_line,
    questions,
    refusal,
)
from axlewright.web.framing import framed
from axlewright.web.page import bay_of, device_of, form_of, page
from axlewright.web.picture import picture_of
from axlewright.web.settings import settings_of

PARTS: Final = (
    "track-bar bracket",
    "track bar",
    "arm bracket",
    "spring seat",
    "tube",
    "end forging",
    "knuckle",
    "steering arm",
    "tie rod",
    "ball joint",
    "hub",
    "shaft joint",
    "brake hose",
)
SLUG: Final = re.compile(r"[a-z0-9-]{1,64}")
FIRST_OF_THE_REST: Final = 6  # shown at once; the others behind one more tap
DONT_KNOW: Final = "don't know"


@dataclass(frozen=True, slots=True, kw_only=True)
class Listing:
    """One thing being listed as found: the form as filled in, and what is wrong with it."""

    part: str = ""
    what: str = ""
    where: str = ""
    date: str = ""
    note: str = ""
    fault: str = ""


async def axle(request: Request) -> Response:
    """The page of one axle."""
    return await _axle(request, slug_of(request))


async def pieces(request: Request) -> Response:
    """The same page for a browser that has it already; 204 where nothing was said since."""
    slug = slug_of(request)
    after = request.query_params.get("after", "")
    last = await run_in_threadpool(bay_of(request).last_entry, slug)
    if after.isascii() and after.isdigit() and len(after) < 18 and int(after) >= last > 0:
        return Response(status_code=204)
    return await _axle(request, slug)


async def say(request: Request) -> Response:
    """Take one answer, or some that only fit together."""
    slug = slug_of(request)
    fields = await form_of(request)
    path = fields.get("path", "")
    said = await run_in_threadpool(_take, bay_of(request), slug, fields, device_of(request))
    if said.stored and "x-fragment" not in request.headers:
        return RedirectResponse(f"/axle/{slug}?at={path}#ask-{path.replace('.', '-')}", 303)
    return await _axle(request, slug, said=said)


async def list_found(request: Request) -> Response:
    """List one thing that was mended or hurts."""
    slug = slug_of(request)
    fields = await form_of(request)
    entry = {name: fields.get(name, "") for name in ("part", "what", "where", "date", "note")}
    key = fields.get("key", "")
    said = await run_in_threadpool(
        lambda: bay_of(request).add_condition(slug, entry, device_of(request), key=key)
    )
    if said.stored:
        return await _back(request, slug)
    kept = {name: text[:1000] for name, text in entry.items()}
    return await _axle(request, slug, listing=Listing(**kept, fault=said.fault))


async def unlist(request: Request) -> Response:
    """Take one thing off the list."""
    slug = slug_of(request)
    fields = await form_of(request)
    which, key = fields.get("which", ""), fields.get("key", "")
    bay = bay_of(request)

    def settle() -> Said:
        if which not in {one.key for one in bay.conditions(slug)}:
            raise HTTPException(422, "That is not on the list any more.")
        return bay.settle_condition(slug, which, device_of(request), key=key)

    await run_in_threadpool(settle)
    return await _back(request, slug)


async def rig_file(request: Request) -> Response:
    """The rig as a file, as far as it is answered."""
    slug = slug_of(request)
    text = await run_in_threadpool(bay_of(request).text, slug)
    name = {"Content-Disposition": f'attachment; filename="{slug}.toml"'}
    return Response(text, media_type="application/toml", headers=name)


def slug_of(request: Request) -> str:
    """The axle that an address names; 404 where it can be none."""
    slug: str = request.path_params["slug"]
    if not SLUG.fullmatch(slug):
        raise HTTPException(404)
    return slug


def _take(bay: Bay, slug: str, fields: Mapping[str, str], device: str) -> Said:
    path, text = fields.get("path", ""), fields.get("meant") or fields.get("text", "")
    key, how = fields.get("key", ""), fields.get("how", "")
    if how == "clear":
        return bay.clear(slug, path, device, key=key)
    if how == "unknown":
        text = DONT_KNOW
    elif how == "about" and text.strip() and "about" not in text.casefold():
        text = f"about {text}"
    others = {
        name.removeprefix("also."): more
        for name, more in fields.items()
        if name.startswith("also.") and how == "" and "meant" not in fields
    }
    if path in others:
        raise HTTPException(422, "The same answer came twice.")
    return bay.answers(slug, {path: text, **others}, device, key=key, tell=False)[path]


async def _back(request: Request, slug: str) -> Response:
    if "x-fragment" in request.headers:
        return await _axle(request, slug)
    return RedirectResponse(f"/axle/{slug}?at=rig.condition#q-12", 303)


async def _axle(
    request: Request, slug: str, *, said: Said | None = None, listing: Listing | None = None
) -> Response:
    at = said.path if said else request.query_params.get("at", "")
    system = settings_of(request).units
    told = await run_in_threadpool(_told, bay_of(request), slug, said, listing, at, system)
    refused = (said is not None and not said.stored) or listing is not None
    ours = "x-fragment" in request.headers  # a browser would report a 422 as an error of the page
    answer = page(request, "axle.html", told, status=422 if refused and not ours else 200)
    if refused:
        answer.headers["X-Not-Kept"] = "1"
    return answer


def _told(
    bay: Bay, slug: str, said: Said | None, listing: Listing | None, at: str, system: str
) -> dict[str, object]:
    """Everything that the page shows, worked out off the event loop."""
    number = bay.last_entry(slug)
    draft = bay.draft(slug)
    refused = refusal(draft, said) if said else None
    thirteen = questions(draft, refused, system)
    done = answered(thirteen)
    needed = set(draft.required())
    paths = [path for path in bay.next_fields(slug) if path not in needed]
    rest = further(draft, [] if draft.missing() else paths, refused, system)
    return {
        **framed(slug, draft, bay),
        "at": number,
        "thirteen": thirteen,
        "rest": rest[:FIRST_OF_THE_REST],
        "others": rest[FIRST_OF_THE_REST:],
        "done": done,
        "progress": progress_line(done),
        "so_far": bay.so_far_line(slug, system),
        "opened": _opened([*thirteen, *rest], at, refused, listing),
        "picture": picture_of(draft, system),
        "found": bay.conditions(slug),
        "parts": PARTS,
        "found_words": FOUND,
        "where_words": WHERE,
        "today": dt.datetime.now().astimezone().date().isoformat(),
        "listing": listing or Listing(),
    }


def _opened(
    asked: list[Question], at: str, refused: Refused | None, listing: Listing | None
) -> str:
    """Which question stands open: the one just answered, else the first that is not."""
    if listing:
        return "q-12"
    path = refused.path if refused else at
    for one in asked:
        if any(each.path == path for each in one.fields):
            return one.ident
    return next((one.ident for one in asked if not one.done and one.number is not None), "")


ROUTES: Final[tuple[BaseRoute, ...]] = (
    Route("/axle/{slug}", axle),
    Route("/axle/{slug}/pieces", pieces),
    Route("/axle/{slug}/say", say, methods=["POST"]),
    Route("/axle/{slug}/list", list_found, methods=["POST"]),
    Route("/axle/{slug}/unlist", unlist, methods=["POST"]),
    Route("/axle/{slug}/rig.toml", rig_file),
)
