"""The swap: a plan that is begun, ticked step by step, left and resumed, and closed."""

import json
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Final

from starlette.concurrency import run_in_threadpool
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import BaseRoute, Route

from axlewright.actions import Bay, Swap, plan_paper, state_of
from axlewright.errors import AxlewrightError, UnknownEntry
from axlewright.swap import KINDS, QUESTIONS, SKILLS, leave_refusals, next_up
from axlewright.views import plan_json, plan_words
from axlewright.web.framing import framed
from axlewright.web.page import bay_of, device_of, form_and_file, form_of, page
from axlewright.web.pages.axle import slug_of
from axlewright.web.settings import settings_of

ENDS: Final = ("go", "watch", "fix", "stop")
NONE_YET: Final = "No swap has been begun on this axle. It is begun on the page of the swap."


@dataclass(frozen=True, slots=True, kw_only=True)
class Said:
    """Something that was sent and not kept: where it stands on the page, why, and the words."""

    place: str = ""
    fault: str = ""
    fields: Mapping[str, str] = field(default_factory=dict)


async def swap(request: Request) -> Response:
    """The page of the swap."""
    return await _page(request, slug_of(request))


async def begin(request: Request) -> Response:
    """Begin a swap with a change that is kept, or as the axle is."""
    slug = slug_of(request)
    fields = await form_of(request)

    def done() -> None:
        bay = bay_of(request)
        number, change = fields.get("change", ""), ""
        if number:
            kept = [each for each in bay.changes(slug) if str(each.number) == number]
            if not kept:
                raise UnknownEntry("That change is not kept here, or no longer.")
            change = kept[0].text
        if not change and not fields.get("kind"):
            raise AxlewrightError("Which change, or which kind of work?", remedy="Choose one.")
        people = fields.get("people", "")
        said = {name: word for name in QUESTIONS if (word := fields.get(name, ""))}
        bay.swap().begin(
            slug,
            change,
            people=int(people) if people in {"1", "2", "3"} else 0,
            skill=fields.get("skill", ""),
            said=said,
            kind=fields.get("kind", ""),
            device=device_of(request),
            key=fields.get("key", "")[:64],
        )

    return await _kept(request, slug, done, "begin", fields, "now")


async def tick(request: Request) -> Response:
    """Tick a step; every gate stands behind this."""
    slug = slug_of(request)
    fields, upload = await form_and_file(request)
    step = fields.get("step", "")
    photo = upload if upload and upload[0] else None

    def done() -> None:
        bay_of(request).swap().tick(
            slug,
            step,
            photo=photo[0] if photo else None,
            photo_name=photo[1] if photo else "",
            note=fields.get("note", ""),
            yes=[name.removeprefix("yes.") for name in fields if name.startswith("yes.")],
            device=device_of(request),
        )

    return await _kept(request, slug, done, f"step-{step}", fields, "now")


async def leave(request: Request) -> Response:
    """Leave out a step that this rig does not need."""
    slug = slug_of(request)
    fields = await form_of(request)
    step, reason = fields.get("step", ""), fields.get("reason", "")
    desk, device = bay_of(request).swap(), device_of(request)
    return await _kept(
        request,
        slug,
        lambda: desk.leave_out(slug, step, reason, device),
        f"step-{step}",
        fields,
        "now",
    )


async def undo(request: Request) -> Response:
    """Take a tick back, and what was done after it."""
    slug = slug_of(request)
    fields = await form_of(request)
    step, desk, device = fields.get("step", ""), bay_of(request).swap(), device_of(request)
    return await _kept(
        request, slug, lambda: desk.undo(slug, step, device), f"step-{step}", fields, "now"
    )


async def value(request: Request) -> Response:
    """Fill in a torque line."""
    slug = slug_of(request)
    fields = await form_of(request)
    line, desk, device = fields.get("line", ""), bay_of(request).swap(), device_of(request)
    text, printed, bolt = (fields.get(name, "") for name in ("text", "printed", "bolt"))
    return await _kept(
        request,
        slug,
        lambda: desk.value(slug, line, text, printed, device, bolt),
        f"line-{line}",
        fields,
        f"line-{line}",
    )


async def measure(request: Request) -> Response:
    """Write down what was measured, before or after."""
    slug = slug_of(request)
    fields = await form_of(request)
    when, desk, device = fields.get("when", ""), bay_of(request).swap(), device_of(request)
    return await _kept(
        request,
        slug,
        lambda: desk.measured(slug, when, fields, device),
        "measured",
        fields,
        "measured",
    )


async def look(request: Request) -> Response:
    """Enter how a look at a part ended while it is apart."""
    slug = slug_of(request)
    fields = await form_of(request)
    which, desk, device = fields.get("look", ""), bay_of(request).swap(), device_of(request)

    def done() -> None:
        ends = state_of(fields.get("ends", ""))
        desk.look(slug, which, ends, fields.get("note", ""), device)

    return await _kept(request, slug, done, f"look-{which}", fields, "looks")


