"""Paths that cannot be read: the same friendly error as for what is in a file."""

import pytest

from axlewright.errors import BadFile
from axlewright.rig.reading import read_change_file, read_rig_file
from rig.small import CATALOGUE, RIG


@pytest.mark.parametrize("read", [read_rig_file, read_change_file])
def test_paths_that_cannot_be_read(read, tmp_path):
    (tmp_path / "heron.toml").write_text(RIG, "utf-8")
    with pytest.raises(BadFile, match="there is no such file") as refused:
        read(tmp_path / "hreon.toml", CATALOGUE)
    assert refused.value.faults[0].accepted == "one of: heron.toml"
    with pytest.raises(BadFile, match="this is a folder, not a file"):
        read(tmp_path, CATALOGUE)
    with pytest.raises(BadFile, match="cannot be read"):
        read(tmp_path / ("x" * 5000), CATALOGUE)
    with pytest.raises(BadFile, match="cannot be read"):
        read("nul\0", CATALOGUE)


def test_a_file_that_may_not_be_opened(tmp_path, monkeypatch):
    def refuse(*_, **__):
        raise PermissionError

    monkeypatch.setattr("pathlib.Path.open", refuse)
    with pytest.raises(BadFile, match="this file may not be read"):
        read_rig_file(tmp_path / "heron.toml", CATALOGUE)


def test_a_file_too_large_is_not_swallowed_whole(tmp_path):
    path = tmp_path / "big.toml"
    path.write_bytes(b"#" * 3_000_000)
    with pytest.raises(BadFile, match="larger than 1 MB"):
        read_rig_file(path, CATALOGUE)
