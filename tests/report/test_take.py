"""The take-along file without a browser: what it holds, what it must not, and its paper."""

import datetime as dt
import html
import re
from io import BytesIO
from pathlib import Path

import pytest
from pypdf import PdfReader

from axlewright.actions import carrying_of, take_html, take_pdf
from axlewright.rig import load_rig, rig_from_text
from axlewright.strength import assess_rig
from axlewright.tables import look_stops
from axlewright.upkeep import wanted_looks
from axlewright.views import sentence, take_data

EXAMPLES = Path(__file__).parents[2] / "examples"
DAY = dt.date(2026, 6, 1)
RIGS = ("heron", "wagtail", "stork-rear")
A4 = (595.28, 841.89)  # ISO 216, in points


def squeezed(text):
    """Text without blanks: where a line breaks is nobody's business."""
    return re.sub(r"\s+", "", text)


def words_of(page):
    """Visible text of a page, tags, styles and script taken out."""
    bare = re.sub(r"<(style|script)\b.*?</\1>", "", page.decode(), flags=re.DOTALL)
    return squeezed(html.unescape(re.sub(r"<[^>]+>", " ", bare)))


def read(pdf):
    reader = PdfReader(BytesIO(pdf))
    return reader, squeezed("".join(page.extract_text() for page in reader.pages))


@pytest.fixture(scope="module", params=RIGS)
def rig(request):
    return assess_rig(load_rig(str(EXAMPLES / "rigs" / f"{request.param}.toml")), draws=64)


@pytest.fixture(scope="module")
def page(rig):
    return take_html(rig, made=DAY)


@pytest.fixture(scope="module")
def stopped():
    text = (EXAMPLES / "rigs" / "wagtail.toml").read_text("utf-8")
    text = text.replace('"nothing mended, nothing hurts"', '"as listed"').replace(
        'name = "Wagtail"', 'name = "Wag*tail* #1 $x$ {{ 7 * 7 }} <script>alert(1)</script> \\"&"'
    )
    text += '\n[[condition]]\npart = "steering arm"\nwhere = "left"\nwhat = "cracked"\n'
    return assess_rig(rig_from_text(text + "date = 2026-05-03\n"), draws=64)


def test_it_is_small(page):
    assert len(page) <= 400_000


def test_it_asks_for_nothing_else(page):
    text = page.decode()
    assert not re.findall(r"\b(?:src|srcset|action|poster|data)=", text)
    assert set(re.findall(r'\bhref="([^"]*)"', text)) <= {
        "data:,",
        *(f"#{place}" for place in re.findall(r'\bid="([^"]*)"', text)),
    }
    assert not re.findall(
        r"@import|url\((?!#)|<iframe|<object|<embed|fetch\(|XMLHttp|import\(", text
    )
    addresses = set(re.findall(r"https?://[^\s\"'<]+", text))
    assert addresses <= {"http://www.w3.org/2000/svg"}  # the name of SVG, no address
    assert "default-src 'none'" in text


def test_ids_are_there_once(page):
    ids = re.findall(r'\bid="([^"]*)"', page.decode())
    assert len(ids) == len(set(ids))


def test_every_line_is_on_the_page_and_on_the_paper(rig, page):
    data = take_data(rig, carrying_of(rig), DAY)
    on_page, (_, on_paper) = words_of(page), read(take_pdf(rig, made=DAY))
    told = [
        *data.stop_list,
        *(text for look in data.looks for text in (look.title, look.how, look.stop, look.fix)),
        *(text for look in data.looks for text in (look.watch, look.go)),
        *data.before_driving,
        *(row.wheel for item in data.arithmetic.rods for row in item.rows),
        *(text for pair in data.arithmetic.beyond for text in pair),
        *(line.what for line in data.torques),
        *(line.range for line in data.torques),
        *(row.length for row in data.toe.rows),
        *(item.label for item in (*data.least, *data.more)),
        *(card.title for card in data.cards),
        *(text for card in data.cards for text in (card.after, card.next_look, card.never)),
        *(text for card in data.cards for step in card.steps for text in (step.do, step.caution)),
        *(row.gives_at for row in data.limits.gives),
        *(row.value for row in data.limits.play),
        *(row.scope for row in data.limits.play),
        *(row.source for row in data.limits.play),
        *data.limits.weight,
        *data.cautions,
        data.not_judged,
        data.rests,
        *(row.value for row in data.origin),
        DAY.isoformat(),
        rig.rig.digest,
        sentence(rig),
    ]
    assert [line for line in told if squeezed(line) not in on_page] == []
    assert [line for line in told if squeezed(line) not in on_paper] == []


