"""The answer in words: first the sentence, then at most five rows, then what it rests on.

What it has to say is common practice, no source; numbers are held against those of the assessment.
"""

import re
from dataclasses import replace
from math import exp, isfinite, log
from pathlib import Path

import numpy as np
import pytest

from axlewright.rig import change_from_text, load_change, load_rig, rig_from_text
from axlewright.strength import Mended, assess_rig, compare, kind_of, parts_of
from axlewright.tables import consequence, consequences
from axlewright.views import (
    CAUTION,
    after_mend_lines,
    answer_lines,
    broken_lines,
    change_lines,
    drive_lines,
    folded,
    measure_next,
    not_judged_line,
    order_rows,
    part_name,
    rests_line,
    sentence,
    severity_lines,
    wear_rows,
    wear_sentence,
)
from axlewright.views.named_parts import kinds_meant
from axlewright.views.phrases import (
    case_name,
    gives,
    kind_name,
    several,
    span_in_ground_terms,
)

EXAMPLES = Path(__file__).parents[2] / "examples"
RIGS = ("heron", "wagtail", "stork-rear")
CRACK = '\n[[condition]]\npart = "knuckle"\nwhere = "left"\nwhat = "cracked"\n'


def _text(name):
    return (EXAMPLES / "rigs" / f"{name}.toml").read_text("utf-8")


def _assessed(text, draws=100):
    return assess_rig(rig_from_text(text), draws=draws)


@pytest.fixture(scope="module")
def answers():
    return {
        name: assess_rig(load_rig(str(EXAMPLES / "rigs" / f"{name}.toml")), draws=200)
        for name in RIGS
    }


@pytest.fixture(scope="module")
def heron(answers):
    return answers["heron"]


@pytest.fixture(scope="module")
def stopped():
    return _assessed(_text("heron") + CRACK)


@pytest.fixture(scope="module")
def changed(heron):
    change = load_change(str(EXAMPLES / "changes" / "heavier-housing.toml"))
    return compare(heron, [change], draws=200)


@pytest.mark.parametrize("name", RIGS)
def test_the_sentence_names_the_first_part_and_what_then(answers, name):
    told, first = sentence(answers[name]), answers[name].order[0]
    assert told.startswith(f"In one bad moment {part_name(first.part, first.side)} ")
    assert re.search(rf"\b{gives(first.part)} first", told)
    share = int(re.search(r"\((\d+) of 10 draws", told).group(1))
    assert share == pytest.approx(10.0 * first.first, abs=0.51)


@pytest.mark.parametrize("name", RIGS)
def test_five_rows_at_most_the_first_first(answers, name):
    for rows, order in (
        (order_rows(answers[name]), answers[name].order),
        (wear_rows(answers[name]), answers[name].wearing),
    ):
        assert 1 <= len(rows) <= 5
        assert [row.rank for row in rows] == list(range(1, len(rows) + 1))
        assert [row.key for row in rows] == [place.part for place in order[: len(rows)]]
        assert all(row.gives_at and row.then and row.beside for row in rows)


@pytest.mark.parametrize("name", RIGS)
def test_the_order_of_the_page(answers, name):
    told = "\n".join(answer_lines(answers[name]))
    parts = [
        sentence(answers[name]),
        wear_sentence(answers[name]),
        order_rows(answers[name])[0].gives_at,
        not_judged_line(answers[name]),
        rests_line(answers[name]),
        CAUTION,
    ]
    places = [told.index(part) for part in parts]
    assert places == sorted(places)


@pytest.mark.parametrize("width", [60, 80, 100, 140])
@pytest.mark.parametrize("system", ["metric", "us", "mixed"])
def test_no_line_is_wider_than_the_terminal(answers, changed, stopped, width, system):
    for answer in (*answers.values(), changed, stopped):
        lines = folded(answer_lines(answer, system, width), width)
        assert max(len(line) for line in lines) <= width


