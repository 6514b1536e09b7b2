"""Write the JSON Schemas: of the rig and change files from the field catalogue, of the answer.

``python -m tools.schema`` writes; a house test compares. A schema's file carries the version of
the file that it describes, so the schema of a version that has been released stays as it was.
"""

import json
from collections.abc import Mapping
from pathlib import Path

from axlewright.rig import change_schema, rig_schema

DOCS = Path(__file__).parents[1] / "docs"


def generated() -> Mapping[Path, str]:
    """Every generated file and what it should hold."""
    rig, change = rig_schema(), change_schema()
    number = rig["properties"]["axlewright"]["const"]
    of_change = change["properties"]["axlewright_change"]["const"]
    return {
        DOCS / "schemas" / f"rig-{number}.json": _text(rig),
        DOCS / "schemas" / f"change-{of_change}.json": _text(change),
    }


def _text(schema: Mapping[str, object]) -> str:
    return json.dumps(schema, indent=1, ensure_ascii=False) + "\n"


def main() -> None:
    """Write every generated file."""
    for path, text in generated().items():
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, "utf-8", newline="\n")
        print(path.relative_to(DOCS.parent))


if __name__ == "__main__":
    main()
