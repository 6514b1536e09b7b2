"""Answers that cannot all be true are met by the answers already there.

Outside reference: plane geometry, and what the words mean; common practice, no source.
"""

import json
import random
import re
from pathlib import Path

import pytest

from axlewright.errors import BadFile
from axlewright.rig import rig_from_text

RIGS = Path(__file__).parents[2] / "examples" / "rigs"
WAGTAIL = (RIGS / "wagtail.toml").read_text("utf-8")


def _edited(*edits):
    text = WAGTAIL
    for old, new in edits:
        assert old in text
        text = text.replace(old, new, 1)
    return text


GEOMETRY = [
    (
        [('left = "385 mm"', 'left = "460 mm"')],
        "hub_height.left",
        "the hub stands 460 mm high, but this tyre is only",
    ),
    ([('left = "385 mm"', 'left = "250 mm"')], "hub_height.left", "so this one would be flat"),
    (
        [('right = "385 mm"', 'right = "330 mm"')],
        "hub_height.right",
        "left and right hub heights differ by 55 mm",
    ),
    (
        [('springs = "930 mm"', 'springs = "1400 mm"')],
        "track.springs",
        "the springs would be inside the wheels",
    ),
    (
        [('bare.right = "560 mm"', 'bare.right = "900 mm"')],
        "tube.bare.right",
        "the bare tubes add up to 1180 mm",
    ),
    (
        [
            ('bare.right = "560 mm"', 'bare.right = "60 mm"'),
            ('bare.left = "280', 'bare.left = "60'),
        ],
        "tube.bare.right",
        "the bare tubes add up to only 120 mm",
    ),
    (
        [
            ('girth.left = "243 mm"', 'girth.left = "170 mm"'),
            ('girth.right = "243 mm"', 'girth.right = "170 mm"'),
            ("[wheel]", 'wall = "28 mm"\n\n[wheel]'),
        ],
        "tube.wall",
        "a wall of 28 mm is half or more of a tube 54.1 mm across",
    ),
    (
        [("[wheel]", '[kingpin]\nspacing = "1600 mm"\n\n[wheel]')],
        "kingpin.spacing",
        "the joints stand 1600 mm apart, further than the tyres' centres",
    ),
    (
        [("[wheel]", '[links]\napart = "1400 mm"\n\n[wheel]')],
        "links.apart",
        "the arms would be inside the wheels",
    ),
    (
        [("[wheel]", '[track_bar]\nouter = "20 mm"\nwall = "15 mm"\n\n[wheel]')],
        "track_bar.wall",
        "a wall of 15 mm does not fit in 20 mm across",
    ),
]
FIELDS = [
    (
        [('girth.right = "243 mm"', 'girth.right = "330 mm"')],
        "tube.girth.right",
        "tubes of one axle are nearly alike",
    ),
    (
        [("[wheel]", 'outer = "95 mm"\n\n[wheel]')],
        "tube.outer",
        "the calliper says 95 mm, the paper strip 77.3 mm (girth over pi)",
    ),
    (
        [('cap_to_cap = "about 90 mm"', 'cap_to_cap = "45 mm"')],
        "joint.cap_to_cap",
        "a cross is about three caps long",
    ),
    (
        [('cap_to_cap = "about', 'trunnion = "30 mm"\ncap_to_cap = "about')],
        "joint.trunnion",
        "the trunnion (30 mm) is not thinner than its cap (29 mm)",
    ),
    (
        [('arms = "radius arms"', 'arms = "leaves"')],
        "held_by.weight_on",
        "leaves both hold and carry",
    ),
    (
        [('condition = "nothing mended, nothing hurts"', 'condition = "as listed"')],
        "rig.condition",
        "'as listed', but no [[condition]] is listed",
    ),
    (
        [('from_help = "15 km"', 'from_help = "15 km"\n\n[[condition]]\npart="hub"\nwhat="loose"')],
        "rig.condition",
        "'nothing mended, nothing hurts', but 1 [[condition]] entries follow",
    ),
]


@pytest.mark.parametrize(("edits", "field", "told"), GEOMETRY + FIELDS)
def test_what_cannot_be_is_told_at_its_line(edits, field, told):
    text = _edited(*edits)
    with pytest.raises(BadFile) as caught:
        rig_from_text(text, file="bad.toml")
    fault = next(each for each in caught.value.faults if each.field == field)
    assert told in fault.problem
    assert fault.accepted
    assert fault.file == "bad.toml"
    if field in {"hub_height.left", "track.springs", "tube.outer", "joint.trunnion"}:
        key = field.rpartition(".")[2]
        assert key in text.splitlines()[fault.line - 1]


def test_every_contradiction_is_told_at_once():
    text = _edited(
        ('springs = "930 mm"', 'springs = "1400 mm"'),
        ('cap_to_cap = "about 90 mm"', 'cap_to_cap = "45 mm"'),
    )
    with pytest.raises(BadFile) as caught:
        rig_from_text(text)
    assert {each.field for each in caught.value.faults} >= {"track.springs", "joint.cap_to_cap"}


