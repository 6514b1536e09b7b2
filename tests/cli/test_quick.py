"""A quick start leaves the process as it found it."""

import subprocess
import sys

CHILD = """
import gc, sys
from axlewright.cli.quick import load_kernels
{before}
load_kernels()
print(gc.isenabled(), gc.get_freeze_count() > 100_000, "scipy.linalg" in sys.modules)
import scipy.linalg
print(float(scipy.linalg.norm([3.0, 4.0])))
"""


def told_by(before):
    return subprocess.run(
        [sys.executable, "-c", CHILD.format(before=before)],
        capture_output=True,
        text=True,
        check=True,
    ).stdout.split()


def test_the_collector_is_on_again_and_leaves_what_was_loaded_alone():
    assert told_by("")[:2] == ["True", "True"]


def test_a_collector_that_was_off_stays_off():
    assert told_by("gc.disable()")[:2] == ["False", "True"]


def test_what_was_passed_over_can_still_be_loaded():
    assert told_by("")[2:] == ["False", "5.0"]
