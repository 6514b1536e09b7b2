"""Where each name of a TOML file stands: dotted path to line number, which `tomllib` hides.

Meant for text that has parsed; on broken text it says what it can and never fails. Entries of an
array of tables are numbered: ``condition.0.part``.
"""

from dataclasses import dataclass, field

DEEPEST = 40  # levels of brackets that are still looked into
_BARE_END = ",]}#\n"


@dataclass(slots=True)
class Lines:
    """First line of each path, and what was written twice: path, first line, second line."""

    first: dict[str, int] = field(default_factory=dict)
    twice: list[tuple[str, int, int]] = field(default_factory=list)

    def near(self, path: str) -> int | None:
        """Line of a path, or of the nearest table above it that is written down."""
        while path:
            if path in self.first:
                return self.first[path]
            path = path.rpartition(".")[0]
        return None


def line_index(text: str) -> Lines:
    """Index every table and key of a TOML text, inline tables included."""
    scan = _Scan(text.replace("\r\n", "\n"))
    scan.document()
    return scan.lines


class _Scan:
    """One pass over the text."""

    def __init__(self, text: str) -> None:
        self.text, self.place, self.line = text, 0, 1
        self.lines = Lines()
        self.counts: dict[str, int] = {}
        self.tables: set[str] = set()

    def document(self) -> None:
        prefix = ""
        while self._skip(" \t\n"):
            if self._at("["):
                prefix = self._header()
            else:
                self._pair(prefix, 0)
            self._to_line_end()

    def _header(self) -> str:
        array, line = self._at("[["), self.line
        self.place += 2 if array else 1
        keys = self._keys("]")
        path = ""
        for key in keys[:-1]:
            path = self._numbered(_joined(path, key))
        path = _joined(path, keys[-1]) if keys else path
        if array:
            self.lines.first.setdefault(path, line)
            self.counts[path] = self.counts.get(path, -1) + 1
            path = self._numbered(path)
        elif path in self.tables:
            self.lines.twice.append((path, self.lines.first.get(path, line), line))
        self.tables.add(path)
        self._note(path, line)
        return path

    def _numbered(self, path: str) -> str:
        return f"{path}.{self.counts[path]}" if path in self.counts else path

    def _pair(self, prefix: str, depth: int) -> None:
        line = self.line
        path = prefix
        keys = self._keys("=")
        for key in keys:
            path = _joined(path, key)
            if key is not keys[-1]:
                self._note(path, line)
        if path in self.lines.first and path not in self.tables and keys:
            self.lines.twice.append((path, self.lines.first[path], line))
        self._note(path, line)
        self._value(path, depth)

    def _note(self, path: str, line: int) -> None:
        while path and path not in self.lines.first:
            self.lines.first[path] = line
            path = path.rpartition(".")[0]

    def _keys(self, end: str) -> list[str]:
        """Parts of a dotted key, up to and over the sign that ends it."""
        keys: list[str] = []
        while self._skip(" \t."):
            sign = self.text[self.place]
            if sign == "\n":
                break
            if sign == end:
                self.place += 1
                break
            if sign in "\"'":
                keys.append(self._string())
                continue
            start = self.place
            while self.place < len(self.text) and self.text[self.place] not in f" \t.\n\"'{end}":
                self.place += 1
            keys.append(self.text[start : self.place])
        return keys

    def _value(self, path: str, depth: int) -> None:
        if not self._skip(" \t") or depth > DEEPEST:
            return
        sign = self.text[self.place]
        if sign in "\"'":
            self._string()
        elif sign in "[{":
            self.place += 1
            self._inside(sign, path, depth + 1)
        else:
            while self.place < len(self.text) and self.text[self.place] not in _BARE_END:
                self.place += 1

    def _inside(self, opened: str, path: str, depth: int) -> None:
        close = "]" if opened == "[" else "}"
        count = 0
        while self._skip(" \t\n,"):
            sign = self.text[self.place]
            if sign in "]}":
                self.place += sign == close
                return
            before = self.place
            if opened == "{":
                self._pair(path, depth)
            else:
                self._value(f"{path}.{count}", depth)
                count += 1
            if self.place == before:
                self._step()

    def _string(self) -> str:
        quote = self.text[self.place]
        long = self.text.startswith(quote * 3, self.place)
        fence = quote * 3 if long else quote
        self.place += len(fence)
        start = self.place
        while self.place < len(self.text) and not self._at(fence):
            if self._at("\n") and not long:
                break
            if quote == '"' and self._at("\\"):
                self._step()
            self._step()
        said = self.text[start : self.place]
        if self._at(fence):
            self.place += len(fence)
            while long and self._at(quote):  # up to two quotes may stand before the fence
                self.place += 1
        return said

    def _at(self, sign: str) -> bool:
        return self.text.startswith(sign, self.place)

    def _step(self) -> None:
        if self.place < len(self.text):
            self.line += self.text[self.place] == "\n"
            self.place += 1

    def _skip(self, blanks: str) -> bool:
        """Pass blanks and, where lines may end, comments; whether there is more."""
        while self.place < len(self.text):
            if self._at("#") and "\n" in blanks:
                self._to_line_end()
            elif self.text[self.place] in blanks:
                self._step()
            else:
                return True
        return False

    def _to_line_end(self) -> None:
        end = self.text.find("\n", self.place)
        self.place = len(self.text) if end < 0 else end


def _joined(path: str, key: str) -> str:
    return f"{path}.{key}" if path else key
