"""One page lists the names that physics signatures may use, with unit and sign."""

from typing import get_type_hints

import pytest
from tools.glossary import entries, in_words

from house.formulas import public_functions, unit

GLOSSARY = entries()


def test_the_glossary_is_in_order_and_complete():
    names = [entry.name for entry in GLOSSARY.values()]
    assert names == sorted(names)
    assert not [e.name for e in GLOSSARY.values() if len(e.meaning) < 3 or not e.units]


@pytest.mark.parametrize("name", sorted(public_functions()))
def test_signature_speaks_the_words_of_the_glossary(name):
    hints = get_type_hints(public_functions()[name], include_extras=True)
    hints.pop("return", None)
    missing = sorted(set(hints) - set(GLOSSARY))
    assert not missing, f"{missing}: see tools/glossary.py"
    for parameter, hint in hints.items():
        if (mark := unit(hint)) is not None:
            assert in_words(mark) in GLOSSARY[parameter].units, parameter
