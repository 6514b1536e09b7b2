"""It shook: what to do when it happens, what the driver noticed, the checks in their order."""

from collections.abc import Callable, Mapping
from typing import Final

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import BaseRoute, Route

from axlewright.actions import Bay, Log, noticed_of, side_of, state_of
from axlewright.errors import AxlewrightError, NotKept, UnknownEntry
from axlewright.rig import SIDES, Job, LookTaken
from axlewright.tables import shimmy_checks, shimmy_questions
from axlewright.views import shook_page
from axlewright.web.framing import framed
from axlewright.web.page import bay_of, device_of, form_of, page
from axlewright.web.pages.axle import slug_of
from axlewright.web.settings import settings_of

LONGEST: Final = 200
PARTS: Final = (
    "wheel nuts",
    "tyre",
    "rim",
    "tie rod",
    "drag link",
    "track bar",
    "track-bar bracket",
    "steering box",
    "hub",
    "ball joint",
    "arm bush",
    "steering damper",
)


async def shook(request: Request) -> Response:
    """The sheet."""
    return await _page(request)


async def noticed(request: Request) -> Response:
    """Take what the driver noticed, from memory."""

    def enter(log: Log, slug: str, said: Mapping[str, str], device: str) -> None:
        answers = [f"{key}={_short(said, key)}" for key in shimmy_questions() if _short(said, key)]
        if not answers:
            raise AxlewrightError("Nothing was answered.", remedy="Answer what you remember.")
        log.enter(
            slug,
            noticed_of(answers),
            note=_short(said, "note"),
            device=device,
            key=_short(said, "key"),
        )

    return await _taken(request, enter, "checks")


async def check(request: Request) -> Response:
    """Take one check of the sheet, and how it ended."""

    def enter(log: Log, slug: str, said: Mapping[str, str], device: str) -> None:
        key = _short(said, "check")
        if key not in shimmy_checks():
            raise UnknownEntry("There is no such check on the sheet.", remedy="Open it again.")
        look = LookTaken(
            occasion="shimmy",
            look=key,
            state=state_of(_short(said, "state")),
            part=shimmy_checks()[key].title,
        )
        note = _short(said, "note")
        log.look(slug, look, note=note, device=device, key=_short(said, "key"))

    return await _taken(request, enter, "checks")


async def changed(request: Request) -> Response:
    """Take one thing that was changed because of the shake."""

    def enter(log: Log, slug: str, said: Mapping[str, str], device: str) -> None:
        task, side = _short(said, "task"), side_of(_short(said, "side"))
        if not task:
            raise AxlewrightError("What was changed?", remedy="Say it in a few words.")
        job = Job(task=f"shimmy: {task}", part=_short(said, "part"), side=side)
        log.work(slug, job, device=device, key=_short(said, "key"))

    return await _taken(request, enter, "changes")


async def _taken(
    request: Request, enter: Callable[[Log, str, Mapping[str, str], str], None], place: str
) -> Response:
    slug, device = slug_of(request), device_of(request)
    said = await form_of(request)
    try:
        await run_in_threadpool(lambda: enter(bay_of(request).log(), slug, said, device))
    except (UnknownEntry, NotKept):
        raise
    except AxlewrightError as trouble:
        return await _page(request, f"{trouble.problem} {trouble.remedy}", said)
    return RedirectResponse(f"/axle/{slug}/shook#{place}", 303)


async def _page(
    request: Request, fault: str = "", said: Mapping[str, str] | None = None
) -> Response:
    slug, system = slug_of(request), settings_of(request).units
    told = await run_in_threadpool(_told, bay_of(request), slug, system)
    kept = {name: text[:LONGEST] for name, text in (said or {}).items()}
    more = {"fault": fault, "said": {name: kept.get(name, "") for name in ("task", "part", "note")}}
    return page(request, "shook.html", {**told, **more}, status=422 if fault else 200)


def _told(bay: Bay, slug: str, system: str) -> dict[str, object]:
    log = bay.log()
    history = log.history(slug, ["noticed", "look", "job"])
    return {
        **framed(slug, bay.draft(slug), bay),
        "sheet": shook_page(log.sheet(slug), history, system),
        "parts": PARTS,
        "sides": SIDES,
    }


def _short(said: Mapping[str, str], name: str) -> str:
    return said.get(name, "").strip()[:LONGEST]


ROUTES: Final[tuple[BaseRoute, ...]] = (
    Route("/axle/{slug}/shook", shook),
    Route("/axle/{slug}/shook/noticed", noticed, methods=["POST"]),
    Route("/axle/{slug}/shook/check", check, methods=["POST"]),
    Route("/axle/{slug}/shook/changed", changed, methods=["POST"]),
)
