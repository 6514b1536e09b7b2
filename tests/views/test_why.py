"""One row of the order opened: what it must hold is common practice, no source."""

import json
import re
from dataclasses import replace
from math import degrees
from pathlib import Path

import numpy as np
import pytest

from axlewright.rig import load_rig
from axlewright.strength import assess_rig, standing_camber
from axlewright.views import why_lines
from axlewright.views.bent_words import (
    KINDS,
    SEAL_WEEPS,
    bent_json,
    bent_lines,
    bent_steps,
    standing_json,
)

EXAMPLES = Path(__file__).parents[2] / "examples" / "rigs"
RIGS = ("heron", "wagtail", "stork-rear")


@pytest.fixture(scope="module")
def answers():
    return {name: assess_rig(load_rig(str(EXAMPLES / f"{name}.toml")), draws=100) for name in RIGS}


def _place(answer, kind):
    return next((rank, place) for rank, place in enumerate(answer.order, 1) if place.kind == kind)


@pytest.mark.parametrize("name", RIGS)
def test_every_row_opens_down_to_formula_and_doubt(answers, name):
    answer = answers[name]
    for rank, place in enumerate(answer.order, 1):
        told = "\n".join(why_lines(answer, rank))
        assert told.startswith(f"{rank}. ")
        rows = [row for row in answer.point.solved.rows if row.part == place.part]
        assert rows
        for row in rows:
            assert f"- {row.mode}: " in told
            assert row.basis in told
            assert row.caveat in told
        assert told.count("utilisation ") >= len(rows)
        assert "what moves it most" in told


@pytest.mark.parametrize("name", RIGS)
def test_only_rows_that_bend_a_tube_tell_what_stays_bent(answers, name):
    answer = answers[name]
    for rank, place in enumerate(answer.order, 1):
        told = "\n".join(why_lines(answer, rank))
        assert ("what the tubes keep after" in told) == (
            place.kind in KINDS
            and np.isfinite(answer.point.solved.hardness[place.row, 0, place.case])
        )


@pytest.mark.parametrize("name", RIGS)
@pytest.mark.parametrize("kind", ["tube", "tube_joint"])
def test_harder_keeps_more_and_then_folds(answers, name, kind):
    steps = bent_steps(answers[name], _place(answers[name], kind)[1])
    folds = [step.folds for step in steps]
    assert folds == sorted(folds)
    kept = [abs(float(step.bent.camber_left[0])) for step in steps if not step.folds]
    assert kept == sorted(kept)


@pytest.mark.parametrize("name", RIGS)
def test_the_shaft_is_told_at_the_seal_that_its_axle_has(answers, name):
    answer = answers[name]
    told = "\n".join(bent_lines(answer, _place(answer, "tube")[1]))
    rear = answer.rig.axle == "rear"
    steps = [each for each in bent_steps(answer, _place(answer, "tube")[1]) if not each.folds]
    bent = steps[-1].bent
    runs = (bent.shaft_left, bent.shaft_right)
    off = max(float((run.outer_seal if rear else run.inner_seal)[0]) for run in runs)
    if off > 1e-4:
        where = "at the tube's end" if rear else "beside the carrier"
        assert where in told
        shown = [float(each) for each in re.findall(r"runs ([\d.]+) mm off", told)]
        assert max(shown) == pytest.approx(1e3 * off, abs=0.051)
    assert ("the seal weeps" in told) == (off >= SEAL_WEEPS)


@pytest.mark.parametrize("name", RIGS)
def test_camber_of_the_sound_axle_under_load_is_told(answers, name):
    answer = answers[name]
    told = bent_lines(answer, _place(answer, "tube")[1])[-1]
    shown = [float(each) for each in re.findall(r"(-?[\d.]+) deg", told)]
    meant = [degrees(float(each[0])) for each in standing_camber(answer.point.housing)]
    assert shown == pytest.approx(meant, abs=0.051)
    assert all(each < 0.0 for each in shown)


def test_a_limit_is_told_with_its_scope(answers):
    answer = answers["heron"]
    place = _place(answer, "tube")[1]
    worst = max(
        abs(float(step.bent.camber_left[0])) for step in bent_steps(answer, place) if not step.folds
    )
    told = "\n".join(bent_lines(answer, place))
    # -1 to +1 deg: suspension manual of a 4WD truck, 1993 (the limits table).
    assert ("-1 to +1 deg" in told) == (degrees(worst) > 1.0)


def test_a_row_out_of_reach_bends_nothing(answers):
    answer = answers["heron"]
    place = _place(answer, "tube")[1]
    solved = answer.point.solved
    never = replace(solved, hardness=np.full_like(solved.hardness, np.inf))
    assert bent_lines(replace(answer, point=replace(answer.point, solved=never)), place) == []


@pytest.mark.parametrize("name", RIGS)
def test_the_numbers_go_into_json_in_si(answers, name):
    answer = answers[name]
    told = json.loads(json.dumps(bent_json(answer), allow_nan=False))
    assert {each["part"] for each in told} >= {_place(answer, "tube")[1].part}
    for each in told:
        assert each["folds"] == (each["camber"]["left"] is None)
        assert each["shafts"]["left"].keys() == {
            "spline_angle",
            "end_angle",
            "off_inner_seal",
            "off_outer_seal",
        }
    camber = standing_json(answer)
    assert camber["unit"] == "rad"
    assert -0.03 < camber["left"] < 0.0


@pytest.mark.parametrize("system", ["metric", "us", "mixed"])
def test_why_speaks_the_readers_units(answers, system):
    told = "\n".join(why_lines(answers["heron"], _place(answers["heron"], "tube")[0], system))
    assert ("lbf ft" in told) == (system != "metric")
    assert (" N m " in told) == (system == "metric")
