"""The swap plan as JSON, SI whatever the reader's units, and its schema."""

from importlib.metadata import version
from typing import Any, Final

from axlewright.swap import Band, Plan, Progress, lines_of, missing_values, ready
from axlewright.tables import fingerprint
from axlewright.views.json_schema import TEXT, TEXTS, YES_NO, Schema, listed, ref, shape
from axlewright.views.swap_words import SWAP_CAUTION

VERSION: Final = 1
COUNT: Final[Schema] = {"type": "integer", "minimum": 0}
REFERENCE: Final = ref("quantity")


def plan_json(
    plan: Plan, progress: Progress | None = None, stop_lines: tuple[str, ...] = ()
) -> dict[str, Any]:
    """Everything about a plan, and how far it has come."""
    how = progress or Progress()
    return {
        "axlewright_plan": VERSION,
        "package": version("axlewright"),
        "tables": fingerprint(),
        "caution": SWAP_CAUTION,
        "rig": {
            "name": plan.rig,
            "axle": plan.axle,
            "digest": plan.digest,
            "changes": [*plan.changes],
        },
        "stop": bool(stop_lines),
        "stop_lines": [*stop_lines],
        "ready": ready(plan, how) and not stop_lines,
        "missing_values": [*missing_values(plan, how)],
        "blocks": [*plan.blocks],
        "people": plan.people,
        "skill": plan.skill,
        "facts": [
            {"name": fact.name, "word": fact.word, "who": fact.who} for fact in plan.facts.each
        ],
        "times": {
            "hands": _time(plan.hands),
            "whole": _time(plan.whole),
            "swap": None if plan.swap is None else _time(plan.swap),
            "bad_day": _plain(plan.bad_day, "s"),
        },
        "order": {
            "solver": plan.schedule.solver,
            "end": _plain(plan.schedule.end, "s"),
            "least": _plain(plan.schedule.least, "s"),
            "gap": _plain(plan.schedule.gap, "1"),
        },
        "steps": [_step(plan, place, how) for place in range(len(plan.order))],
        "torques": [_torque(plan, place, how) for place in range(len(plan.lines))],
        "oil": _oil(plan),
        "toe": None
        if plan.toe is None
        else {
            "aim": _banded(plan.toe.low, plan.toe.aim, plan.toe.high, "m"),
            "across": _plain(plan.tyre_across, "m"),
        },
        "questions": [
            {"key": each.key, "question": each.question, "yes": each.key in how.yes}
            for each in plan.questions
        ],
        "measures": [
            {
                "key": each.key,
                "title": each.title,
                "procedure": each.procedure,
                "before": how.measured.get(f"before/{each.key}", ""),
                "after": how.measured.get(f"after/{each.key}", ""),
            }
            for each in plan.measures
        ],
    }


def plan_schema() -> Schema:
    """Schema of `plan_json`."""
    maybe = {"anyOf": [REFERENCE, {"type": "null"}]}
    step = {
        "number": COUNT,
        "key": TEXT,
        "title": TEXT,
        "stage": TEXT,
        "do": TEXT,
        "caution": TEXT,
        "after": TEXTS,
        "hands": TEXTS,
        "people": COUNT,
        "skill": TEXT,
        "start": REFERENCE,
        "takes": REFERENCE,
        "where": TEXT,
        "moves": {"enum": ["no", "vehicle", "axle"]},
        "under": YES_NO,
        "gate": YES_NO,
        "photo": TEXT,
        "photo_must": YES_NO,
        "lifts": TEXT,
        "mass": maybe,
        "tools": TEXT,
        "consumables": TEXT,
        "fragile": TEXT,
        "state": {"enum": ["open", "done", "left out"]},
    }
    torque = {
        "key": TEXT,
        "step": TEXT,
        "what": TEXT,
        "count": COUNT,
        "thread": TEXT,
        "grade": TEXT,
        "own": YES_NO,
        "by": {"enum": ["maker", "range"]},
        "range": {**maybe, "description": "a range to choose from; never given for a maker's line"},
        "plausible": {**maybe, "description": "a check on typing beside a maker's line"},
        "set": maybe,
        "printed": TEXT,
        "note": TEXT,
    }
    heading = {
        "axlewright_plan": {"const": VERSION},
        "package": TEXT,
        "tables": TEXT,
        "caution": TEXT,
        "rig": shape({"name": TEXT, "axle": TEXT, "digest": TEXT, "changes": TEXTS}),
        "stop": YES_NO,
        "stop_lines": TEXTS,
        "ready": YES_NO,
        "missing_values": TEXTS,
        "blocks": TEXTS,
        "people": COUNT,
        "skill": TEXT,
        "facts": listed(
            shape(
                {
                    "name": TEXT,
                    "word": TEXT,
                    "who": {"enum": ["rig", "change", "said", "assumed"]},
                }
            )
        ),
        "times": shape(
            {"hands": REFERENCE, "whole": REFERENCE, "swap": maybe, "bad_day": REFERENCE}
        ),
        "order": shape({"solver": TEXT, "end": REFERENCE, "least": REFERENCE, "gap": REFERENCE}),
        "steps": listed(shape(step)),
        "torques": listed(shape(torque)),
        "oil": {
            "anyOf": [
                shape(dict.fromkeys(("slope", "level", "plug", "volume", "more"), REFERENCE)),
                {"type": "null"},
            ]
        },
        "toe": {"anyOf": [shape({"aim": REFERENCE, "across": REFERENCE}), {"type": "null"}]},
        "questions": listed(shape({"key": TEXT, "question": TEXT, "yes": YES_NO})),
        "measures": listed(
            shape(dict.fromkeys(("key", "title", "procedure", "before", "after"), TEXT))
        ),
    }
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "A swap plan of axlewright",
        "description": "SI throughout. Ignore keys that are not told here.",
        **shape(heading),
        "$defs": {
            "quantity": shape(
                {
                    "value": {"type": "number"},
                    "unit": {"enum": ["s", "m", "m3", "kg", "N m", "rad", "1"]},
                    "band": {
                        "anyOf": [
                            {
                                "type": "array",
                                "items": {"type": "number"},
                                "minItems": 2,
                                "maxItems": 2,
                            },
                            {"type": "null"},
                        ]
                    },
                }
            )
        },
    }


