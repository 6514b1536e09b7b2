"""Models of the pages: every row, reason and lever says what the studies say, in words."""

from dataclasses import replace
from pathlib import Path

import pytest

from axlewright.rig import (
    change_from_text,
    load_change,
    load_rig,
    parse_tyre,
    rig_from_text,
)
from axlewright.strength import assess_rig, compare
from axlewright.views import (
    PAPERS,
    answer_page,
    change_words,
    lever_groups,
    order_rows,
    side_by_side,
    tried_values,
    why_page,
)
from axlewright.views.page_answer import LINKED
from axlewright.views.page_levers import GROUPS, SIZES

EXAMPLES = Path(__file__).parents[2] / "examples"


def rig_of(name="heron"):
    return load_rig(str(EXAMPLES / "rigs" / f"{name}.toml"))


@pytest.fixture(scope="module")
def heron():
    return assess_rig(rig_of(), draws=60)


@pytest.fixture(scope="module")
def thicker(heron):
    text = 'axlewright_change = 1\nname = "thicker"\n[[step]]\nset = "tube.wall"\nto = "9 mm"\n'
    return compare(heron, [change_from_text(text)], draws=60)


def test_every_part_that_can_be_tapped_is_told_of(heron):
    page = answer_page(heron)
    wanted = {f"part-{place}" for place in LINKED.findall(page.picture.svg)}
    assert wanted == {part.ident for part in page.parts}
    assert {row.ident for row in (*page.moment, *page.wearing)} <= wanted
    ranked = [part.rank for part in page.parts if part.rank]
    assert ranked == sorted(ranked)


def test_a_part_without_data_is_not_judged_and_never_friendly(heron):
    # A rule of the house: a part with no data is "not judged", never friendly and never empty.
    known = {place.kind for place in heron.order} | {worn.kind for worn in heron.wearing}
    for part in answer_page(heron).parts:
        kind = part.ident.removeprefix("part-").replace("-", "_")
        assert all(part.lines)
        if kind not in known:
            assert "not judged" in part.lines[0].casefold()
            assert "not good news" in part.lines[0]


def test_rows_are_those_of_the_order_and_never_mix_the_two(heron):
    page = answer_page(heron)
    assert [row.part for row in page.moment] == [row.part for row in order_rows(heron)]
    assert all(row.state in {"over", "close", "near", "room"} for row in page.moment)
    assert all(row.close for row in page.moment)
    assert not any(row.state for row in page.wearing)


def test_a_stop_stands_apart_from_every_look(heron):
    condition = replace(rig_of().conditions[0], part="steering arm", where="left", what="cracked")
    rig = replace(rig_of(), conditions=(condition,))
    page = answer_page(assess_rig(rig, draws=20))
    assert len(page.stops) == 1
    assert page.stops[0].startswith("STOP")
    assert page.stops[0] not in page.drive
    assert not answer_page(heron).stops


def test_why_goes_down_to_formula_and_source(heron):
    for rank in range(1, len(heron.order) + 1):
        page = why_page(heron, rank)
        place = heron.order[rank - 1]
        rows = [row for row in heron.point.solved.rows if row.part == place.part]
        assert [check.basis for check in page.checks] == [row.basis for row in rows]
        assert all(check.demand and check.holds and check.used for check in page.checks)
        assert all(one.source for one in page.movers)
    assert why_page(heron, 1).movers


def test_a_change_tells_worse_beside_better(heron, thicker):
    rows = side_by_side(heron, [thicker])
    ways = {row.ident: row.cells[0].way for row in rows}
    assert ways["part-tube"] == "better"  # more wall, more plastic moment
    assert ways["part-inner-shaft"] == "same"  # no tube is in a shaft's check
    tube = next(row for row in rows if row.ident == "part-tube")
    now, then = (
        next(place.margin for place in each.order if place.kind == "tube")
        for each in (heron, thicker.after)
    )
    assert tube.cells[0].moved == f"{100.0 * (then / now - 1.0):.0f} % more"
    words = change_words(thicker)
    assert words.name == "thicker"
    assert any("axle tube" in line for line in words.better)


