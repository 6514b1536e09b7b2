"""The answer, why, try a change, paper: in process, as a browser without script meets them."""

import json
import re

import pytest

from axlewright.views import PAPERS

CRACK = {"part": "steering arm", "what": "cracked", "where": "left"}
HEAVIER = {"weight.axle": "1700", "name": "roof tent"}
THICKER = {"tube.wall": "9.0", "name": "thicker wall"}


@pytest.fixture
def slug(visitor):
    return visitor.post("/copy", {"example": "heron"}).headers["location"].rpartition("/")[2]


@pytest.fixture
def begun(visitor):
    answer = visitor.post("/begin", {"name": "Heron", "axle": "rear"})
    return answer.headers["location"].rpartition("/")[2]


def plain(text):
    return " ".join(re.sub(r"<[^>]+>", " ", text).split())


def test_the_answer_says_the_sentence_both_orders_and_what_to_measure(visitor, bay, slug):
    from axlewright.views import sentence

    page = visitor.get(f"/axle/{slug}/answer").text
    told = plain(page)
    assert sentence(bay.assessment(slug)) in told
    for head in ("May I drive?", "In one bad moment", "Wearing out", "Worth ten minutes"):
        assert head in told
    assert told.index("May I drive?") < told.index(sentence(bay.assessment(slug)))
    assert "Not judged" in told


def test_everything_in_the_drawing_leads_somewhere_on_the_page(visitor, slug):
    page = visitor.get(f"/axle/{slug}/answer").text
    ids = re.findall(r'\bid="([^"]+)"', page)
    assert len(ids) == len(set(ids))
    targets = set(re.findall(r'href="#([^"]+)"', page))
    assert len(targets) > 20
    assert targets <= set(ids)


def test_before_the_thirteen_there_is_no_answer_and_the_page_says_so(visitor, begun):
    for tail in ("/answer", "/try"):
        page = visitor.get(f"/axle/{begun}{tail}")
        assert page.status_code == 200
        assert "still open" in page.text
        assert f'href="/axle/{begun}"' in page.text
    assert "After the thirteen questions" in visitor.get(f"/axle/{begun}/paper").text
    for tail in ("/why/1", "/answer.json", "/paper/report.pdf", "/take.html", "/paper/take.pdf"):
        assert visitor.get(f"/axle/{begun}{tail}").status_code == 404, tail
    assert visitor.get(f"/axle/{begun}/paper/sheet.pdf").content.startswith(b"%PDF")
    assert visitor.get(f"/axle/{begun}/try/now?tube.wall=9").status_code == 422


@pytest.mark.parametrize("tail", ["/answer", "/why/1", "/try", "/paper"])
def test_a_stop_replaces_everything_above_the_fold(visitor, slug, tail):
    # A rule of the house: a reported STOP stands before everything, the order greyed behind it.
    assert 'class="stop"' not in visitor.get(f"/axle/{slug}{tail}").text
    visitor.post(f"/axle/{slug}/list", CRACK)
    page = visitor.get(f"/axle/{slug}{tail}").text
    main = page[page.index("<main") :]
    assert 'class="stop"' in main
    assert "steering arm" in main[main.index('class="stop"') : main.index("</section>")]
    assert main.index('class="stop"') < main.index("<h1")
    if tail != "/paper":
        assert main.index('class="behind') > main.index('class="stop"')


def test_why_names_formula_and_source(visitor, bay, slug):
    first = bay.assessment(slug).order[0]
    basis = bay.assessment(slug).point.solved.rows[first.row].basis
    assert basis in plain(visitor.get(f"/axle/{slug}/why/1").text).replace("&#39;", "'")
    assert visitor.get(f"/axle/{slug}/why/0").status_code == 404
    assert visitor.get(f"/axle/{slug}/why/99").status_code == 404
    assert visitor.get(f"/axle/{slug}/why/one").status_code == 404


def test_values_in_the_address_are_tried_without_script(visitor, slug):
    page = visitor.get(f"/axle/{slug}/try?tube.wall=9.0").text
    told = plain(page)
    assert 'value="9.0"' in page
    assert "Worse" in told
    assert "△ better:" in told
    assert "axle tube" in told[told.index("Better") :]


def test_what_is_tried_changes_nothing_on_the_axle(visitor, bay, slug):
    before, number = bay.text(slug), bay.last_entry(slug)
    visitor.get(f"/axle/{slug}/try?tube.wall=9.0&weight.axle=2000")
    visitor.get(f"/axle/{slug}/try/now?tube.wall=9.0&bands=1")
    assert (bay.text(slug), bay.last_entry(slug)) == (before, number)


