"""`axlewright start`: reads lines, prints what is said, keeps the file."""

import contextlib
import datetime as dt
import io
import os
import shutil
import sys
import tempfile
from pathlib import Path
from textwrap import wrap
from typing import Annotated

from cyclopts import Parameter

from axlewright.cli.quick import load_kernels
from axlewright.errors import AxlewrightError

STOPPED = 3
WIDEST = 80  # columns that a sentence may take


def start(
    file: Path,
    *,
    sheet: Path | None = None,
    rear: Annotated[bool, Parameter(negative="")] = False,
    all_: Annotated[bool, Parameter(name="--all", negative="")] = False,
) -> int:
    """Ask for a rig, one question at a time, and write its file.

    Every answer is kept at once, so the talk can be left at any question and resumed with the
    same command. Without a terminal it reads one answer from each line of its input.

    Parameters
    ----------
    file
        The rig file to write, or to go on with.
    sheet
        Write the same questions to this PDF file, to be filled in by hand, and ask nothing. It
        draws the axle of the rig file, where that is begun.
    rear
        Draw the sheet for a rear axle where no rig file says which it is.
    all_
        Go on to the optional questions, those first that would move this rig's answer most.
    """
    from axlewright.actions import Conversation, Draft, read_draft
    from axlewright.rig import file_bytes

    begun = Draft(name=file.stem[:80].strip() or "rig")
    draft = read_draft(file_bytes(file), str(file)) if file.exists() else begun
    if sheet is not None:
        return _sheet(sheet, draft.axle or ("rear" if rear else "front"))
    _say_if_compiling()
    talk = Conversation(
        draft,
        lambda text: write_whole(file, text.encode()),
        today=dt.datetime.now().astimezone().date(),
        everything=all_,
    )
    if isinstance(sys.stdin, io.TextIOWrapper):
        sys.stdin.reconfigure(errors="replace")
    _hold(talk.begin())
    while not talk.done:
        line = _line()
        _hold(talk.leave() if line is None else talk.hear(line))
    if not talk.draft.axle or talk.draft.missing():
        _command(f"Go on at any time with: axlewright start {file}")
    else:
        _command(f"Written: {file}. For the whole answer: axlewright assess {file}")
    return STOPPED if talk.stopped else 0


def write_whole(file: Path, content: bytes) -> None:
    """Write a file in one step: whoever reads it meets the old text or the new, never half."""
    draft = ""
    try:
        file.parent.mkdir(parents=True, exist_ok=True)
        handle, draft = tempfile.mkstemp(prefix=f".{file.name}.", suffix=".part", dir=file.parent)
        with os.fdopen(handle, "wb") as out:
            out.write(content)
            out.flush()
            os.fsync(out.fileno())
        if file.exists():
            Path(draft).chmod(file.stat().st_mode & 0o777)
        os.replace(draft, file)  # noqa: PTH105
    except OSError as trouble:
        if draft:
            with contextlib.suppress(OSError):
                Path(draft).unlink()
        raise AxlewrightError(
            f"{file} cannot be written: {trouble.strerror or trouble}. What it held is untouched.",
            remedy="Make room, or give another folder.",
        ) from trouble


def _line() -> str | None:
    """One line of input, None at its end."""
    if sys.stdin.isatty():
        try:
            return input("> ")
        except (EOFError, KeyboardInterrupt):
            sys.stdout.write("\n")
            return None
    try:
        return sys.stdin.readline() or None
    except KeyboardInterrupt:
        return None


def _hold(text: str) -> None:
    width = min(WIDEST, shutil.get_terminal_size((WIDEST, 24)).columns)
    for line in text.split("\n"):
        indent = " " * (len(line) - len(line.lstrip()))
        fits = len(line) <= width or len(indent) > width // 2
        folded = (
            [line]
            if fits
            else wrap(
                line,
                width,
                subsequent_indent=indent,
                break_on_hyphens=False,
                break_long_words=False,
            )
        )
        sys.stdout.writelines(f"{row}\n" for row in folded)
    sys.stdout.flush()


def _command(text: str) -> None:
    """Say a line with a command in it, whole, so that it can be copied."""
    sys.stdout.write(f"{text}\n")
    sys.stdout.flush()


def _sheet(sheet: Path, axle: str) -> int:
    from axlewright.actions import write_questions

    write_questions(sheet, axle)
    other = "" if axle == "rear" else " (--rear draws a rear one)"
    _command(f"Questions about a {axle} axle, to fill in by hand: {sheet}{other}")
    return 0


def _say_if_compiling() -> None:
    if note := load_kernels():
        sys.stderr.write(f"{note}\n")
