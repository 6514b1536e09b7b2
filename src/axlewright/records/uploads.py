"""Files that were handed in, under the name of their own content: never run, never overwritten."""

import contextlib
import os
import re
import tempfile
from hashlib import sha256
from pathlib import Path
from typing import Final

from axlewright.errors import AxlewrightError, NotKept, UnknownEntry

_DIGEST: Final = re.compile("[0-9a-f]{64}")
LONGEST_LABEL: Final = 120
MOST_PHOTO: Final = 16 * 1024 * 1024  # bytes; phones of today write 2 to 12 MB: from memory
# First bytes: ISO/IEC 10918-1 annex B, W3C PNG 5.2, RFC 9649, ISO/IEC 14496-12 4.3.
_BRANDS: Final = (b"heic", b"heix", b"mif1", b"msf1", b"avif")


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


def photo_type(data: bytes) -> str:
    """Media type of a photo by its first bytes, whatever its name says; no other file is one."""
    if len(data) > MOST_PHOTO:
        raise AxlewrightError(
            f"The photo has {len(data) / 1e6:.0f} MB; up to {MOST_PHOTO / 1e6:.0f} MB are kept.",
            remedy="Take it smaller, or make it smaller first.",
        )
    if data.startswith(b"\xff\xd8\xff"):
        return "image/jpeg"
    if data.startswith(b"\x89PNG\r\n\x1a\n"):
        return "image/png"
    if data[:4] == b"RIFF" and data[8:12] == b"WEBP":
        return "image/webp"
    if data[4:8] == b"ftyp" and data[8:12] in _BRANDS:
        return "image/avif" if data[8:12] == b"avif" else "image/heic"
    raise AxlewrightError(
        "That is no photo.", remedy="JPEG, PNG, WebP and HEIC are kept, by what is in them."
    )


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