def test_the_piece_that_follows_the_thumb_is_the_pages_own(visitor, slug):
    piece = visitor.get(f"/axle/{slug}/try/now?tube.wall=9.0").text
    assert "<html" not in piece
    assert piece.count('id="outcome"') == 1
    assert piece.strip() in visitor.get(f"/axle/{slug}/try?tube.wall=9.0").text
    drawn = visitor.get(f"/axle/{slug}/try/now?tube.wall=9.0&bands=1").text
    assert "nine draws in ten" in drawn
    assert "nine draws in ten" not in piece


@pytest.mark.parametrize(
    ("path", "value"),
    [("tube.wall", "x"), ("tube.wall", "-4"), ("tyre.sidewall", "<b>"), ("tube.outer", "900")],
)
def test_what_cannot_be_is_told_and_never_a_bug(visitor, slug, path, value):
    answer = visitor.get(f"/axle/{slug}/try/now", params={path: value})
    assert answer.status_code in {200, 422}
    assert "That cannot be" in answer.text
    assert "<b>" not in answer.text.replace("<b>That cannot be.</b>", "")
    assert visitor.post(f"/axle/{slug}/try/keep", {path: value}).status_code == 422


def test_changes_kept_are_laid_side_by_side_and_let_go(visitor, bay, slug):
    for fields in (HEAVIER, THICKER):
        answer = visitor.post(f"/axle/{slug}/try/keep", fields)
        assert answer.headers["location"] == f"/axle/{slug}/try#kept"
    page = visitor.get(f"/axle/{slug}/try").text
    told = plain(page[page.index('id="kept"') :])
    heads = re.findall(r'<th scope="col">([^<]+)</th>', page[page.index('id="kept"') :])
    assert heads == ["Part", "As it is", "thicker wall", "roof tent"]
    assert "▼ worse:" in told
    assert "△ better:" in told
    (roof, wall) = bay.changes(slug)
    assert (roof.name, wall.name) == ("roof tent", "thicker wall")
    visitor.post(f"/axle/{slug}/try/let-go", {"number": str(roof.number)})
    assert [one.name for one in bay.changes(slug)] == ["thicker wall"]
    assert visitor.post(f"/axle/{slug}/try/let-go", {"number": "7"}).status_code in {404, 422}
    assert visitor.post(f"/axle/{slug}/try/let-go", {"number": "x"}).status_code == 422


def test_nothing_moved_is_nothing_to_keep(visitor, bay, slug):
    assert visitor.post(f"/axle/{slug}/try/keep", {"name": "air"}).status_code == 422
    assert not bay.changes(slug)


def test_a_kept_change_that_no_longer_fits_says_so(visitor, bay, slug):
    visitor.post(f"/axle/{slug}/try/keep", {"tube.wall": "9.4", "name": "wall"})
    for side in ("left", "right"):  # a tube that such a wall would fill
        visitor.say(slug, f"tube.girth.{side}", "150 mm")
    page = visitor.get(f"/axle/{slug}/try")
    assert page.status_code == 200
    assert "wall" in page.text


def test_a_name_of_a_change_is_never_markup(visitor, slug):
    visitor.post(f"/axle/{slug}/try/keep", {**THICKER, "name": "<script>alert(1)</script>"})
    for tail in ("/try", "/paper", "/answer"):
        page = visitor.get(f"/axle/{slug}{tail}").text
        assert "<script>alert" not in page
        assert "&lt;script&gt;" in page


def test_papers_are_files_to_save(visitor, slug):
    page = visitor.get(f"/axle/{slug}/paper").text
    kinds = {"pdf": b"%PDF", "json": b"{", "toml": b"#", "html": b"<!"}
    tails = re.findall(rf'href="/axle/{slug}(/[a-z./-]+)" download', page)
    assert len(tails) == len(PAPERS)
    for tail in tails:
        answer = visitor.get(f"/axle/{slug}{tail}")
        assert answer.status_code == 200
        assert "attachment" in answer.headers["content-disposition"]
        start = kinds[tail.rpartition(".")[2]]
        assert answer.content.lstrip().startswith(start)
    answer = json.loads(visitor.get(f"/axle/{slug}/answer.json").content)
    assert answer["axlewright_answer"] >= 1


def test_a_report_stands_beside_a_kept_change(visitor, bay, slug):
    visitor.post(f"/axle/{slug}/try/keep", THICKER)
    (kept,) = bay.changes(slug)
    plain_report = visitor.get(f"/axle/{slug}/paper/report.pdf").content
    beside = visitor.get(f"/axle/{slug}/paper/report.pdf?change={kept.number}").content
    assert beside.startswith(b"%PDF")
    assert len(beside) > len(plain_report)
    assert visitor.get(f"/axle/{slug}/paper/report.pdf?change=999").status_code == 404
