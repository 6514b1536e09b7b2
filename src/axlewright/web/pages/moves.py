"""How it moves: the drawing that follows the thumb, and what touches, binds and steers."""

from collections.abc import Mapping
from dataclasses import dataclass
from math import degrees, radians
from typing import Final

from markupsafe import Markup
from starlette.concurrency import run_in_threadpool
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import BaseRoute, Route

from axlewright.actions import Bay, KeptChange, Moves, cure_text, travel_paper
from axlewright.errors import AxlewrightError
from axlewright.rig import change_from_text
from axlewright.views import (
    PoseView,
    Still,
    gearing_lines,
    moves_page,
    pose_told,
    pose_views,
    still_poses,
)
from axlewright.web.framing import framed
from axlewright.web.page import bay_of, device_of, form_of, page
from axlewright.web.pages.answer import NOT_YET
from axlewright.web.pages.axle import slug_of
from axlewright.web.settings import settings_of

POINT: Final = 0
LONGEST: Final = 80
NOT_KEPT: Final = "That change is not kept here, or no longer."


@dataclass(frozen=True, slots=True, kw_only=True)
class Slider:
    """One way to move the axle: its name, what it does, its ends and where it stands."""

    name: str
    said: str
    low: str
    high: str
    step: str
    value: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Posed:
    """One pose ready for the page."""

    views: tuple[tuple[PoseView, Markup], ...]
    lines: tuple[str, ...]
    sliders: tuple[Slider, ...]
    stills: tuple[tuple[Still, str], ...]


async def moves(request: Request) -> Response:
    """The page: drawing and sliders, sentences, tables, and what lies deeper."""
    slug, system = slug_of(request), settings_of(request).units
    asked = dict(request.query_params)
    return page(
        request, "moves.html", await run_in_threadpool(_page, bay_of(request), slug, asked, system)
    )


async def now(request: Request) -> Response:
    """One pose, as the piece of the page that follows the thumb."""
    slug, system = slug_of(request), settings_of(request).units
    asked = dict(request.query_params)

    def made() -> dict[str, object]:
        found, _ = _moves(bay_of(request), slug, asked)
        if found is None:
            raise HTTPException(404, NOT_YET)
        return {"slug": slug, "posed": _posed(found, asked, system)}

    return page(request, "_pose.html", await run_in_threadpool(made))


async def paper(request: Request) -> Response:
    """The report on the travel as PDF, with a kept change where one is asked for."""
    slug, system = slug_of(request), settings_of(request).units
    asked = dict(request.query_params)

    def made() -> bytes:
        found, _ = _moves(bay_of(request), slug, asked)
        if found is None:
            raise HTTPException(404, NOT_YET)
        return travel_paper(found, system)

    name = {"Content-Disposition": f'attachment; filename="{slug}-travel.pdf"'}
    return Response(await run_in_threadpool(made), media_type="application/pdf", headers=name)


async def keep(request: Request) -> Response:
    """Keep a cure among the rig's changes, after the change it was tried on where there is one."""
    slug, system = slug_of(request), settings_of(request).units
    fields = dict(await form_of(request))
    bay, device = bay_of(request), device_of(request)

    def kept() -> KeptChange:
        found, onto = _moves(bay, slug, fields)
        if found is None:
            raise HTTPException(404, NOT_YET)
        text = cure_text(
            found.shown, fields.get("cure", "")[:LONGEST], system, onto.text if onto else ""
        )
        name = change_from_text(text).name
        return bay.keep_change(slug, name, text, device, key=fields.get("key", "")[:LONGEST])

    number = (await run_in_threadpool(kept)).number
    return RedirectResponse(f"/axle/{slug}/moves?with={number}#changed-title", 303)


def _moves(bay: Bay, slug: str, asked: Mapping[str, str]) -> tuple[Moves | None, KeptChange | None]:
    number = asked.get("with", "")
    kept = None
    if number:
        kept = next((each for each in bay.changes(slug) if str(each.number) == number), None)
        if kept is None:
            raise HTTPException(404, NOT_KEPT)
    return bay.moves(slug, kept.text if kept else ""), kept