def test_the_lists_are_those_of_the_page_of_looks_and_of_its_ground(rig):
    asked = {"water", rig.rig.words["use.hardest"].replace(" ", "_")}
    for met in (asked, {*asked, "speed_and_jumps"}):
        data = take_data(rig, carrying_of(rig), DAY, met=met)
        on_page = words_of(take_html(rig, made=DAY, met=met))
        on_paper = read(take_pdf(rig, made=DAY, met=met))[1]
        assert [each.key for each in data.lists] == ["before_trip", "after_trip", "apart", "buying"]
        for listed in data.lists:
            wanted = wanted_looks(listed.key, rig.rig.axle, rig.rig.words, met)
            assert [each.key for each in listed.looks] == [each.key for each in wanted]
            for look, ours in zip(listed.looks, wanted, strict=True):
                assert (look.title, look.stop) == (ours.title, ours.ends["stop"])
                told = (look.title, look.how, look.stop, look.fix, look.watch, look.go)
                assert all(squeezed(line) in on_page for line in told)
                assert not listed.printed or all(squeezed(line) in on_paper for line in told)


def test_what_stops_comes_before_everything_else(rig, page):
    text = words_of(page)
    first = min(
        text.index(squeezed(stop.words))
        for stop in look_stops().values()
        if stop.axle in {rig.rig.axle, "both"}
    )
    last = text.index(squeezed("Stop where it is safe, engine off"))
    assert first < last < text.index(squeezed(sentence(rig)))


def test_a_reported_stop_replaces_the_fold_on_page_and_paper(stopped):
    page = take_html(stopped, made=DAY).decode()
    body = page[page.index("<body>") :]
    assert re.sub(r"<[^>]+>", "", re.search(r"<h1.*?</h1>", body)[0]) == "STOP. Do not drive."
    assert body.index('class="stop fold"') < body.index("<header>") < body.index("<main")
    assert re.search(r'<section aria-labelledby="limits" class="behind">', body)
    assert page.count("<h1") == 1
    reader, text = read(take_pdf(stopped, made=DAY))
    first = squeezed(reader.pages[0].extract_text())
    assert first.startswith("STOP.Donotdrive.")
    assert first.index("steeringarm") < first.index("totakealong")
    assert text.index("STOP.Donotdrive.") < text.index(squeezed(sentence(stopped)))


def test_a_rigs_name_is_text_and_nothing_more(stopped):
    page = take_html(stopped, made=DAY).decode()
    assert page.count("<script>") == 1
    assert "{{ 7 * 7 }} &lt;script&gt;" in page
    assert squeezed("Wag*tail* #1 $x$ {{ 7 * 7 }} <script>") in read(take_pdf(stopped))[1]


@pytest.mark.parametrize("system", ["metric", "us", "mixed"])
def test_the_paper_is_tagged_titled_and_few_sheets(rig, system):
    reader, text = read(take_pdf(rig, system, DAY))
    assert 4 <= len(reader.pages) <= 13
    for sheet in reader.pages:
        size = tuple(sorted((float(sheet.mediabox.width), float(sheet.mediabox.height))))
        assert size == pytest.approx(A4, abs=0.1)
    root = reader.trailer["/Root"]
    assert root["/MarkInfo"]["/Marked"]
    assert root["/Lang"] == "en"
    assert b"pdfuaid:part>1<" in root["/Metadata"].get_data()
    assert reader.metadata.title.endswith("to take along")
    assert "http" not in text


def test_the_same_rig_and_day_give_the_same_bytes(rig, page):
    assert take_html(rig, made=DAY) == page
    assert take_pdf(rig, made=DAY) == take_pdf(rig, made=DAY)


def test_without_a_date_it_is_made_today(rig):
    assert f"Made on {dt.datetime.now().astimezone().date()}" in take_html(rig).decode()
