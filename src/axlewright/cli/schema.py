"""`axlewright schema`: the JSON Schema of a file or of an answer, for editors and programs."""

import json
import sys
from typing import Literal


def schema(
    of: Literal[
        "rig", "change", "readings", "answer", "travel", "alignment", "decide", "plan", "carry"
    ] = "rig",
) -> int:
    """Write the JSON Schema of a file, or of what `--json` writes, to standard output.

    Parameters
    ----------
    of
        A file: rig, change or readings; or what `--json` writes: answer (assess), travel (its
        driveline in it), alignment (align), decide, plan or carry.
    """
    if of in {"rig", "change", "readings"}:
        from axlewright.rig import change_schema, readings_schema, rig_schema

        files = {"rig": rig_schema, "change": change_schema, "readings": readings_schema}
        made = files[of]()
    else:
        from axlewright.views import (
            alignment_schema,
            answer_schema,
            carry_schema,
            decision_schema,
            plan_schema,
            travel_schema,
        )

        answers = {
            "answer": answer_schema,
            "travel": travel_schema,
            "alignment": alignment_schema,
            "decide": decision_schema,
            "plan": plan_schema,
            "carry": carry_schema,
        }
        made = answers[of]()
    sys.stdout.write(json.dumps(made, indent=2) + "\n")
    return 0
