"""How a page is made: the templates, what each of them is given, and forms read back safely."""

import hashlib
import hmac
from collections.abc import Mapping
from functools import cache
from importlib.resources import files
from typing import Final

from jinja2 import Environment, PackageLoader, StrictUndefined
from markupsafe import Markup
from starlette.datastructures import UploadFile
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import HTMLResponse

from axlewright.actions import Bay
from axlewright.web.meanings import MEANINGS, anchor
from axlewright.web.pairing import Pairing
from axlewright.web.settings import THEME_WORDS, UNIT_WORDS, YEAR, settings_of
from axlewright.web.ways import steps

TOKEN: Final = "bay_token"  # noqa: S105  (a cookie's name)
FIELD: Final = "token"
MOST_FIELDS: Final = 120  # a packing list has two a line


def page(
    request: Request,
    template: str,
    told: Mapping[str, object] | None = None,
    *,
    status: int = 200,
    **more: object,
) -> HTMLResponse:
    """One page out of its template; ``slug`` and ``title_of`` open the way round an axle."""
    pairing: Pairing = request.app.state.pairing
    token = request.cookies.get(TOKEN, "")
    fresh = not pairing.made(token)
    token = pairing.new_token() if fresh else token
    given: dict[str, object] = {
        "token": token,
        "settings": settings_of(request),
        "here": request.url.path,
        "slug": "",
        "axle_title": "",
        "stops": (),
        "unit_words": UNIT_WORDS,
        "theme_words": THEME_WORDS,
        **(told or {}),
        **more,
    }
    given["ways"], given["doors"] = steps(str(given["slug"]), request.url.path)
    made = HTMLResponse(_templates().get_template(template).render(given), status)
    if fresh:
        made.set_cookie(TOKEN, token, max_age=YEAR, httponly=True, samesite="strict")
    made.headers["Vary"] = "Cookie"
    return made


def bay_of(request: Request) -> Bay:
    """The bay that this server stands before."""
    bay: Bay = request.app.state.bay
    return bay


def device_of(request: Request) -> str:
    """A name for the browser that asks, the same from one visit to the next."""
    return hashlib.sha256(request.cookies.get(TOKEN, "").encode()).hexdigest()[:8]


async def form_of(request: Request) -> Mapping[str, str]:
    """Fields of a form that one of our own pages sent; 403 where it carries no token of ours."""
    fields, _ = await form_and_file(request)
    return fields


async def form_and_file(request: Request) -> tuple[Mapping[str, str], tuple[bytes, str] | None]:
    """Fields of a form, and the file sent with it: its bytes and its name."""
    try:
        form = await request.form(max_files=1, max_fields=MOST_FIELDS)
    except (UnicodeError, ValueError) as unread:
        raise HTTPException(400, "What was sent cannot be read.") from unread
    fields: dict[str, str] = {}
    upload: tuple[bytes, str] | None = None
    for key, value in form.multi_items():
        if isinstance(value, UploadFile):
            upload = (await value.read(), value.filename or "")
        else:
            fields[key] = value
    await form.close()
    pairing: Pairing = request.app.state.pairing
    said, kept = fields.pop(FIELD, ""), request.cookies.get(TOKEN, "")
    if not (pairing.made(kept) and hmac.compare_digest(said.encode(), kept.encode())):
        raise HTTPException(403, "This form has grown old, or was not one of the bay's own.")
    return fields, upload


@cache
def _templates() -> Environment:
    loader = PackageLoader("axlewright.web")
    made = Environment(
        loader=loader,
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    made.globals["asset"] = asset
    made.globals["meaning"] = meaning
    return made


@cache
def asset(name: str) -> str:
    """Address of a static file, with a mark that changes when the file does."""
    content = (files("axlewright.web") / "static" / name).read_bytes()
    return f"/static/{name}?v={hashlib.sha256(content).hexdigest()[:10]}"


def meaning(term: str, shown: str = "") -> Markup:
    """A word of the trade as a link to its meaning; a tap opens the meaning in place."""
    return Markup('<a class="term" href="/words#{}" data-meaning="{}">{}</a>').format(
        anchor(term), MEANINGS[term], shown or term
    )
