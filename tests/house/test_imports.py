"""Who may import what, beyond the contracts that the import checker keeps."""

import subprocess
import sys

import pytest

from house.places import PHYSICS, ROOT, brief, imported

ALLOWED = {"numpy", "scipy", "numba"}

HEAVY = [  # Numba itself imports SciPy's empty top; what costs time is below it
    "scipy.linalg",
    "scipy.optimize",
    "scipy.interpolate",
    "scipy.signal",
    "scipy.sparse",
    "scipy.special",
    "scipy.stats",
    "typst",
    "cyclopts",
    "rich",
]


@pytest.mark.parametrize("path", sorted(PHYSICS.rglob("*.py")), ids=brief)
def test_physics_imports_only_number_libraries(path):
    strange = {
        name
        for name in imported(path)
        if name.split(".")[0] not in ALLOWED | sys.stdlib_module_names
        and not name.startswith("axlewright.physics")
    }
    assert not strange, f"{brief(path)} imports {strange}"


# File and network modules of the standard library have no business in mechanics.
DOORS = {"io", "pathlib", "os", "subprocess", "socket", "urllib", "http", "sqlite3", "csv", "json"}


@pytest.mark.parametrize("path", sorted(PHYSICS.rglob("*.py")), ids=brief)
def test_physics_opens_nothing(path):
    used = {name.split(".")[0] for name in imported(path)}
    # The cache of compiled kernels has to be placed before Numba is imported.
    doors = DOORS - {"os", "pathlib"} if path.stem == "compiled" else DOORS
    assert not used & doors


@pytest.fixture(scope="module")
def loaded_by_the_actions():
    """Modules in memory once the actions are imported."""
    return subprocess.run(
        [
            sys.executable,
            "-c",
            "import sys, axlewright.actions; print(*sys.modules)",
        ],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=True,
    ).stdout.split()


@pytest.mark.parametrize("heavy", HEAVY)
def test_asking_what_gives_first_imports_nothing_heavy(heavy, loaded_by_the_actions):
    assert "axlewright" in loaded_by_the_actions
    assert heavy not in loaded_by_the_actions


@pytest.fixture(scope="module")
def loaded_by_an_answer():
    """Modules in memory once a whole answer has been given on the command line."""
    asked = "['assess', 'examples/rigs/heron.toml', '--draws', '20']"
    script = (
        "import sys; from axlewright.cli import run; "
        f"code = run({asked}); print('LOADED', *sys.modules); sys.exit(code)"
    )
    told = subprocess.run(
        [sys.executable, "-c", script], cwd=ROOT, capture_output=True, text=True, check=True
    ).stdout
    return told.partition("LOADED")[2].split()


@pytest.mark.parametrize(
    "idle",
    [
        "scipy.linalg",
        "scipy.special",
        "typst",
        "axlewright.actions.start",
        "axlewright.views.drawing_sheet",
        "axlewright.views.report_words",
    ],
)
def test_an_answer_in_the_terminal_loads_no_more_than_it_needs(idle, loaded_by_an_answer):
    assert "axlewright.physics.frame" in loaded_by_an_answer
    assert "numba" in loaded_by_an_answer
    assert idle not in loaded_by_an_answer
