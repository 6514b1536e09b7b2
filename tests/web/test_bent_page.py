"""Where is it bent, without a browser: from the record, typed in, and never that it may go."""

import json
import re

import pytest

from axlewright.rig import Hit
from axlewright.tables import locator_causes
from web.test_measure_page import plain, take


@pytest.fixture
def slug(bay):
    return bay.copy_example("heron")


def test_the_record_becomes_evidence_by_itself(visitor, bay, slug):
    take(visitor, slug, "camber_out", "-0.2 deg", side="left")
    bay.log().enter(slug, Hit(what="a rock", side="left"))
    take(visitor, slug, "camber_out", "-1.9 deg", "-2 deg", side="left")
    take(visitor, slug, "tube_slope", "1.4 deg", "1.5 deg", side="left")
    told = plain(visitor.get(f"/axle/{slug}/bent"))
    assert re.search("(Most likely|likeliest): left tube bent up or down", told)
    assert "it is from before the hit" in told
    assert "as on record: 20" in told, "the day of the hit"
    answer = json.loads(visitor.get(f"/axle/{slug}/bent.json").text)["bent"]
    assert {one["key"] for one in answer["used"]} == {"camber_out_left", "tube_angle_left"}
    assert "drive" not in answer


def test_dangerous_causes_stand_there_whatever_their_share_each_with_its_look(visitor, slug):
    """SAFETY, rule 12."""
    told = plain(visitor.get(f"/axle/{slug}/bent"))
    wanted = [row for row in locator_causes().values() if row.danger and row.axle != "rear"]
    assert len(wanted) > 6
    for row in wanted:
        assert row.look in told or row.look[:1].upper() + row.look[1:] in told
        assert row.stop in told
    for word in ("may go", "is sound", "good to go", "ok to drive", "safe to"):
        assert word not in told.casefold()


def test_a_share_has_its_band_and_lies_in_it(visitor, slug):
    place = f"/axle/{slug}/bent.json?tie_rod_bow=25+mm&wheel_off=-15+deg&hit=yes"
    answer = json.loads(visitor.get(place).text)["bent"]
    wide = []
    for cause in answer["found"]["suspects"]:
        low, high = (answer["bands"][cause["key"]][end]["value"] for end in ("low", "high"))
        assert low <= cause["share"]["value"] <= high
        wide.append(high - low)
    assert max(wide) > 0.05
    assert answer["typed"] == ["tie_rod_bow", "wheel_off"]


def test_what_is_typed_in_stands_in_the_form_and_is_not_kept(visitor, bay, slug):
    place = f"/axle/{slug}/bent?tie_rod_bow=25+mm&knock=yes&hit=yes"
    answer = visitor.get(place)
    assert 'name="tie_rod_bow" type="text" value="25 mm"' in answer.text
    assert "explains" in plain(answer)
    assert bay.log().history(slug) == []


@pytest.mark.parametrize(
    ("query", "fault"),
    [
        ("tie_rod_bow=25", "no unit"),
        ("tie_rod_bow=25+kg", "mass"),
        ("camber_out_left=x", "cannot be read"),
        ("knock=perhaps", "no answer"),
    ],
)
def test_what_cannot_be_read_is_told_and_the_record_still_speaks(visitor, slug, query, fault):
    answer = visitor.get(f"/axle/{slug}/bent?{query}")
    assert answer.status_code == 422
    told = plain(answer)
    assert fault in told
    assert "from the record alone" in told


def test_an_axle_that_is_half_answered_is_told_so(visitor, bay):
    slug = bay.begin("Crake", "front")
    assert "still open" in plain(visitor.get(f"/axle/{slug}/bent"))
    assert visitor.get(f"/axle/{slug}/bent.json").status_code == 422
