"""The JSON Schema of a choice, for those who read it with a program."""

from axlewright.views.json_decision import MONEY, VERSION
from axlewright.views.json_schema import (
    NUMBER,
    SHARE,
    TEXT,
    TEXTS,
    YES_NO,
    Schema,
    listed,
    ref,
    shape,
)

MAYBE: Schema = {"type": ["string", "null"]}


def decision_schema() -> Schema:
    """Schema of `decision_json`."""
    quantity = ref("quantity")
    words = ("in_place", "undone", "gears", "warranty", "helps_not", "geometry", "brakes")
    price = shape(
        {
            "value": NUMBER,
            "unit": {"const": MONEY},
            "band": ref("band"),
            "dated": TEXT,
            "told_by": TEXT,
            "own": {**YES_NO, "description": "the owner's own, else a rough figure from memory"},
        }
    )
    drawn = ("total", "hours", "off_the_road", "breakdowns", "breaking_and_wearing", "bought_again")
    choice = shape(
        {
            "key": TEXT,
            "name": TEXT,
            "group": TEXT,
            "sets": listed(shape({"path": TEXT, "to": TEXT})),
            "not_advised": {**YES_NO, "description": "steering or a wheel goes more often"},
            "price": price,
            **dict.fromkeys((*drawn, "sold_now", "sold_later", "hardness", "life"), quantity),
            "housing_done": SHARE,
            "steering_or_wheel_lost": SHARE,
            "gives_first": MAYBE,
            "wears_first": TEXT,
            **dict.fromkeys(("mass", "centre_higher", "heat"), quantity),
            **dict.fromkeys((*words, "reuse", "weld", "check"), TEXT),
        }
    )
    flip = {
        "by": TEXT,
        "now": quantity,
        "at": quantity,
        "tyre": MAYBE,
        "before": TEXT,
        "chosen": TEXT,
    }
    sorry = {"share": SHARE, "about": quantity, "then_better": MAYBE}
    beside = {"share": SHARE, "about": quantity}
    still = shape({"weight": quantity, "tyre": TEXT, "duty": TEXT})
    top = {
        "axlewright_decide": {"const": VERSION},
        "package": TEXT,
        "seed": {"type": "integer"},
        "draws": {"type": "integer", "minimum": 1},
        "draws_that_fit_the_past": {"type": "number"},
        "tables": {**TEXT, "description": "hash of all data tables"},
        "caution": TEXT,
        "rig": shape({"name": TEXT, "axle": {"enum": ["front", "rear"]}, "digest": TEXT}),
        "currency": {**TEXT, "description": "of every quantity whose unit is money"},
        "years": {"type": "number"},
        "distance_a_year": {
            "allOf": [
                quantity,
                shape({"from": {"enum": ["you", "record", "usual"]}}),
            ],
            "description": "on the hardest ground that the rig names, and who says so",
        },
        "stop": YES_NO,
        "stop_words": TEXTS,
        "advised": {**MAYBE, "description": "null while there is a STOP"},
        "behind_the_stop": MAYBE,
        "clear": YES_NO,
        "sentence": TEXT,
        "reasons": TEXTS,
        "against": TEXT,
        "sorry": shape(sorry),
        "beside": shape({"key": TEXT, "sorry": shape(beside), "glad": shape(beside)}),
        "worth_of_knowing_all": quantity,
        "looks": listed(shape({"path": TEXT, "about": TEXT, "worth": quantity})),
        "flips": listed(shape(flip)),
        "mends_come_faster": TEXTS,
        "as_many_unpaired_draws": quantity,
        "choices": listed(choice),
        "refused": listed(shape({"key": TEXT, "why": TEXT})),
        "tyres": listed(ref("carried")),
        "still_carries": {"anyOf": [still, {"type": "null"}]},
        "rests_on": TEXTS,
    }
    verdicts = ["carries", "cannot tell", "no", "not judged"]
    carried = {
        "tyre": TEXT,
        "duty": TEXT,
        "verdict": {"enum": verdicts},
        "part": MAYBE,
        "hardness": quantity,
    }
    band = {"low": NUMBER, "high": NUMBER, "confidence": {"const": 0.9}}
    units = {"enum": [MONEY, "1", "N", "kg", "m", "s"]}
    size = {"value": NUMBER, "unit": units, "band": {"anyOf": [ref("band"), {"type": "null"}]}}
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "A choice of axlewright",
        "description": "SI throughout, money in its currency. Ignore keys that are not told here.",
        **shape(top),
        "$defs": {
            "quantity": shape(size, {"reason": {**TEXT, "description": "why the value is null"}}),
            "band": shape(band),
            "carried": shape(carried),
        },
    }
