"""What was worked out before, found again by what it was worked out from."""

import threading
from collections import OrderedDict
from collections.abc import Callable
from functools import cache
from hashlib import sha256
from importlib.metadata import version
from typing import Final, Generic, TypeVar

from axlewright.rig import SEED, Change, Rig
from axlewright.strength import Assessment, Comparison, assess_rig, compare

Key = TypeVar("Key")
Kept = TypeVar("Kept")

ASSESSMENTS: Final = 10
COMPARISONS: Final = 6


class Latest(Generic[Key, Kept]):
    """So many of what was used last; safe to call from threads."""

    def __init__(self, most: int) -> None:
        self._most = most
        self._kept: OrderedDict[Key, Kept] = OrderedDict()
        self._lock = threading.Lock()

    def kept(self, key: Key) -> Kept | None:
        """Give what is kept under a key, None where nothing is."""
        with self._lock:
            if key not in self._kept:
                return None
            self._kept.move_to_end(key)
            return self._kept[key]

    def keep(self, key: Key, thing: Kept) -> Kept:
        """Keep something under a key, in the place of what was there."""
        with self._lock:
            self._kept[key] = thing
            self._kept.move_to_end(key)
            while len(self._kept) > self._most:
                self._kept.popitem(last=False)
            return thing

    def get(self, key: Key, make: Callable[[], Kept]) -> Kept:
        """Give what is kept under a key, made first where nothing is."""
        found = self.kept(key)
        return self.keep(key, make()) if found is None else found


@cache
def _package() -> str:
    return version("axlewright")


def content_hash(rig: Rig, draws: int, seed: int = SEED) -> str:
    """SHA-256 of all that an assessment hangs on: file text, changes, draws, seed, version."""
    parts = (rig.digest, "|".join(rig.changes), draws, seed, _package())
    return sha256("\n".join(str(part) for part in parts).encode()).hexdigest()


class Answers:
    """Assessments and comparisons, each worked out once; drawn ones one at a time."""

    def __init__(self) -> None:
        self._assessments: Latest[str, Assessment] = Latest(ASSESSMENTS)
        self._comparisons: Latest[str, Comparison] = Latest(COMPARISONS)
        self._turn = threading.Lock()

    def assessment(self, rig: Rig, draws: int) -> Assessment:
        """Assessment of a rig; with ``draws`` 0 the point alone, which waits for nobody."""
        key = content_hash(rig, draws)
        if not draws:
            return self._assessments.get(key, lambda: assess_rig(rig, draws=0))
        with self._turn:
            return self._assessments.get(key, lambda: assess_rig(rig, draws=draws))

    def comparison(self, rig: Rig, change: Change, draws: int) -> Comparison:
        """Comparison of a rig with itself after a change, on the same draws."""
        before = self.assessment(rig, draws)
        if not draws:
            return compare(before, [change], draws=0)
        key = f"{content_hash(rig, draws)} {change.digest}"
        with self._turn:
            return self._comparisons.get(key, lambda: compare(before, [change], draws=draws))