def _page(bay: Bay, slug: str, asked: Mapping[str, str], system: str) -> dict[str, object]:
    draft = bay.draft(slug)
    told = {
        **framed(slug, draft, bay),
        "missing": len(draft.missing()),
        "kept": list(reversed(bay.changes(slug))),
        "with_change": None,
        "trouble": "",
        "found": None,
        "posed": None,
    }
    try:
        found, kept = _moves(bay, slug, asked)
    except AxlewrightError as trouble:
        return {**told, "trouble": f"{trouble.problem} {trouble.remedy}"}
    if found is None:
        return told
    return {
        **told,
        "with_change": kept,
        "found": moves_page(
            found.before,
            found.after,
            found.driveline,
            system,
            gearing=_gearing(bay, slug, kept, system),
            brakes=found.brakes,
        ),
        "posed": _posed(found, asked, system),
    }


def _gearing(bay: Bay, slug: str, kept: KeptChange | None, system: str) -> list[str]:
    if kept is not None:
        return gearing_lines(bay.comparison(slug, kept.text, POINT), system)
    answer = bay.assessment(slug, POINT)
    return [] if answer is None else gearing_lines(answer, system)


def _posed(found: Moves, asked: Mapping[str, str], system: str) -> Posed:
    reach, steers = found.reach(), found.shown.points.steers
    stills = still_poses(reach, steers=steers)
    still = next((each for each in stills if each.key == asked.get("pose")), None)
    if still is not None:
        bump, roll, arm = still.bump, still.roll, still.arm
    else:
        bump = _number(asked, "bump") * 1e-3
        roll, arm = (radians(_number(asked, name)) for name in ("roll", "steer"))
    pose = found.pose(bump, roll, arm)
    told = pose_told(pose, system)
    made = pose_views(found.shown, pose, told)
    sliders = [
        Slider(
            name="bump", said="Both wheels, down and up", step="1",
            low=f"{1e3 * reach.down:.0f}", high=f"{1e3 * reach.up:.0f}",
            value=f"{1e3 * pose.bump:.0f}",
        ),
        Slider(
            name="roll", said="Crossed: one wheel up, the other down", step="0.1",
            low=f"{-degrees(reach.roll):.1f}", high=f"{degrees(reach.roll):.1f}",
            value=f"{degrees(pose.roll):.1f}",
        ),
    ]  # fmt: skip
    if steers:
        sliders.append(
            Slider(
                name="steer", said="Steering, left and right", step="1",
                low=f"{-degrees(reach.left):.0f}", high=f"{-degrees(reach.right):.0f}",
                value=f"{-degrees(pose.arm):.0f}",
            )
        )  # fmt: skip
    return Posed(
        # S704: made by views, which escapes what was typed.
        views=tuple((each, Markup(each.svg)) for each in made),  # noqa: S704
        lines=told.lines,
        sliders=tuple(sliders),
        stills=tuple((each, _query(each)) for each in stills),
    )


def _query(still: Still) -> str:
    return (
        f"bump={1e3 * still.bump:.0f}&roll={degrees(still.roll):.1f}&"
        f"steer={-degrees(still.arm):.0f}"
    )


def _number(asked: Mapping[str, str], name: str) -> float:
    """A slider's number; whatever cannot be one stands for the middle."""
    text = asked.get(name, "")[:12]
    try:
        value = float(text) if text.isascii() else 0.0
    except ValueError:
        return 0.0
    sign = -1.0 if name == "steer" else 1.0
    return sign * value if -1e4 < value < 1e4 else 0.0


ROUTES: Final[tuple[BaseRoute, ...]] = (
    Route("/axle/{slug}/moves", moves),
    Route("/axle/{slug}/moves/now", now),
    Route("/axle/{slug}/moves/travel.pdf", paper),
    Route("/axle/{slug}/moves/keep", keep, methods=["POST"]),
)
