"""Running the bay: where it listens, what it tells the terminal, and how it ends."""

import contextlib
import os
import secrets
import socket
import sys
from collections.abc import Callable
from ipaddress import ip_address
from pathlib import Path
from types import FrameType
from typing import Final

import uvicorn

from axlewright.actions import Bay
from axlewright.errors import AxlewrightError
from axlewright.web.app import LOOPBACK, bay_app
from axlewright.web.pages.pair import pairing_address
from axlewright.web.pairing import new_phrase

KEY_FILE: Final = "bay.key"
KEY_SIZE: Final = 32  # bytes


def serve_bay(
    folder: Path,
    *,
    port: int,
    on_the_network: bool,
    forget: bool = False,
    say: Callable[[str], None] = print,
) -> None:
    """Serve the bay of a folder until it is stopped.

    It listens on this machine only, or, where asked, on the local network behind a pass phrase.
    With ``forget`` every phone that was let in before has to say the phrase again.
    """
    bay = Bay.open(folder)
    try:
        here = own_address() if on_the_network else "127.0.0.1"
        key = kept_key(folder, fresh=forget)
        with _listening("0.0.0.0" if on_the_network else here, port) as door:  # noqa: S104
            number = door.getsockname()[1]
            phrase = new_phrase() if on_the_network else None
            address = f"http://{here}:{number}"
            names = (here, *_own_names()) if on_the_network else ()
            app = bay_app(
                bay,
                hosts=(*LOOPBACK, *names),
                pass_phrase=phrase,
                key=key,
                address=address,
            )
            for line in opening_lines(number, address, phrase):
                say(line)
            config = uvicorn.Config(
                app,
                log_level="warning",
                access_log=False,
                server_header=False,
                proxy_headers=False,
                timeout_keep_alive=30,
                timeout_graceful_shutdown=3,
                ws="none",
            )
            with contextlib.suppress(KeyboardInterrupt):  # raised again once the server has ended
                _Server(config, app.state).run(sockets=[door])
            say("The bay is closed.")
    finally:
        bay.close()


def opening_lines(port: int, address: str, phrase: str | None) -> list[str]:
    """What the terminal says as the bay opens."""
    lines = [f"The bay is open: http://127.0.0.1:{port}"]
    if phrase is None:
        lines.append("On this machine only; on a phone as well with --on-the-network.")
    else:
        lines += [
            f"On a phone on the same network: {address}",
            f"Pass phrase: {phrase}",
            *code_lines(pairing_address(address, phrase)),
            "Anybody on this network who knows the phrase can read and change your axles.",
        ]
    return [*lines, "Stop it with Ctrl+C; everything that was said is kept."]


def code_lines(address: str) -> list[str]:
    """A QR code in the terminal's own signs."""
    import io

    import segno

    out = io.StringIO()
    segno.make(address, error="l").terminal(out, compact=True, border=2)
    return out.getvalue().splitlines()


def kept_key(folder: Path, *, fresh: bool = False) -> bytes:
    """The key that signs what browsers keep; made once, readable by its owner only."""
    place = folder / KEY_FILE
    if place.exists() and not fresh:
        key = place.read_bytes()
        if len(key) == KEY_SIZE:
            return key
    key = secrets.token_bytes(KEY_SIZE)
    place.unlink(missing_ok=True)
    handle = os.open(place, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600)
    with os.fdopen(handle, "wb") as out:
        out.write(key)
    return key


def own_address() -> str:
    """Address of this machine on its network; this machine itself where there is none.

    A datagram socket that is only pointed somewhere sends nothing.
    """
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as probe:
        try:
            probe.connect(("192.0.2.1", 9))  # set aside for examples: RFC 5737
            found: str = probe.getsockname()[0]
        except OSError:
            found = "127.0.0.1"
    if ip_address(found).is_loopback:
        raise AxlewrightError(
            "This machine is on no network that a phone could be on as well.",
            remedy="Join the Wi-Fi first, or start without --on-the-network.",
        )
    return found


def _own_names() -> tuple[str, ...]:
    name = socket.gethostname().casefold()
    return (name, f"{name.partition('.')[0]}.local")


def _listening(host: str, port: int) -> socket.socket:
    door = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    if sys.platform != "win32":  # there the option would let a second bay in beside the first
        door.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        door.bind((host, port))
        door.listen(128)  # from the line that says "open" on, nobody is turned away
    except (OSError, OverflowError) as trouble:
        door.close()
        raise AxlewrightError(
            f"Port {port} cannot be used; perhaps the bay is open already.",
            remedy="Look at its page, or give another with --port.",
        ) from trouble
    return door


class _Server(uvicorn.Server):
    """A server that tells its open streams when it is about to end."""

    def __init__(self, config: uvicorn.Config, state: object) -> None:
        super().__init__(config)
        self._state = state

    def handle_exit(self, sig: int, frame: FrameType | None) -> None:
        """End the streams, then the server."""
        self._state.closing = True  # type: ignore[attr-defined]
        super().handle_exit(sig, frame)
