"""A housing replaced whole: the numbers that it must bring, and what goes with the old one."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from typing import Final

from axlewright.rig.answer import Answer
from axlewright.rig.field import Field
from axlewright.rig.toml_lines import Lines
from axlewright.rig.tree import Place, missing, walked

HOUSING: Final = "housing"
NEEDED: Final = (
    "tube.outer",
    "tube.wall",
    "tube.steel",
    "tube.bare.left",
    "tube.bare.right",
    "gear.ring",
)
OF_HOUSING: Final = (  # what was read on the old housing goes with it
    "tube.",
    "sleeve.",
    "truss.",
    "forging.",
    "cover.",
    "brackets.",
    "gear.ring",
    "gear.ratio",
    "gear.pinion_teeth",
    "gear.face",
    "gear.side_mates",
    "kingpin.spacing",
    "kingpin.height",
    "links.bracket_",
    "track_bar.bracket_",
    "damper_bracket.",
    "vehicle.axle_mass",
)
ALONG: Final = ("shaft.", "joint.", "hub.", "wheel.stud")  # as a whole, where one of them is named
MAY: Final = ("knuckle.", "kingpin.kind", "steering.arm", "track.", "drive.")
RENEWED: Final = frozenset(
    {
        "softening",
        "joint_share",
        "centre_modulus",
        "iron_yield",
        "forging_modulus",
        "forging_factor",
        "forging_yield",
        "forging_length",
        "ring_bending",
        "ring_pitting",
        "side_bending",
        "bracket_width",
        "weld_leg",
        "plate_yield",
        "seat_limit",
    }
)  # assumed of the old housing: settled anew from the new one's numbers
ON_HOUSING: Final = (
    "housing",
    "tube",
    "centre",
    "casting",
    "cover",
    "forging",
    "sleeve",
    "truss",
    "seat",
    "perch",
    "pad",
    "bracket",
)


def housing_fields(catalogue: Sequence[Field]) -> tuple[Field, ...]:
    """Fields that may come with a housing; those it cannot do without are required."""
    return tuple(
        replace(field, required=field.path in NEEDED)
        for field in catalogue
        if field.path.startswith((*OF_HOUSING, *ALONG, *MAY))
        and not field.path.startswith("tube.girth")
    )


def housing_answers(
    place: Place, at: str, given: object, catalogue: Sequence[Field]
) -> tuple[Answer, ...]:
    """Read the numbers of a new housing; faults are noted at the desk's own lines."""
    if not isinstance(given, dict):
        place.add(
            at,
            "a housing comes with its own numbers",
            f"a table [step.to] with at least {', '.join(NEEDED)}",
            '[step.to], then tube.outer = "88.9 mm" and so on',
        )
        return ()
    fields = housing_fields(catalogue)
    first = {
        path.removeprefix(f"{at}."): line
        for path, line in place.lines.first.items()
        if path.startswith(f"{at}.")
    }
    desk = Place(place.file, given, Lines(first=first))
    found = walked(desk, fields, "", ())
    missing(desk, fields, "", found)
    for answer in found.values():
        if answer.dont_know:
            path = answer.field.path
            desk.add(path, "a change needs a known value", answer.field.how, answer.field.example)
    known = {field.path for field in catalogue} - {field.path for field in fields}
    for each in desk.faults:
        told = replace(each, line=each.line or place.line(at))
        if each.field in known:
            told = replace(
                told,
                problem="this does not come with a housing",
                accepted="a step of its own, if it changes as well",
                example=f'set = "{each.field}"',
                near=(),
            )
        place.faults.append(told)
    return tuple(found.values())


def gone_with(named: Iterable[str]) -> tuple[str, ...]:
    """Beginnings of the names whose old readings go when a housing brings these names."""
    paths = tuple(named)
    along = (table for table in ALONG if any(path.startswith(table) for path in paths))
    return (*OF_HOUSING, *along)


def stays_behind(named: Iterable[str]) -> tuple[str, ...]:
    """What the old axle hands on, because the change does not name it, in words."""
    words = {"shaft.": "shafts", "joint.": "joints", "hub.": "hubs"}
    gone = gone_with(named)
    return tuple(word for table, word in words.items() if table not in gone)


def on_housing(part: str) -> bool:
    """Whether a part that somebody named is part of the housing, or welded to it."""
    said = part.lower()
    apart = ("frame", "steering bracket", "brake", "abs")
    return any(word in said for word in ON_HOUSING) and not any(word in said for word in apart)


def assumed_anew(gone: Sequence[str], paths: Mapping[str, str]) -> frozenset[str]:
    """Quantities to settle anew: those of the old housing, and of what came along with it.

    ``paths`` leads from quantity to path, and ``gone`` are beginnings of paths.
    """
    return RENEWED | {name for name, path in paths.items() if path.startswith(tuple(gone))}
