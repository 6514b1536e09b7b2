"""After a hit: entered with a tap, five looks, the sum that can only make it worse.

Which looks there are: common practice, no source. What a bow explains: tests/views/test_off_centre.
"""

import pytest

from axlewright.upkeep import OFF_CENTRE
from web.test_looks_page import picture

FIVE = ("steers", "stops", "holds", "carries", "drives")


@pytest.fixture
def slug(bay):
    return bay.copy_example("heron")


def ask(bay, slug):
    return bay.log().drive(slug, beside_the_track=True).state


def hit(visitor, slug, **more):
    return visitor.post(f"/axle/{slug}/hit/enter", {"what": "a rock", **more})


def take(visitor, slug, look, ends="go", **more):
    said = {"look": look, "ends": ends, "list": "after_hit", **more}
    return visitor.post(f"/axle/{slug}/hit/take", said)


def weigh(visitor, slug, **said):
    return visitor.post(f"/axle/{slug}/hit/sum", {"rod": "tie_rod", **said})


def test_the_page_stands_in_the_order_of_the_path(visitor, slug):
    told = visitor.get(f"/axle/{slug}/hit").text
    heads = ("What stops it", "What was hit", "Five looks", "explain what I feel", "Slowly on, or")
    places = [told.index(f"{number}. {head}") for number, head in enumerate(heads[:3], 1)]
    places += [told.index(f'-title">{number}. ') for number in (4, 5)]
    assert places == sorted(places)
    assert told.index("engine off, both ends chocked") < places[0]
    assert all(f'id="look-{key}"' in told for key in FIVE)
    assert "a steering arm or knuckle bent or cracked" in told


def test_a_hit_is_entered_with_one_tap_its_side_and_a_photo(bay, visitor, slug):
    said = {"what": "a ledge", "side": "left", "speed": "15 km/h"}
    files = {"photo": ("a.jpg", picture())}
    assert visitor.post(f"/axle/{slug}/hit/enter", said, files=files).status_code == 303
    [kept] = bay.log().history(slug)
    assert (kept.body.what, kept.body.side) == ("a ledge", "left")
    assert kept.body.speed == pytest.approx(15 / 3.6)
    assert len(kept.photos) == 1
    assert "a ledge, left" in visitor.get(f"/axle/{slug}/hit").text


@pytest.mark.parametrize(
    ("said", "why"), [({"what": ""}, "What was hit"), ({"speed": "fast"}, "cannot be read")]
)
def test_what_cannot_be_hit_is_refused_in_words(bay, visitor, slug, said, why):
    answer = hit(visitor, slug, **said)
    assert answer.status_code == 422
    assert why in answer.text
    assert bay.log().history(slug) == []


def test_a_hit_ends_every_look_and_five_looks_say_slowly_on(bay, visitor, slug):
    for each in bay.log().wanted(slug, "before_trip"):
        visitor.post(f"/axle/{slug}/looks/take", {"look": each.key, "ends": "go"})
    before = bay.log().drive(slug).state
    hit(visitor, slug)
    assert bay.log().drive(slug).state == "not looked at" != before
    for key in FIVE[:4]:
        assert take(visitor, slug, key).status_code == 303
        assert ask(bay, slug) == "not looked at"
    take(visitor, slug, "drives")
    told = visitor.get(f"/axle/{slug}/hit").text
    assert ask(bay, slug) in {"go", "watch"}
    assert "Slowly on" in told
    assert bay.log().drive(slug).state == "not looked at", "the whole list before the next trip"


@pytest.mark.parametrize("look", FIVE)
def test_one_stop_of_the_five_is_a_stop_on_every_page(bay, visitor, slug, look):
    hit(visitor, slug)
    for key in FIVE:
        take(visitor, slug, key, "stop" if key == look else "go")
    assert ask(bay, slug) == "stop"
    for tail in ("/hit", "/looks", "/answer", ""):
        assert 'class="stop"' in visitor.get(f"/axle/{slug}{tail}").text


def test_the_sum_makes_it_worse_and_never_better(bay, visitor, slug):
    hit(visitor, slug)
    assert weigh(visitor, slug, bow="", off="1 deg").status_code == 303
    assert ask(bay, slug) == "not looked at"  # silent, and so nothing is lifted
    for key in FIVE:
        take(visitor, slug, key)
    good = ask(bay, slug)
    assert good in {"go", "watch"}
    assert weigh(visitor, slug, bow="30 mm", off="40 deg").status_code == 303
    assert ask(bay, slug) == "fix before trip"
    told = visitor.get(f"/axle/{slug}/hit").text
    assert "What is seen does not explain what is felt" in told
    assert "it never says go" in told
    weigh(visitor, slug, bow="", off="1 deg")
    assert ask(bay, slug) == "fix before trip", "a bow does not go away by itself"
    done = {"task": "tie rod renewed", "part": "tie rod"}
    visitor.post(f"/axle/{slug}/hit/work", done)
    weigh(visitor, slug, bow="", off="1 deg")
    assert ask(bay, slug) == good


def test_a_folded_rod_is_a_stop(bay, visitor, slug):
    hit(visitor, slug)
    weigh(visitor, slug, bow="400 mm")
    assert ask(bay, slug) == "stop"
    assert "has folded" in visitor.get(f"/axle/{slug}/answer").text


@pytest.mark.parametrize(
    ("said", "why"),
    [
        ({}, "How far is it off centre"),
        ({"bow": "30"}, "no unit"),
        ({"bow": "30 mm", "ratio": "x"}, "no ratio"),
        ({"bow": "30 mm", "ratio": "90"}, "steering boxes"),
        ({"bow": "30 mm", "off": "3 mm"}, "3 mm"),
        ({"bow": "30 mm", "length": "9 kg"}, "9 kg"),
    ],
)
def test_what_cannot_be_weighed_is_refused_and_stays_as_typed(bay, visitor, slug, said, why):
    answer = weigh(visitor, slug, **said)
    assert answer.status_code == 422
    assert why in answer.text
    assert f'value="{said.get("bow", "")}"' in answer.text
    assert bay.log().history(slug) == []


def test_a_rod_of_another_axle_is_not_found(visitor, slug):
    assert weigh(visitor, slug, rod="halo", bow="30 mm").status_code == 404


def test_before_the_thirteen_are_answered_the_looks_stand_without_the_sum(bay, visitor):
    slug = bay.begin("Crake", "rear")
    told = visitor.get(f"/axle/{slug}/hit").text
    assert "The sum needs the rest of the thirteen answers" in told
    assert 'id="look-located"' in told
    assert weigh(visitor, slug, rod="lower arm", bow="30 mm").status_code == 422
    assert hit(visitor, slug).status_code == 303


def test_the_record_holds_the_sum_as_it_was_said(bay, visitor, slug):
    weigh(visitor, slug, bow="30 mm", off="40 deg", length="1.2 m", ratio="16")
    [kept] = bay.log().history(slug)
    said = dict(kept.body.answers)
    assert kept.body.about == OFF_CENTRE
    assert (said["rod"], said["bow"], said["length"]) == ("tie rod", "30 mm", "1200 mm")
    assert said["off centre"] == "40 deg"
