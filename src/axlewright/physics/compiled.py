"""Where compiled kernels keep their machine code, and how they are compiled.

Import this module before numba: it points numba's cache at a folder of the user's own, named by
a hash of every physics source, the numba version and the processor. So an edit to an *imported*
file is never answered with stale code. Folders no longer used are pruned. Where no folder of the
user's can be written, a temporary one is used and ``cache_note`` says so.
"""

import hashlib
import os
import platform
import shutil
import stat
import sys
import tempfile
import time
from collections.abc import Callable
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path
from typing import TypeVar, cast

Function = TypeVar("Function", bound=Callable[..., object])

# Signed zeros, reciprocals and the order of sums are free; infinities and NaN stay honest.
FAST = frozenset({"contract", "reassoc", "arcp", "nsz"})
# Order of sums kept: for differences of nearly equal numbers.
ORDERED = frozenset({"contract", "nsz"})

_PREFIX = "kernels-"
_KEPT = 4  # folders of other versions worth keeping
_OLD = 86400.0  # s; a younger folder may be in use by another process


def cache_is_cold() -> bool:
    """Say whether nothing has been compiled yet, so the next kernel call takes seconds."""
    return next(_FOLDER.rglob("*.nbi"), None) is None


def cache_note() -> str:
    """Give a sentence for the person who waits, or nothing if there is nothing to say."""
    if _TEMPORARY:
        return (
            "The cache folder of this user cannot be written: compiled code is kept in "
            f"{_FOLDER} and may have to be compiled again next time."
        )
    if cache_is_cold():
        return "First run of this version: compiling, which takes some seconds once."
    return ""


def cache_folder() -> Path:
    """Give the folder that holds the compiled kernels of exactly these sources."""
    return _FOLDER


def kernel(function: Function) -> Function:
    """Compile at first call, keep the machine code, let sums be reordered."""
    return _compiled(function, FAST)


def ordered_kernel(function: Function) -> Function:
    """Compile like ``kernel`` but keep the order of sums as written."""
    return _compiled(function, ORDERED)


def inner_kernel(function: Function) -> Function:
    """Compile like ``ordered_kernel``, into the body of each kernel that calls it."""
    return _compiled(function, ORDERED, inlined=True)


def _compiled(function: Function, fastmath: frozenset[str], inlined: bool = False) -> Function:
    made = numba.njit(cache=True, error_model="numpy", fastmath=set(fastmath), forceinline=inlined)(
        function
    )
    return cast("Function", made)


def _fingerprint() -> str:
    """Hash what the machine code depends on."""
    digest = hashlib.sha256()
    for source in sorted(Path(__file__).parent.rglob("*.py")):
        digest.update(source.name.encode())
        digest.update(source.read_bytes())
    try:
        digest.update(version("numba").encode())
    except PackageNotFoundError:  # frozen into an application without its metadata
        digest.update(b"unknown")
    digest.update(f"{platform.python_version()} {platform.machine()} {_processor()}".encode())
    return digest.hexdigest()[:16]


def _processor() -> str:
    """Name the processor as the operating system does."""
    try:
        for line in Path("/proc/cpuinfo").read_text(encoding="utf-8").splitlines():
            if line.startswith("model name"):
                return line.partition(":")[2].strip()
    except OSError:
        pass
    return platform.processor()


def _user_cache() -> Path:
    """Find the user's cache folder as each system has it."""
    if sys.platform == "win32":
        local = os.environ.get("LOCALAPPDATA")
        return Path(local) if local else Path.home() / "AppData" / "Local"
    if sys.platform == "darwin":
        return Path.home() / "Library" / "Caches"
    given = os.environ.get("XDG_CACHE_HOME", "")
    return Path(given) if Path(given).is_absolute() else Path.home() / ".cache"


def _writable(folder: Path) -> bool:
    """Make the folder and try it: asking for permission bits is not the same as writing."""
    try:
        folder.mkdir(parents=True, exist_ok=True)
        with tempfile.TemporaryFile(dir=folder):
            return True
    except OSError:
        return False


def _private(folder: Path) -> bool:
    """Make the folder and see that nobody else can write it: cached code is run unread."""
    try:
        folder.mkdir(mode=0o700, parents=True, exist_ok=True)
        seen = folder.lstat()
    except OSError:
        return False
    if not hasattr(os, "getuid"):
        return True
    mine = seen.st_uid == os.getuid() and stat.S_ISDIR(seen.st_mode)
    return mine and not seen.st_mode & (stat.S_IWGRP | stat.S_IWOTH)


def _choose() -> tuple[Path, bool]:
    """Choose the folder, and say whether it is only a temporary one."""
    name = _PREFIX + _fingerprint()
    try:
        folder = _user_cache() / "axlewright" / name
    except RuntimeError:  # no home at all
        folder = None
    if folder is not None and _writable(folder):
        return folder, False
    owner = os.getuid() if hasattr(os, "getuid") else "user"
    shared = Path(tempfile.gettempdir()) / f"axlewright-{owner}"
    if _private(shared) and _writable(shared / name):
        return shared / name, True
    return Path(tempfile.mkdtemp(prefix="axlewright-")), True


def _prune(current: Path) -> None:
    """Remove the oldest folders of other versions; a folder in use is left alone."""
    try:
        os.utime(current)
        others = [
            (folder.stat().st_mtime, folder)
            for folder in current.parent.glob(f"{_PREFIX}*")
            if folder != current
        ]
    except OSError:
        return
    for changed, folder in sorted(others, reverse=True)[_KEPT:]:
        if changed < time.time() - _OLD:
            shutil.rmtree(folder, ignore_errors=True)


_FOLDER, _TEMPORARY = _choose()
os.environ["NUMBA_CACHE_DIR"] = str(_FOLDER)
_prune(_FOLDER)

import numba  # noqa: E402

setattr(numba.config, "CACHE_DIR", str(_FOLDER))  # noqa: B010 - made at run time; in case somebody imported numba before
