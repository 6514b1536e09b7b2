"""A source that a docstring cites is one that can be found."""

import pytest

from axlewright.tables import sources
from house.citations import OWN, keys, references


@pytest.mark.parametrize("reference", sorted({text for _, text in references()}))
def test_what_a_docstring_cites_stands_among_the_sources(reference):
    where = [place for place, text in references() if text == reference]
    unknown = {key for key in keys(reference) if key not in sources()}
    assert not unknown, f"{where[0]} cites {unknown}: add it to tables/data/sources.toml"


def test_the_formulas_cite_something():
    assert len(references()) > 100
    cited = set().union(*(keys(text) for _, text in references()))
    assert {"budynas9", "iso281", "en1993-1-9", "gillespie1992"} <= cited


@pytest.mark.parametrize(
    ("reference", "named"),
    [
        ("nobody1999, ch. 3", {"nobody1999"}),
        ("agma2003-b97, as in budynas9 eq. 15-3", {"agma2003-b97", "budynas9"}),
        ("sae-j429; asme-b1.1", {"sae-j429", "asme-b1.1"}),
        ("statics", set()),
        ("Smith, a book", {"Smith"}),
    ],
)
def test_the_search_finds_a_key(reference, named):
    assert keys(reference) == named


def test_a_plain_word_is_in_use():
    openings = {part.strip(":,.") for _, text in references() for part in text.split()}
    assert not OWN - openings