async def aside(request: Request) -> Response:
    """Put a swap aside; what was entered stays."""
    slug = slug_of(request)
    fields = await form_of(request)
    desk, device, reason = bay_of(request).swap(), device_of(request), fields.get("reason", "")
    return await _kept(
        request, slug, lambda: desk.put_aside(slug, reason, device), "aside", fields, "main"
    )


async def take(request: Request) -> Response:
    """The rig is now as changed: it takes on the numbers of the change that was made."""
    slug = slug_of(request)
    await form_of(request)
    desk, device = bay_of(request).swap(), device_of(request)

    def done() -> None:
        desk.take_on(slug, device)

    return await _kept(request, slug, done, "take", {}, "now")


async def jobs(request: Request) -> Response:
    """The job sheets as PDF."""
    slug, system = slug_of(request), settings_of(request).units

    def made() -> bytes:
        return plan_paper(_must(bay_of(request), slug).answer, system)

    name = {"Content-Disposition": f'attachment; filename="{slug}-swap.pdf"'}
    body = await run_in_threadpool(made)
    return Response(body, media_type="application/pdf", headers=name)


async def plan_file(request: Request) -> Response:
    """The plan for a machine, in SI."""
    slug = slug_of(request)

    def made() -> str:
        answer = _must(bay_of(request), slug).answer
        told = plan_json(answer.plan, answer.progress, answer.stops)
        return json.dumps(told, ensure_ascii=False, allow_nan=False, indent=1)

    name = {"Content-Disposition": f'attachment; filename="{slug}-swap.json"'}
    body = await run_in_threadpool(made)
    return Response(body, media_type="application/json", headers=name)


async def _kept(
    request: Request,
    slug: str,
    done: Callable[[], None],
    place: str,
    fields: Mapping[str, str],
    then: str,
) -> Response:
    """Do what was asked; what is refused comes back on the page, at its place, with its reason."""
    try:
        await run_in_threadpool(done)
    except UnknownEntry:
        raise
    except AxlewrightError as trouble:
        short = {name: text[:400] for name, text in fields.items()}
        said = Said(place=place[:80], fault=str(trouble), fields=short)
        return await _page(request, slug, said)
    return RedirectResponse(f"/axle/{slug}/swap#{then}", 303)


async def _page(request: Request, slug: str, said: Said | None = None) -> Response:
    system = settings_of(request).units
    told = await run_in_threadpool(_told, bay_of(request), slug, system)
    known = said or Said()
    return page(
        request,
        "swap.html",
        told,
        status=422 if said else 200,
        said=known,
        kinds=KINDS,
        skills=SKILLS,
        asked=QUESTIONS,
        look_ends=ENDS,
    )


def _told(bay: Bay, slug: str, system: str) -> dict[str, object]:
    draft = bay.draft(slug)
    told: dict[str, object] = {
        **framed(slug, draft, bay),
        "missing": len(draft.missing()),
        "changes": list(reversed(bay.changes(slug))),
        "swap": None,
    }
    now = bay.swap().now(slug)
    if now is None:
        return told
    plan, progress = now.plan, now.progress
    words = plan_words(plan, system, progress)
    ready = [] if now.closed else [task.key for task in next_up(plan, progress)]
    waits = {
        key: [plan.work.by_key[k].title for k in plan.work.after[key] if not progress.behind(k)]
        for key in plan.order
    }
    asks = {
        key: not plan.work.by_key[key].gate
        and not leave_refusals(plan, progress, key, "not on this rig")
        for key in ready
    }
    return {
        **told,
        "swap": now,
        "words": words,
        "ready": ready,
        "by_key": {step.key: step for step in words.steps},
        "waits": waits,
        "may_leave": asks,
        "behind": sum(progress.behind(key) for key in plan.order),
        "questions": plan.questions,
        "measures": plan.measures,
        "looks": plan.looks,
        "shown_now": [line.key for step in words.steps if step.key in ready for line in step.bolts],
        "lines": [line for step in words.steps for line in step.bolts],
        "locked": bool(words.unready),
    }


def _must(bay: Bay, slug: str) -> Swap:
    bay.draft(slug)
    found = bay.swap().now(slug)
    if found is None:
        raise HTTPException(404, NONE_YET)
    return found


ROUTES: Final[tuple[BaseRoute, ...]] = (
    Route("/axle/{slug}/swap", swap),
    Route("/axle/{slug}/swap/begin", begin, methods=["POST"]),
    Route("/axle/{slug}/swap/tick", tick, methods=["POST"]),
    Route("/axle/{slug}/swap/leave", leave, methods=["POST"]),
    Route("/axle/{slug}/swap/undo", undo, methods=["POST"]),
    Route("/axle/{slug}/swap/value", value, methods=["POST"]),
    Route("/axle/{slug}/swap/measure", measure, methods=["POST"]),
    Route("/axle/{slug}/swap/look", look, methods=["POST"]),
    Route("/axle/{slug}/swap/aside", aside, methods=["POST"]),
    Route("/axle/{slug}/swap/take", take, methods=["POST"]),
    Route("/axle/{slug}/swap/jobs.pdf", jobs),
    Route("/axle/{slug}/swap/plan.json", plan_file),
)
