"""Invented rigs that come with the package, to be copied and tried."""

from importlib.resources import files

from axlewright.errors import UnknownEntry


def example_names() -> list[str]:
    """Names of the examples."""
    found = files("axlewright.actions").joinpath("examples").iterdir()
    return sorted(each.name.removesuffix(".toml") for each in found if each.name.endswith(".toml"))


def example_text(name: str) -> str:
    """Text of the rig file of an example."""
    if name not in example_names():
        raise UnknownEntry(
            f"There is no example {name[:40]!r}.", remedy=f"One of: {', '.join(example_names())}."
        )
    file = files("axlewright.actions").joinpath("examples", f"{name}.toml")
    return file.read_text("utf-8")
