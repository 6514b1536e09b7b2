"""Whatever is sent to any address: a page or a refusal in words, never a bug, and nothing kept.

`conftest` fails a test in which the door had to log a page that could not be made.
"""

import random

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from axlewright.actions import Bay, read_draft
from axlewright.errors import AxlewrightError
from axlewright.rig import FIELDS, FOUND, WHERE
from axlewright.web.routes import ROUTES
from web.test_axle_page import RIGS
from web.visitor import Visitor

PATHS = sorted({route.path for route in ROUTES})
STREAMS = {"/axle/{slug}/events"}
FEW = settings(max_examples=40, suppress_health_check=[HealthCheck.function_scoped_fixture])
NASTY = (
    "../../etc/passwd",
    "..%2f..%2fetc%2fpasswd",
    "%00",
    "a%00b",
    "%ff%fe",
    "a" * 3000,
    "%C3%A9",
    "a;b",
    "<script>",
    "{{7*7}}",
    "'%20OR%201=1--",
    ".",
    "%2e%2e",
    "con",
    "-" * 64,
)
TEXTS = st.one_of(
    st.text(max_size=60),
    st.sampled_from(
        ["", " ", "\0", "\ud7ff", "1e999 mm", "-1 mm", "nan", "١٢ mm", "<b>", "' OR 1", "9" * 400]
    ),
    st.sampled_from([each.example for each in FIELDS]),
)
FIELD_PATHS = st.one_of(
    st.sampled_from([each.path for each in FIELDS]), st.text(max_size=30), st.just("rig.name")
)


@pytest.fixture(scope="module")
def kept(tmp_path_factory):
    bay = Bay.open(tmp_path_factory.mktemp("fuzz"))
    slug = bay.copy_example("wagtail")
    yield bay, slug, Visitor(bay)
    assert len(bay.axles()) == many(bay)  # whatever was kept still says how it stands
    bay.close()


def many(bay):
    """How many axles are kept; to say how each stands, as the first page does, takes longer."""
    return len(bay._store.rigs())


@pytest.mark.parametrize(
    "method", ["GET", "HEAD", "POST", "PUT", "DELETE", "PATCH", "OPTIONS", "X"]
)
@pytest.mark.parametrize("path", PATHS)
def test_every_method_is_answered(kept, method, path):
    bay, slug, visitor = kept
    if path in STREAMS and method == "GET":
        path = path.replace("{slug}", "nowhere")
    before = bay.last_entry(slug), many(bay)
    answer = visitor.client.request(method, path.replace("{slug}", slug))
    assert answer.status_code < 500
    assert answer.status_code in {200, 303, 400, 403, 404, 405, 422} or answer.is_success
    assert (bay.last_entry(slug), many(bay)) == before


@pytest.mark.parametrize("nasty", NASTY)
@pytest.mark.parametrize("path", [*PATHS, "/static/{slug}", "/{slug}", "//{slug}"])
def test_no_address_breaks_anything(kept, path, nasty):
    visitor = kept[2]
    answer = visitor.client.get(path.replace("{slug}", nasty) + f"?at={nasty}&after={nasty}")
    assert answer.status_code < 500
    assert "root:" not in answer.text
    if path.startswith(("/axle", "/static")):
        assert answer.status_code in {400, 404, 405}


@FEW
@given(
    path=FIELD_PATHS,
    text=TEXTS,
    how=st.sampled_from(["", "about", "unknown", "clear", "x"]),
    more=st.dictionaries(st.text(max_size=20), TEXTS, max_size=3),
)
def test_any_answer_is_kept_readable_or_refused(kept, path, text, how, more):
    bay, slug, visitor = kept
    also = {f"also.{key}": value for key, value in more.items()}
    fields = {"path": path, "text": text, "how": how, **more, **also}
    before = bay.last_entry(slug)
    answer = visitor.post(f"/axle/{slug}/say", fields)
    assert answer.status_code in {303, 403, 404, 422}
    if answer.status_code != 303:
        assert bay.last_entry(slug) == before
    read_draft(bay.text(slug))  # what is kept always reads again


