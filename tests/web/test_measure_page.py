"""Measure, without a browser: every procedure told whole, what is mixed up asked again first."""

import re

import pytest

from axlewright.tables import procedure_steps, procedures
from axlewright.upkeep import procedures_of


@pytest.fixture
def slug(bay):
    return bay.copy_example("wagtail")


def take(visitor, slug, what, *values, **said):
    fields = {f"value_{at}": value for at, value in enumerate(values, 1)}
    return visitor.post(f"/axle/{slug}/measure/{what}/take", {**fields, **said})


def kept(bay, slug):
    return [each.body for each in bay.log().history(slug, ["reading"])]


def plain(answer):
    text = re.sub(r"<svg.*?</svg>|<[^>]+>", " ", answer.text, flags=re.DOTALL)
    for sign, meant in (("&#39;", "'"), ("&amp;", "&"), ("&gt;", ">"), ("&lt;", "<")):
        text = text.replace(sign, meant)
    return re.sub(r"\s+", " ", text)


@pytest.mark.parametrize("procedure", procedures_of("front"), ids=lambda each: each.key)
def test_a_procedure_is_told_whole(visitor, bay, procedure):
    """Common practice, no source: what first, steps with cautions at the step, what goes wrong."""
    slug = bay.copy_example("wagtail")
    answer = visitor.get(f"/axle/{slug}/measure/{procedure.key}")
    told = plain(answer)
    for part in (procedure.before, procedure.wrong, procedure.correction, procedure.load_state):
        assert part.replace("  ", " ") in told
    for step in procedure_steps().values():
        if step.procedure == procedure.key:
            where = answer.text.index(f'<li value="{step.step}">')
            item = answer.text[where : answer.text.index("</li>", where)]
            assert ("Caution." in item) == bool(step.caution), "a caution stands at its step"
    assert f"sketch-{procedure.key.replace('_', '-')}-told" in answer.text
    assert visitor.get(f"/axle/{slug}/measure").text.count(f'/measure/{procedure.key}"') == 1


def test_a_reading_is_echoed_before_its_verdict(visitor, bay, slug):
    answer = take(visitor, slug, "unit_hub_play", "0.05 mm", "0.06 mm", side="left")
    assert answer.status_code == 303
    told = plain(visitor.get(answer.headers["location"]))
    echo = told.index("vehicle's own left, play of a sealed hub")
    assert 0 < echo < told.index("95 times in 100") < told.index("No objection")
    assert "0.05 mm, that is 0.00197 in" in told
    assert "light truck; " in told, "no limit without its scope and source"
    assert "no go" in told
    [reading] = kept(bay, slug)
    assert reading.repeats == pytest.approx((5e-5, 6e-5))


@pytest.mark.parametrize(
    ("key", "values", "said", "problem"),
    [
        ("unit_hub_play", ["4 mm"], {"side": "left"}, "outside anything"),
        ("unit_hub_play", ["-0.05 mm"], {"side": "left"}, "below zero"),
        ("pinion_torque", ["40 lbf ft"], {}, "more than such a part turns with"),
        ("pinion_torque", ["18 N"], {"radius": "2 m"}, "more than such a part turns with"),
        ("camber", ["12 deg"], {"side": "left"}, "outside anything"),
    ],
)
def test_a_wrong_unit_sign_or_lever_is_asked_again_first(
    visitor, bay, slug, key, values, said, problem
):
    answer = take(visitor, slug, key, *values, **said)
    told = plain(answer)
    assert answer.status_code == 422
    assert problem in told
    assert "Is that right? It is not kept yet." in told
    assert "Held against" not in told, "no verdict before it is kept"
    assert kept(bay, slug) == []
    again = take(visitor, slug, key, *values, **said, sure="yes")
    assert again.status_code == 303
    assert len(kept(bay, slug)) == 1


def test_the_other_sides_reading_is_asked_again_first(visitor, bay, slug):
    take(visitor, slug, "camber", "0.2 deg", "0.2 deg", side="left")
    take(visitor, slug, "camber", "-1.9 deg", "-1.9 deg", side="right")
    answer = take(visitor, slug, "camber", "-1.9 deg", "-1.9 deg", side="left")
    assert answer.status_code == 422
    assert "Was it the vehicle's own right?" in plain(answer)
    assert len(kept(bay, slug)) == 2


@pytest.mark.parametrize(
    ("key", "values", "said", "fault"),
    [
        ("camber", ["-0.5"], {"side": "left"}, "no unit"),
        ("camber", ["-0.5 deg"], {}, "which side?"),
        ("camber", ["-0.5 deg"], {"side": "up"}, "not 'up'"),
        ("camber", [], {"side": "left"}, "no value"),
        ("camber", ["don't know"], {"side": "left"}, "is a number"),
        ("camber", ["-0.5 deg"], {"side": "left", "with": "rule"}, "not read with"),
        ("camber", ["-0.5 deg"], {"side": "left", "with": "hammer"}, "hammer"),
        ("camber", ["-0.5 deg"], {"side": "left", "bearing": "perhaps"}, "perhaps"),
        ("camber", ["-0.5 deg"], {"side": "left", "on": "yesterday"}, "no day"),
        ("camber", ["-0.5 deg"], {"side": "left", "on": "2999-01-01"}, "lies ahead"),
        ("toe", ["2 mm"], {"slope": "1 deg"}, "angle alone"),
        ("pinion_torque", ["20 kg"], {}, "kg"),
        ("pinion_torque", ["20 lb"], {}, "lb"),
    ],
)
def test_what_cannot_be_is_refused_and_the_form_keeps_what_was_said(
    visitor, bay, slug, key, values, said, fault
):
    answer = take(visitor, slug, key, *values, **said, who="Ada", note="cold <b>")
    assert answer.status_code in {404, 422}
    assert kept(bay, slug) == []
    assert fault in plain(answer)
    if answer.status_code == 422:
        assert 'value="Ada"' in answer.text
        assert "cold &lt;b&gt;" in answer.text