def test_what_it_rests_on_is_counted(heron):
    told = rests_line(heron)
    assert f"{heron.rig.answers} answers" in told
    assert f"{heron.doubts} assumptions" in told
    assert heron.influences[0].doubt.label in told


@pytest.mark.parametrize("name", RIGS)
def test_what_nobody_has_looked_at_is_named(answers, name):
    for item in answers[name].not_judged:
        assert item in not_judged_line(answers[name])
    assert "brake hoses" in not_judged_line(answers[name])


def test_a_stop_is_above_everything(stopped):
    lines = answer_lines(stopped)
    band = lines.index(next(line for line in lines if line.startswith("###")))
    told = "\n".join(lines[: band + 4])
    assert "STOP. Do not drive." in told
    assert "knuckle (left), cracked" in told
    assert lines.index(sentence(stopped)) > band + 3
    # The mended bracket is not forgotten behind the stop.
    assert any(line.startswith("WATCH: track-bar bracket") for line in lines)


def test_no_look_is_no_permission(answers):
    assert drive_lines(answers["wagtail"].findings) == [
        "May I drive? Nobody's look is on record, so no figure below says yes."
    ]


GROUND = {
    "strike_left": ("speed", r"square ledge at [\d.]+ to [\d.]+ (km/h|mph)"),
    "slide_left": ("speed", r"a sideways slide into a rut at"),
    "landing": ("length", r"a landing from a drop of [\d.]+ to [\d.]+ (cm|in)"),
    "pull_left": ("plain", r"\d+ to \d+ % of full pull, wheel wedged"),
    "pull_both": ("plain", r"% of full pull, both wheels"),
    "braking": ("plain", r"% of what the tyres can grip"),
    "hung_left": ("plain", r"times the axle's weight on one wheel"),
    "rock": ("plain", r"times the axle's weight on a rock"),
    "cornering_left": ("plain", r"times gravity, sideways"),
}


@pytest.mark.parametrize("system", ["metric", "us", "mixed"])
@pytest.mark.parametrize("case", GROUND)
def test_a_case_is_told_in_the_grounds_own_terms(heron, case, system):
    kind, told = GROUND[case]
    words = span_in_ground_terms(case, (0.75, 1.5), kind, heron.columns, system)
    assert re.search(told, words)
    assert ("km/h" in words or " cm" in words) == (kind != "plain" and system != "us")


def test_speeds_are_in_miles_for_who_reads_miles(heron):
    # 1 mile is 1609.344 m, by definition (international yard and pound agreement, 1959).
    words = span_in_ground_terms("slide_left", (2.0, 4.0), "speed", heron.columns, "us")
    low, high = (float(each) for each in re.findall(r"[\d.]+", words))
    assert low == pytest.approx(2.0 * 3600.0 / 1609.344, rel=0.03)
    assert high == pytest.approx(4.0 * 3600.0 / 1609.344, rel=0.03)
    told = "\n".join(answer_lines(heron, "us"))
    assert "mph" in told
    assert "km" not in re.sub(r"[a-z]*km[a-z]+", "", told)


def test_no_more_digits_than_are_known(heron):
    words = span_in_ground_terms("landing", (0.0814, 1.5234), "length", heron.columns, "metric")
    assert words == "a landing from a drop of 8 to 150 cm"


@pytest.mark.parametrize("part", sorted(consequences()))
def test_every_part_reads_as_a_sentence(part):
    name = part_name(part, "either")
    if several(part):
        assert not name.startswith("either ")
        assert gives(part) == "give"
    else:
        assert name.startswith("either ")
        assert not name.endswith("s")
        assert gives(part) == "gives"
    assert "left" not in kind_name(part.removesuffix("_left").removesuffix("_right"))


