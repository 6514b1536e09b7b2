"""Try a change: sliders and choices, the answer that follows them, changes kept side by side."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from markupsafe import Markup
from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import BaseRoute, Route

from axlewright.actions import Bay, Draft, KeptChange, change_text
from axlewright.errors import AxlewrightError, BadFile
from axlewright.strength import Assessment, Comparison
from axlewright.views import (
    LeverGroup,
    answer_picture,
    change_words,
    lever_groups,
    sentence,
    side_by_side,
    tried_values,
)
from axlewright.web.framing import framed
from axlewright.web.page import bay_of, device_of, form_of, page
from axlewright.web.pages.axle import slug_of
from axlewright.web.settings import settings_of

POINT: Final = 0  # draws of an answer at the middle of everything
MOST_SIDE_BY_SIDE: Final = 4
LONGEST: Final = 80
UNNAMED: Final = "the change"
NOT_WHOLE: Final = "A change is tried on a whole axle, and answers are still missing."
REST_FIRST: Final = "Answer the rest of the thirteen questions first."


@dataclass(frozen=True, slots=True, kw_only=True)
class Tried:
    """What became of the values being tried: a comparison, or what is wrong with them."""

    values: Mapping[str, str]
    comparison: Comparison | None = None
    faults: tuple[str, ...] = ()


async def trying(request: Request) -> Response:
    """The page: what can be changed, what it does, and the changes kept."""
    slug, system = slug_of(request), settings_of(request).units
    told = await run_in_threadpool(_page, bay_of(request), slug, dict(request.query_params), system)
    return page(request, "try.html", told)


async def now(request: Request) -> Response:
    """What the values do, as the piece of the page that follows the thumb.

    The middle alone while the thumb moves; with ``bands`` over draws of the doubt. With ``bare``
    the drawing is left out, for a page that keeps its own a moment longer.
    """
    slug, system = slug_of(request), settings_of(request).units
    said = dict(request.query_params)
    told = await run_in_threadpool(_now, bay_of(request), slug, said, system)
    return page(request, "_outcome.html", told)


async def keep(request: Request) -> Response:
    """Keep the values being tried as a change with a name."""
    slug, system = slug_of(request), settings_of(request).units
    fields = dict(await form_of(request))
    bay, device = bay_of(request), device_of(request)

    def kept() -> KeptChange:
        values = _values(bay, slug, fields, system)
        if not values:
            raise AxlewrightError(
                "Nothing is changed yet, so there is nothing to keep.",
                remedy="Move a slider first.",
            )
        name = fields.get("name", "").strip()[:LONGEST] or UNNAMED
        text = change_text(name, bay.whole_values(slug, values))
        return bay.keep_change(slug, name, text, device, key=fields.get("key", "")[:LONGEST])

    await run_in_threadpool(kept)
    return RedirectResponse(f"/axle/{slug}/try#kept", 303)


async def let_go(request: Request) -> Response:
    """Keep a change no longer."""
    slug = slug_of(request)
    number = (await form_of(request)).get("number", "")
    if not (number.isascii() and number.isdigit() and len(number) < 18):
        raise AxlewrightError(
            "That is no change that is kept here.",
            remedy="Open the page again to see those that are.",
        )
    device = device_of(request)
    await run_in_threadpool(bay_of(request).let_go, slug, int(number), device)
    return RedirectResponse(f"/axle/{slug}/try#kept", 303)


def _page(bay: Bay, slug: str, said: Mapping[str, str], system: str) -> dict[str, object]:
    draft = bay.draft(slug)
    told = framed(slug, draft, bay)
    before = bay.assessment(slug, POINT)
    if before is None:
        return {**told, "groups": (), "missing": len(draft.missing())}
    groups = _groups(draft, before, system)
    outcome = _outcome(_tried(bay, slug, groups, said, POINT), before, system)
    return {
        **told,
        "groups": groups,
        "said": {path: text[:LONGEST] for path, text in said.items()},
        "before": sentence(before),
        **outcome,
        **_kept(bay, slug, before, system),
    }


def _now(bay: Bay, slug: str, said: Mapping[str, str], system: str) -> dict[str, object]:
    draws = None if said.get("bands") == "1" else POINT
    before = bay.assessment(slug, POINT)
    if before is None:
        raise AxlewrightError(NOT_WHOLE, remedy=REST_FIRST)
    groups = _groups(bay.draft(slug), before, system)
    tried = _tried(bay, slug, groups, said, draws)
    if tried.comparison is not None:
        before = tried.comparison.before
    bare = said.get("bare") == "1"
    return {"slug": slug, **_outcome(tried, before, system, bare=bare)}


def _groups(draft: Draft, before: Assessment, system: str) -> tuple[LeverGroup, ...]:
    tyre = draft.answers.get("tyre.sidewall")
    return lever_groups(before.rig, before.columns, system, tyre.text if tyre else "")


def _values(bay: Bay, slug: str, said: Mapping[str, str], system: str) -> dict[str, str]:
    before = bay.assessment(slug, POINT)
    if before is None:
        raise AxlewrightError(NOT_WHOLE, remedy=REST_FIRST)
    return tried_values(_groups(bay.draft(slug), before, system), said)


def _tried(
    bay: Bay,
    slug: str,
    groups: tuple[LeverGroup, ...],
    said: Mapping[str, str],
    draws: int | None,
) -> Tried:
    values = tried_values(groups, {path: text[:LONGEST] for path, text in said.items()})
    if not values:
        return Tried(values=values)
    try:
        if draws == POINT:
            return Tried(values=values, comparison=bay.quick(slug, values))
        text = change_text(UNNAMED, bay.whole_values(slug, values))
        return Tried(values=values, comparison=bay.comparison(slug, text))
    except BadFile as trouble:
        told = tuple(
            f"{fault.problem.rstrip('.')}. It takes {fault.accepted}".removesuffix(" It takes ")
            for fault in trouble.faults
        )
        return Tried(values=values, faults=tuple(each[:1].upper() + each[1:] for each in told))


def _outcome(
    tried: Tried, before: Assessment, system: str, *, bare: bool = False
) -> dict[str, object]:
    found = tried.comparison
    shown = before if found is None else found.after
    svg = ""
    if not bare:
        svg = answer_picture(shown, system=system, name="tried", views=("across",)).svg
    return {
        "values": tried.values,
        "faults": tried.faults,
        "outcome": None if found is None else change_words(found, system),
        "rows": side_by_side(before, () if found is None else (found,), system),
        "drawn": shown.drawn is not None,
        "picture": Markup(svg),  # noqa: S704  (made by views, which escapes)
    }


def _kept(bay: Bay, slug: str, before: Assessment, system: str) -> dict[str, object]:
    """Changes kept, laid side by side at the middle of everything, the last ones first."""
    kept, unfit, found = list(reversed(bay.changes(slug))), [], []
    for change in kept:
        try:
            found.append((change, bay.comparison(slug, change.text, POINT)))
        except AxlewrightError as trouble:
            unfit.append((change, str(trouble)))
    beside = found[:MOST_SIDE_BY_SIDE]
    return {
        "kept": [(change, change_words(comparison, system)) for change, comparison in found],
        "unfit": unfit,
        "beside": [change.name for change, _ in beside],
        "kept_rows": side_by_side(before, [each for _, each in beside], system),
    }


ROUTES: Final[tuple[BaseRoute, ...]] = (
    Route("/axle/{slug}/try", trying),
    Route("/axle/{slug}/try/now", now),
    Route("/axle/{slug}/try/keep", keep, methods=["POST"]),
    Route("/axle/{slug}/try/let-go", let_go, methods=["POST"]),
)
