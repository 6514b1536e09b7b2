"""From bytes to the tables of a TOML file, with every fault of form told in plain words."""

import re
import tomllib
from collections.abc import Mapping
from pathlib import Path
from typing import Final, TypeAlias

from axlewright.errors import BadFile, Fault
from axlewright.rig.toml_lines import Lines, line_index

Tables: TypeAlias = dict[str, object]

LARGEST = 1_000_000  # bytes of one file
MOST = 12  # syntax faults told at once

# What the parser says, and what it means to a person.
_PLAIN_WORDS: Final[Mapping[str, str]] = {
    "Expected '=' after a key": "a name must be followed by = and its value",
    "Invalid initial character for a key part": "here a name should begin; names are plain letters",
    "Expected newline or end of document": "there is more on this line than one value",
    "Expected ']": "a heading must end in ]",
    "Unclosed array": "a list is opened with [ and never closed with ]",
    "Unclosed inline table": "a { is opened and never closed",
    "Unterminated string": "a text is opened with a quote and never closed",
    "Illegal character '\\n'": "a text is opened with a quote and not closed on the same line",
    'Expected "\'"': "a text is opened with a quote and not closed on the same line",
    "Illegal character": "there is a sign here that a file of this kind cannot hold",
    "Found invalid character": "there is a sign here that a file of this kind cannot hold",
    "Invalid statement": "here a name should begin; names are plain letters",
    "Invalid hex": "a backslash in double quotes has a special meaning; use single quotes",
    "Escaped": "a backslash in double quotes has a special meaning; use single quotes",
    "Unescaped": "a backslash in double quotes has a special meaning; use single quotes",
    "Invalid date": "there is no such date",
    "Invalid value": "this is no value; a text must stand in quotes",
}
_TWICE: Final = (
    "Cannot overwrite",
    "Cannot declare",
    "Cannot mutate",
    "Cannot redefine",
    "Duplicate inline",
)
_TWICE_TOLD: Final = "this name is written twice"
_EXAMPLE: Final = 'left = "9 7/16 in"'


def file_bytes(path: str | Path) -> bytes:
    """Read a whole file; raises `BadFile` where it cannot be read or is too large."""
    try:
        with Path(path).open("rb") as file:
            return file.read(LARGEST + 1)
    except FileNotFoundError:
        problem, accepted = "there is no such file", _beside(Path(path))
    except IsADirectoryError:
        problem, accepted = "this is a folder, not a file", "the path of one file"
    except PermissionError:
        folder = Path(path).is_dir()
        problem = "this is a folder, not a file" if folder else "this file may not be read"
        accepted = "the path of one file that you may open"
    except (OSError, ValueError) as trouble:
        reason = getattr(trouble, "strerror", None) or str(trouble)
        problem, accepted = f"this file cannot be read: {reason}", "the path of one text file"
    raise BadFile(str(path), [Fault(file=str(path), problem=problem, accepted=accepted)])


def decoded(data: bytes | str, file: str) -> str:
    """Text of a file in UTF-8, a mark at its beginning taken off."""
    try:
        raw = data.encode() if isinstance(data, str) else data
    except UnicodeEncodeError as trouble:
        line = str(data).count("\n", 0, trouble.start) + 1
        raise BadFile(file, [_not_utf8(file, line)]) from None
    if len(raw) > LARGEST:
        fault = Fault(
            file=file,
            problem="this file is larger than 1 MB",
            accepted="a description of one rig, which is a page or two",
        )
        raise BadFile(file, [fault])
    if raw.startswith((b"\xff\xfe", b"\xfe\xff")) or b"\x00" in raw[:200]:
        fault = Fault(
            file=file,
            problem="this file is in UTF-16 or is no text at all",
            accepted='text in UTF-8: in the editor, "save as" and choose UTF-8',
        )
        raise BadFile(file, [fault])
    try:
        text = raw.decode()
    except UnicodeDecodeError as trouble:
        line = raw.count(b"\n", 0, trouble.start) + 1
        raise BadFile(file, [_not_utf8(file, line)]) from None
    return text.removeprefix("\ufeff")