@pytest.mark.parametrize("name", RIGS)
def test_what_gives_next_is_what_goes_first_of_the_rest(answers, name):
    # Brute force over the draws: take the part out and see who is least, and by how much.
    answer = answers[name]
    margin, kinds = answer.drawn.margin, parts_of(answer.point.solved)
    for mended, place in zip(answer.after_mend, answer.order, strict=False):
        gains, firsts = [], []
        for draw in margin.T:
            rest = dict(zip(kinds, draw, strict=True))
            del rest[place.kind]
            first = min(rest, key=rest.get)
            if isfinite(rest[first]):
                firsts.append(first)
            gains.append(log(min(min(rest[first], 1e3) / min(*draw, 1e3), 10.0)))
        assert mended.part == place.part
        assert kind_of(mended.following) == max(set(firsts), key=firsts.count)
        assert mended.harder == pytest.approx(exp(sum(gains) / len(gains)) - 1.0)


@pytest.mark.parametrize("name", RIGS)
def test_what_a_mend_buys_speaks_of_the_part_that_is_said_to_give_first(answers, name):
    answer = answers[name]
    lines = after_mend_lines(answer)
    leader = answer.order[0]
    assert kind_name(leader.kind) in lines[0].partition(", ")[0]
    for line in lines[1:]:
        if "buys little" in line or "still" in line:
            assert part_name(leader.part, leader.side) in line


def test_a_mend_that_moves_the_break_to_the_steering_is_told(heron):
    first, second = heron.order[0], next(p for p in heron.order if p.kind == "steering_arm")
    mended = Mended(part=first.part, following=second.part, harder=0.6)
    told = after_mend_lines(replace(heron, after_mend=(mended,)))
    assert told[0].endswith("That is the worse thing to break.")
    assert "60 % harder" in told[0]


def _broken(what, part):
    text = _text("wagtail").replace('"nothing mended, nothing hurts"', '"as listed"')
    return f'{text}\n[[condition]]\npart = "{part}"\nwhat = "{what}"\n'


@pytest.mark.parametrize("most", ["first", "last"])
def test_what_broke_is_held_against_the_order(answers, most):
    order = answers["wagtail"].order
    place = order[0] if most == "first" else order[-1]
    [line] = broken_lines(_assessed(_broken("broke", kind_name(place.kind)), draws=200))
    agrees = "would have said so" in line and "would not have" not in line
    assert agrees == (most == "first")
    assert f"number {1 if most == 'first' else len(order)} of {len(order)}" in line


def test_a_part_out_of_the_orders_says_nothing_of_them():
    [line] = broken_lines(_assessed(_broken("broke", "winch"), draws=0))
    assert "winch" in line
    assert "do not judge it" in line


def test_an_untested_order_says_so(answers):
    assert broken_lines(answers["wagtail"]) == [
        "Nothing on record has broken yet, so nothing has tested this order."
    ]


@pytest.mark.parametrize(
    ("said", "kind"),
    [
        ("U-joint", "cross_joint"),
        ("left wheel joint", "cross_joint"),
        ("panhard bar", "track_bar"),
        ("Track-bar bracket on the axle", "track_bar_bracket_axle"),
        ("half shaft", "inner_shaft"),
        ("axle tube", "tube"),
        ("joint of tube and centre", "tube_joint"),
        ("wheel bearing", "hub_bearing"),
        ("ball joint", "ball_joints"),
        ("wheel studs", "wheel_studs"),
        ("crown wheel", "ring_and_pinion"),
        ("spring pad", "spring_seat"),
        ("left end forging", "end_forging"),
    ],
)
def test_a_mechanics_word_finds_its_part(said, kind):
    kinds = {key.removesuffix("_left").removesuffix("_right") for key in consequences()}
    assert kinds_meant(said, sorted(kinds))[0] == kind


def test_a_severity_that_changes_the_first_part_is_told(answers):
    for answer in answers.values():
        told = " ".join(severity_lines(answer))
        for move in answer.severities:
            for end, kind in (("milder", move.leads_mild), ("harder", move.leads_hard)):
                if kind != move.leads:
                    assert f"is {end} than taken here" in told
                    assert case_name(move.case) in told
        leads = {move.leads for move in answer.severities}
        assert len(leads) == 1
        ends = {end for line in severity_lines(answer) for end in leads if kind_name(end) in line}
        assert not ends  # the part that leads anyway is never told as news


