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


def run_in_a_child(*words):
    """Run one command in a process of its own; gives what is then in memory, and which kernels."""
    script = (
        "import sys\n"
        "from axlewright.cli import run\n"
        f"code = run({list(words)})\n"
        "ours = [name for name in sys.modules if name.startswith('axlewright.physics.')]\n"
        "things = [thing for name in ours for thing in vars(sys.modules[name]).values()]\n"
        "kernels = {each.__name__ for each in things if getattr(each, 'signatures', ())}\n"
        "print('\\nLOADED', *sys.modules, 'KERNELS', *kernels)\n"
        "sys.exit(code)"
    )
    told = subprocess.run(
        [sys.executable, "-c", script], cwd=ROOT, capture_output=True, text=True, check=True
    ).stdout
    modules, _, kernels = told.rpartition("LOADED")[2].partition("KERNELS")
    return modules.split(), kernels.split()


@pytest.fixture(scope="module")
def loaded_by_help():
    """Modules in memory once the commands have been listed."""
    return run_in_a_child("--help")[0]


def test_listing_the_commands_loads_none_of_them(loaded_by_help):
    ours = {name for name in loaded_by_help if name.partition(".")[0] == "axlewright"}
    assert ours == {"axlewright", "axlewright.cli", "axlewright.cli.app", "axlewright.errors"}


@pytest.mark.parametrize(
    "idle", ["numpy", "numba", "scipy", "importlib.metadata", "markdown_it", "pygments", "tomllib"]
)
def test_listing_the_commands_loads_nothing_heavy(idle, loaded_by_help):
    assert "cyclopts" in loaded_by_help
    assert idle not in loaded_by_help


@pytest.fixture(scope="module")
def an_answer():
    """What is in memory once a whole answer has been given on the command line."""
    return run_in_a_child("assess", "examples/rigs/heron.toml", "--draws", "20")


@pytest.fixture(scope="module")
def loaded_by_an_answer(an_answer):
    """Modules in memory after a whole answer."""
    return an_answer[0]


@pytest.mark.parametrize(
    "idle",
    [
        "scipy.linalg",
        "scipy.special",
        "typst",
        "rich",
        "jinja2",
        "sqlalchemy",
        "starlette",
        "axlewright.actions.start",
        "axlewright.geometry",
        "axlewright.records",
        "axlewright.report",
        "axlewright.rig.component",
        "axlewright.rig.happening",
        "axlewright.rig.order_sheet",
        "axlewright.tables.locator",
        "axlewright.tables.look_tables",
        "axlewright.tables.option_tables",
        "axlewright.tables.task_tables",
        "axlewright.upkeep",
        "axlewright.views.drawing_sheet",
        "axlewright.views.report_words",
    ],
)
def test_an_answer_in_the_terminal_loads_no_more_than_it_needs(idle, loaded_by_an_answer):
    assert "axlewright.physics.frame" in loaded_by_an_answer
    assert "numba" in loaded_by_an_answer
    assert idle not in loaded_by_an_answer


def test_an_answer_in_the_terminal_loads_few_modules_of_ours(loaded_by_an_answer):
    # 147 when this was written: every one is read, and its classes made, before a word is said.
    assert sum(name.startswith("axlewright") for name in loaded_by_an_answer) <= 155


def test_an_answer_loads_one_kernel(an_answer):
    # Each compiled kernel is read, linked and placed by itself.
    assert set(an_answer[1]) == {"chain_kernel"}
