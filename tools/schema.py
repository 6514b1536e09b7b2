"""Write the JSON Schemas: of the rig and change files, of the answer, of a choice.

``python -m tools.schema`` writes; a house test compares. What a numbered schema has promised stands
in `tests/house/promised.json`: a change that breaks it needs a new number. ``--promise`` writes
today's promises, at a release or when a number has grown.
"""

import json
import sys
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

from axlewright.rig import change_schema, readings_schema, rig_schema
from axlewright.views import (
    alignment_schema,
    answer_schema,
    carry_schema,
    decision_schema,
    log_schema,
    order_answer_schema,
    plan_schema,
    travel_schema,
)

ROOT = Path(__file__).parents[1]
FOLDER = ROOT / "docs" / "schemas"
PROMISED = ROOT / "tests" / "house" / "promised.json"


def schemas() -> Mapping[str, Mapping[str, Any]]:
    """Every schema by the name of its file, its number included."""
    made = {
        "rig": (rig_schema(), "axlewright"),
        "change": (change_schema(), "axlewright_change"),
        "answer": (answer_schema(), "axlewright_answer"),
        "decide": (decision_schema(), "axlewright_decide"),
        "order-answer": (order_answer_schema(), "axlewright_order_answer"),
        "plan": (plan_schema(), "axlewright_plan"),
        "readings": (readings_schema(), "axlewright_alignment"),
        "travel": (travel_schema(), "axlewright_travel"),
        "alignment": (alignment_schema(), "axlewright_alignment_answer"),
        "carry": (carry_schema(), "axlewright_carry"),
        "log": (log_schema(), "axlewright_log"),
    }
    return {
        f"{kind}-{schema['properties'][key]['const']}": schema
        for kind, (schema, key) in made.items()
    }


def generated() -> Mapping[Path, str]:
    """Every generated file and what it should hold."""
    return {FOLDER / f"{name}.json": _text(schema) for name, schema in schemas().items()}


def promises(schema: Mapping[str, Any]) -> dict[str, Any]:
    """What a schema says of each key: its type, its words, whether it is always there."""
    return dict(_keys(schema, ""))


def _keys(schema: Mapping[str, Any], path: str) -> Iterator[tuple[str, Any]]:
    needed = schema.get("required", [])
    for name, told in schema.get("properties", {}).items():
        kept = {key: told[key] for key in ("type", "const", "enum", "$ref") if key in told}
        yield f"{path}/{name}", {**kept, "needed": name in needed}
        yield from _keys(told, f"{path}/{name}")
    if isinstance(schema.get("items"), Mapping):
        yield from _keys(schema["items"], f"{path}/[]")
    for name, told in schema.get("$defs", {}).items():
        yield from _keys(told, f"#{name}")
    for number, told in enumerate(schema.get("oneOf", [])):
        yield from _keys(told, f"{path}|{number}")


def broken(before: Mapping[str, Any], now: Mapping[str, Any], *, asked: bool = True) -> list[str]:
    """Promises that no longer hold: a key gone, changed, no longer sure, or newly asked for.

    Nothing is `asked` of anybody by an answer: a new key in it misleads no reader.
    """
    out = []
    for path, told in before.items():
        today = now.get(path)
        if today is None:
            out.append(f"{path} is gone")
        elif set(told.get("enum", [])) - set(today.get("enum", told.get("enum", []))):
            out.append(f"{path} takes fewer words")
        elif {**told, "enum": 0} != {**today, "enum": 0}:
            out.append(f"{path} was {told}, is {today}")
    tables = {path.rpartition("/")[0] for path in before}
    new = [path for path in now if path not in before and path.rpartition("/")[0] in tables]
    return out + [f"{path} is new and needed" for path in new if asked and now[path]["needed"]]


def _text(schema: Mapping[str, object]) -> str:
    return json.dumps(schema, indent=1, ensure_ascii=False) + "\n"


def main(words: list[str]) -> None:
    """Write every generated file."""
    for path, text in generated().items():
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, "utf-8", newline="\n")
        print(path.relative_to(ROOT))
    if "--promise" in words:
        told = {name: promises(schema) for name, schema in schemas().items()}
        PROMISED.write_text(_text(told), "utf-8", newline="\n")
        print(PROMISED.relative_to(ROOT))


if __name__ == "__main__":
    main(sys.argv[1:])
