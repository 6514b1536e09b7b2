"""A process that keeps things, then meets a full disk or a folder that it may only read.

It tells, as JSON, what each attempt came to, what could still be read, and which files stand there.
"""

import contextlib
import datetime as dt
import io
import json
import os
import resource
import signal
import sys
from pathlib import Path

from axlewright.cli.app import run
from axlewright.errors import AxlewrightError
from axlewright.records import Book, New, Store, read_archive, write_archive
from axlewright.rig import Happening, Remark

DAY = dt.date(2026, 5, 3)
RIG = "heron-front"
NOBODY = 65534


def furnished(home):
    """A store with something in it, closed, and its archive beside it."""
    store = Store.open(home / "kept" / "axlewright.sqlite")
    store.begin(RIG, "Heron", "front")
    store.add(RIG, [New(kind="answer", path="weight.axle", text="1510 kg")])
    store.keep_upload(b"first", "first.jpg")
    Book(store).enter(RIG, Happening(body=Remark(), on=DAY, note="before"))
    write_archive(store, home / "archive.zip")
    store.close()
    for words in ("history", "note"):  # what a command loads late is loaded by now
        with contextlib.redirect_stdout(io.StringIO()):
            more = ["more"] if words == "note" else []
            run(["log", words, RIG, *more, "--store", str(home / "kept")])


def full_by_limit(_home):
    """POSIX setrlimit, RLIMIT_FSIZE: a write past it fails."""
    signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
    resource.setrlimit(resource.RLIMIT_FSIZE, (2000, 2000))


def full_disk(home):
    with (home / "filler").open("wb", buffering=0) as filler, contextlib.suppress(OSError):
        while True:
            filler.write(bytes(1024))


def only_read(home):
    for path in [home, *home.rglob("*")]:
        path.chmod(0o555 if path.is_dir() else 0o444)
    if os.getuid() == 0:
        os.setgid(NOBODY)
        os.setuid(NOBODY)


def command(*words):
    out, err = io.StringIO(), io.StringIO()
    with contextlib.redirect_stdout(out), contextlib.redirect_stderr(err):
        code = run(["log", *words])
    return {"code": code, "out": out.getvalue(), "err": err.getvalue()}


def attempts(home):
    kept = home / "kept" / "axlewright.sqlite"

    def opened(act):
        store = Store.open(kept)
        try:
            act(store)
        finally:
            store.close()

    happening = Happening(body=Remark(), on=DAY, note="x" * 100_000)
    yield "entry", lambda: opened(lambda s: s.add(RIG, [New(kind="name", text="y" * 100_000)]))
    yield "happening", lambda: opened(lambda s: Book(s).enter(RIG, happening))
    yield "upload", lambda: opened(lambda s: s.keep_upload(b"z" * 100_000, "z.jpg"))
    yield "archive out", lambda: opened(lambda s: write_archive(s, home / "out.zip"))

    def arrives():
        store = Store.open(home / "new" / "axlewright.sqlite")
        try:
            read_archive(store, home / "archive.zip")
        finally:
            store.close()

    yield "archive in", arrives


def main(kind, home):
    furnished(home)
    {"limit": full_by_limit, "disk": full_disk, "only read": only_read}[kind](home)
    told = {}
    for name, act in attempts(home):
        try:
            act()
        except AxlewrightError as trouble:
            told[name] = {"problem": trouble.problem, "remedy": trouble.remedy}
        else:
            told[name] = "kept"
    folder = ("--store", str(home / "kept"))
    told["note"] = command("note", RIG, "w" * 900, *folder)
    told["out"] = command("archive", "out", str(home / "out.zip"), *folder)
    told["in"] = command("archive", "in", str(home / "archive.zip"), "--store", str(home / "new"))
    told["history"] = command("history", RIG, *folder)
    (home / "filler").unlink(missing_ok=True) if kind == "disk" else None
    told["files"] = sorted(str(path.relative_to(home)) for path in home.rglob("*"))
    if kind == "disk":  # with room again, it goes on
        told["after"] = command("note", RIG, "after", *folder)
        told["history after"] = command("history", RIG, *folder)
    sys.stdout.write(json.dumps(told))


if __name__ == "__main__":
    main(sys.argv[1], Path(sys.argv[2]))
