"""Names of a room that are loaded when they are first asked for: a quick start loads few."""

import sys
from collections.abc import Callable, Mapping
from importlib import import_module


def names(room: str, modules: Mapping[str, str]) -> Callable[[str], object]:
    """Make a room's ``__getattr__`` out of which module of it holds which name."""

    def found(name: str) -> object:
        if name not in modules:
            raise AttributeError(f"module {room!r} has no attribute {name!r}")
        thing: object = getattr(import_module(f"{room}.{modules[name]}"), name)
        setattr(sys.modules[room], name, thing)  # asked once
        return thing

    return found
