"""The glossary of `docs/conventions.md`: read it, list what is missing, add it.

``python -m tools.glossary`` lists the parameter names of physics that the glossary lacks, as rows
ready to paste; ``--add`` puts them into the page, in order. A meaning that no docstring gives is
left empty, and a house test asks for it.
"""

import inspect
import pkgutil
import re
import sys
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from importlib import import_module
from pathlib import Path
from typing import Annotated, Any, get_args, get_origin, get_type_hints

from axlewright.physics.quantities import SI

PAGE = Path(__file__).parents[1] / "docs" / "conventions.md"
HEAD = "| name | meaning | unit | sign |\n|---|---|---|---|\n"
ROW = re.compile(r"^\| `(\w+)` \| (.*?) \| (.*?) \| (.*?) \|$", re.MULTILINE)

# Units by their exponents of kilogram, metre, second, kelvin.
WORDS = {
    (0, 0, 0, 0): "1",
    (0, 1, 0, 0): "m",
    (0, 2, 0, 0): "m²",
    (0, 3, 0, 0): "m³",
    (0, 4, 0, 0): "m⁴",
    (0, -1, 0, 0): "1/m",
    (0, 0, 1, 0): "s",
    (0, 0, -1, 0): "1/s",
    (0, 0, -2, 0): "1/s²",
    (0, 1, -1, 0): "m/s",
    (0, 1, -2, 0): "m/s²",
    (1, 0, 0, 0): "kg",
    (1, 2, 0, 0): "kg m²",
    (1, -1, 0, 0): "kg/m",
    (1, -3, 0, 0): "kg/m³",
    (1, 1, -2, 0): "N",
    (1, 2, -2, 0): "N m",
    (1, 3, -2, 0): "N m²",
    (1, 0, -2, 0): "N/m",
    (-1, 0, 2, 0): "m/N",
    (-1, -2, 2, 0): "1/(N m)",
    (1, 1, -1, 0): "N s",
    (1, 0, -1, 0): "N s/m",
    (1, 2, -3, 0): "W",
    (1, -1, -2, 0): "Pa",
    (1, -1, -1, 0): "Pa s",
    (0, 0, 0, 1): "K",
    (0, 0, 0, -1): "1/K",
}
SAME = {"rad": "1", "rad/s": "1/s", "rad/s²": "1/s²", "J": "N m", "N m/rad": "N m", "Hz": "1/s"}


@dataclass(frozen=True, slots=True)
class Entry:
    """One name of the glossary. `units` in base words: a radian counts as 1."""

    name: str
    meaning: str
    unit: str
    sign: str

    @property
    def units(self) -> frozenset[str]:
        """Every unit the name may carry."""
        return frozenset(SAME.get(one, one) for one in self.unit.split(" or ") if one)


def in_words(mark: SI) -> str:
    """The unit of a hint, as the glossary writes it."""
    return WORDS[(mark.kg, mark.m, mark.s, mark.kelvin)]


def entries() -> Mapping[str, Entry]:
    """Every row of the glossary, by name."""
    _, _, table = PAGE.read_text("utf-8").partition(HEAD)
    return {found[0]: Entry(*found) for found in ROW.findall(table.split("\n\n")[0])}


def signatures() -> Iterator[tuple[str, str, Any, str]]:
    """Function, parameter, hint and what its docstring says, for all of physics."""
    package = import_module("axlewright.physics")
    for found in pkgutil.walk_packages(package.__path__, "axlewright.physics."):
        if found.name.rpartition(".")[2].startswith("_"):
            continue
        module = import_module(found.name)
        for name, thing in vars(module).items():
            plain = inspect.unwrap(getattr(thing, "py_func", thing))
            own = inspect.isfunction(plain) and plain.__module__ == found.name
            if not own or name.startswith("_"):
                continue
            hints = get_type_hints(plain, include_extras=True)
            hints.pop("return", None)
            for parameter, hint in hints.items():
                yield f"{found.name}.{name}", parameter, hint, _described(plain, parameter)


def missing() -> list[Entry]:
    """Names used and not listed, or used with a unit that is not listed."""
    listed = entries()
    wanted: dict[str, Entry] = {}
    for _, parameter, hint, said in signatures():
        mark = _mark(hint)
        unit = in_words(mark) if mark else "–"
        if parameter in listed and (mark is None or unit in listed[parameter].units):
            continue
        before = wanted.get(parameter) or listed.get(parameter) or Entry(parameter, "", "", "")
        units = [one for one in before.unit.split(" or ") if one]
        if mark is not None:
            units = [one for one in units if one != "–"]
        if (mark is not None or not units) and unit not in {SAME.get(one, one) for one in units}:
            units = [*units, unit]
        wanted[parameter] = Entry(
            parameter, before.meaning or said, " or ".join(dict.fromkeys(units)), before.sign
        )
    return [wanted[name] for name in sorted(wanted)]


def unused() -> list[str]:
    """Names listed that no signature uses."""
    used = {parameter for _, parameter, _, _ in signatures()}
    return sorted(set(entries()) - used)


def _mark(hint: Any) -> SI | None:  # noqa: ANN401
    if get_origin(hint) is Annotated:
        return next((mark for mark in get_args(hint)[1:] if isinstance(mark, SI)), None)
    marks = {_mark(part) for part in get_args(hint) if part is not type(None)} - {None}
    return marks.pop() if len(marks) == 1 else None


def _described(function: Any, parameter: str) -> str:  # noqa: ANN401
    entry = rf"^ *{parameter}\b[^\n]*\n( +)(\S[^\n]*(?:\n\1\S[^\n]*)*)"
    found = re.search(entry, function.__doc__ or "", re.MULTILINE)
    return re.split(r"\.(?: |$)", " ".join(found[2].split()))[0] if found else ""


def _row(entry: Entry) -> str:
    return f"| `{entry.name}` | {entry.meaning} | {entry.unit} | {entry.sign} |\n"


def main() -> None:
    """List what is missing, or add it."""
    lacking = missing()
    if "--add" in sys.argv:
        merged = {**entries(), **{entry.name: entry for entry in lacking}}
        before, _, after = PAGE.read_text("utf-8").partition(HEAD)
        rest = re.sub(r"\A(\|[^\n]*\n)*", "", after)
        rows = "".join(_row(merged[name]) for name in sorted(merged))
        PAGE.write_text(before + HEAD + rows + rest, "utf-8")
    sys.stdout.writelines(_row(entry) for entry in lacking)
    if names := unused():
        print("\nListed and not used by physics:", ", ".join(names))


if __name__ == "__main__":
    main()
