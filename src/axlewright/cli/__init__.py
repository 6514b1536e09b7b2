"""Commands: read what a person asks, call one action, show one view.

Exit codes: 0 an answer; 2 input to put right; 3 an answer that contains a STOP; 1 a bug of ours.
"""

from axlewright.cli.app import run

__all__ = ["run"]
