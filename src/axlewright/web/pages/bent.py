"""Where is it bent or worn: shares over causes from the record, and what to read next."""

import json
from collections.abc import Mapping
from typing import Final

from markupsafe import Markup
from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import BaseRoute, Route

from axlewright.actions import Bay, reading_names, where_bent
from axlewright.errors import AxlewrightError, UnknownEntry
from axlewright.upkeep import Bent
from axlewright.views import bent_page, log_json
from axlewright.web.framing import framed
from axlewright.web.page import bay_of, page
from axlewright.web.pages.axle import slug_of
from axlewright.web.settings import settings_of

LONGEST: Final = 80
CHOICES: Final[Mapping[str, bool | None]] = {"": None, "yes": True, "no": False}


async def bent(request: Request) -> Response:
    """The page; what is typed in stands in its address, and is not kept."""
    slug = slug_of(request)
    told = await run_in_threadpool(
        _told, bay_of(request), slug, dict(request.query_params), settings_of(request).units
    )
    return page(request, "bent.html", told, status=422 if told["fault"] else 200)


async def bent_json(request: Request) -> Response:
    """The same for a machine, in SI."""
    slug, asked = slug_of(request), dict(request.query_params)

    def made() -> str:
        bay = bay_of(request)
        found, _ = _found(bay, slug, asked)
        return json.dumps(log_json("bent", found), ensure_ascii=False, allow_nan=False, indent=1)

    name = {"Content-Disposition": f'attachment; filename="{slug}-bent.json"'}
    body = await run_in_threadpool(made)
    return Response(body, media_type="application/json", headers=name)


def _found(bay: Bay, slug: str, asked: Mapping[str, str]) -> tuple[Bent, dict[str, str]]:
    log = bay.log()
    typed = {
        name: asked[name].strip()[:LONGEST]
        for name in reading_names(log.axle(slug))
        if asked.get(name, "").strip()
    }
    found = where_bent(
        log,
        slug,
        typed,
        after_hit=CHOICES.get(asked.get("hit", "")),
        floor_mapped=CHOICES.get(asked.get("floor", "")),
    )
    return found, typed


def _told(bay: Bay, slug: str, asked: Mapping[str, str], system: str) -> dict[str, object]:
    draft = bay.draft(slug)
    told = {**framed(slug, draft, bay), "fault": "", "answer": None, "missing": 0}
    rig = bay.log().desk.rig(slug)
    if rig is None:
        return {**told, "missing": len(draft.missing())}
    said = {name: text[:LONGEST] for name, text in asked.items()}
    try:
        found, _ = _found(bay, slug, asked)
    except UnknownEntry:
        raise
    except AxlewrightError as trouble:
        told["fault"] = f"{trouble.problem} {trouble.remedy}"
        found, _ = _found(bay, slug, {})
    made = bent_page(found, rig, said, system)
    return {
        **told,
        "answer": made,
        "found": found.found,
        "picture": Markup(made.drawing),  # noqa: S704  (made by views, which escapes what was typed)
        "hit": found.hit,
        "hit_said": asked.get("hit", "") if asked.get("hit") in CHOICES else "",
        "floor_said": asked.get("floor", "") if asked.get("floor") in CHOICES else "",
    }


ROUTES: Final[tuple[BaseRoute, ...]] = (
    Route("/axle/{slug}/bent", bent),
    Route("/axle/{slug}/bent.json", bent_json),
)
