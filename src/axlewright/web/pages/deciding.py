"""Mend or replace? The choice as it is worked out, what it rests on, and the owner's prices."""

import json
from typing import Final

from starlette.concurrency import run_in_threadpool
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import JSONResponse, RedirectResponse, Response
from starlette.routing import BaseRoute, Route

from axlewright.actions import Bay, DecisionAnswer, decision_paper
from axlewright.decide import SKILLS, Terms
from axlewright.errors import BadFile
from axlewright.tables import options
from axlewright.views import (
    TYRE_GRID_NOTE,
    decision_json,
    decision_words,
    still_line,
    tyre_rows,
)
from axlewright.web.framing import framed
from axlewright.web.page import bay_of, device_of, form_of, page
from axlewright.web.pages.answer import NOT_YET
from axlewright.web.pages.axle import slug_of
from axlewright.web.settings import settings_of

LONGEST: Final = 80
FORM: Final = (
    *("km_a_year", "help_km", "skill", "hoist", "papers", "currency", "one_usd"),
    *("change", "low", "high", "who"),
)
NOT_DONE: Final = "The choice is still being worked out. Open its page and wait for it there."


async def deciding(request: Request) -> Response:
    """The page: the choice, or how far it is."""
    slug, system = slug_of(request), settings_of(request).units
    told = await run_in_threadpool(_page, bay_of(request), slug, system)
    return page(request, "decide.html", told)


async def now(request: Request) -> Response:
    """How far it is, for the page that waits."""
    slug = slug_of(request)
    bay = bay_of(request)
    job = await run_in_threadpool(lambda: bay.choosing().ask(bay.log(), slug))
    if job is None:
        raise HTTPException(404, NOT_YET)
    done = job.answer is not None or job.stopped or bool(job.trouble)
    told = {"done": done, "what": job.what, "percent": round(100.0 * job.share)}
    return JSONResponse(told, headers={"Cache-Control": "no-store"})


async def begin(request: Request) -> Response:
    """Begin again, with more draws where they are asked for."""
    slug = slug_of(request)
    many = (await form_of(request)).get("draws", "")
    draws = int(many) if many.isascii() and many.isdigit() and len(many) < 7 else 0
    bay = bay_of(request)
    await run_in_threadpool(lambda: bay.choosing().ask(bay.log(), slug, draws, again=True))
    return RedirectResponse(f"/axle/{slug}/decide", 303)


async def stop(request: Request) -> Response:
    """Stop what is being worked out."""
    slug = slug_of(request)
    await form_of(request)
    bay = bay_of(request)

    def stopped() -> None:
        job = bay.choosing().ask(bay.log(), slug)
        if job is not None and job.answer is None:
            job.stopped = True

    await run_in_threadpool(stopped)
    return RedirectResponse(f"/axle/{slug}/decide", 303)


async def prices(request: Request) -> Response:
    """Take the owner's use and prices; what cannot be read comes back with what it takes."""
    slug, system = slug_of(request), settings_of(request).units
    said = dict(await form_of(request))
    bay, device = bay_of(request), device_of(request)

    def kept() -> tuple[str, ...]:
        bay.draft(slug)
        try:
            bay.choosing().tell(bay.log(), slug, said, device)
        except BadFile as trouble:
            return tuple(
                f"{fault.field}: {fault.problem}. It takes {fault.accepted}, for example "
                f"{fault.example}".removesuffix(", for example ")
                for fault in trouble.faults
            )
        return ()

    faults = await run_in_threadpool(kept)
    if not faults:
        return RedirectResponse(f"/axle/{slug}/decide", 303)
    told = await run_in_threadpool(_page, bay, slug, system)
    form = {key: said.get(key, "")[:LONGEST] for key in FORM}
    return page(request, "decide.html", {**told, "faults": faults, "form": form}, status=422)


async def memo(request: Request) -> Response:
    """The memo as PDF."""
    slug, system = slug_of(request), settings_of(request).units
    bay = bay_of(request)
    made = await run_in_threadpool(lambda: decision_paper(_done(bay, slug), system))
    saved = {"Content-Disposition": f'attachment; filename="{slug}-choice.pdf"'}
    return Response(made, media_type="application/pdf", headers=saved)


async def choice_json(request: Request) -> Response:
    """The choice for a machine, in SI and its currency."""
    slug = slug_of(request)
    bay = bay_of(request)
    found = await run_in_threadpool(lambda: _done(bay, slug))
    told = decision_json(found.decision, found.grid, found.still)
    body = json.dumps(told, ensure_ascii=False, allow_nan=False, indent=1)
    saved = {"Content-Disposition": f'attachment; filename="{slug}-choice.json"'}
    return Response(body, media_type="application/json", headers=saved)


def _done(bay: Bay, slug: str) -> DecisionAnswer:
    job = bay.choosing().ask(bay.log(), slug)
    if job is None:
        raise HTTPException(404, NOT_YET)
    if job.answer is None:
        raise HTTPException(404, NOT_DONE)
    return job.answer


def _page(bay: Bay, slug: str, system: str) -> dict[str, object]:
    draft = bay.draft(slug)
    told: dict[str, object] = {**framed(slug, draft, bay), "faults": ()}
    choosing, log = bay.choosing(), bay.log()
    job = choosing.ask(log, slug)
    if job is None:
        return {**told, "job": None, "missing": len(draft.missing())}
    told |= {"job": job, "percent": round(100.0 * job.share), "words": None}
    told |= _terms(choosing.terms(log, slug))
    if job.answer is None:
        return told
    found = job.answer
    heading, *rows = tyre_rows(found.grid)
    return {
        **told,
        "words": decision_words(found.decision, system),
        "tyre_heading": heading,
        "tyre_rows": rows,
        "tyre_note": TYRE_GRID_NOTE,
        "still": still_line(found.still, system),
    }


def _terms(terms: Terms) -> dict[str, object]:
    def said(key: str) -> str:
        if key not in terms.own:
            return ""
        band = terms.bands[key]
        return f"{band.low:g}" if band.low == band.high else f"{band.low:g} to {band.high:g}"

    return {
        "terms": terms,
        "skills": SKILLS,
        "form": {
            **dict.fromkeys(FORM, ""),
            "km_a_year": said("km_a_year"),
            "help_km": said("help_km"),
            "skill": terms.skill,
            "hoist": "yes" if terms.hoist else "",
            "papers": "yes" if terms.papers else "",
            "currency": terms.currency,
            "one_usd": f"{terms.one_usd:g}",
        },
        "labels": {key: each.label for key, each in options().items() if each.money.high},
    }


ROUTES: Final[tuple[BaseRoute, ...]] = (
    Route("/axle/{slug}/decide", deciding),
    Route("/axle/{slug}/decide/now", now),
    Route("/axle/{slug}/decide/begin", begin, methods=["POST"]),
    Route("/axle/{slug}/decide/stop", stop, methods=["POST"]),
    Route("/axle/{slug}/decide/prices", prices, methods=["POST"]),
    Route("/axle/{slug}/decide/memo.pdf", memo),
    Route("/axle/{slug}/decide/choice.json", choice_json),
)
