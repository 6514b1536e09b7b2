"""Write what is generated from the field catalogue: the schemas and the rig file's page.

``python -m tools.schema`` writes; a house test compares. A schema's file carries the version of
the file that it describes, so the schema of a version that has been released stays as it was.
"""

import json
from collections.abc import Mapping
from math import degrees
from pathlib import Path

from axlewright.rig import FIELDS, change_schema, rig_schema
from axlewright.rig.field import Field

DOCS = Path(__file__).parents[1] / "docs"

# Unit in which the doubt of a kind of field is shown, and how many there are to the SI unit.
SHOWN = {
    "length": ("mm", 1e3),
    "distance": ("mm", 1e3),
    "offset": ("mm", 1e3),
    "toe": ("deg", degrees(1)),
    "angle": ("deg", degrees(1)),
    "mass": ("kg", 1.0),
    "force": ("N", 1.0),
    "weight": ("N", 1.0),
    "torque": ("N m", 1.0),
    "stiffness": ("N/m", 1.0),
    "speed": ("m/s", 1.0),
    "volume": ("l", 1e3),
    "ratio": ("", 1.0),
    "plain": ("", 1.0),
    "count": ("", 1.0),
}

OPENING = """# The rig file

Written by `make schema` from the catalogue of fields; not by hand. The catalogue also drives the
reader, its errors, the questions of `axlewright start` and the sheet to print.

A field with a number in the first column is one of the first thirteen answers; a star marks what
has to be answered. Everything else is optional: what is not given becomes an assumption with a
band and a source. How a careful reading is doubted stands in the last column; "about" trebles it.

For an editor, the JSON Schemas are [of the rig file](schemas/rig-{rig}.json) and [of the change
file](schemas/change-{change}.json).
"""


def generated() -> Mapping[Path, str]:
    """Every generated file and what it should hold."""
    rig, change = rig_schema(), change_schema()
    number = rig["properties"]["axlewright"]["const"]
    of_change = change["properties"]["axlewright_change"]["const"]
    return {
        DOCS / "schemas" / f"rig-{number}.json": _text(rig),
        DOCS / "schemas" / f"change-{of_change}.json": _text(change),
        DOCS / "rig-file.md": _page(OPENING.format(rig=number, change=of_change)),
    }


def _text(schema: Mapping[str, object]) -> str:
    return json.dumps(schema, indent=1, ensure_ascii=False) + "\n"


def _page(opening: str) -> str:
    first = [field for field in FIELDS if field.question is not None]
    rest = [field for field in FIELDS if field.question is None]
    parts = [opening]
    for title, fields in (("The first thirteen answers", first), ("Everything else", rest)):
        parts.append(f"\n## {title}\n\n| | field | asked as | how | example | doubt |\n")
        parts.append("|---|---|---|---|---|---|\n")
        parts.extend(_row(field) for field in fields)
    return "".join(parts)


def _row(field: Field) -> str:
    star = " *" if field.required else ""
    number = "" if field.question is None else str(field.question)
    axle = "" if field.axle == "both" else f" ({field.axle} axle only)"
    how = field.how
    if field.choices:
        how += " One of: " + ", ".join(field.choices) + "."
    cells = [
        f"{number}{star}",
        f"`{field.path}`{axle}",
        field.asks,
        how,
        f"`{field.example}`",
        _doubt(field),
    ]
    return "| " + " | ".join(cell.replace("|", "\\|") for cell in cells) + " |\n"


def _doubt(field: Field) -> str:
    """Standard uncertainty in words."""
    parts = []
    if field.doubt:
        unit, scale = SHOWN[field.kind]
        parts.append(f"{field.doubt * scale:.2g} {unit}".rstrip())
    if field.relative_doubt:
        parts.append(f"{100 * field.relative_doubt:.3g} %")
    return " or ".join(parts)


def main() -> None:
    """Write every generated file."""
    for path, text in generated().items():
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, "utf-8", newline="\n")
        print(path.relative_to(DOCS.parent))


if __name__ == "__main__":
    main()
