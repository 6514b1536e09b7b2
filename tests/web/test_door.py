"""Who is let in, from where, with how much: and what a browser is told to keep to.

Headers and their meaning: RFC 9110 (HTTP), RFC 6265bis (cookies), W3C CSP Level 3, Fetch Metadata.
"""

import logging
import re

import pytest

from axlewright.web import bay_app
from axlewright.web.guard import MOST_BODY, MOST_UPLOAD
from axlewright.web.pairing import MONTH, WINDOW, WRONG_ALLOWED, Pairing, new_phrase
from axlewright.web.phrase_words import WORDS
from axlewright.web.routes import ROUTES
from axlewright.web.serving import KEY_SIZE, code_lines, kept_key, opening_lines
from web.visitor import PHONE, Visitor

LAN = "http://192.0.2.1:8321"
PHRASE = "copper heron gravel walnut"
KEY = b"k" * KEY_SIZE


def phone(bay, **more):
    return Visitor(
        bay, client=PHONE, base=LAN, hosts=("192.0.2.1",), pass_phrase=PHRASE, key=KEY, **more
    )


@pytest.mark.parametrize("path", ["/", "/words", "/pair", "/nothing-here", "/static/bay.css"])
def test_every_page_carries_the_headers(visitor, path):
    headers = visitor.get(path).headers
    policy = headers["content-security-policy"]
    assert "default-src 'self'" in policy
    assert "frame-ancestors 'none'" in policy
    assert "unsafe" not in policy
    assert headers["x-content-type-options"] == "nosniff"
    assert headers["referrer-policy"] == "same-origin"
    assert "access-control-allow-origin" not in headers


@pytest.mark.parametrize("path", ["/", "/words", "/pair"])
def test_no_page_has_script_or_style_of_its_own(visitor, path):
    text = visitor.get(path).text
    assert not re.search(r"<script(?![^>]*\bsrc=)", text)
    assert not re.search(r"<style|\sstyle=|\son[a-z]+=|javascript:", text)
    assert not re.search(r"(src|href|action)=[\"']?(https?:)?//", text)


@pytest.mark.parametrize("host", ["elsewhere.example", "192.0.2.99", "", "127.0.0.1.example"])
def test_another_name_is_not_answered(visitor, host):
    assert visitor.get("/", headers={"Host": host}).status_code == 400


@pytest.mark.parametrize("host", ["127.0.0.1:8321", "localhost", "[::1]:8321", "LOCALHOST:1"])
def test_its_own_names_are_answered(visitor, host):
    assert visitor.get("/", headers={"Host": host}).status_code == 200


@pytest.mark.parametrize(
    "origin",
    [
        "null",
        "https://127.0.0.1:8321",
        "http://127.0.0.1:1",
        "http://elsewhere.example",
        "http://[",
    ],
)
def test_a_form_of_another_site_changes_nothing(visitor, bay, origin):
    fields = {"name": "Heron", "axle": "front"}
    assert visitor.post("/begin", fields, headers={"Origin": origin}).status_code == 403
    assert not bay.axles()


def test_what_the_browser_says_of_the_site_counts(visitor, bay):
    fields = {"name": "Heron", "axle": "front"}
    cross = {"Sec-Fetch-Site": "cross-site"}
    assert visitor.post("/begin", fields, headers=cross).status_code == 403
    assert not bay.axles()
    own = {"Sec-Fetch-Site": "same-origin"}
    assert visitor.post("/begin", fields, headers=own).status_code == 303


def test_a_request_that_names_no_origin_is_refused(visitor, bay):
    visitor.get("/")
    del visitor.client.headers["Origin"]
    assert visitor.post("/begin", {"name": "Heron", "axle": "front"}).status_code == 403
    assert not bay.axles()


POSTS = sorted(route.path for route in ROUTES if "POST" in (route.methods or ()))


@pytest.mark.parametrize("path", POSTS)
@pytest.mark.parametrize("token", ["", "nonsense", "a.b"])
def test_no_form_is_taken_without_its_token(visitor, bay, path, token):
    slug = bay.copy_example("wagtail")
    before = bay.last_entry(slug)
    answer = visitor.post(path.replace("{slug}", slug), {"path": "wheel.spacer"}, token=token)
    assert answer.status_code == 403
    assert bay.last_entry(slug) == before
    assert len(bay.axles()) == 1


def test_a_token_that_another_planted_is_refused(bay):
    own, other = Visitor(bay), Visitor(bay)
    other.get("/")
    own.client.cookies.set("bay_token", other.token)
    own.token = other.token
    assert own.post("/begin", {"name": "Heron", "axle": "front"}).status_code == 403


@pytest.mark.parametrize("path", ["/", "/words", "/axle/x", "/axle/x/rig.toml", "/axle/x/events"])
def test_a_phone_sees_nothing_before_the_phrase(bay, path):
    answer = phone(bay).get(path)
    assert (answer.status_code, answer.headers["location"]) == (303, "/pair")
    assert not answer.text


def test_a_phone_changes_nothing_before_the_phrase(bay):
    visitor = phone(bay)
    visitor.get("/pair")
    assert visitor.post("/begin", {"name": "Heron", "axle": "front"}).status_code == 403
    assert not bay.axles()


def test_the_form_for_the_phrase_does_not_show_it(bay):
    text = phone(bay).get("/pair").text
    assert PHRASE not in text
    assert "<svg" not in text