@FEW
@given(
    part=TEXTS,
    what=st.one_of(st.sampled_from(FOUND), TEXTS),
    where=st.one_of(st.sampled_from(["", *WHERE]), TEXTS),
    date=st.one_of(st.just("2026-05-03"), TEXTS),
    note=TEXTS,
)
def test_anything_found_is_kept_readable_or_refused(kept, part, what, where, date, note):
    bay, slug, visitor = kept
    fields = {"part": part, "what": what, "where": where, "date": date, "note": note}
    before = bay.last_entry(slug)
    answer = visitor.post(f"/axle/{slug}/list", fields)
    assert answer.status_code in {303, 422}
    if answer.status_code == 422:
        assert bay.last_entry(slug) == before
    read_draft(bay.text(slug))
    assert visitor.post(f"/axle/{slug}/unlist", {"which": note}).status_code in {303, 422}


@FEW
@given(name=TEXTS, axle=st.one_of(st.sampled_from(["front", "rear"]), TEXTS), back=TEXTS)
def test_any_name_begins_an_axle_or_is_refused(kept, name, axle, back):
    bay, _, visitor = kept
    before = many(bay)
    answer = visitor.post("/begin", {"name": name, "axle": axle})
    assert answer.status_code in {303, 422}
    assert many(bay) - before == (answer.status_code == 303)
    if answer.status_code == 303:
        assert visitor.get(answer.headers["location"]).status_code == 200
    assert visitor.post("/copy", {"example": name}).status_code in {404, 422}
    answer = visitor.post("/settings", {"units": name, "theme": axle, "back": back})
    assert answer.status_code == 303
    assert answer.headers["location"].startswith("/")
    assert not answer.headers["location"].startswith("//")


GOOD = (RIGS / "heron.toml").read_bytes()


@pytest.mark.parametrize("seed", range(60))
def test_a_damaged_file_is_told_of_or_reads(kept, seed):
    chance = random.Random(seed)  # noqa: S311
    content = bytearray(GOOD)
    for _ in range(chance.choice([1, 3, 30])):
        at = chance.randrange(len(content))
        content[at : at + chance.choice([0, 1, 8])] = chance.randbytes(chance.choice([0, 1, 3]))
    bay, _, visitor = kept
    before = many(bay)
    answer = visitor.post("/open", files={"file": ("a.toml", bytes(content))})
    assert answer.status_code in {303, 422}
    assert many(bay) - before == (answer.status_code == 303)
    try:
        read_draft(bytes(content))
    except AxlewrightError:
        assert answer.status_code == 422


@pytest.mark.parametrize(
    ("content", "kind"),
    [
        (b"", "multipart/form-data"),
        (b"--x\r\n", "multipart/form-data; boundary=x"),
        (
            b'--x\r\nContent-Disposition: form-data; name="a"\r\n\r\n',
            "multipart/form-data; boundary=x",
        ),
        (b"\xff\xfe=\xff", "application/x-www-form-urlencoded"),
        (b"a=1&" * 5000, "application/x-www-form-urlencoded"),
        (b"{}", "application/json"),
        (b"token", "text/plain"),
        (b"x=1", "application/x-www-form-urlencoded; charset=utf-99"),
    ],
)
@pytest.mark.parametrize("path", ["/begin", "/open", "/pair", "/axle/wagtail-front/say"])
def test_no_body_breaks_anything(kept, path, content, kind):
    bay, slug, visitor = kept
    before = bay.last_entry(slug)
    answer = visitor.client.post(path, content=content, headers={"Content-Type": kind})
    assert answer.status_code in {400, 403, 413, 422}
    assert bay.last_entry(slug) == before


@pytest.mark.parametrize("header", ["Cookie", "X-Fragment", "Sec-Fetch-Site", "Content-Length"])
@pytest.mark.parametrize(
    "value", ["", "\xff", "bay_token=\xff.é", "-1", "9" * 30, "a=b; a=b", "x" * 5000]
)
def test_no_header_breaks_anything(kept, header, value):
    visitor = kept[2]
    answer = visitor.client.get("/", headers={header: value.encode("latin-1")})
    assert answer.status_code < 500
