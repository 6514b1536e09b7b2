"""`axlewright schema`: the JSON Schema of a file, for editors."""

import json
import sys
from typing import Literal

from axlewright.rig import change_schema, rig_schema


def schema(of: Literal["rig", "change"] = "rig") -> int:
    """Write the JSON Schema of the rig or change file to standard output.

    Parameters
    ----------
    of
        Which file: rig or change.
    """
    made = rig_schema() if of == "rig" else change_schema()
    sys.stdout.write(json.dumps(made, indent=2) + "\n")
    return 0