def _step(plan: Plan, place: int, progress: Progress) -> dict[str, Any]:
    slot = plan.schedule.slots[place]
    task = plan.work.by_key[slot.key]
    low, high = plan.minutes[task.key]
    name = "new axle" if task.key == "axle_under" else task.lifts
    left = "left out" if task.key in progress.left_out else "open"
    return {
        "number": place + 1,
        "key": task.key,
        "title": task.title,
        "stage": task.stage,
        "do": task.do,
        "caution": task.caution,
        "after": [*plan.work.after[task.key]],
        "hands": [*slot.hands],
        "people": task.people,
        "skill": task.skill,
        "start": _plain(slot.start, "s"),
        "takes": _banded(low, slot.end - slot.start, high, "s"),
        "where": task.where,
        "moves": task.moves,
        "under": task.under,
        "gate": task.gate,
        "photo": task.photo,
        "photo_must": task.photo_must,
        "lifts": task.lifts,
        "mass": _three(plan.lifts[name], "kg") if task.lifts else None,
        "tools": task.tools,
        "consumables": task.consumables,
        "fragile": task.fragile,
        "state": "done" if task.key in progress.done else left,
    }


def _torque(plan: Plan, place: int, progress: Progress) -> dict[str, Any]:
    line = lines_of(plan, progress)[place]
    told = None
    if line.low is not None and line.high is not None:
        told = _banded(line.low, 0.5 * (line.low + line.high), line.high, "N m")
    set_to = progress.values.get(line.key)
    return {
        "key": line.key,
        "step": line.task,
        "what": line.what,
        "count": line.count,
        "thread": line.thread,
        "grade": line.grade,
        "own": line.own,
        "by": line.by,
        "range": told if line.by == "range" else None,
        "plausible": told if line.by == "maker" else None,
        "set": None if set_to is None else _plain(set_to.torque, "N m"),
        "printed": "" if set_to is None else set_to.printed,
        "note": line.note,
    }


def _oil(plan: Plan) -> dict[str, Any] | None:
    if plan.oil is None:
        return None
    return {
        "slope": _plain(plan.oil.slope, "rad"),
        "level": _three(plan.oil.level, "m"),
        "plug": _three(plan.oil.plug, "m"),
        "volume": _three(plan.oil.volume, "m3"),
        "more": _three(plan.oil.more, "m3"),
    }


def _time(band: Band) -> dict[str, Any]:
    return _banded(band.low, band.middle, band.high, "s")


def _three(values: tuple[float, float, float], unit: str) -> dict[str, Any]:
    return _banded(*values, unit)


def _banded(low: float, value: float, high: float, unit: str) -> dict[str, Any]:
    return {"value": value, "unit": unit, "band": [low, high]}


def _plain(value: float, unit: str) -> dict[str, Any]:
    return {"value": value, "unit": unit, "band": None}
