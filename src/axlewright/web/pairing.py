"""Letting a phone in: a pass phrase said once, then a signed cookie; wrong phrases have to wait."""

import hashlib
import hmac
import secrets
import threading
import time
from collections.abc import Callable
from typing import Final

from axlewright.web.phrase_words import WORDS

COOKIE: Final = "bay_paired"
MONTH: Final = 30 * 24 * 3600  # s, how long a paired phone stays paired
PHRASE_WORDS: Final = 4  # of 283 words each: 32 bits, behind the wait below
WRONG_ALLOWED: Final = 5  # wrong phrases in one window, from everybody together
WINDOW: Final = 60.0  # s


def new_phrase() -> str:
    """A pass phrase of four words."""
    return " ".join(secrets.choice(WORDS) for _ in range(PHRASE_WORDS))


class Pairing:
    """The pass phrase of one run, and the key that signs; ``phrase`` None lets no device in."""

    def __init__(
        self,
        phrase: str | None,
        key: bytes,
        *,
        clock: Callable[[], float] = time.monotonic,
        now: Callable[[], float] = time.time,
    ) -> None:
        self.phrase = phrase
        self._key, self._clock, self._now = key, clock, now
        self._wrong: list[float] = []
        self._lock = threading.Lock()

    def tried(self, said: str) -> bool | None:
        """Whether a phrase is right; None where too many wrong ones came within a minute."""
        with self._lock:
            moment = self._clock()
            self._wrong = [each for each in self._wrong if moment - each < WINDOW]
            if len(self._wrong) >= WRONG_ALLOWED:
                return None
            if self.phrase is not None and hmac.compare_digest(_plain(said), _plain(self.phrase)):
                return True
            self._wrong.append(moment)
            return False

    def cookie(self) -> str:
        """Cookie of a phone that has been let in."""
        until = str(int(self._now()) + MONTH)
        return f"{until}.{self.signed('paired', until)}"

    def knows(self, cookie: str) -> bool:
        """Whether a cookie was signed here and has not run out."""
        until, _, signature = cookie.partition(".")
        if not (until.isascii() and until.isdigit() and len(until) < 15):
            return False
        signed = self.signed("paired", until).encode()
        return hmac.compare_digest(signature.encode(), signed) and int(until) > self._now()

    def new_token(self) -> str:
        """Token for the forms of one browser, made here and so told from one set by others."""
        part = secrets.token_urlsafe(16)
        return f"{part}.{self.signed('token', part)}"

    def made(self, token: str) -> bool:
        """Whether a token was made here."""
        part, _, signature = token.partition(".")
        return hmac.compare_digest(signature.encode(), self.signed("token", part).encode())

    def signed(self, what: str, text: str) -> str:
        """Signature of a text under the key."""
        return hmac.new(self._key, f"{what}:{text}".encode(), hashlib.sha256).hexdigest()[:32]


def _plain(said: str) -> bytes:
    """A phrase as compared: words only, however they were parted or capitalised."""
    return " ".join(said.casefold().replace("-", " ").split()).encode()
