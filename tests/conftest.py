"""What every test run shares: random examples that repeat, and no silent skip in CI."""

import gc
import os

import pytest
from hypothesis import HealthCheck, settings

_SLOW = [HealthCheck.too_slow]  # a busy machine is no fault of the code
# Repeatable at the gate; new examples every time in a soak. Time never decides a test.
settings.register_profile("gate", deadline=None, derandomize=True, suppress_health_check=_SLOW)
settings.register_profile(
    "soak", deadline=None, max_examples=3000, print_blob=True, suppress_health_check=_SLOW
)
settings.load_profile("soak" if os.environ.get("AXLEWRIGHT_SOAK") else "gate")


@pytest.hookimpl(wrapper=True)
def pytest_collection():
    """Count as garbage nothing that lives as long as the run: every sweep would visit it."""
    gc.disable()
    try:
        return (yield)
    finally:
        gc.freeze()
        gc.enable()


def _no_skip_in_ci(report):
    """Turn a skip into a failure: what CI does not run, nobody runs."""
    if os.environ.get("CI") == "true" and report.skipped and not hasattr(report, "wasxfail"):
        report.outcome = "failed"
        report.longrepr = f"skipped, which CI does not allow: {report.longrepr}"
    return report


@pytest.hookimpl(wrapper=True)
def pytest_runtest_makereport():
    return _no_skip_in_ci((yield))


@pytest.hookimpl(wrapper=True)
def pytest_make_collect_report():
    return _no_skip_in_ci((yield))