def test_side_by_side_leads_with_what_gives_first_now(heron, thicker):
    rows = side_by_side(heron, [thicker, thicker])
    margin = {place.kind: place.margin for place in heron.order}
    kinds = [row.ident.removeprefix("part-").replace("-", "_") for row in rows]
    assert [margin[kind] for kind in kinds] == sorted(margin[kind] for kind in kinds)
    assert all(len(row.cells) == 2 for row in rows)
    assert all(row.cells[0] == row.cells[1] for row in rows)


def test_a_middle_value_is_not_told_as_a_span():
    point = assess_rig(rig_of(), draws=0)
    for row in side_by_side(point, []):
        told = row.now.split()
        for before, word, after in zip(told, told[1:], told[2:], strict=False):
            assert not (word == "to" and before == after), row.now


@pytest.mark.parametrize("system", ["metric", "us", "mixed"])
@pytest.mark.parametrize("name", ["heron", "stork-rear"])
def test_levers_that_stand_still_change_nothing(name, system):
    assessed = assess_rig(rig_of(name), draws=0)
    groups = lever_groups(assessed.rig, assessed.columns, system, "37x12.50R17LT 124Q")
    assert [group.title for group in groups] == list(GROUPS)
    still = {lever.path: lever.was for group in groups for lever in group.levers}
    assert tried_values(groups, still) == {}
    assert tried_values(groups, {}) == {}
    for group in groups:
        for lever in group.levers:
            if lever.step:
                assert float(lever.low) <= float(lever.was) <= float(lever.high)
                assert float(lever.low) < float(lever.high)
            else:
                assert lever.was in lever.choices


@pytest.mark.parametrize("system", ["metric", "us"])
@pytest.mark.parametrize("name", ["heron", "stork-rear"])
def test_every_lever_at_either_end_can_be_read_and_tried(name, system):
    before = assess_rig(rig_of(name), draws=0)
    groups = lever_groups(before.rig, before.columns, system, "37x12.50R17LT 124Q")
    tried = 0
    for lever in (each for group in groups for each in group.levers):
        ends = (lever.low, lever.high) if lever.step else lever.choices[1:3]
        for end in ends:
            values = tried_values(groups, {lever.path: end})
            if lever.path == "tyre.sidewall" or not values:
                continue  # its hubs come along in the action
            steps = "".join(f'[[step]]\nset = "{p}"\nto = "{t}"\n' for p, t in values.items())
            change = change_from_text(f'axlewright_change = 1\nname = "try"\n{steps}')
            assert [step.path for step in change.steps] == [lever.path]
            tried += 1
    assert tried > 15


def test_common_sizes_read_as_sizes():
    heights = [parse_tyre(size).outer_diameter for size in SIZES]
    assert 0.75 < min(heights) < max(heights) < 1.05


def test_an_unreadable_value_is_handed_on_as_typed():
    before = assess_rig(rig_of(), draws=0)
    groups = lever_groups(before.rig, before.columns, "metric", "37x12.50R17LT 124Q")
    assert tried_values(groups, {"tube.wall": "much"}) == {"tube.wall": "much"}
    assert tried_values(groups, {"nothing.known": "1"}) == {}


def test_a_kept_file_of_a_change_reads_like_the_examples():
    heron = assess_rig(rig_of(), draws=0)
    change = load_change(str(EXAMPLES / "changes" / "smaller-tyres.toml"))
    words = change_words(compare(heron, [change], draws=0))
    assert words.worse or words.better
    assert words.brief.startswith("First: ")


def test_papers_lie_under_addresses_of_the_axle():
    assert len({paper.tail for paper in PAPERS}) == len(PAPERS)
    assert all(paper.tail.startswith("/") and paper.says for paper in PAPERS)


def test_gears_that_disagree_stand_above_the_answer():
    # common practice, no source: front and rear must turn alike before anything is locked
    text = Path("examples/rigs/heron.toml").read_text("utf-8")
    text = text.replace('ratio = "4.56"', 'ratio = "4.56"\nother_ratio = "4.10"')
    page = answer_page(assess_rig(rig_from_text(text), draws=0))
    [line] = page.mismatch
    assert line.startswith("FRONT AND REAR DISAGREE")
    assert line not in page.gearing
