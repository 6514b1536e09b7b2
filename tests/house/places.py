"""Where things stand in the project, for the tests of its rules."""

import ast
import importlib
import pkgutil
import subprocess
from functools import cache
from pathlib import Path

ROOT = Path(__file__).parents[2]
SRC = ROOT / "src" / "axlewright"
DOCS = ROOT / "docs"
PHYSICS = SRC / "physics"

MODULES = sorted(SRC.rglob("*.py"))
PACKAGES = sorted(path.parent for path in SRC.rglob("__init__.py"))
ROOMS = sorted(
    {path.stem for path in SRC.glob("*.py")}
    | {path.parent.name for path in SRC.glob("*/__init__.py")}
)
ROOMS = [room for room in ROOMS if not room.startswith("__")]


def brief(path):
    """A path as the tests name it."""
    return path.relative_to(ROOT).as_posix()


@cache
def tracked_files():
    """Every file that git keeps or would keep; all files where there is no git."""
    listed = subprocess.run(
        ["git", "ls-files", "-z", "--cached", "--others", "--exclude-standard"],
        cwd=ROOT,
        capture_output=True,
        check=False,
    )
    names = [name for name in listed.stdout.decode().split("\0") if name]
    paths = [ROOT / name for name in names] or [
        path for path in ROOT.rglob("*") if not set(path.parts) & {".venv", "site", "out"}
    ]
    return tuple(sorted(path for path in paths if path.is_file()))


@cache
def pages():
    """The docs that people read, README and its neighbours among them."""
    return tuple(sorted([*DOCS.rglob("*.md"), *ROOT.glob("*.md")]))


def imported(path):
    """Names of the modules that a file imports, wherever in the file it does so."""
    names = []
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.Import):
            names += [alias.name for alias in node.names]
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{brief(path)}: imports are absolute"
            names.append(node.module)
    return names


def physics_modules():
    """Every public physics module, imported."""
    package = importlib.import_module("axlewright.physics")
    return [
        importlib.import_module(found.name)
        for found in pkgutil.walk_packages(package.__path__, "axlewright.physics.")
        if not found.name.rpartition(".")[2].startswith("_")
    ]
