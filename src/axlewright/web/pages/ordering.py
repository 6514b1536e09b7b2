"""What to order: the sheet from wheel to wheel, each field tried as soon as it is written."""

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby
from typing import Final

from markupsafe import Markup
from starlette.concurrency import run_in_threadpool
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import BaseRoute, Route

from axlewright.actions import Bay, order_pdf
from axlewright.errors import Fault
from axlewright.swap import Order
from axlewright.views import (
    ORDER_GROUPS,
    OrderLine,
    misfit_words,
    missing_words,
    order_field_rows,
    order_json,
    order_picture,
    order_sentence,
    stop_lines,
)
from axlewright.web.framing import framed
from axlewright.web.page import bay_of, device_of, form_and_file, form_of, page
from axlewright.web.pages.axle import slug_of
from axlewright.web.settings import settings_of

NO_CHANGE: Final = "That change is not kept here, or no longer."


@dataclass(frozen=True, slots=True, kw_only=True)
class Group:
    """One group of fields as a fold of the page."""

    key: str
    title: str
    lines: Sequence[OrderLine]
    open_count: int
    wrong_count: int
    opened: bool


async def sheet(request: Request) -> Response:
    """The sheet as far as it is written."""
    slug, system = slug_of(request), settings_of(request).units
    number = request.query_params.get("change", "")
    told = await run_in_threadpool(_told, bay_of(request), slug, system, number, {}, {})
    return page(request, "order.html", told)


async def write(request: Request) -> Response:
    """Write one group of fields; what cannot be read comes back with what is wrong."""
    slug, system = slug_of(request), settings_of(request).units
    fields = await form_of(request)
    bay, number = bay_of(request), fields.get("change", "")
    said = {path.removeprefix("f."): text for path, text in fields.items() if path[:2] == "f."}
    written = await run_in_threadpool(
        lambda: bay.ordering().write(slug, said, device_of(request), key=fields.get("key", ""))
    )
    group = fields.get("group", "")
    if written.faults:
        told = await run_in_threadpool(_told, bay, slug, system, number, said, written.faults)
        return page(request, "order.html", told, status=422)
    anchor = f"#{group}" if group in ORDER_GROUPS else ""
    change = f"?change={number}" if number.isdigit() else ""
    return RedirectResponse(f"/axle/{slug}/order{change}{anchor}", 303)


async def take_in(request: Request) -> Response:
    """Take in a sheet that came by mail, as a file."""
    slug = slug_of(request)
    _, upload = await form_and_file(request)
    if upload is None or not upload[0]:
        raise HTTPException(400, "There is no file in what was sent.")
    bay = bay_of(request)
    await run_in_threadpool(bay.ordering().take_file, slug, *upload, device_of(request))
    return RedirectResponse(f"/axle/{slug}/order", 303)


async def paper(request: Request) -> Response:
    """The sheet as PDF, or with nothing on it."""
    slug, system = slug_of(request), settings_of(request).units
    bay, blank = bay_of(request), "blank" in request.query_params
    number = request.query_params.get("change", "")

    def made() -> bytes:
        order = bay.ordering().sheet(slug, _change(bay, slug, number))
        return order_pdf(order, system, stop_lines(bay.log().drive(slug)), blank=blank)

    name = f"{slug}-{'intake' if blank else 'order'}.pdf"
    return _file(await run_in_threadpool(made), name, "application/pdf")


async def text(request: Request) -> Response:
    """The sheet as a file that reads back the same."""
    slug = slug_of(request)
    told = await run_in_threadpool(bay_of(request).ordering().text, slug)
    return _file(told.encode(), f"{slug}-order.toml", "application/toml")


async def as_json(request: Request) -> Response:
    """The sheet as JSON."""
    slug, bay = slug_of(request), bay_of(request)
    number = request.query_params.get("change", "")

    def made() -> str:
        order = bay.ordering().sheet(slug, _change(bay, slug, number))
        return json.dumps(order_json(order, stop_lines(bay.log().drive(slug))), allow_nan=False)

    return Response(await run_in_threadpool(made), media_type="application/json")


def _told(
    bay: Bay,
    slug: str,
    system: str,
    number: str,
    said: Mapping[str, str],
    faults: Mapping[str, Fault],
) -> dict[str, object]:
    order = bay.ordering().sheet(slug, _change(bay, slug, number))
    picture = order_picture(order, system)
    return {
        **framed(slug, bay.draft(slug), bay),
        "sentence": order_sentence(order),
        "blocked": order.blocked,
        "misfits": [(each.fields[0], misfit_words(each, system)) for each in order.misfits],
        "missing": [(each.key, each.label) for each in order.missing],
        "missing_words": missing_words(len(order.missing)),
        "groups": _groups(order, system, faults),
        "written": {**_written(order, bay.ordering().words(slug)), **said},
        "faults": {path: _fault(each) for path, each in faults.items()},
        "picture": Markup(picture.svg),  # noqa: S704  (our own drawing, its words escaped there)
        "picture_words": picture.words,
        "changes": list(reversed(bay.changes(slug))),
        "change": number,
    }


def _groups(order: Order, system: str, faults: Mapping[str, Fault]) -> list[Group]:
    out = []
    lines = order_field_rows(order, system)
    for key, run in groupby(lines, key=lambda line: line.group):
        rows = list(run)
        wrong = sum(bool(each.wrong) for each in rows)
        out.append(
            Group(
                key=key,
                title=ORDER_GROUPS[key],
                lines=rows,
                open_count=sum(each.missing for each in rows),
                wrong_count=wrong,
                opened=bool(wrong) or any(each.key in faults for each in rows),
            )
        )
    return out


def _written(order: Order, words: Mapping[str, str]) -> dict[str, str]:
    return {row.field.key: words.get(row.field.key, "") for row in order.rows}


def _fault(fault: Fault) -> str:
    return f"{fault.problem[:1].upper()}{fault.problem[1:]}. Accepted: {fault.accepted}."


def _change(bay: Bay, slug: str, number: str) -> str:
    if not number:
        return ""
    kept = [each for each in bay.changes(slug) if str(each.number) == number]
    if not kept:
        raise HTTPException(404, NO_CHANGE)
    return kept[0].text


def _file(content: bytes, name: str, kind: str) -> Response:
    saved = {"Content-Disposition": f'attachment; filename="{name}"'}
    return Response(content, media_type=kind, headers=saved)


ROUTES: Final[tuple[BaseRoute, ...]] = (
    Route("/axle/{slug}/order", sheet),
    Route("/axle/{slug}/order", write, methods=["POST"]),
    Route("/axle/{slug}/order/file", take_in, methods=["POST"]),
    Route("/axle/{slug}/order.pdf", paper),
    Route("/axle/{slug}/order.toml", text),
    Route("/axle/{slug}/order.json", as_json),
)
