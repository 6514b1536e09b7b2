"""A quicker first second: what a command's own process can leave unloaded."""

import sys
from importlib import import_module
from types import ModuleType


def load_kernels() -> str | None:
    """Load the kernels without SciPy's BLAS; gives what to say where they have to be compiled.

    Numba loads it when it loads its array functions, for matrix products that no kernel of ours
    uses, and it is a tenth of a cold start. Done here and not in `physics`, for in somebody
    else's program such products may be wanted.
    """
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
