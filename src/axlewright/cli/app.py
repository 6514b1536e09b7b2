"""The command line: its commands are loaded only when they are called.

Exit codes: 0 an answer; 2 input to put right; 3 an answer that contains a STOP; 1 a bug of ours.
"""

import sys
from collections.abc import Sequence
from functools import partial

from cyclopts import App, CycloptsError

from axlewright.errors import AxlewrightError

INPUT_TO_PUT_RIGHT = 2


def _version() -> str:
    from importlib.metadata import version  # reads installed packages: only wanted when asked for

    return version("axlewright")


app = App(
    name="axlewright",
    version=_version,
    help_format="plaintext",
    help="What gives first on a beam axle, what is wearing out, and what to do about it. "
    "Decision support, not a certificate.",
)
# The list of commands is plain text; what a command says of itself is folded and has code in it.
command = partial(app.command, help_format="markdown")
command(
    "axlewright.cli.assess:assess",
    name="assess",
    help="Say what gives first in one bad moment and what wears out first.",
)
command(
    "axlewright.cli.align:align",
    name="align",
    help="Say how an axle is aligned, what to turn, which way and how far.",
)
command(
    "axlewright.cli.start:start",
    name="start",
    help="Ask for a rig, one question at a time, and write its file.",
)
command(
    "axlewright.cli.travel:travel",
    name="travel",
    help="Say what caster, pinion, steer and room do through the travel, and what puts them right.",
)
command(
    "axlewright.cli.order:order",
    name="order",
    help="Fill the order sheet of a replacement axle, and check it before metal is cut.",
)
command(
    "axlewright.cli.deciding:decide",
    name="decide",
    help="Say whether to leave it, mend, strengthen or replace, and what that hangs on.",
)
command(
    "axlewright.cli.plan:plan",
    name="plan",
    help="Plan a swap: every step with its caution, in a good order for so many people.",
)
command(
    "axlewright.cli.take:take",
    name="take",
    help="Write one file to take along: it opens on any phone, without a network.",
)
command(
    "axlewright.cli.schema:schema",
    name="schema",
    help="Write the JSON Schema of the rig file, the change file or the answer.",
)
app.command(
    "axlewright.cli.log_all:app",
    name="log",
    help="Keep the record of a rig: looks, readings, trips, hits, work; what is due; may I drive?",
)
command(
    "axlewright.cli.serve:serve",
    name="serve",
    help="Open the bay: your axles, the answer and the paper as pages in a browser.",
)


def run(words: Sequence[str]) -> int:
    """Run one command line; gives the exit code."""
    try:
        code = app(list(words), exit_on_error=False, print_error=True, result_action="return_value")
    except CycloptsError:
        return INPUT_TO_PUT_RIGHT
    except AxlewrightError as trouble:
        sys.stderr.write(f"{trouble}\n")
        return INPUT_TO_PUT_RIGHT
    return code if isinstance(code, int) else 0
