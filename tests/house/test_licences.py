"""What a user installs, and what the gate runs, carries a licence that asks nothing of them."""

import re
import tomllib
from importlib.metadata import PackageNotFoundError, distribution, metadata

import pytest

from house.places import ROOT

ALLOWED = re.compile(r"\b(Apache|MIT|BSD|ISC|PSF|Python Software Foundation|MPL)", re.IGNORECASE)
BARRED = re.compile(r"\b(A?GPL|General Public License|proprietary)", re.IGNORECASE)
# Installed on one system only, so their papers cannot be read here: licence from the index page.
ELSEWHERE = {"colorama": "BSD-3-Clause"}
# The OpenBLAS inside the numeric wheels brings the GCC runtime, under the exception that frees it.
FREED = re.compile(r"GPL-3\.0(-or-later)?[ -]WITH[ -]GCC-exception-3\.1", re.IGNORECASE)


def needed_by(first):
    """Everything that comes along with a list of needs, walked through the lock."""
    packages = tomllib.loads((ROOT / "uv.lock").read_text("utf-8"))["package"]
    locked = {package["name"]: package for package in packages}
    found, ahead = set(), [need["name"] for need in first(locked["axlewright"])]
    while ahead:
        name = ahead.pop()
        if name not in found:
            found.add(name)
            ahead += [need["name"] for need in locked[name].get("dependencies", [])]
    return sorted(found)


def runtime_packages():
    """Everything that comes with the package itself."""
    return needed_by(lambda own: own["dependencies"])


def packages_of_the_gate():
    """What only the gate installs: tools, and the libraries that stand beside our kernels."""
    groups = needed_by(lambda own: [need for g in own["dev-dependencies"].values() for need in g])
    return sorted(set(groups) - set(runtime_packages()))


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
    if stated := "; ".join(kinds) or (papers.get("License") or "").strip()[:60]:
        return stated
    own = [
        distribution(name).read_text(f"licenses/{f}") for f in papers.get_all("License-File", [])
    ]
    return "; ".join((text or "").strip()[:60] for text in own)


def is_allowed(stated):
    """Whether a licence is on the list and nothing barred stands beside it."""
    stated = FREED.sub("", stated)
    return bool(ALLOWED.search(stated)) and not BARRED.search(stated)


@pytest.mark.parametrize("name", [*runtime_packages(), *packages_of_the_gate()])
def test_a_package_is_freely_licensed(name):
    assert is_allowed(licence(name)), f"{name}: {licence(name)!r}"


@pytest.mark.parametrize("stated", ["GPL-3.0-only", "MIT AND AGPL-3.0-only", "", "Proprietary"])
def test_the_list_bars_what_it_should(stated):
    assert not is_allowed(stated)


def test_the_walk_reaches_what_comes_along():
    assert {"numpy", "llvmlite", "pygments"} <= set(runtime_packages())
    assert {"shapely", "trimesh", "pynitefea", "pluggy"} <= set(packages_of_the_gate())


def test_the_licence_is_whole():
    text = (ROOT / "LICENSE").read_text("utf-8")
    assert "Apache License" in text
    assert "Version 2.0, January 2004" in text
    assert "END OF TERMS AND CONDITIONS" in text
