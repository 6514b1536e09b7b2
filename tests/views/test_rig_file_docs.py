"""The page on the rig file says what the catalogue says."""

import re

import pytest
from tools import rig_file_docs

from axlewright.rig import FIELDS


def test_the_page_is_what_the_catalogue_says():
    assert rig_file_docs.main(["--check"]) == 0


def test_a_page_that_fell_behind_is_told(tmp_path, monkeypatch, capsys):
    stale = tmp_path / "rig-file.md"
    stale.write_text(rig_file_docs.page() + "more\n", encoding="utf-8")
    monkeypatch.setattr(rig_file_docs, "PAGE", stale)
    assert rig_file_docs.main(["--check"]) == 1
    assert "tools.rig_file_docs" in capsys.readouterr().err
    assert rig_file_docs.main([]) == 0
    assert rig_file_docs.main(["--check"]) == 0


@pytest.mark.parametrize("field", FIELDS, ids=lambda field: field.path)
def test_every_field_stands_on_the_page_once(field):
    assert len(re.findall(rf"\| `{re.escape(field.path)}` \|", rig_file_docs.page())) == 1
