"""What docstrings cite under "References", and which of it names a source."""

import ast
import re
from functools import cache

from house.places import MODULES, brief

SECTION = re.compile(r"^References\n-+\n(.*?)(?:\n\n|\Z)", re.MULTILINE | re.DOTALL)
# A key is small letters, a digit or a hyphen in it somewhere; a reference opens with one, or with
# a plain word that says the formula needs no book.
KEY = re.compile(r"(?<![\w*^-])[a-z][a-z0-9]*(?:[-.][a-z0-9]+)*(?![\w*^])")
OWN = {
    "coulomb",  # friction
    "definition",
    "derived",
    "energy",
    "geometry",
    "parallel-axis",  # theorem
    "residual",  # another formula of the same module
    "statics",
    "statistics",
    "truck",  # a design rule, from memory
}


@cache
def references():
    """Each reference of each docstring, on one line, with where it stands."""
    found = []
    for path in MODULES:
        text = path.read_text("utf-8")
        if not re.search(r"^ *References$", text, re.MULTILINE):
            continue
        for node in ast.walk(ast.parse(text)):
            if isinstance(node, ast.Module | ast.ClassDef | ast.FunctionDef):
                for section in SECTION.findall(ast.get_docstring(node) or ""):
                    where = f"{brief(path)}: {getattr(node, 'name', 'module')}"
                    found.append((where, " ".join(section.split())))
    return tuple(found)


def keys(reference):
    """The names of sources in one reference: what opens it, and what has letters and a number."""
    whole, *parts = re.split(r"; | with ", reference)
    openings = [part.split()[0].strip(":,.") for part in [whole, *parts]]
    named = {openings[0], *(word for word in openings[1:] if re.search(r"[-\d]", word))}
    for word in reference.split()[1:]:
        bare = word.strip("():,.;")
        if re.search(r"^[a-z]{2,}[-.]?\d", bare) and KEY.fullmatch(bare):
            named.add(bare)
    return {word for word in named if word not in OWN and not word.startswith("``")}
