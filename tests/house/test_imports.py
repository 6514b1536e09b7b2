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


@pytest.mark.parametrize("heavy", HEAVY)
def test_asking_what_gives_first_imports_nothing_heavy(heavy):
    loaded = subprocess.run(
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
    assert "axlewright" in loaded
    assert heavy not in loaded