def test_the_sound_file_has_no_contradiction():
    assert rig_from_text(WAGTAIL).name == "Wagtail"


def _faults(text):
    with pytest.raises(BadFile) as caught:
        rig_from_text(text)
    return caught.value.faults


def test_contradictions_stand_beside_every_other_fault_in_the_order_of_lines():
    faults = _faults(
        _edited(
            ('springs = "930 mm"', 'springs = "1600 mm"'),
            ('axle = "1020 kg"', 'axle = "1020"'),
            ('hardest = "forest roads"', 'hardest = "don\'t know"'),
            ("[tube]", "[tubes]"),
        )
    )
    assert [fault.field for fault in faults[:4]] == [
        "track.springs",
        "tubes",
        "weight.axle",
        "use.hardest",
    ]
    assert [fault.line for fault in faults[:4]] == sorted(fault.line for fault in faults[:4])
    assert "cannot be left open" in faults[3].problem
    assert faults[3].example == 'use.hardest = "rocks and ledges"'


@pytest.mark.parametrize(
    ("edits", "field", "beside"),
    [
        (
            [('left = "385 mm"', 'left = "460 mm"')],
            "hub_height.left",
            ["tyre.sidewall, line 14: 235/85R16 120/116Q"],
        ),
        (
            [('left = "385 mm"', 'left = "460 mm"')],
            "hub_height.right",
            ["hub_height.left, line 17: 460 mm"],
        ),
        (
            [('springs = "930 mm"', 'springs = "1400 mm"')],
            "track.springs",
            ["track.tyres, line 21: 1500 mm"],
        ),
        (
            [("[wheel]", 'outer = "95 mm"\n\n[wheel]')],
            "tube.outer",
            ["tube.girth.left, line 25: 243 mm", "tube.girth.right, line 26: 243 mm"],
        ),
        (
            [('arms = "radius arms"', 'arms = "leaves"')],
            "held_by.weight_on",
            ["held_by.arms, line 10: leaves"],
        ),
    ],
)
def test_a_contradiction_names_the_answers_that_it_hangs_on(edits, field, beside):
    fault = next(each for each in _faults(_edited(*edits)) if each.field == field)
    assert list(fault.beside) == beside
    assert f"beside: {'; '.join(beside)}" in str(fault)
    assert "how: " in str(fault)


def test_who_measures_in_inches_is_answered_in_inches():
    lengths = {
        "385 mm": "15 1/8 in",
        "1500 mm": "59 in",
        "930 mm": "60 in",
        "243 mm": "9.55 in",
        "280 mm": "11 in",
        "560 mm": "22 in",
        "1020 kg": "2250 lb",
    }
    text = WAGTAIL[: WAGTAIL.index("[points]")]
    for old, new in lengths.items():
        assert old in text
        text = text.replace(old, new)
    [fault] = _faults(text)
    assert fault.problem == (
        "the springs stand 60 in apart, but the tyres' centres only 59 in: the springs would be "
        "inside the wheels"
    )


ODD = (
    "don't know", "none", "0", "-1 mm", "1.200,5 kg", "1,2,3 mm", "about", "± 3", "5 to", "ET",
    "backspacing", "backspacing 4 in on a", "at", "1'000 mm", "0/0 in", "1½ in", "-", "left", "c.",
    "or so", "5 ft 70 in", "5' 3 1/2\"", "1e5 mm", "9" * 200, "٣ mm", "3 mm at 2 mm", "\\u0000",
    "8000 kg", "0.001 mm", "6 deg", "1 km",
)  # fmt: skip


@pytest.mark.parametrize("name", ["heron", "wagtail", "stork-rear"])
def test_no_odd_answer_among_true_ones_ends_in_anything_but_a_rig_or_its_faults(name):
    rows = (RIGS / f"{name}.toml").read_text("utf-8").splitlines()
    said = [at for at, row in enumerate(rows) if re.match(r"[\w.]+ = \"", row)]
    rng = random.Random(11)  # noqa: S311  (not for secrets)
    found = [_outcome("\n".join(_with_odd(rows, said, rng))) for _ in range(150)]
    refused = [each for each in found if isinstance(each, BadFile)]
    assert 0 < len(refused) < len(found)
    for fault in (fault for each in refused for fault in each.faults):
        assert fault.problem
        assert fault.accepted
        assert fault.line is None or 1 <= fault.line <= len(rows)


def _with_odd(rows, said, rng):
    tried = list(rows)
    for at in rng.sample(said, rng.randint(1, 3)):
        tried[at] = f"{rows[at].partition(' = ')[0]} = {json.dumps(rng.choice(ODD))}"
    return tried


def _outcome(text):
    try:
        return rig_from_text(text, "odd.toml")
    except BadFile as refused:
        return refused
