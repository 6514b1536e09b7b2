"""Pages about the pages: what words mean, and the settings of a reader."""

from typing import Final
from urllib.parse import urlsplit

from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import BaseRoute, Route

from axlewright.web.meanings import MEANINGS, anchor
from axlewright.web.page import form_of, page
from axlewright.web.settings import COOKIE, YEAR, read_settings


async def words(request: Request) -> Response:
    """Every word of the trade that the pages use, with its meaning."""
    told = [(anchor(term), term, said) for term, said in MEANINGS.items()]
    return page(request, "words.html", words=sorted(told, key=lambda each: each[1].casefold()))


async def settings(request: Request) -> Response:
    """Keep units and light in a cookie, and go back to the page where they were picked."""
    fields = await form_of(request)
    picked = read_settings(fields.get("units", ""), fields.get("theme", ""))
    answer = RedirectResponse(own_place(fields.get("back", "")), 303)
    answer.set_cookie(COOKIE, picked.cookie(), max_age=YEAR, httponly=True, samesite="strict")
    return answer


def own_place(said: str) -> str:
    """A path of ours out of what a form says; the first page where it is none.

    Examples
    --------
    >>> own_place("/axle/heron?at=1"), own_place("//elsewhere/x"), own_place("https://a.b/")
    ('/axle/heron?at=1', '/', '/')
    """
    plain = said if said.isascii() and said.isprintable() and "\\" not in said else "/"
    try:
        parts = urlsplit(plain)
    except ValueError:
        return "/"
    own = not parts.scheme and not parts.netloc and plain.startswith("/")
    return plain if own and not plain.startswith("//") and len(plain) < 500 else "/"


ROUTES: Final[tuple[BaseRoute, ...]] = (
    Route("/words", words),
    Route("/settings", settings, methods=["POST"]),
)
