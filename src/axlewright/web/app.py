"""The bay as one application: its pages, its door, and what it says when something is wrong."""

import secrets
from collections.abc import Sequence
from importlib.resources import files
from typing import Final

from starlette.applications import Starlette
from starlette.exceptions import HTTPException
from starlette.middleware import Middleware
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Mount
from starlette.staticfiles import StaticFiles
from starlette.types import Scope

from axlewright.actions import Bay
from axlewright.errors import AxlewrightError
from axlewright.web.guard import Guard
from axlewright.web.pairing import Pairing
from axlewright.web.routes import ROUTES
from axlewright.web.trouble import trouble_page

LOOPBACK: Final = ("127.0.0.1", "localhost", "[::1]")


def bay_app(
    bay: Bay,
    *,
    hosts: Sequence[str] = LOOPBACK,
    pass_phrase: str | None = None,
    key: bytes | None = None,
    address: str = "",
) -> Starlette:
    """The application that serves one bay.

    It answers under ``hosts`` only. Without a ``pass_phrase`` no other machine is let in. ``key``
    signs what browsers keep; with the same key they stay let in after a restart. ``address`` is
    where other devices find the bay.
    """
    pairing = Pairing(pass_phrase, key or secrets.token_bytes(32))
    app = Starlette(
        routes=[*ROUTES, Mount("/static", _Static(directory=_static()), name="static")],
        middleware=[Middleware(Guard, hosts=hosts, pairing=pairing)],
        exception_handlers={HTTPException: _told, AxlewrightError: _told},
    )
    app.router.redirect_slashes = False
    app.state.bay, app.state.pairing = bay, pairing
    app.state.address, app.state.closing = address, False
    return app


def _told(request: Request, trouble: Exception) -> Response:
    return trouble_page(request, trouble)


def _static() -> str:
    return str(files("axlewright.web") / "static")


class _Static(StaticFiles):
    """Files of the page itself; what carries its mark may be kept by the browser for good."""

    async def get_response(self, path: str, scope: Scope) -> Response:
        if "\0" in path:
            raise HTTPException(404)
        answer = await super().get_response(path, scope)
        if scope["query_string"].startswith(b"v="):
            answer.headers["Cache-Control"] = "public, max-age=31536000, immutable"
        return answer
