"""The paper read back: what a person must find on it, in the order in which it must stand."""

import re
from dataclasses import replace
from io import BytesIO
from pathlib import Path

import pytest
from pypdf import PdfReader

from axlewright.report import assessment_report, questions_sheet
from axlewright.rig import load_change, load_rig, rig_from_text
from axlewright.rig.fields import FIRST_FIELDS
from axlewright.strength import assess_rig, compare
from axlewright.views.answer import order_rows, sentence, wear_rows
from axlewright.views.questions import how
from axlewright.views.report_words import CAUTIONS, flags_of, report_data, sheet_data

EXAMPLES = Path(__file__).parents[2] / "examples"
A4 = (595.28, 841.89)  # ISO 216, in points
CARRIED = {"LibertinusSerif", "DejaVuSansMono"}  # fonts inside the typesetter


def squeezed(text):
    """Text without blanks: where a line breaks is the typesetter's business."""
    return re.sub(r"\s+", "", text)


def read(pdf):
    reader = PdfReader(BytesIO(pdf))
    return reader, squeezed("".join(page.extract_text() for page in reader.pages))


@pytest.fixture(scope="module")
def heron():
    return assess_rig(load_rig(str(EXAMPLES / "rigs" / "heron.toml")), draws=64)


@pytest.fixture(scope="module")
def compared(heron):
    change = load_change(str(EXAMPLES / "changes" / "truss-and-gussets.toml"))
    return compare(heron, [change], draws=64)


@pytest.fixture(scope="module")
def stopped():
    text = (EXAMPLES / "rigs" / "wagtail.toml").read_text("utf-8")
    text = text.replace('"nothing mended, nothing hurts"', '"as listed"').replace(
        'name = "Wagtail"', 'name = "Wag*tail* #1 $x$ @home <b> \\\\ [a]"'
    )
    text += '\n[[condition]]\npart = "steering arm"\nwhere = "left"\nwhat = "cracked"\n'
    return assess_rig(rig_from_text(text + "date = 2026-05-03\n"), draws=64)


@pytest.fixture(scope="module")
def paper(compared):
    return assessment_report(report_data(compared))


def test_the_sentence_every_row_and_every_caution_are_on_the_paper(heron, paper):
    _, text = read(paper)
    assert squeezed(sentence(heron)) in text
    data = report_data(heron)
    for row in (*order_rows(heron), *wear_rows(heron, most=4)):
        for cell in (row.part, row.gives_at, row.then, row.beside, row.share):
            assert squeezed(cell) in text
    told = (*CAUTIONS, data.not_judged, data.rests, *data.next_to_measure, *data.moves)
    assert [line for line in (*told, *data.broken, *data.drive) if squeezed(line) not in text] == []
    for row in (*data.answers, *data.assumptions, *data.bases):
        assert squeezed(row.what) in text
        assert squeezed(row.value) in text
        assert squeezed(row.source) in text
    assert heron.rig.digest in text
    assert str(heron.drawn.seed) in text


def test_the_change_tells_what_got_worse_and_both_orders_after_it(compared, paper):
    _, text = read(paper)
    data = report_data(compared)
    assert any(line.startswith("Worse:") for line in data.change)
    assert any(line.startswith("Better:") for line in data.change)
    assert [line for line in data.change if squeezed(line) not in text] == []
    assert squeezed(sentence(compared.after)) in text
    for row in (*order_rows(compared.after), *wear_rows(compared.after, most=4)):
        assert squeezed(row.gives_at) in text
    assert text.index("Worse:") < text.index("Better:")


def test_a_stop_comes_before_everything_and_the_order_stands_greyed_behind(stopped, paper):
    pdf = assessment_report(report_data(stopped))
    reader, text = read(pdf)
    assert text.startswith("STOP.Donotdrive.")
    assert text.index("steeringarm(left),cracked,2026-05-03") < text.index(
        squeezed(sentence(stopped))
    )
    # The grey of the order behind a stop: 0x59 of 0xff, set as an ink on the first page.
    grey = rb"0\.349\d* 0\.349\d* 0\.349\d*"
    ink = reader.pages[0].get_contents().get_data()
    calm = PdfReader(BytesIO(paper)).pages[0].get_contents().get_data()
    assert len(re.findall(grey, ink)) > 5 * len(re.findall(grey, calm))
    assert "STOP" not in read(paper)[1]


def test_text_of_a_rig_is_text_and_never_a_command(stopped):
    _, text = read(assessment_report(report_data(stopped)))
    assert squeezed("Wag*tail* #1 $x$ @home <b> \\ [a]: front axle") in text


def test_an_empty_list_leaves_no_heading_behind(heron):
    bare = replace(report_data(heron), assumptions=(), broken=(), drive=(), next_to_measure=())
    _, text = read(assessment_report(bare))
    assert squeezed(sentence(heron)) in text
    assert "MayIdrive" not in text
    assert "Whathasbrokenalready" not in text
    assert "Whatstandsinfortherest" not in text
    assert "Thechange" not in text


