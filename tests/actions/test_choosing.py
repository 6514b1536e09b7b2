"""Choices of the bay: begun once, gone on with while nobody looks, and prices that are kept."""

import datetime as dt
import time

import numpy as np
import pytest

from axlewright.actions import Bay, Choosing, decide_logged
from axlewright.actions.choosing import with_said
from axlewright.decide import Terms, read_terms, terms_text
from axlewright.errors import AxlewrightError, BadFile
from axlewright.rig import Trip
from axlewright.views import decision_data, decision_json, decision_words

PATIENCE = 600.0  # s: a busy machine is no fault of the choice


@pytest.fixture
def bay(tmp_path):
    opened = Bay.open(tmp_path)
    yield opened
    opened.close()


def waited(ask):
    """Ask until it is done."""
    end = time.monotonic() + PATIENCE
    while time.monotonic() < end:
        job = ask()
        if job.answer is not None or job.stopped or job.trouble:
            return job
        time.sleep(0.1)
    raise AssertionError(job)


@pytest.fixture
def quick(monkeypatch):
    """Few draws: what is kept and when is asked here, not how sharp it is."""
    monkeypatch.setattr("axlewright.actions.choosing.DRAWS", 200)


def test_a_choice_is_begun_once_and_stands_there_afterwards(bay, quick):
    slug, choosing = bay.copy_example("wagtail"), bay.choosing()
    job = choosing.ask(bay.log(), slug)
    assert choosing.ask(bay.log(), slug) is job
    done = waited(lambda: choosing.ask(bay.log(), slug))
    assert done is job
    assert done.answer.decision.advised == "leave"
    assert bay.choosing() is choosing


def test_a_half_told_axle_has_no_choice_yet(bay):
    slug = bay.begin("Crake", "rear")
    assert bay.choosing().ask(bay.log(), slug) is None


def test_what_is_stopped_begins_again_when_it_is_asked_for(bay, quick):
    slug, choosing = bay.copy_example("wagtail"), bay.choosing()
    job = choosing.ask(bay.log(), slug)
    job.stopped = True
    assert choosing.ask(bay.log(), slug) is job
    again = choosing.ask(bay.log(), slug, again=True)
    assert again is not job
    assert waited(lambda: choosing.ask(bay.log(), slug)).answer is not None


def test_prices_are_kept_and_outlive_the_bay(tmp_path):
    first = Bay.open(tmp_path)
    slug = first.copy_example("wagtail")
    said = {
        "skill": "shop",
        "km_a_year": "400 to 900",
        "change": "truss",
        "low": "1 200",
        "who": "x",
    }
    first.choosing().tell(first.log(), slug, said)
    first.close()
    second = Bay.open(tmp_path)
    terms = Choosing().terms(second.log(), slug)
    assert terms.skill == "shop"
    assert terms.bands["km_a_year"].high == 900.0
    assert terms.price("truss").band.low == 1200.0
    assert terms.price("truss").told_by == "x"
    dropped = Choosing().tell(second.log(), slug, {"drop": "truss"})
    assert not dropped.price("truss").own
    assert dropped.skill == "shop"
    assert dropped.bands["km_a_year"].high == 900.0
    second.close()


def test_prices_change_the_choice_that_is_worked_out(bay, quick):
    slug, choosing = bay.copy_example("wagtail"), bay.choosing()
    before = choosing.ask(bay.log(), slug)
    choosing.tell(bay.log(), slug, {"skill": "shop", "currency": "EUR", "one_usd": "0,9"})
    after = choosing.ask(bay.log(), slug)
    assert after is not before
    done = waited(lambda: choosing.ask(bay.log(), slug))
    assert done.answer.decision.terms.currency == "EUR"


def test_trips_in_the_record_say_how_far_it_drives_until_the_owner_does(bay, quick):
    slug, choosing = bay.copy_example("wagtail"), bay.choosing()
    log = bay.log()
    before = waited(lambda: choosing.ask(log, slug))
    assert before.answer.decision.yearly is None
    hardest = log.desk.rig(slug).words["use.hardest"].replace(" ", "_")
    for back in range(0, 366, 30):
        trip = Trip(name="to the gauges", distance=9e4, grounds=((hardest, 9e4),))
        log.enter(slug, trip, on=log.today - dt.timedelta(days=365 - back))
    done = waited(lambda: choosing.ask(log, slug))
    assert done is not before
    decision = done.answer.decision
    band = decision.yearly.band
    assert decision.yearly.by == "trips"
    assert band.low < 12 * 90.0 < band.high
    years = decision.terms.band("years").middle
    driven = float(np.median(decision.world.distance)) / years
    assert driven == pytest.approx(1e3 * (band.low * band.high) ** 0.5, rel=0.15)
    told = decision_words(decision).rests[0]
    assert told.startswith("Distance a year on")
    assert "from its record: 12 trips after the first, 1,080 km of it in 12 months" in told
    memo = decision_data(decision, done.answer.grid, done.answer.still)
    assert told in memo.rests
    assert decision_json(decision, (), None)["distance_a_year"]["from"] == "record"
    choosing.tell(log, slug, {"skill": "shop", "km_a_year": "400 to 900"})
    said = waited(lambda: choosing.ask(log, slug)).answer.decision
    assert said.yearly is None
    assert "400 km" not in told
    assert decision_words(said).rests[0].endswith("400 to 900 km, as you said.")
    assert decide_logged(log, slug, draws=200).decision.terms.bands["km_a_year"].high == 900.0


@pytest.mark.parametrize(
    ("said", "told"),
    [
        ({"change": "truss", "low": "many"}, "prices.truss.low"),
        ({"change": "trus", "low": "3"}, "prices.trus"),
        ({"change": 'x"]\n[you', "low": "3"}, "prices"),
        ({"skill": "wizard"}, "you.skill"),
        ({"skill": "shop", "currency": "EURO"}, "currency"),
        ({"skill": "shop", "km_a_year": "900 to 400"}, "you.km_a_year"),
        ({"skill": "shop", "one_usd": "nan"}, "one_usd"),
    ],
)
def test_what_cannot_be_read_is_not_kept(bay, said, told):
    slug = bay.copy_example("wagtail")
    with pytest.raises(BadFile) as caught:
        bay.choosing().tell(bay.log(), slug, said)
    assert told in str(caught.value)
    assert bay.choosing().terms(bay.log(), slug) == Terms()


def test_too_long_a_file_is_refused(bay):
    slug = bay.copy_example("wagtail")
    with pytest.raises(AxlewrightError, match="too long"):
        bay.choosing().keep_terms(bay.log(), slug, "#" * 50_000)


def test_terms_read_back_as_they_were_written():
    text = with_said(
        terms_text(Terms().with_band("call_out", 120.0, 300.5)),
        {
            "skill": "first-timer",
            "hoist": "yes",
            "change": "hubs",
            "low": "1",
            "high": "2",
            "who": 'a "b"',
        },
    )
    terms = read_terms(text)
    assert terms.hoist
    assert not terms.papers
    assert terms.bands["call_out"].high == 300.5
    assert terms.price("hubs").told_by == 'a "b"'
    assert read_terms(terms_text(terms)) == terms
