"""Measure: how each reading is taken, the form for it, its verdict, and readings of the past."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Final
from uuid import uuid4

from markupsafe import Markup
from starlette.concurrency import run_in_threadpool
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import BaseRoute, Route

from axlewright.actions import (
    Bay,
    Log,
    day_of,
    entry_number,
    own_limit,
    own_limits,
    past_readings,
    take_reading,
    told_again,
)
from axlewright.errors import AxlewrightError, NotKept, UnknownEntry
from axlewright.rig import BEARINGS
from axlewright.tables import Procedure, instrument, procedures
from axlewright.upkeep import ReadingTaken, limits_for
from axlewright.views import (
    in_units,
    limit_list,
    measure_groups,
    past_list,
    procedure_sketch,
    taken_words,
)
from axlewright.web.framing import framed
from axlewright.web.page import bay_of, device_of, form_of, page
from axlewright.web.pages.axle import slug_of
from axlewright.web.settings import settings_of

VALUES: Final = ("value_1", "value_2", "value_3")
LONGEST: Final = 120  # signs of one field
FIELDS: Final = (
    *VALUES,
    *("more", "side", "with", "bearing", "load", "conditions", "slope", "radius"),
    *("on", "odometer", "who", "note", "key", "low", "high", "printed"),
)
EXAMPLES: Final = {"angle": "0.5 deg", "length": "0.4 mm", "torque": "1.5 N m"}
MOST_VALUES: Final = 12
SHOWN: Final = 12  # past readings on a page


@dataclass(frozen=True, slots=True, kw_only=True)
class Filled:
    """A form as it was filled in, what is wrong with it, and what looks mixed up."""

    said: Mapping[str, str] = field(default_factory=dict)
    fault: str = ""
    limit_fault: str = ""
    taken: ReadingTaken | None = None


async def measure(request: Request) -> Response:
    """Every guided reading of this axle, by the question that it answers."""
    slug, system = slug_of(request), settings_of(request).units
    told = await run_in_threadpool(_list, bay_of(request), slug, system)
    return page(request, "measure.html", told)


async def one(request: Request) -> Response:
    """One guided reading: how it is taken, the form, what was read so far."""
    return await _one(request, Filled())


async def take(request: Request) -> Response:
    """Take a reading; what looks mixed up is asked again before it is kept."""
    slug = slug_of(request)
    fields = await form_of(request)
    key, device = request.path_params["key"], device_of(request)
    try:
        taken = await run_in_threadpool(_take, bay_of(request).log(), slug, key, fields, device)
    except (UnknownEntry, NotKept):
        raise
    except AxlewrightError as trouble:
        return await _one(request, Filled(said=fields, fault=f"{trouble.problem} {trouble.remedy}"))
    if not taken.number:
        return await _one(request, Filled(said=fields, taken=taken))
    return RedirectResponse(f"/axle/{slug}/measure/{key}?kept={taken.number}#taken", 303)


async def limit(request: Request) -> Response:
    """Put the manual's own limit in the place of a general one."""
    slug = slug_of(request)
    fields = await form_of(request)
    key, device = request.path_params["key"], device_of(request)

    def keep() -> None:
        log = bay_of(request).log()
        _asked(log, slug, key)
        low, high = _short(fields, "low"), _short(fields, "high")
        body = own_limit(key, low, high, _short(fields, "printed"))
        log.enter(slug, body, device=device, key=_short(fields, "key"))

    try:
        await run_in_threadpool(keep)
    except (UnknownEntry, NotKept):
        raise
    except AxlewrightError as trouble:
        fault = f"{trouble.problem} {trouble.remedy}"
        return await _one(request, Filled(said=fields, limit_fault=fault))
    return RedirectResponse(f"/axle/{slug}/measure/{key}#limits", 303)


async def withdraw(request: Request) -> Response:
    """Say that a reading does not hold; it stays on record."""
    slug = slug_of(request)
    fields = await form_of(request)
    key = request.path_params["key"]
    number, reason = entry_number(_short(fields, "number")), _short(fields, "reason")

    def done() -> None:
        log = bay_of(request).log()
        _asked(log, slug, key)
        if number is None:
            raise AxlewrightError(
                "That is no reading that is kept here.", remedy="Open the page again."
            )
        if told_again(log, slug, number).procedure.key != key:
            raise UnknownEntry("That is a reading of something else.", remedy="Open its own page.")
        log.withdraw(slug, number, reason)

    await run_in_threadpool(done)
    return RedirectResponse(f"/axle/{slug}/measure/{key}#past", 303)


