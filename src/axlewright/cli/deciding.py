"""`axlewright decide`: mend, strengthen or replace, and when."""

import json
import shutil
import sys
from pathlib import Path

from axlewright.cli.options import STOPPED, Json, Units, checked_draws
from axlewright.cli.quick import load_kernels
from axlewright.cli.serve import usual_folder
from axlewright.errors import AxlewrightError

LEAST = 100


def decide(
    rig: str,
    *,
    prices: Path | None = None,
    facts: bool = False,
    json_: Json = False,
    report: Path | None = None,
    units: Units = "metric",
    draws: int = 1000,
    seed: int | None = None,
    store: Path | None = None,
) -> int:
    """Lay changes side by side: leave it, mend, strengthen, ease the load or replace.

    Parameters
    ----------
    rig
        The rig file, or the rig's name in the store: its record then counts as evidence, and its
        trips and odometer say how far it drives a year.
    prices
        Your own prices, hours and use, in place of the rough figures.
    facts
        Open every change.
    json_
        Write JSON, in SI.
    report
        Write the memo to this PDF file as well.
    units
        The reader's units.
    draws
        How many times the doubt is drawn.
    seed
        Seed of the draws.
    store
        Folder that keeps what is said; the same as the bay's.
    """
    if checked_draws(draws, 100_000) < LEAST:
        raise AxlewrightError(
            f"--draws {draws} is too few to choose by.", remedy=f"Give {LEAST} or more."
        )
    if note := load_kernels():
        sys.stderr.write(f"{note}\n")
    from axlewright.actions import Log, decide_file, decide_logged
    from axlewright.decide import read_terms
    from axlewright.rig import SEED, file_bytes

    sown = SEED if seed is None else seed
    if rig.endswith(".toml"):
        answer = decide_file(rig, str(prices or ""), draws=draws, seed=sown, progress=_progress)
    else:
        terms = read_terms(file_bytes(prices), str(prices)) if prices else None
        log = Log.open(store or usual_folder())
        try:
            found = decide_logged(
                log, log.rig(rig), terms, draws=draws, seed=sown, progress=_progress
            )
        finally:
            log.close()
        if found is None:
            raise AxlewrightError(
                f"{rig} is not told whole yet: questions are still open.",
                remedy="Answer the first thirteen, then ask again.",
            )
        answer = found
    if json_:
        from axlewright.views import decision_json

        told = json.dumps(
            decision_json(answer.decision, answer.grid, answer.still), indent=2, allow_nan=False
        )
    else:
        from axlewright.views import decision_lines, folded

        width = max(60, shutil.get_terminal_size((100, 24)).columns)
        lines = decision_lines(
            answer.decision, answer.grid, answer.still, units, all_facts=facts, width=width
        )
        told = "\n".join(folded(lines, width))
    sys.stdout.write(f"{told}\n")
    if report is not None:
        from axlewright.actions import write_decision

        write_decision(answer, report, units)
        sys.stderr.write(f"report: {report}\n")
    return STOPPED if answer.decision.stops else 0


def _progress(what: str, done: int, wanted: int) -> None:
    if not sys.stderr.isatty():
        return
    share = 100.0 * done / max(wanted, 1)
    sys.stderr.write(f"\r{share:3.0f} %  {what[:60]:60s}{chr(13) if done >= wanted else ''}")
    sys.stderr.flush()
