"""Files that were handed in, under the name of their own content: never run, never overwritten."""

import contextlib
import os
import re
import tempfile
from hashlib import sha256
from pathlib import Path
from typing import Final

from axlewright.errors import NotKept, UnknownEntry

_DIGEST: Final = re.compile("[0-9a-f]{64}")
LONGEST_LABEL: Final = 120


def kept_file(folder: Path, data: bytes) -> tuple[str, bool]:
    """Put bytes on the disk in one step under their SHA-256; gives it, and whether it is new."""
    digest = sha256(data).hexdigest()
    place = _place(folder, digest)
    part = ""
    try:
        if place.exists():
            return digest, False
        place.parent.mkdir(parents=True, exist_ok=True)
        handle, part = tempfile.mkstemp(prefix=".", suffix=".part", dir=place.parent)
        with os.fdopen(handle, "wb") as out:
            out.write(data)
            out.flush()
            os.fsync(out.fileno())
        os.replace(part, place)  # noqa: PTH105
    except OSError as trouble:
        if part:
            with contextlib.suppress(OSError):
                Path(part).unlink()
        raise NotKept(
            f"The file cannot be kept: {trouble.strerror or trouble}.",
            remedy="Make room, or give another folder; what was kept before is untouched.",
        ) from trouble
    return digest, True


def dropped_file(folder: Path, digest: str) -> None:
    """Take a file off the disk that nothing kept names, and its folder where that is empty."""
    place = _place(folder, digest)
    with contextlib.suppress(OSError):
        place.unlink()
        place.parent.rmdir()


def read_file(folder: Path, digest: str) -> bytes:
    """Read what is kept under a digest, and see that it still is what it was."""
    try:
        data = _place(folder, digest).read_bytes()
    except OSError:
        raise UnknownEntry(f"No file of the digest {digest!r} is kept.") from None
    if sha256(data).hexdigest() != digest:
        raise UnknownEntry(
            f"The file of the digest {digest!r} is damaged.", remedy="Hand it in again."
        )
    return data


def label(name: str) -> str:
    """What to call a file: the last part of its name, printable and short; never a path."""
    last = re.split(r"[/\\]", name)[-1]
    clean = "".join(sign if sign.isprintable() else " " for sign in last)
    return " ".join(clean.split())[:LONGEST_LABEL].strip(". ") or "file"


def _place(folder: Path, digest: str) -> Path:
    if not _DIGEST.fullmatch(digest):
        raise UnknownEntry("A file is found by the 64 figures of its digest alone.")
    return folder / digest[:2] / digest
