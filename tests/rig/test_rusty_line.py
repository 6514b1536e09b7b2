"""A rusty or brown line is a crack until somebody has cleaned it to metal and looked."""

from pathlib import Path

import pytest

from axlewright.rig import findings, rig_from_text, stops

HERON = (Path(__file__).parents[2] / "examples" / "rigs" / "heron.toml").read_text("utf-8")


@pytest.mark.parametrize(
    ("part", "stopped"),
    [("steering arm", True), ("track-bar bracket", True), ("knuckle", True), ("cover", False)],
)
def test_a_rusty_line_stops_what_steers(part, stopped):
    # The project's safety rules: STOP until cleaned to metal and looked at.
    text = HERON.replace('part = "track-bar bracket"', f'part = "{part}"')
    found = findings(rig_from_text(text.replace('what = "mended"', 'what = "rusty line"')))
    assert bool(stops(found)) is stopped
    assert "Clean" in found[0].do or "cleaned" in found[0].do
