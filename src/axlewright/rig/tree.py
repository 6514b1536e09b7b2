"""A file's tables beside the catalogue: what is known, misspelt, out of place or missing."""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, field

from axlewright.errors import BadQuantity, Fault
from axlewright.rig.answer import Answer, accepted, read_answer, shortened
from axlewright.rig.field import Field
from axlewright.rig.toml_lines import Lines
from axlewright.rig.words import SIDE_RULE, near, sides_meant
from axlewright.units import parse

MOST = 100  # faults told at once
RIM_WIDTH = "wheel.width"  # the field that an offset given as backspacing looks at


@dataclass(slots=True)
class Place:
    """One file on the desk: its tables, where each name stands, and the faults so far."""

    file: str
    tables: Mapping[str, object]
    lines: Lines
    faults: list[Fault] = field(default_factory=list)
    guessed: set[str] = field(default_factory=set)

    def line(self, path: str) -> int | None:
        """Line of a path, or of the table that it belongs in."""
        return self.lines.near(path)

    def get(self, path: str) -> object | None:
        """Value at a dotted path, None where there is none."""
        given: object = self.tables
        for key in path.split("."):
            if isinstance(given, dict):
                given = given.get(key)
            elif isinstance(given, list) and key.isdigit() and int(key) < len(given):
                given = given[int(key)]
            else:
                return None
        return given

    def add(
        self, path: str, problem: str, takes: str, example: str, *, near: tuple[str, ...] = ()
    ) -> None:
        """Note one fault."""
        if len(self.faults) >= MOST:
            return
        given = self.get(path)
        told = "" if given is None or isinstance(given, (dict, list)) else shortened(given)
        self.faults.append(
            Fault(
                file=self.file,
                line=self.line(path),
                field=path,
                problem=problem,
                given=told,
                accepted=takes,
                example=example,
                near=near,
            )
        )

    def unknown(self, table: Mapping[str, object], at: str, names: Sequence[str]) -> None:
        """Note every key of a table that is not one of the names."""
        for key in table:
            if key not in names:
                path = f"{at}.{key}" if at else key
                takes = " | ".join(names)
                self.add(path, "there is no such name here", takes, "", near=near(key, names))

    def unknown_field(self, at: str, path: object, fields: Mapping[str, Field]) -> None:
        """Note a path that the catalogue does not hold."""
        if not isinstance(path, str):
            self.add(at, "this is not the name of a field", "a name in quotes", '"tyre.sidewall"')
            return
        problem, likely = _likely(path, fields)
        takes = "the name of a field of the rig file"
        self.add(at, problem, takes, '"tyre.sidewall"', near=likely)


def walked(
    place: Place, catalogue: Sequence[Field], axle: str, known: Collection[str]
) -> dict[str, Answer]:
    """Read every answer in the tables; unknown names and faulty answers are noted."""
    fields = {each.path: each for each in catalogue}
    branches = {path[:at] for path in (*fields, *known) for at in _dots(path)}
    answers: dict[str, Answer] = {}
    waiting: list[tuple[str, object]] = [(key, each) for key, each in place.tables.items()]
    while waiting and len(place.faults) < MOST:
        path, given = waiting.pop()
        if path in known:
            continue
        if path in fields:
            answer = _checked(place, fields[path], given, axle)
            if isinstance(answer, Fault):
                place.faults.append(answer)
                place.guessed.add(path)
            else:
                answers[path] = answer
        elif path in branches and isinstance(given, dict):
            waiting.extend((f"{path}.{key}", each) for key, each in given.items())
        elif path in branches:
            parts = sorted(each for each in fields if each.startswith(f"{path}."))
            takes = "each of its parts by name"
            example = f'{parts[0]} = "{fields[parts[0]].example}"' if parts else f"[{path}]"
            place.add(path, "this takes no value of its own", takes, example, near=tuple(parts[:3]))
            place.guessed.update(parts)
        else:
            _stranger(place, path, given, fields, branches)
    return {each.path: answers[each.path] for each in catalogue if each.path in answers}


