"""Files of one catalogue of fields: their version, and names that the catalogue does not hold."""

from collections.abc import Collection

from axlewright.errors import BadFile
from axlewright.rig.tree import Place
from axlewright.rig.words import SIDE_RULE, near, sides_meant


def check_version(place: Place, key: str, version: int, wanted: str) -> None:
    """Raise `BadFile` where a file does not open with the version of its kind."""
    given, example = place.tables.get(key), f"{key} = {version}"
    if given is None:
        wrong = [other for other in place.tables if other.startswith("axlewright")]
        told = "a first line with the version"
        if wrong:
            place.add(wrong[0], f"this is another kind of file; {wanted}", told, example)
        else:
            likely = near(key, place.tables, 1, 0.75)
            place.add(key, "the file does not say which version it is", told, example, near=likely)
    elif isinstance(given, bool) or not isinstance(given, int) or given != version:
        place.add(key, "this program reads another version", f"{version}, no quotes", example)
    if place.faults:
        raise BadFile(place.file, place.faults)


def no_such_name(place: Place, path: str, known: Collection[str]) -> None:
    """Note a name that the catalogue does not hold, with those that come near."""
    table, _, last = path.rpartition(".")
    beside = {
        each.removeprefix(f"{table}.").partition(".")[0]: each
        for each in known
        if not table or each.startswith(f"{table}.")
    }
    sides = sides_meant(last)
    if sides and set(sides) <= set(beside):
        told = f"{last!r} is no side here: {SIDE_RULE}"
        place.add(path, told, " | ".join(sides), "", near=sides)
        return
    inside = tuple(each for each in known if each.startswith(f"{path}."))
    likely = inside[:4] or near(last, beside) or near(path, known)
    rooms = dict.fromkeys(each.partition(".")[0] for each in known)
    place.add(path, "there is no such name", " | ".join(beside or rooms), "", near=likely)
