"""What the tests of the bay share: a bay over a folder of its own, and somebody who visits it."""

import logging

import pytest

from axlewright.actions import Bay
from web.visitor import Visitor


@pytest.fixture
def bay(tmp_path):
    opened = Bay.open(tmp_path)
    yield opened
    opened.close()


@pytest.fixture
def visitor(bay):
    return Visitor(bay)


@pytest.fixture(autouse=True)
def _no_bug_of_ours(caplog):
    """A page that could not be made is logged by the door: no test may meet one by accident."""
    yield
    bugs = [
        record.getMessage()
        for record in caplog.get_records("call")
        if record.name == "axlewright.web" and record.levelno >= logging.ERROR
    ]
    assert not [bug for bug in bugs if "on purpose" not in bug]