def test_what_is_worth_measuring_can_be_measured(answers):
    for answer in answers.values():
        for line in measure_next(answer, most=9):
            assert "judgement" not in line
            assert "?" in line


def test_a_change_tells_worse_better_mass_and_what_went(changed):
    told = change_lines(changed)
    heads = ["With heavier housing: ", "Worse: ", "Better: ", "Mass and clearance: "]
    assert all(line.startswith(head) for line, head in zip(told, heads, strict=False))
    went = next(line for line in told if line.startswith("Gone with what was replaced"))
    for path in ("tube.girth.left", "tube.girth.right", "track-bar bracket, mended"):
        assert path in went
    assert any("weigh both axles with the same parts" in line for line in told)
    assert any(line.startswith("NOT LOOKED AT: the new housing") for line in told)
    assert "hubs" in next(line for line in told if line.startswith("Taken over"))


def test_what_got_worse_is_told_as_plainly(heron):
    thin = 'axlewright_change = 1\nname = "thin tube"\n[[step]]\nset = "tube.wall"\nto = "4 mm"\n'
    worse, better = change_lines(compare(heron, [change_from_text(thin)], draws=200))[1:3]
    assert re.search(r"axle tube: gives in a moment \d+ % milder", worse)
    assert "axle tube" not in better


def test_mass_on_the_scale_is_told_like_for_like():
    weighed = _text("heron") + '\n[vehicle]\naxle_mass = "260 kg"\n'
    before = _assessed(weighed, draws=0)
    change = (EXAMPLES / "changes" / "heavier-housing.toml").read_text("utf-8")
    after = change_from_text(f'{change}vehicle.axle_mass = "311 kg"\n')
    told = change_lines(compare(before, [after], draws=0))
    assert "On the scale, the whole axle: 260 kg before, 311 kg after." in told


def test_a_heavier_housing_is_stronger_and_hangs_lower(changed):
    # More section is stronger (beam theory); a larger ring gear hangs lower (its radius).
    before = {place.kind: place for place in changed.before.order}
    for place in changed.after.order:
        if place.kind in {"tube", "tube_joint", "end_forging"}:
            assert place.margin > before[place.kind].margin
    ring = 0.5e3 * float(
        np.subtract(*(each.columns["ring_diameter"][0] for each in (changed.after, changed.before)))
    )
    line = next(line for line in change_lines(changed) if line.startswith("Mass and clearance"))
    assert f"the centre hangs {ring:.0f} mm lower" in line


def test_consequences_rule_the_words(heron):
    for row in order_rows(heron, most=40):
        lost = {"steering lost": "steering", "wheel lost": "wheel"}.get(
            consequence(row.key).what_then
        )
        if lost:
            assert f"lose the {lost}" in row.then


def test_without_draws_there_are_no_shares_and_no_spans():
    answer = _assessed(_text("heron"), draws=0)
    lines = answer_lines(answer)
    told = "\n".join(lines)
    assert "of draws" not in told
    assert "draws" not in sentence(answer)
    assert not re.search(r"\b([\d.,]+) to \1 ", told)
    assert "about " in order_rows(answer)[0].gives_at


@pytest.mark.parametrize(
    ("system", "ends", "told"),
    [
        ("metric", (0.37, 3.3), "37 to 330 cm"),
        ("metric", (1.1, 9.8), "1.1 to 9.8 m"),
        ("us", (0.254, 0.508), "10 to 20 in"),
        ("us", (1.524, 9.144), "5 to 30 ft"),
    ],
)
def test_a_drop_is_told_in_the_unit_that_fits_it(system, ends, told):
    # Definition of the inch: 0.0254 m.
    assert told in span_in_ground_terms("landing", ends, "length", {}, system)