def tables_of(text: str, file: str) -> tuple[Tables, Lines]:
    """Tables of a TOML text and where each name stands; raises `BadFile` with its faults."""
    try:
        return tomllib.loads(text), line_index(text)
    except RecursionError:
        problem, accepted = "brackets are nested too deeply", "names with one value each"
        fault = Fault(file=file, problem=problem, accepted=accepted)
        raise BadFile(file, [fault]) from None
    except ValueError as trouble:
        raise BadFile(file, _syntax_faults(text, file, trouble)) from None


def _syntax_faults(text: str, file: str, first: ValueError) -> list[Fault]:
    """Each fault of form: a line at fault is blanked or made a heading, and reading goes on."""
    rows = text.replace("\r\n", "\n").split("\n")
    faults: list[Fault] = []
    trouble: Exception | None = first
    last = 0
    while trouble is not None and len(faults) < MOST:
        place = re.search(r"at line (\d+), column (\d+)", str(trouble))
        line = int(place[1]) if place else len(rows)
        if line <= last:
            break
        faults.append(_syntax_fault(rows, file, line, int(place[2]) if place else 0, str(trouble)))
        heading = rows[line - 1].lstrip().startswith("[")
        last, rows[line - 1] = line, f'[["? {line}"]]' if heading else ""
        try:
            tomllib.loads("\n".join(rows))
        except (ValueError, RecursionError) as more:
            trouble = more
        else:
            trouble = None
    twice = {line: (path, before) for path, before, line in line_index(text).twice}
    return [_named(fault, twice) for fault in faults]


def _syntax_fault(rows: list[str], file: str, line: int, column: int, said: str) -> Fault:
    given = rows[line - 1].strip()[:60] if line <= len(rows) else ""
    if said.startswith(_TWICE):
        return Fault(
            file=file,
            line=line,
            problem=_TWICE_TOLD,
            given=given,
            accepted="each name once; take one of the two out",
        )
    if "Exceeds the limit" in said:
        said = "Invalid value"
    words = next((plain for begin, plain in _PLAIN_WORDS.items() if said.startswith(begin)), said)
    plain = re.sub(r" \(at .*\)$", "", words)
    return Fault(
        file=file,
        line=line,
        problem=f"{plain} (column {column})" if column else plain,
        given=given,
        accepted="a heading in brackets, or a name, = and a text in quotes",
        example=_mended(given) or _EXAMPLE,
    )


def _mended(row: str) -> str:
    """The same line as it would be read; empty where nobody can tell what was meant."""
    if found := re.fullmatch(r"(\[{1,2})\s*([\w.-]+)\s*\]*", row):
        return f"{found[1]}{found[2]}{']' * len(found[1])}"
    found = re.fullmatch(r"([\w.-]+)\s*[=:]\s*([^#]+?)\s*(#.*)?", row)
    value = found[2].strip("“”„‟‘’«»\"' ,") if found else ""
    if not found or not value or not value.isprintable() or re.search(r"[\[\]{}\\=]", value):
        return ""
    if re.search(r"[0-9]\s*[\"”″]+$", found[2]) and not re.search("[a-z]", value):
        value = f"{value} in"  # an inch mark ends a text in double quotes
    return "" if '"' in value else f'{found[1]} = "{value}"'


def _named(fault: Fault, twice: Mapping[int, tuple[str, int]]) -> Fault:
    if not fault.line or fault.problem != _TWICE_TOLD or fault.line not in twice:
        return fault
    path, before = twice[fault.line]
    return Fault(
        file=fault.file,
        line=fault.line,
        field=path,
        problem=f"{_TWICE_TOLD}; the first stands on line {before}",
        given=fault.given,
        accepted=fault.accepted,
    )


def _not_utf8(file: str, line: int) -> Fault:
    return Fault(
        file=file,
        line=line,
        problem="there is a sign here that is not UTF-8",
        accepted='text in UTF-8: in the editor, "save as" and choose UTF-8',
    )


def _beside(path: Path) -> str:
    """Name the files of the same kind that stand where one was looked for."""
    try:
        found = sorted(other.name for other in path.parent.glob("*.toml"))[:6]
    except OSError:
        found = []
    return f"one of: {', '.join(found)}" if found else "the path of a rig or change file"