def _take(log: Log, slug: str, key: str, fields: Mapping[str, str], device: str) -> ReadingTaken:
    _asked(log, slug, key)
    values = [_short(fields, name) for name in VALUES]
    values += [each.strip() for each in _short(fields, "more").split(";")]
    texts = [each for each in values if each]
    if len(texts) > MOST_VALUES:
        raise AxlewrightError("That is too many at once.", remedy=f"Up to {MOST_VALUES}.")
    if not texts:
        raise AxlewrightError("There is no value.", remedy="Give one or more, with their unit.")
    bearing = _short(fields, "bearing") or BEARINGS[0]
    if bearing not in BEARINGS:
        raise AxlewrightError(
            f"{bearing[:40]!r} says nothing of a bearing.", remedy=f"One of: {', '.join(BEARINGS)}."
        )
    return take_reading(
        log,
        slug,
        key,
        texts,
        side=_short(fields, "side"),
        with_=_short(fields, "with"),
        bearing=bearing,
        load_state=_short(fields, "load"),
        conditions=_short(fields, "conditions"),
        slope=_short(fields, "slope"),
        radius=_short(fields, "radius"),
        sure=fields.get("sure") == "yes",
        on=day_of(_short(fields, "on")),
        odometer=_short(fields, "odometer"),
        who=_short(fields, "who"),
        note=_short(fields, "note"),
        device=device,
        key=_short(fields, "key"),
    )


def _short(fields: Mapping[str, str], name: str) -> str:
    return fields.get(name, "").strip()[:LONGEST]


def _asked(log: Log, slug: str, key: str) -> Procedure:
    """The guided reading of an address, if this axle has it."""
    for each in log.procedures(slug):
        if each.key == key:
            return each
    if key in procedures():
        raise UnknownEntry("This axle has no such thing to read.", remedy="Open the list again.")
    raise HTTPException(404)


async def _one(request: Request, filled: Filled) -> Response:
    slug, system = slug_of(request), settings_of(request).units
    number = entry_number(request.query_params.get("kept", "")) or 0
    key = request.path_params["key"]
    told = await run_in_threadpool(_told, bay_of(request), slug, key, system, filled, number)
    refused = bool(filled.fault or filled.limit_fault or filled.taken)
    return page(request, "measure_one.html", told, status=422 if refused else 200)


def _list(bay: Bay, slug: str, system: str) -> dict[str, object]:
    log = bay.log()
    past = past_readings(log.history(slug))
    return {
        **framed(slug, bay.draft(slug), bay),
        "groups": measure_groups(log.procedures(slug), past, system),
    }


def _told(
    bay: Bay, slug: str, key: str, system: str, filled: Filled, number: int
) -> dict[str, object]:
    """Everything that the page of one reading shows, worked out off the event loop."""
    log = bay.log()
    asked = _asked(log, slug, key)
    history = log.history(slug)
    limits = limits_for(asked, own_limits(history))
    past = past_readings(history, key)
    taken = filled.taken
    if taken is None and any(one.kept.number == number for one in past):
        taken = told_again(log, slug, number)
    _, steps = log.procedure(key)
    return {
        **framed(slug, bay.draft(slug), bay),
        "asked": asked,
        "steps": [replace(step, do=in_units(step.do, system)) for step in steps],
        "sketch": Markup(procedure_sketch(key)),  # noqa: S704  (made by views, escaped there)
        "tools": [(tool, instrument(tool)) for tool in asked.instruments],
        "sides": [side for side in asked.sides if side],
        "side_free": "" in asked.sides,
        "bearings": BEARINGS,
        "example": EXAMPLES[asked.kind],
        "limits": limit_list(limits, asked.kind, system),
        "past": past_list(past[:SHOWN], asked, limits, system),
        "more_past": max(len(past) - SHOWN, 0),
        "taken": None if taken is None else taken_words(taken, system),
        "said": {name: filled.said.get(name, "")[:LONGEST] for name in FIELDS},
        "again": bool(filled.said),
        "fault": filled.fault,
        "limit_fault": filled.limit_fault,
        "today": log.today.isoformat(),
        "fresh": uuid4().hex,
    }


ROUTES: Final[tuple[BaseRoute, ...]] = (
    Route("/axle/{slug}/measure", measure),
    Route("/axle/{slug}/measure/{key}", one),
    Route("/axle/{slug}/measure/{key}/take", take, methods=["POST"]),
    Route("/axle/{slug}/measure/{key}/limit", limit, methods=["POST"]),
    Route("/axle/{slug}/measure/{key}/withdraw", withdraw, methods=["POST"]),
)
