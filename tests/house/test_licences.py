"""What a user installs carries a licence that asks nothing of them."""

import re
import tomllib
from importlib.metadata import PackageNotFoundError, metadata

import pytest

from house.places import ROOT

ALLOWED = re.compile(r"\b(Apache|MIT|BSD|ISC|PSF|Python Software Foundation|MPL)", re.IGNORECASE)
BARRED = re.compile(r"\b(A?GPL|General Public License|proprietary)", re.IGNORECASE)
# Installed on one system only, so their papers cannot be read here: licence from the index page.
ELSEWHERE = {"colorama": "BSD-3-Clause"}
# The OpenBLAS inside the numeric wheels brings the GCC runtime, under the exception that frees it.
FREED = re.compile(r"GPL-3\.0(-or-later)?[ -]WITH[ -]GCC-exception-3\.1", re.IGNORECASE)


def runtime_packages():
    """Everything that comes with the package itself, walked through the lock."""
    packages = tomllib.loads((ROOT / "uv.lock").read_text("utf-8"))["package"]
    locked = {package["name"]: package for package in packages}
    found, to_do = set(), ["axlewright"]
    while to_do:
        for needed in locked[to_do.pop()].get("dependencies", []):
            if needed["name"] not in found:
                found.add(needed["name"])
                to_do.append(needed["name"])
    return sorted(found)


def licence(name):
    """The licence as the package's own papers state it, shortest statement first."""
    try:
        papers = metadata(name)
    except PackageNotFoundError:
        return ELSEWHERE[name]
    if papers.get("License-Expression"):
        return papers["License-Expression"]
    kinds = [c for c in papers.get_all("Classifier") or [] if c.startswith("License")]
    # A licence's whole text opens with its name.
    return "; ".join(kinds) or (papers.get("License") or "").strip()[:60]


def is_allowed(stated):
    """Whether a licence is on the list and nothing barred stands beside it."""
    stated = FREED.sub("", stated)
    return bool(ALLOWED.search(stated)) and not BARRED.search(stated)


@pytest.mark.parametrize("name", runtime_packages())
def test_a_runtime_package_is_freely_licensed(name):
    assert is_allowed(licence(name)), f"{name}: {licence(name)!r}"


@pytest.mark.parametrize("stated", ["GPL-3.0-only", "MIT AND AGPL-3.0-only", "", "Proprietary"])
def test_the_list_bars_what_it_should(stated):
    assert not is_allowed(stated)


def test_the_walk_reaches_what_comes_along():
    assert {"numpy", "llvmlite", "pygments"} <= set(runtime_packages())


def test_the_licence_is_whole():
    text = (ROOT / "LICENSE").read_text("utf-8")
    assert "Apache License" in text
    assert "Version 2.0, January 2004" in text
    assert "END OF TERMS AND CONDITIONS" in text
