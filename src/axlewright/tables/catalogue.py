"""The list of the tables themselves, and one hash for all that they hold."""

import hashlib
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from axlewright.tables.sources import DATA


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """One data file: what it holds, and what the `spread` of its rows is a factor on."""

    key: str
    title: str
    spread_on: str


@cache
def catalogue() -> Mapping[str, Table]:
    """Every table of the house."""
    with (DATA / "catalogue.toml").open("rb") as file:
        entries = tomllib.load(file)
    return {
        key: Table(key=key, title=e["title"], spread_on=e["spread_on"])
        for key, e in entries.items()
    }


@cache
def fingerprint() -> str:
    """SHA-256 over every data file, so that an answer can say which tables it used."""
    digest = hashlib.sha256()
    for path in sorted(DATA.iterdir()):
        if path.suffix in {".csv", ".toml"}:
            text = path.read_bytes().replace(b"\r\n", b"\n")
            digest.update(path.name.encode() + b"\0" + text + b"\0")
    return digest.hexdigest()
