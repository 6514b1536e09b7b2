"""`axlewright schema`: the JSON Schema of a file or of the answer, for editors and programs."""

import json
import sys
from typing import Literal


def schema(of: Literal["rig", "change", "answer"] = "rig") -> int:
    """Write the JSON Schema of the rig file, the change file or the answer to standard output.

    Parameters
    ----------
    of
        Which: rig, change or answer (what `--json` writes).
    """
    from axlewright.rig import change_schema, rig_schema
    from axlewright.views import answer_schema

    made = {"rig": rig_schema, "change": change_schema, "answer": answer_schema}[of]()
    sys.stdout.write(json.dumps(made, indent=2) + "\n")
    return 0
