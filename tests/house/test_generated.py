"""What is generated and checked in is what the catalogue says today."""

import pytest
from tools.schema import generated

from axlewright.rig import FIELDS
from house.places import DOCS, ROOT, brief

GENERATED = generated()


@pytest.mark.parametrize("path", sorted(GENERATED), ids=brief)
def test_a_generated_file_is_up_to_date(path):
    assert path.read_text("utf-8") == GENERATED[path], (
        "`make schema` writes it again; if an old file would now be read differently or refused, "
        "its version number grows first (docs/formats.md)"
    )


def test_no_schema_is_left_without_its_number():
    kept = {path.name.split("-")[0] for path in (DOCS / "schemas").glob("*-*.json")}
    assert kept == {"rig", "change"}


def test_every_field_is_told():
    page = (DOCS / "rig-file.md").read_text("utf-8")
    assert FIELDS
    assert not [field.path for field in FIELDS if f"`{field.path}`" not in page]


def test_the_formats_page_names_todays_numbers():
    formats = (ROOT / "docs" / "formats.md").read_text("utf-8")
    for path in GENERATED:
        if path.suffix == ".json":
            kind, number = path.stem.rsplit("-", 1)
            key = {"rig": "axlewright", "change": "axlewright_change"}[kind]
            assert f"`{key} = {number}`" in formats