@pytest.mark.parametrize("system", ["metric", "us"])
def test_the_paper_is_two_to_four_sheets_of_a4(heron, compared, system):
    for answer in (heron, compared):
        reader, _ = read(assessment_report(report_data(answer, system)))
        assert 2 <= len(reader.pages) <= 4
        for page in reader.pages:
            size = tuple(sorted((float(page.mediabox.width), float(page.mediabox.height))))
            assert size == pytest.approx(A4, abs=0.1)


CHANGES = sorted((EXAMPLES / "changes").glob("*.toml"))


@pytest.mark.parametrize("change", CHANGES, ids=lambda path: path.stem)
def test_no_sheet_is_spent_on_a_line_or_two(heron, change):
    compared = compare(heron, [load_change(str(change))], draws=64)
    reader, _ = read(assessment_report(report_data(compared, "us")))
    *pages, drawing = (page.extract_text() for page in reader.pages)
    assert len(pages) == 3
    assert min(map(len, pages)) > 2000
    assert "This axle, to scale" in drawing


def test_gears_that_disagree_stand_on_the_first_sheet(heron):
    # common practice, no source: front and rear must turn alike before anything is locked
    text = (EXAMPLES / "rigs" / "heron.toml").read_text("utf-8")
    text = text.replace('ratio = "4.56"', 'ratio = "4.56"\nother_ratio = "4.10"')
    assessment = assess_rig(rig_from_text(text), draws=64)
    data = report_data(assessment)
    [line] = data.mismatch
    reader, told = read(assessment_report(data))
    assert "11.2 % apart" in line
    assert squeezed(line) in squeezed(reader.pages[0].extract_text())
    assert [each for each in data.gearing if squeezed(each) not in told] == []
    assert data.gearing[0].startswith("Gearing: crawl")
    assert report_data(heron).mismatch == ()


def test_what_a_reading_may_be_off_by_has_no_exponent(heron):
    told = " ".join(row.value for row in report_data(heron, "us").answers)
    assert "give or take 110 lb" in told
    assert not re.search(r"\de[+-]\d", told)


def test_the_reader_with_a_screen_reader_is_served(paper):
    # PDF/UA-1, ISO 14289-1: tagged, titled, language set, the title shown, the part declared.
    reader, _ = read(paper)
    root = reader.trailer["/Root"]
    assert root["/MarkInfo"]["/Marked"]
    assert root["/Lang"] == "en"
    assert root["/ViewerPreferences"]["/DisplayDocTitle"]
    assert reader.metadata.title == "Heron: front axle"
    assert b"pdfuaid:part>1<" in root["/Metadata"].get_data()
    kinds = [each["/S"] for each in tags(root["/StructTreeRoot"])]
    assert kinds.count("/Figure") == 2
    assert {"/H1", "/H2", "/Table", "/TH"} <= set(kinds)
    alts = [each["/Alt"] for each in tags(root["/StructTreeRoot"]) if each["/S"] == "/Figure"]
    assert all("Flag 1:" in alt and "Flag 5:" in alt for alt in alts)


def tags(node):
    """Every element of the structure tree."""
    node = node.get_object()
    if isinstance(node, list):
        for each in node:
            yield from tags(each)
    elif hasattr(node, "get"):
        if "/S" in node:
            yield node
        if "/K" in node:
            yield from tags(node["/K"])


def test_nothing_is_fetched_and_no_font_of_the_machine_is_used(paper):
    reader, text = read(paper)
    fonts = set()
    for page in reader.pages:
        assert "/Annots" not in page or all(
            "/A" not in each.get_object() or "/URI" not in each.get_object()["/A"]
            for each in page["/Annots"]
        )
        for font in page["/Resources"].get("/Font", {}).values():
            name = (
                font.get_object()["/BaseFont"].partition("+")[2] or font.get_object()["/BaseFont"]
            )
            fonts.add(name.split("-")[0])
    assert fonts
    assert fonts <= CARRIED
    assert "http" not in text


def test_the_same_words_give_the_same_bytes(compared, paper):
    assert assessment_report(report_data(compared)) == paper


def test_flags_of_twins_name_no_side(heron):
    for flag, place in zip(flags_of(heron), heron.order, strict=False):
        assert flag.part == (place.kind if place.side == "either" else place.part)


@pytest.mark.parametrize("axle", ["front", "rear"])
def test_the_sheet_asks_all_thirteen_questions(axle):
    reader, text = read(questions_sheet(sheet_data(axle)))
    assert 1 <= len(reader.pages) <= 3
    asked = [field for field in FIRST_FIELDS if field.axle in {"both", axle}]
    for field in asked:
        assert squeezed(field.asks) in text
        assert squeezed(how(field, paper=True)) in text
        for choice in field.choices:
            assert squeezed(choice) in text
    assert "[[" not in text, "paper has no file"
    assert (squeezed("Can the hubs be unlocked?") in text) == (axle == "front")
    numbers = {question.number for question in sheet_data(axle).questions}
    assert numbers == set(range(1, 14))
    assert squeezed("Stand beside the vehicle, not under it") in text
    assert reader.metadata.title == f"Thirteen questions about one {axle} axle"


def test_the_sheet_draws_the_axle_that_it_asks_about():
    front, rear = sheet_data("front"), sheet_data("rear")
    assert "knuckle" in front.picture
    assert "knuckle" not in rear.picture
    assert "A usual rear axle" in rear.picture_words
