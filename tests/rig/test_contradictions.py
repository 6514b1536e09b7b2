"""Answers that cannot all be true are met by the answers already there.

Outside reference: plane geometry, and what the words mean; common practice, no source.
"""

from pathlib import Path

import pytest

from axlewright.errors import BadFile
from axlewright.rig import rig_from_text

WAGTAIL = (Path(__file__).parents[2] / "examples" / "rigs" / "wagtail.toml").read_text("utf-8")


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
        "a wall of 28.0 mm is half or more of a tube 54 mm across",
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
        "a wall of 15.0 mm does not fit in 20.0 mm across",
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
        "the calliper says 95.0 mm, the paper strip 77.3 mm (girth over pi)",
    ),
    (
        [('cap_to_cap = "about 90 mm"', 'cap_to_cap = "45 mm"')],
        "joint.cap_to_cap",
        "a cross is about three caps long",
    ),
    (
        [('cap_to_cap = "about', 'trunnion = "30 mm"\ncap_to_cap = "about')],
        "joint.trunnion",
        "the trunnion (30.0 mm) is not thinner than its cap (29.0 mm)",
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
