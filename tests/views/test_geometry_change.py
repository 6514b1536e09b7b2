"""What a change moves in the geometry, beside what it does to the parts."""

import subprocess
import sys
from pathlib import Path

import pytest

from axlewright.actions import assess_file
from axlewright.geometry import geometry_moved, travel
from axlewright.rig import change_from_text, changed_rig, load_change
from axlewright.views import answer_lines, as_json
from geometry.cases import HOME, demo

HERON = str(HOME / "examples" / "rigs" / "heron.toml")
CHANGES = HOME / "examples" / "changes"


def changed(name, text):
    rig = demo(name)
    return rig, changed_rig(rig, change_from_text(text))[0]


def step(path, to):
    return f'axlewright_change = 1\nname = "x"\n[[step]]\nset = "{path}"\nto = "{to}"\n'


def by_name(found):
    return {each.measure: each for each in found.moved}


def test_a_lift_takes_caster_and_lifts_the_pinion_by_as_much():
    # common practice, no source: one is traded for the other, degree for degree
    rig, lifted = changed("heron", step("travel.lift", "60 mm"))
    moved = by_name(geometry_moved(rig, lifted))
    lost = moved["caster"].before - moved["caster"].after
    assert lost > 0.0
    assert moved["caster"].better is False
    assert moved["pinion"].after - moved["pinion"].before == pytest.approx(lost, abs=1e-3)
    assert moved["pinion"].better is None


def test_it_says_what_the_study_of_travel_says():
    rig = demo("heron")
    new, _ = changed_rig(rig, load_change(str(CHANGES / "lift.toml")))
    moved = by_name(geometry_moved(rig, new))
    before, after = (travel(each, draws=0, cures=False) for each in (rig, new))
    assert moved["caster"].before == pytest.approx(before.now.caster)
    assert moved["caster"].after == pytest.approx(after.now.caster)
    assert moved["hangs"].after == pytest.approx(after.now.droop.at)
    assert moved["shift"].after == pytest.approx(after.now.shift)


def test_smaller_tyres_take_room_by_the_radius():
    # geometry: the centre comes down by as much as the hubs
    rig = demo("heron")
    new, _ = changed_rig(rig, load_change(str(CHANGES / "smaller-tyres.toml")))
    lowest = by_name(geometry_moved(rig, new))["lowest"]
    down = travel(rig, draws=0).road.radius - travel(new, draws=0).road.radius
    assert lowest.before - lowest.after == pytest.approx(down, abs=0.002)
    assert lowest.better is False


def test_a_heavier_tube_moves_nothing():
    rig = demo("heron")
    new, _ = changed_rig(rig, load_change(str(CHANGES / "heavier-tube.toml")))
    assert not geometry_moved(rig, new).moved


def test_a_rod_that_cannot_reach_is_told_and_not_guessed():
    far = step("points.track_bar_axle", "1500 mm ahead, 421 mm right, 540 mm up")
    found = geometry_moved(*changed("heron", far))
    assert not found.moved
    assert found.refused


def test_the_answer_tells_it_in_words_and_json():
    answer = assess_file(HERON, [str(CHANGES / "lift.toml")], draws=0)
    lines = [line for line in answer_lines(answer) if line.startswith("Geometry, ")]
    assert lines[0].startswith("Geometry, worse: caster at ride 4.8 deg to 2.8 deg")
    told = {each["measure"]: each for each in as_json(answer)["geometry"]}
    assert told["caster"]["before"]["unit"] == "rad"
    plain = assess_file(HERON, [str(CHANGES / "heavier-tube.toml")], draws=0)
    assert not any(line.startswith("Geometry") for line in answer_lines(plain))
    assert as_json(plain)["geometry"] == []


@pytest.mark.parametrize("change", [None, "heavier-tube.toml"])
def test_the_kinematics_are_not_loaded_where_nothing_of_theirs_changed(change):
    asked = ["assess", HERON, "--draws", "0"]
    asked += [] if change is None else ["--with", str(CHANGES / change)]
    script = (
        f"import sys; from axlewright.cli import run; run({asked}); print('LOADED', *sys.modules)"
    )
    told = subprocess.run(
        [sys.executable, "-c", script], cwd=Path(HOME), capture_output=True, text=True, check=True
    ).stdout
    loaded = told.partition("LOADED")[2].split()
    assert "axlewright.strength" in loaded
    assert "axlewright.geometry" not in loaded
    assert "scipy.special" not in loaded