@pytest.mark.parametrize("said", [PHRASE, "  Copper-Heron gravel   WALNUT "])
def test_the_phrase_lets_a_phone_in_and_it_stays_in(bay, said):
    visitor = phone(bay)
    answer = visitor.post("/pair", {"phrase": said})
    assert (answer.status_code, answer.headers["location"]) == (303, "/")
    assert "HttpOnly" in answer.headers["set-cookie"]
    assert "SameSite=strict" in answer.headers["set-cookie"]
    assert visitor.get("/").status_code == 200
    assert PHRASE in visitor.get("/pair").text
    again = phone(bay)  # the bay was stopped and started
    again.client.cookies.update(dict(visitor.client.cookies))
    assert again.get("/").status_code == 200


def test_wrong_phrases_have_to_wait(bay):
    visitor = phone(bay)
    for _ in range(WRONG_ALLOWED):
        assert visitor.post("/pair", {"phrase": "a b c d"}).status_code == 403
    assert visitor.post("/pair", {"phrase": PHRASE}).status_code == 429
    assert visitor.get("/").headers["location"] == "/pair"


def test_after_the_wait_the_right_phrase_is_taken():
    moment = [0.0]
    pairing = Pairing(PHRASE, KEY, clock=lambda: moment[0])
    assert [pairing.tried("no") for _ in range(WRONG_ALLOWED + 1)] == [False] * WRONG_ALLOWED + [
        None
    ]
    moment[0] = WINDOW + 1.0
    assert pairing.tried(PHRASE)


def test_a_cookie_runs_out_and_cannot_be_made_elsewhere():
    day = [1e9]
    pairing = Pairing(PHRASE, KEY, now=lambda: day[0])
    cookie = pairing.cookie()
    assert pairing.knows(cookie)
    assert not Pairing(PHRASE, b"another key", now=lambda: day[0]).knows(cookie)
    until, _, signature = cookie.partition(".")
    assert not pairing.knows(f"{int(until) + 1}.{signature}")
    day[0] += MONTH + 1
    assert not pairing.knows(cookie)


@pytest.mark.parametrize("cookie", ["", ".", "1.", "x.y", "٣.x", "9" * 30 + ".x", "1e9.é"])
def test_a_nonsense_cookie_is_no_key(cookie):
    assert not Pairing(PHRASE, KEY).knows(cookie)
    assert not Pairing(PHRASE, KEY).made(cookie)


def test_without_a_phrase_nobody_pairs():
    assert not Pairing(None, KEY).tried("")


def test_a_phrase_is_four_words_hard_to_guess():
    assert len(set(WORDS)) == len(WORDS) >= 256  # four of them: 32 bits or more
    made = {new_phrase() for _ in range(50)}
    assert len(made) == 50
    assert all(len(phrase.split()) == 4 for phrase in made)


def test_a_large_form_and_a_large_file_are_refused(visitor, bay):
    assert visitor.post("/begin", {"name": "x" * (MOST_BODY + 1)}).status_code == 413
    large = {"file": ("a.toml", b"#" * (MOST_UPLOAD + 1), "application/toml")}
    assert visitor.post("/open", files=large).status_code == 413
    assert not bay.axles()


def test_a_body_that_lies_about_its_length_is_cut_off(visitor, bay):
    visitor.get("/")

    def pieces():
        for _ in range(40):
            yield b"name=" + b"x" * 4096

    form = {"Content-Type": "application/x-www-form-urlencoded"}
    assert visitor.client.post("/begin", content=pieces(), headers=form).status_code == 413
    assert not bay.axles()


def test_a_bug_of_ours_is_a_plain_page_and_is_logged(bay, monkeypatch, caplog):
    visitor = Visitor(bay)
    visitor.get("/words")

    def broken():
        raise RuntimeError

    monkeypatch.setattr(visitor.app.state, "bay", type("Broken", (), {"axles": broken})())
    with caplog.at_level(logging.ERROR, "axlewright.web"):
        answer = visitor.get("/?on purpose")
    assert answer.status_code == 500
    assert "Something is wrong with the bay itself" in answer.text
    assert "Traceback" not in answer.text
    assert "TypeError" in caplog.text
    caplog.clear()


@pytest.mark.parametrize(
    "path", ["/static/../app.py", "/static/%2e%2e/app.py", "/static/..%2fapp.py"]
)
def test_no_file_outside_its_folder_is_served(visitor, path):
    assert visitor.get(path).status_code == 404


def test_the_key_is_made_once_and_for_its_owner_only(tmp_path):
    key = kept_key(tmp_path)
    assert len(key) == KEY_SIZE
    assert kept_key(tmp_path) == key
    assert (tmp_path / "bay.key").stat().st_mode & 0o077 == 0
    assert kept_key(tmp_path, fresh=True) != key


def test_the_terminal_tells_the_phrase_only_on_the_network():
    alone = "\n".join(opening_lines(8321, "http://127.0.0.1:8321", None))
    assert "http://127.0.0.1:8321" in alone
    assert "phrase" not in alone.replace("--on-the-network", "")
    both = "\n".join(opening_lines(8321, LAN, PHRASE))
    assert PHRASE in both
    assert LAN in both
    assert all(line in both for line in code_lines(f"{LAN}/pair#copper-heron-gravel-walnut"))


def test_the_application_needs_no_more_than_a_bay(bay):
    assert bay_app(bay).state.pairing.phrase is None
