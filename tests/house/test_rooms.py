"""A room says in one sentence what it is for, and lists what it offers."""

import ast
import importlib
import pkgutil
import types

import pytest

from house.places import MODULES, PACKAGES, SRC, brief

VAGUE = {"utils", "util", "helpers", "helper", "common", "base", "core", "manager", "misc", "tools"}
LONGEST = 400  # lines


def name_of(package):
    return ".".join(package.relative_to(SRC.parent).parts)


@pytest.mark.parametrize("package", PACKAGES, ids=name_of)
def test_a_room_opens_with_one_sentence(package):
    said = ast.get_docstring(ast.parse((package / "__init__.py").read_text("utf-8"))) or ""
    assert len(said.split()) >= 3
    assert said.endswith(".")
    assert ". " not in said
    assert "\n\n" not in said


@pytest.mark.parametrize("package", PACKAGES, ids=name_of)
def test_a_room_lists_what_is_visible(package):
    room = importlib.import_module(name_of(package))
    assert all(hasattr(room, name) for name in room.__all__)  # what loads late is there when asked
    visible = {
        name
        for name, thing in vars(room).items()
        if not name.startswith("_") and not isinstance(thing, types.ModuleType)
    }
    assert set(room.__all__) == visible


@pytest.mark.parametrize("package", PACKAGES, ids=name_of)
def test_what_loads_late_has_no_module_of_its_own_name(package):
    # Whoever imports such a module first puts it where the room's own name should stand.
    room = importlib.import_module(name_of(package))
    modules = {found.name for found in pkgutil.iter_modules(room.__path__)}
    assert not modules & set(getattr(room, "_LATER", {}))


@pytest.mark.parametrize("path", MODULES, ids=brief)
def test_a_module_is_named_for_its_subject(path):
    assert path.stem not in VAGUE


@pytest.mark.parametrize("path", MODULES, ids=brief)
def test_a_module_says_what_it_is_about(path):
    assert len((ast.get_docstring(ast.parse(path.read_text("utf-8"))) or "").split()) >= 3


@pytest.mark.parametrize("path", MODULES, ids=brief)
def test_a_module_fits_in_the_head(path):
    assert len(path.read_text("utf-8").splitlines()) <= LONGEST


@pytest.mark.parametrize("path", MODULES, ids=brief)
def test_neighbours_come_in_by_the_door(path):
    """Another room's modules stay its own; `physics` is imported by module on purpose."""
    own = path.relative_to(SRC).parts[0].removesuffix(".py")
    if own.startswith("__"):
        return
    through_the_wall = []
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.ImportFrom) and (node.module or "").startswith("axlewright."):
            _, room, *deeper = node.module.split(".")
            if deeper and room not in {own, "physics"}:
                through_the_wall.append(node.module)
    assert not through_the_wall
