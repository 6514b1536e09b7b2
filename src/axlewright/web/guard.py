"""The door of the bay: whom it answers, how much it takes in, and what it lets a browser do."""

import logging
import re
from collections.abc import Sequence
from ipaddress import ip_address
from typing import Final
from urllib.parse import urlsplit

from starlette.datastructures import Headers, MutableHeaders
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import PlainTextResponse, RedirectResponse
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from axlewright.records import MOST_PHOTO
from axlewright.web.pairing import COOKIE, Pairing
from axlewright.web.trouble import trouble_page

MOST_BODY: Final = 64 * 1024  # bytes, of a form
MOST_UPLOAD: Final = 1024 * 1024  # bytes, of a rig file
MOST_ARCHIVE: Final = 256 * 1024 * 1024  # bytes; a larger one goes in by the terminal
# Where more than a form is taken in, and how much of it.
UPLOADS: Final = (
    (re.compile(r"/open"), MOST_UPLOAD),
    (re.compile(r"/axle/[a-z0-9-]{1,64}/(looks|hit|been|swap)(/[a-z]+)?"), MOST_PHOTO),
    (re.compile(r"/archive"), MOST_ARCHIVE),
)
OPEN_TO_ALL: Final = ("/pair", "/static/")
LOG: Final = logging.getLogger("axlewright.web")

HEADERS: Final[dict[str, str]] = {
    "Content-Security-Policy": (
        "default-src 'self'; img-src 'self' data:; object-src 'none'; base-uri 'none'; "
        "form-action 'self'; frame-ancestors 'none'"
    ),
    "X-Content-Type-Options": "nosniff",
    # "no-referrer" would make browsers send "Origin: null" with our own forms, and over plain
    # http on a LAN nothing else tells our forms from another site's.
    "Referrer-Policy": "same-origin",
    "X-Frame-Options": "DENY",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Permissions-Policy": "camera=(), microphone=(), geolocation=()",
}


class Guard:
    """Stands before every page: headers, host, pairing, same origin, size; and the last resort."""

    def __init__(self, app: ASGIApp, *, hosts: Sequence[str], pairing: Pairing) -> None:
        self._app, self._pairing = app, pairing
        self._hosts = frozenset(host.casefold() for host in hosts)

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer one request, or hand it on."""
        if scope["type"] == "lifespan":
            await self._app(scope, receive, send)
            return
        if scope["type"] != "http":
            return
        begun = False

        async def with_headers(message: Message) -> None:
            nonlocal begun
            if message["type"] == "http.response.start":
                begun = True
                headers = MutableHeaders(scope=message)
                for name, value in HEADERS.items():
                    headers[name] = value
                headers.setdefault("Cache-Control", "no-cache")
            await send(message)

        try:
            await self._checked(scope, receive, with_headers)
        except HTTPException as trouble:
            await trouble_page(Request(scope), trouble)(scope, receive, with_headers)
        except Exception:
            LOG.exception("A page could not be made: %s %s", scope["method"], scope["path"])
            if begun:
                raise
            await trouble_page(Request(scope), None)(scope, receive, with_headers)

    async def _checked(self, scope: Scope, receive: Receive, send: Send) -> None:
        headers = Headers(scope=scope)
        if _host(headers.get("host", "")) not in self._hosts:
            refusal = PlainTextResponse(
                "The bay does not answer under this name. Open it at the address that "
                "axlewright serve printed.",
                400,
            )
            await refusal(scope, receive, send)
            return
        path: str = scope["path"]
        changing = scope["method"] not in {"GET", "HEAD", "OPTIONS"}
        if not self._let_in(scope) and not path.startswith(OPEN_TO_ALL):
            if changing or "x-fragment" in headers:
                raise HTTPException(
                    403,
                    "This device has not been let in. Open /pair on it and type the pass phrase.",
                )
            await RedirectResponse("/pair", 303)(scope, receive, send)
            return
        if changing and not same_origin(headers):
            raise HTTPException(403, "This came from another page than one of the bay's own.")
        more = next((most for place, most in UPLOADS if place.fullmatch(path)), 0)
        most = more + MOST_BODY
        await self._app(scope, _limited(headers, receive, most), send)

    def _let_in(self, scope: Scope) -> bool:
        return is_here(scope) or self._pairing.knows(Request(scope).cookies.get(COOKIE, ""))


def is_here(scope: Scope) -> bool:
    """Whether a request comes from the machine that the bay runs on."""
    client = scope.get("client")
    try:
        return client is not None and ip_address(client[0]).is_loopback
    except ValueError:
        return False


def same_origin(headers: Headers) -> bool:
    """Whether a browser says that a request was made by one of our own pages."""
    site = headers.get("sec-fetch-site")
    if site is not None and site != "same-origin":
        return False
    stated = headers.get("origin") or headers.get("referer")
    if stated is None:
        return site is not None
    try:
        parts = urlsplit(stated)
    except ValueError:
        return False
    return parts.scheme == "http" and parts.netloc.casefold() == headers.get("host", "").casefold()


def _limited(headers: Headers, receive: Receive, most: int) -> Receive:
    stated = headers.get("content-length", "0")
    too_much = HTTPException(
        413,
        "That is more than the bay takes in at once: a form of 64 kB, a rig file of 1 MB, a photo "
        "of 16 MB, an archive of 256 MB.",
    )
    if not (stated.isascii() and stated.isdigit()):
        raise HTTPException(400, "The length of what was sent cannot be read.")
    if len(stated) > 15 or int(stated) > most:
        raise too_much
    taken = 0

    async def counted() -> Message:
        nonlocal taken
        message = await receive()
        taken += len(message.get("body", b""))
        if taken > most:
            raise too_much
        return message

    return counted


def _host(stated: str) -> str:
    """Name out of a Host header, without its port."""
    name = stated.casefold().strip()
    if name.startswith("["):
        return name.partition("]")[0] + "]"
    return name.partition(":")[0]
