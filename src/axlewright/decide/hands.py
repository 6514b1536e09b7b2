"""Many hands: pieces of work given to other processes, answers in the order of the pieces."""

import multiprocessing
import os
import signal
from collections import deque
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import BrokenExecutor, Future, ProcessPoolExecutor
from types import TracebackType
from typing import Final, Self, TypeVar

Given = TypeVar("Given")
Made = TypeVar("Made")
AHEAD: Final = 2  # pieces that wait for each hand, so that little is left to end when one stops


class Hands:
    """So many processes to share work; one of them works here and starts none.

    The work is a function at the top of a module and its pieces can be pickled. Where no process
    can be started, or one is lost, what is left is done here.
    """

    def __init__(self, workers: int = 1) -> None:
        self._workers = workers
        self._pool: ProcessPoolExecutor | None = None

    def __enter__(self) -> Self:
        """Start no process yet: the first work does."""
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        trouble: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        """Let the processes go; what waits is not begun."""
        if self._pool is not None:
            self._pool.shutdown(wait=True, cancel_futures=True)
            self._pool = None

    @property
    def many(self) -> bool:
        """Whether work goes to other processes."""
        return self._workers > 1

    def each(self, work: Callable[[Given], Made], pieces: Sequence[Given]) -> Iterator[Made]:
        """What becomes of each piece, in their order."""
        waiting: deque[Future[Made]] = deque()
        given = done = 0
        try:
            while self.many and done < len(pieces):
                while given < len(pieces) and len(waiting) < AHEAD * self._workers:
                    waiting.append(self._started().submit(work, pieces[given]))
                    given += 1
                yield waiting.popleft().result()
                done += 1
        except (BrokenExecutor, OSError):
            self._workers = 1
        finally:
            for left in waiting:
                left.cancel()
        for piece in pieces[done:]:
            yield work(piece)

    def _started(self) -> ProcessPoolExecutor:
        if self._pool is None:
            # A fork would copy locks that threads of a server hold.
            self._pool = ProcessPoolExecutor(
                self._workers,
                mp_context=multiprocessing.get_context("spawn"),
                initializer=_only_work,
            )
        return self._pool


def hands_for(work: int, least: int) -> int:
    """How many processes some work is worth: one where it is small, else one for each idle core."""
    if work < least:
        return 1
    affine = hasattr(os, "sched_getaffinity")
    cores = len(os.sched_getaffinity(0)) if affine else os.cpu_count() or 1
    busy = os.getloadavg()[0] if hasattr(os, "getloadavg") else 0.0
    return max(round(cores - busy), 1)


def _only_work() -> None:
    """Leave it to the process that gave the work to be interrupted."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
