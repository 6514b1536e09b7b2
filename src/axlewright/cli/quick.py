"""A quicker first second: what a command's own process can leave unloaded or unsearched."""

import gc
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from importlib import import_module
from types import ModuleType


def load_kernels() -> str | None:
    """Load the kernels without SciPy's BLAS; gives what to say where they have to be compiled.

    Numba loads it when it loads its array functions, for matrix products that no kernel of ours
    uses, and it is a tenth of a cold start. Done here and not in `physics`, for in somebody
    else's program such products may be wanted.
    """
    with _here_to_stay():
        from axlewright.physics.compiled import cache_note

        name = "scipy.linalg"
        if name not in sys.modules:
            hidden: dict[str, ModuleType | None] = sys.modules  # type: ignore[assignment]
            hidden[name] = None
            try:
                import_module("numba.np.arraymath")
            finally:
                del hidden[name]
    return cache_note()


@contextmanager
def _here_to_stay() -> Iterator[None]:
    """Keep the collector from searching what is being loaded, then and later: all of it stays."""
    searching = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        gc.freeze()
        if searching:
            gc.enable()
