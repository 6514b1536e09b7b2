"""Where compiled code is kept: in the user's own folder, by its sources, or a temporary one."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

ASK = """
import os
from axlewright.physics import compiled
print(compiled.cache_folder())
print(os.environ["NUMBA_CACHE_DIR"])
print(compiled.cache_is_cold())
print(compiled.cache_note())
"""


def asked(home, **more):
    """What a fresh interpreter says about its cache."""
    places = {"HOME": str(home), "LOCALAPPDATA": str(home), "USERPROFILE": str(home)}
    kept = {name: value for name, value in os.environ.items() if name != "XDG_CACHE_HOME"}
    told = subprocess.run(
        [sys.executable, "-c", ASK],
        env={**kept, **places, **more},
        capture_output=True,
        text=True,
        check=True,
    )
    folder, numba, cold, *note = told.stdout.rstrip("\n").split("\n")
    return Path(folder), Path(numba), cold == "True", " ".join(note)


def test_code_is_kept_in_the_folder_of_the_user(tmp_path):
    folder, numba, cold, note = asked(tmp_path)
    assert folder == numba
    assert folder.is_relative_to(tmp_path)
    assert cold
    assert "compiling" in note


@pytest.mark.skipif(sys.platform in {"win32", "darwin"}, reason="a rule of other systems")
def test_the_cache_folder_of_the_desktop_is_respected(tmp_path):
    other = tmp_path / "elsewhere"
    folder, *_ = asked(tmp_path, XDG_CACHE_HOME=str(other))
    assert folder.is_relative_to(other)


def test_a_warm_cache_says_nothing(tmp_path):
    folder, *_ = asked(tmp_path)
    (folder / "sub").mkdir()
    (folder / "sub" / "kernel.nbi").touch()
    _, _, cold, note = asked(tmp_path)
    assert not cold
    assert not note


def test_where_home_cannot_be_written_a_temporary_folder_is_told(tmp_path):
    wall = tmp_path / "file"
    wall.touch()  # no folder can be made below a file, whoever asks
    spare = tmp_path / "spare"
    spare.mkdir()
    folder, _, _, note = asked(wall, XDG_CACHE_HOME=str(wall), TMPDIR=str(spare), TMP=str(spare))
    assert folder.is_relative_to(spare)
    assert "temporary" in note or "cannot be written" in note


def test_folders_long_unused_are_pruned_and_others_stay(tmp_path):
    folder, *_ = asked(tmp_path)
    for number in range(8):
        other = folder.parent / f"kernels-{number}"
        other.mkdir()
        age = 1e9 + number
        os.utime(other, (age, age))
    (folder.parent / "kernels-young").mkdir()
    asked(tmp_path)
    left = {each.name for each in folder.parent.iterdir()}
    assert left == {folder.name, "kernels-young", "kernels-7", "kernels-6", "kernels-5"}
