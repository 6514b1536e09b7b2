"""Letting a phone in: the phrase and a code on this machine, a form on the phone."""

from typing import Final

import segno
from markupsafe import Markup
from starlette.concurrency import run_in_threadpool
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import BaseRoute, Route

from axlewright.web.guard import is_here
from axlewright.web.page import form_of, page
from axlewright.web.pairing import COOKIE, MONTH, Pairing


async def pair(request: Request) -> Response:
    """On this machine how to let a phone in; on a phone the form for the phrase."""
    pairing: Pairing = request.app.state.pairing
    inside = is_here(request.scope) or pairing.knows(request.cookies.get(COOKIE, ""))
    told: dict[str, str | bool] = {"inside": inside, "address": "", "phrase": "", "code": ""}
    if inside and pairing.phrase is not None:
        address: str = request.app.state.address
        code = await run_in_threadpool(code_svg, pairing_address(address, pairing.phrase))
        told |= {"address": address, "phrase": pairing.phrase, "code": code}
    return page(request, "pair.html", told, wrong=False)


async def let_in(request: Request) -> Response:
    """Try a phrase; a right one sets the cookie that lets this device in."""
    pairing: Pairing = request.app.state.pairing
    said = (await form_of(request)).get("phrase", "")
    right = pairing.tried(said)
    if right is None:
        raise HTTPException(429, "Too many wrong phrases came in.")
    if not right:
        blank = {"inside": False, "address": "", "phrase": "", "code": ""}
        return page(request, "pair.html", blank, status=403, wrong=True)
    answer = RedirectResponse("/", 303)
    answer.set_cookie(COOKIE, pairing.cookie(), max_age=MONTH, httponly=True, samesite="strict")
    return answer


def pairing_address(address: str, phrase: str) -> str:
    """Address for the code: the phrase stands behind a #, which no browser sends anywhere."""
    return f"{address}/pair#{phrase.replace(' ', '-')}"


def code_svg(address: str) -> Markup:
    """A QR code that a phone's camera opens, as SVG in the text's own colour on white."""
    drawn = segno.make(address, error="m").svg_inline(
        scale=6, border=4, dark="#000", light="#fff", svgclass="code", lineclass=None
    )
    return Markup(drawn)  # noqa: S704  (made here, of our own address)


ROUTES: Final[tuple[BaseRoute, ...]] = (
    Route("/pair", pair),
    Route("/pair", let_in, methods=["POST"]),
)
