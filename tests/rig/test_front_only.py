"""What only a steered axle has is refused on a rear axle, and never asked of one."""

from pathlib import Path

import pytest

from axlewright.actions import read_draft
from axlewright.errors import BadFile
from axlewright.rig import FIELDS, assumed, doubts, load_rig, rig_from_text

REAR = Path(__file__).parents[2] / "examples" / "rigs" / "stork-rear.toml"
FRONT = [field.path for field in FIELDS if field.axle == "front"]
STEERED = ("steering.", "kingpin.", "knuckle.")


def example(path):
    field = next(field for field in FIELDS if field.path == path)
    return field.example if field.kind in {"plain", "count"} else f'"{field.example}"'


# Geometry of the vehicle: a rear beam axle has no kingpins, rods or wheel joints to ask for.
def test_everything_that_steers_is_for_front_axles():
    assert {field.path for field in FIELDS if field.path.startswith(STEERED)} <= set(FRONT)
    assert {"drive.unlocking_hubs", "shaft.stub"} <= set(FRONT)
    assert len(FRONT) >= 13


@pytest.mark.parametrize("path", FRONT)
def test_it_is_refused_on_a_rear_axle(path):
    table, _, name = path.partition(".")
    text = REAR.read_text("utf-8")
    line = f"{name} = {example(path)}\n"
    head = f"[{table}]\n"
    text = text.replace(head, head + line) if head in text else f"{text}\n{head}{line}"
    with pytest.raises(BadFile) as caught:
        rig_from_text(text)
    (fault,) = caught.value.faults
    assert fault.field == path
    assert fault.line is not None
    assert text.splitlines()[fault.line - 1] == line.strip()
    assert "belongs to a front axle, and this one is a rear axle" in fault.problem
    assert "take it out" in fault.accepted


@pytest.mark.parametrize("path", FRONT)
def test_it_is_never_asked_of_a_rear_axle(path):
    draft = read_draft(REAR.read_text("utf-8"))
    field = next(field for field in FIELDS if field.path == path)
    assert not draft.belongs(field)
    assert path not in draft.required()


def test_nothing_is_assumed_about_it_either():
    rig = load_rig(str(REAR))
    steers = [field for field in FIELDS if field.path.startswith((*STEERED, "shaft.stub"))]
    fed = {field.quantity for field in steers if field.quantity}
    taken = {item.quantity for item in assumed(rig)} | {item.quantity for item in doubts(rig)}
    assert len(fed) >= 9
    assert not fed & taken
