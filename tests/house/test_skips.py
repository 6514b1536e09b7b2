"""What is skipped at a desk fails in CI."""

import os
import shutil
import subprocess
import sys

import pytest

from house.places import ROOT

BY_MARK = "import pytest\n\n@pytest.mark.skip\ndef test_a(): pass\n"
BY_IMPORT = "import pytest\n\npytest.importorskip('no_such_oracle')\n\ndef test_a(): pass\n"
EXPECTED_FAILURE = "import pytest\n\n@pytest.mark.xfail\ndef test_a(): assert False\n"


def outcome(tmp_path, text, ci):
    shutil.copy(ROOT / "tests" / "conftest.py", tmp_path)
    (tmp_path / "test_skipping.py").write_text(text)
    environment = {key: value for key, value in os.environ.items() if key != "CI"}
    environment |= {"CI": "true"} if ci else {}
    return subprocess.run(
        [sys.executable, "-m", "pytest", "-q", "-p", "no:cacheprovider", str(tmp_path)],
        cwd=tmp_path,
        env=environment,
        capture_output=True,
        text=True,
        check=False,
    )


@pytest.mark.parametrize("text", [BY_MARK, BY_IMPORT], ids=["mark", "import"])
def test_a_skip_fails_in_ci(tmp_path, text):
    ran = outcome(tmp_path, text, ci=True)
    assert ran.returncode != 0
    assert "CI does not allow" in ran.stdout


def test_a_skip_is_a_skip_at_a_desk(tmp_path):
    ran = outcome(tmp_path, BY_MARK, ci=False)
    assert ran.returncode == 0
    assert "1 skipped" in ran.stdout


def test_an_expected_failure_is_no_skip(tmp_path):
    assert outcome(tmp_path, EXPECTED_FAILURE, ci=True).returncode == 0
