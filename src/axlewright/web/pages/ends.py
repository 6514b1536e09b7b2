"""Where the rods end: places to tape, as a form that keeps them and as paper."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from markupsafe import Markup
from starlette.concurrency import run_in_threadpool
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import BaseRoute, Route

from axlewright.actions import Bay, Said, ends_paper
from axlewright.views import EndGroup, ends_data, in_units
from axlewright.web.framing import framed
from axlewright.web.page import bay_of, device_of, form_of, page
from axlewright.web.pages.answer import NOT_YET
from axlewright.web.pages.axle import slug_of
from axlewright.web.settings import settings_of

LONGEST: Final = 400
UNTAPED: Final = "30 mm"  # about which a usual place may be off


@dataclass(frozen=True, slots=True, kw_only=True)
class Taken:
    """What became of a group: its key, what was typed, and what is wrong with which of it."""

    group: str
    texts: Mapping[str, str]
    faults: Mapping[str, str]


async def ends(request: Request) -> Response:
    """The page: the drawing with its numbers, and a form for each group."""
    slug, system = slug_of(request), settings_of(request).units
    at = request.query_params.get("at", "")
    told = await run_in_threadpool(_page, bay_of(request), slug, at, None, system)
    return page(request, "ends.html", told)


async def say(request: Request) -> Response:
    """Take one group, all of it or none."""
    slug, system = slug_of(request), settings_of(request).units
    fields = dict(await form_of(request))
    group, key = fields.pop("group", "")[:20], fields.pop("key", "")[:64]
    bay, device = bay_of(request), device_of(request)
    taken = await run_in_threadpool(_take, bay, slug, group, fields, (device, key))
    if not taken.faults:
        known = group if group.isalpha() else "rods"
        return RedirectResponse(f"/axle/{slug}/ends?at={known}#group-{known}", 303)
    told = await run_in_threadpool(_page, bay, slug, group, taken, system)
    return page(request, "ends.html", told, status=422)


async def paper(request: Request) -> Response:
    """The sheet as PDF."""
    slug, system = slug_of(request), settings_of(request).units
    bay = bay_of(request)

    def made() -> bytes:
        rig = bay.rig(slug)
        if rig is None:
            raise HTTPException(404, NOT_YET)
        return ends_paper(rig, system)

    saved = {"Content-Disposition": f'attachment; filename="{slug}-ends.pdf"'}
    return Response(await run_in_threadpool(made), media_type="application/pdf", headers=saved)


def _take(
    bay: Bay, slug: str, group: str, fields: Mapping[str, str], who: tuple[str, str]
) -> Taken:
    rig = bay.rig(slug)
    if rig is None:
        raise HTTPException(404, NOT_YET)
    device, key = who
    asked = {row.path for each in ends_data(rig).groups for row in each.rows}
    kept = {path: answer.text for path, answer in bay.draft(slug).answers.items()}
    typed = {path: text.strip()[:LONGEST] for path, text in fields.items() if path in asked}
    moved = {path: text for path, text in typed.items() if text != kept.get(path, "")}
    said = {path: text for path, text in moved.items() if text}
    faults: dict[str, str] = {}
    if said:
        for path, one in bay.answers(slug, said, device, key=key, tell=False).items():
            if not one.stored and (told := _fault(one)):
                faults[path] = told
    if not faults:
        for path, text in moved.items():
            if not text:
                gone = bay.clear(slug, path, device, key=f"{key}-{path}"[:70] if key else "")
                if not gone.stored and (told := _fault(gone)):
                    faults[path] = told
    return Taken(group=group, texts=typed, faults=faults)


def _fault(said: Said) -> str:
    clashes = " ".join(f"{each.problem} {each.remedy}" for each in said.contradictions)
    return f"{said.fault} {clashes}".strip()


def _page(bay: Bay, slug: str, at: str, taken: Taken | None, system: str) -> dict[str, object]:
    draft = bay.draft(slug)
    rig = bay.rig(slug)
    told = {**framed(slug, draft, bay), "missing": len(draft.missing()), "found": None}
    if rig is None:
        return told
    made = ends_data(rig, system)
    texts = {path: answer.text for path, answer in draft.answers.items()}
    return {
        **told,
        "found": made,
        "untaped": in_units(UNTAPED, system),
        # S704: made by views, which escapes what was typed.
        "drawn": [(view, Markup(view.svg)) for view in made.views],  # noqa: S704
        "texts": {**texts, **(taken.texts if taken else {})},
        "faults": taken.faults if taken else {},
        "opened": _opened(made.groups, at),
    }


def _opened(groups: tuple[EndGroup, ...], at: str) -> str:
    """The group just worked on, else the first with something not taped."""
    if any(each.key == at for each in groups):
        return at
    return next((each.key for each in groups if not all(row.given for row in each.rows)), "")


ROUTES: Final[tuple[BaseRoute, ...]] = (
    Route("/axle/{slug}/ends", ends),
    Route("/axle/{slug}/ends/say", say, methods=["POST"]),
    Route("/axle/{slug}/ends/sheet.pdf", paper),
)
