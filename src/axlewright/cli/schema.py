"""`axlewright schema`: the JSON Schema of a file or of the answer, for editors and programs."""

import json
import sys
from typing import Literal


def schema(of: Literal["rig", "change", "answer", "decide", "plan"] = "rig") -> int:
    """Write the JSON Schema of a file, of the answer, of a choice or of a plan to standard output.

    Parameters
    ----------
    of
        Which: rig, change, answer, decide or plan (what `--json` of those commands writes).
    """
    from axlewright.rig import change_schema, rig_schema
    from axlewright.views import answer_schema, decision_schema, plan_schema

    made = {
        "rig": rig_schema,
        "change": change_schema,
        "answer": answer_schema,
        "decide": decision_schema,
        "plan": plan_schema,
    }[of]()
    sys.stdout.write(json.dumps(made, indent=2) + "\n")
    return 0