def missing(
    place: Place, catalogue: Sequence[Field], axle: str, answers: Mapping[str, Answer]
) -> None:
    """Note every required field without an answer, but for those told as misspelt."""
    for each in catalogue:
        here = not axle or each.axle in {"both", axle}
        guessed = any(f"{each.path}.".startswith(f"{path}.") for path in place.guessed)
        if not each.required or not here or each.path in answers or guessed:
            continue
        if len(place.faults) >= MOST:
            return
        place.faults.append(
            Fault(
                file=place.file,
                field=each.path,
                problem=f"this is missing. {each.asks}",
                accepted=each.how
                if accepted(each) == each.how
                else f"{accepted(each)}. {each.how}",
                example=f'{each.path} = "{each.example}"',
            )
        )


def _checked(place: Place, wanted: Field, given: object, axle: str) -> Answer | Fault:
    line = place.line(wanted.path)
    if axle and wanted.axle not in {"both", axle}:
        return Fault(
            file=place.file,
            line=line,
            field=wanted.path,
            problem=f"this belongs to a {wanted.axle} axle, and this one is a {axle} axle",
            given=shortened(given) if not isinstance(given, (dict, list)) else "",
            accepted=f'take it out, or say axle = "{wanted.axle}" under [rig]',
        )
    if isinstance(given, dict):
        sides = ", ".join(f"{wanted.path}.{key}" for key in list(given)[:3])
        return Fault(
            file=place.file,
            line=line,
            field=shortened(sides or wanted.path),
            problem=f"{wanted.path} takes one value, not a table of them",
            accepted=accepted(wanted),
            example=f'{wanted.path} = "{wanted.example}"',
            near=(wanted.path,),
        )
    width = rim_width(place.get(RIM_WIDTH)) if wanted.kind == "offset" else None
    return read_answer(wanted, given, file=place.file, line=line, rim_width=width)


def rim_width(given: object) -> float | None:
    """Rim width in m from what was given for it, None where that does not say it."""
    try:
        parsed = parse(given, "length") if isinstance(given, str) else None
    except BadQuantity:
        return None
    return None if parsed is None or parsed.dont_know else parsed.value


def _stranger(
    place: Place,
    path: str,
    given: object,
    fields: Mapping[str, Field],
    branches: Collection[str],
) -> None:
    """Note a name that the catalogue does not hold; a table as a whole."""
    if isinstance(given, (dict, list)):
        level = [each for each in branches if each.count(".") == path.count(".")]
        likely = near(path, (*level, *(("condition",) if "." not in path else ())))
        if likely or "." not in path:
            heads = (each for each in branches if "." not in each)
            takes = f"one of the headings: {', '.join(sorted({*heads, 'condition', 'rig'}))}"
            example = f"[{likely[0]}]" if likely else "[tyre]"
            place.guessed.update(likely)
            place.add(path, "there is no table of this name", takes, example, near=likely)
            return
    problem, likely = _likely(path, fields)
    place.guessed.update(likely)
    example = f'{likely[0]} = "{fields[likely[0]].example}"' if likely else ""
    table = path.rpartition(".")[0]
    beside = [each.removeprefix(f"{table}.") for each in fields if each.startswith(f"{table}.")]
    beside = ["name", "axle", *beside] if table == "rig" else beside
    takes = f"under [{table}] one of: {', '.join(beside)}" if beside else "a name that is known"
    place.add(path, problem, takes, example, near=likely)


def _likely(path: str, fields: Mapping[str, Field]) -> tuple[str, tuple[str, ...]]:
    """Problem with a path and the paths it may have meant; sides first."""
    table, _, last = path.rpartition(".")
    sided = tuple(f"{table}.{side}" for side in sides_meant(last))
    if sided and set(sided) <= fields.keys():
        return f"{last!r} is no side here: {SIDE_RULE}", sided
    whole = [f"{table}.{side}" for side in ("left", "right")]
    if table in fields and (sides_meant(last) or f"{table}.{last}" in whole):
        return f"{table} takes one value, not one for each side", (table,)
    beside = {each.rpartition(".")[2]: each for each in fields if each.startswith(f"{table}.")}
    likely = tuple(beside[name] for name in near(last, beside)) or near(path, fields)
    return "there is no such name", likely or tuple(list(beside.values())[:3])


def _dots(path: str) -> list[int]:
    return [at for at, sign in enumerate(path) if sign == "."]
