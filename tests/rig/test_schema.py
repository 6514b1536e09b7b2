"""The schemas agree with the reader, by a general JSON Schema checker."""

import tomllib

import jsonschema
import pytest

from axlewright.errors import BadFile
from axlewright.rig.fields import FIELDS
from axlewright.rig.reading import read_change_text, read_rig_text
from axlewright.rig.schema import change_schema, rig_schema

CHECKER = jsonschema.Draft202012Validator


def example(axle):
    """A rig of the catalogue's own examples, as TOML."""
    rows = [f'{f.path} = "{f.example}"' for f in FIELDS if f.axle in {"both", axle}]
    return "\n".join(["axlewright = 1", 'rig.name = "Heron"', f'rig.axle = "{axle}"', *rows])


def without(text, begin):
    return "\n".join(row for row in text.splitlines() if not row.startswith(begin))


@pytest.mark.parametrize("schema", [rig_schema(), change_schema()], ids=["rig", "change"])
def test_the_schema_is_one(schema):
    CHECKER.check_schema(schema)


@pytest.mark.parametrize("axle", ["front", "rear"])
def test_the_catalogues_own_examples_pass_both(axle):
    text = example(axle)
    assert len(read_rig_text(text).answers) > 20
    CHECKER(rig_schema()).validate(tomllib.loads(text))


FRONT_ONLY = next(field.path for field in FIELDS if field.axle == "front")


@pytest.mark.parametrize(
    "text",
    [
        without(example("front"), "axlewright"),
        without(example("front"), "rig.name"),
        without(example("front"), "tyre.sidewall"),
        without(example("front"), "drive.unlocking_hubs"),
        example("front").replace("tube.bare.left", "tube.bear.left"),
        example("front").replace("axlewright = 1", "axlewright = 2"),
        example("front").replace('axle = "front"', 'axle = "middle"'),
        example("front") + "\nwheel.spacr = '3 mm'",
        example("front") + "\n[[condition]]\npart = 'tube'",
        example("front") + "\n[[condition]]\npart = 'tube'\nwhat = 'singing'",
        example("rear") + f"\n{FRONT_ONLY} = 'yes'",
        example("front").replace('held_by.arms = "three arms"', 'held_by.arms = "ten arms"'),
        example("front").replace('hub_height.left = "395 mm"', "hub_height.left = 395"),
    ],
)
def test_what_the_schema_refuses_the_reader_refuses(text):
    assert not CHECKER(rig_schema()).is_valid(tomllib.loads(text))
    with pytest.raises(BadFile):
        read_rig_text(text)


CHANGE = 'axlewright_change = 1\nname = "spacers off"\n'


@pytest.mark.parametrize(
    ("step", "good"),
    [
        ('set = "tube.wall"\nto = "8 mm"', True),
        ('add = "truss.height"\nto = "90 mm"', True),
        ('remove = "wheel.spacer"', True),
        ('remove = "wheel.spacer"\nto = "8 mm"', False),
        ('set = "tube.wall"', False),
        ('set = "tube.wall"\nadd = "truss.height"\nto = "8 mm"', False),
        ('set = "tube.wal"\nto = "8 mm"', False),
    ],
)
def test_schema_and_reader_agree_on_a_step(step, good):
    text = f"{CHANGE}[[step]]\n{step}"
    assert CHECKER(change_schema()).is_valid(tomllib.loads(text)) == good
    if good:
        assert len(read_change_text(text).steps) == 1
    else:
        with pytest.raises(BadFile):
            read_change_text(text)
