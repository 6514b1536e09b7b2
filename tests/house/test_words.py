"""What no file of the project may say. The words are put together so that this file may."""

import re
import tomllib

import pytest

from house.places import ROOT, brief, tracked_files

BINARY = {".png", ".pdf", ".npy", ".ttf", ".otf", ".jpg", ".gz"}

PATHS = ["/" + place + "/" for place in ("work", "root", "tmp", "home", "Users")]
WORDS = [
    "trans" + "cript",
    "chat" + "bot",
    "chat" + "gpt",
    "clau" + "de",
    "ll" + "m",
    "sub-?ag" + "ents?",
    "ag" + "ents?",
    "TO" + "DO",
    "FIX" + "ME",
]
FORBIDDEN = [
    *(re.compile(rf"(?<![\w.:/]){re.escape(path)}") for path in PATHS),
    *(re.compile(rf"\b{word}\b", re.IGNORECASE) for word in WORDS),
    re.compile(r"\bA" + r"I\b"),
    re.compile(r"\bNot" + r"ImplementedError\b"),
    re.compile(r"(?<!\w)(\.\./)?sha" + r"red/"),
]


def readable(path):
    return path.suffix not in BINARY and path.name != "uv.lock"


@pytest.mark.parametrize("path", [p for p in tracked_files() if readable(p)], ids=brief)
def test_no_machine_path_and_no_word_about_the_making(path):
    text = path.read_text("utf-8")
    found = [
        f"line {text.count(chr(10), 0, match.start()) + 1}: {match.group()}"
        for pattern in FORBIDDEN
        for match in pattern.finditer(text)
    ]
    assert not found


@pytest.mark.parametrize("number", range(len(PATHS)))
def test_the_search_finds_a_machine_path(number):
    assert FORBIDDEN[number].search(f'open("{PATHS[number]}notes")')


def test_the_lock_names_one_public_registry():
    packages = tomllib.loads((ROOT / "uv.lock").read_text("utf-8"))["package"]
    places = {package["source"].get("registry") for package in packages}
    [index] = places - {None}  # one public index, over TLS, no port and no account
    assert re.fullmatch(r"https://[a-z.]+/simple", index)