def test_a_pull_on_a_string_is_told_with_its_radius(visitor, bay, slug):
    """Torque is force times lever: 30 N on 50 mm is 1.5 N m."""
    answer = take(visitor, slug, "pinion_torque", "30 N", **{"with": "string_pull"}, radius="50 mm")
    told = plain(visitor.get(answer.headers["location"]))
    assert "pulled at 50 mm, that is 1.97 in: 1.50 N m" in told
    assert kept(bay, slug)[0].value == pytest.approx(1.5)


def test_the_slope_of_the_floor_is_taken_off_and_told(visitor, bay, slug):
    answer = take(visitor, slug, "camber", "0.9 deg", side="left", slope="0.3 deg")
    told = plain(visitor.get(answer.headers["location"]))
    assert "less the slope of 0.3 deg" in told
    assert kept(bay, slug)[0].value == pytest.approx(0.6 * 0.017453292519943295)


def test_a_hub_over_its_limit_is_a_stop_and_cannot_tell_is_to_be_fixed(visitor, slug):
    answer = take(visitor, slug, "unit_hub_play", "0.3 mm", "0.31 mm", side="left")
    text = visitor.get(answer.headers["location"]).text
    assert 'class="stop"' in text
    answer = take(visitor, slug, "camber", "1 deg", side="right")
    told = plain(visitor.get(answer.headers["location"]))
    assert "cannot tell FIX BEFORE TRIP" in told
    assert "It would be settled by" in told


def test_a_line_in_the_dye_is_a_stop_and_none_is_not_judged(visitor, bay, slug):
    """SAFETY, rule 2: a crack in what steers stops, whatever a limit says."""
    answer = take(visitor, slug, "dye_test", "12 mm", side="left")
    assert 'class="stop"' in visitor.get(answer.headers["location"]).text
    assert bay.log().drive(slug).state == "stop"
    other = bay.copy_example("heron")
    answer = take(visitor, other, "dye_test", "0 mm", side="left")
    text = visitor.get(answer.headers["location"]).text
    assert 'class="stop"' not in text
    assert "not judged" in text
    assert bay.log().drive(other).state == "not looked at", "no line is no look"


def test_the_manuals_limit_takes_the_place_of_every_other(visitor, slug):
    place = f"/axle/{slug}/measure/unit_hub_play"
    assert visitor.post(f"{place}/limit", {"high": "0.02 mm", "printed": ""}).status_code == 422
    answer = visitor.post(f"{place}/limit", {"high": "0.02 mm", "printed": "the manual, page 7"})
    assert answer.status_code == 303
    assert "the manual, page 7" in plain(visitor.get(place))
    answer = take(visitor, slug, "unit_hub_play", "0.09 mm", "0.09 mm", side="left")
    told = plain(visitor.get(answer.headers["location"]))
    assert "out STOP: do not drive" in told
    assert "light truck" not in told


def test_the_past_is_listed_and_a_new_part_ends_it(visitor, bay, slug):
    from axlewright.rig import Job

    take(visitor, slug, "unit_hub_play", "0.05 mm", side="left")
    take(visitor, slug, "unit_hub_play", "0.06 mm", side="right")
    place = f"/axle/{slug}/measure/unit_hub_play"
    assert "no longer counts" not in plain(visitor.get(place))
    log = bay.log()
    log.work(slug, Job(task="renewed", part="hub", side="left", interval="hub_fitted"))
    told = plain(visitor.get(place))
    assert told.count("no longer counts") == 1
    assert "left 0.050 mm one reading" in told
    assert "on a part that was replaced" in plain(visitor.get(f"/axle/{slug}/measure"))


def test_a_reading_can_be_taken_back_and_stays_on_record(visitor, bay, slug):
    take(visitor, slug, "unit_hub_play", "0.05 mm", side="left")
    [entry] = bay.log().history(slug, ["reading"])
    place = f"/axle/{slug}/measure/unit_hub_play/withdraw"
    assert visitor.post(place, {"number": "x", "reason": "y"}).status_code == 422
    assert visitor.post(place, {"number": "99999", "reason": "y"}).status_code == 404
    wrong = f"/axle/{slug}/measure/camber/withdraw"
    assert visitor.post(wrong, {"number": str(entry.number), "reason": "y"}).status_code == 404
    said = {"number": str(entry.number), "reason": "the other hub"}
    assert visitor.post(place, said).status_code == 303
    assert kept(bay, slug) == []
    assert len(bay.log().history(slug, replaced=True)) == 2


def test_a_form_sent_twice_is_entered_once(visitor, bay, slug):
    for _ in range(2):
        answer = take(visitor, slug, "unit_hub_play", "0.05 mm", side="left", key="one-and-only")
        assert answer.status_code == 303
    assert len(kept(bay, slug)) == 1


def test_an_axle_has_its_own_readings(visitor, bay):
    rear = bay.begin("Crake", "rear")
    assert visitor.get(f"/axle/{rear}/measure/toe").status_code == 404
    assert visitor.get(f"/axle/{rear}/measure/nothing").status_code == 404
    assert visitor.get("/axle/nobody/measure").status_code == 404
    listed = visitor.get(f"/axle/{rear}/measure").text
    assert {key for key in procedures() if f'/measure/{key}"' in listed} == {
        each.key for each in procedures_of("rear")
    }
