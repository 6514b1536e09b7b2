"""The page on the rig file, from the catalogue: units, ranges, doubts, conditions, changes.

``python -m tools.rig_file_docs`` writes `docs/rig-file.md` again; with ``--check`` it writes
nothing and ends with 1 where the page is not what the catalogue says.
"""

import sys
from collections.abc import Iterator
from math import degrees
from pathlib import Path

from axlewright.rig import FIELDS, MAY_BE_UNKNOWN
from axlewright.rig.answer import NUMBERS, bounds
from axlewright.rig.field import Field
from axlewright.rig.place_text import LIKE
from axlewright.rig.reading import ACTIONS, FOUND, WHERE
from axlewright.units import known

PAGE = Path(__file__).parents[1] / "docs" / "rig-file.md"

HEAD = """\
# The rig file

<!-- Written by `python -m tools.rig_file_docs` from the catalogue; change the catalogue. -->

A rig file is TOML: one vehicle, one of its beam axles, in the units you measured in.
`axlewright start` asks for it question by question and writes it; any editor does as well.
`axlewright schema` writes its JSON Schema, so that an editor can complete and check it; the
schemas [of this file](schemas/rig-1.json) and [of the change file](schemas/change-1.json) are kept
beside this page.

```toml
axlewright = 1                 # version of the file, always the first line

[rig]
name = "Heron"
axle = "front"                 # front or rear
condition = "as listed"

[tube]
girth.left = "9 7/16 in"       # text in quotes, with its unit
wall = "about 6 mm"            # less sure: three times the doubt
steel = "don't know"           # said, not forgotten: an assumption stands in
```

A name with a dot may be written either way: `girth.left = …` under `[tube]`, or
`tube.girth.left = …` above the first heading. A misspelt name, a value that is out of range and
answers that contradict one another are all told at once, with line and example.

## How to write a value

- Numbers with their unit, in quotes: `"395 mm"`, `"15 1/2 in"`, `"39,5 cm"`, `"1150 kg"`. A text
  that could mean two things is refused, and the message says how to write it: `"1,200 kg"` may be
  a small or a large weight, while `"1.200,5 kg"`, `"1,200.5 kg"` and `"1 200 kg"` are clear.
- **About**: `"about 6 mm"` or `"6 mm or so"` trebles the doubt of a careful reading.
  `"6 mm ± 0.3 mm"` and `"5 to 8 mm"` state it yourself.
- **Don't know**: `"don't know"` is an answer; a stated assumption stands in, with its band and
  source, and is counted in what the answer rests on. So does leaving out an optional name.
- Left and right are the vehicle's, as its driver sits.
- The offset is `"ET -25 mm"` or a backspacing, `"backspacing 4 1/2 in"`, which needs the rim's
  width as well. The two run in opposite senses.
- `kg` and `lb` are force or mass by what is asked; a torque never guesses between pound-inches and
  pound-feet.

| kind | units accepted |
|---|---|
"""

CONDITIONS = """
## What has been mended, or hurts

Each thing is an entry of its own, and `rig.condition` says `"as listed"`. Findings decide whether
the rig may be driven; no figure lifts one. What a finding means hangs on its part: hyphens and
slips of the pen are free (a `knuckel` is judged as the knuckle, and the answer says so), and
a part that nobody knows is never taken for a harmless one.

```toml
[[condition]]
part = "track-bar bracket"
where = "right"
what = "mended"
date = 2026-05-03
note = "welded in camp after it cracked at the foot"
```

| name | what it takes |
|---|---|
| `part` | the part in your words; needed |
"""

CHANGES = """
## The change file

What you think of doing, as steps on the rig's own names; `assess --with` shows what got better and
what got worse, on the same draws. Several changes follow one another.

```toml
axlewright_change = 1
name = "heavier tube"

[[step]]
set = "tube.outer"
to = "88.9 mm"

[[step]]
set = "tube.wall"
to = "7.9 mm"
```

A step is one of {actions}. `set` and `add` need a known value in `to`, in the form the table
gives; `remove` takes away a reading or part that the rig file gives and has no `to`. One name is
changed once in a file. Where a part is replaced, what you measured on the old one goes with it, and
the answer says what went. A tyre of another height needs the heights at which the hubs now stand.

Another housing is one step, and brings its own numbers:

```toml
[[step]]
set = "housing"

[step.to]
tube.outer = "95.2 mm"
tube.wall = "9.5 mm"
tube.steel = "plain hot-finished"
tube.bare.left = "310 mm"
tube.bare.right = "600 mm"
gear.ring = "248 mm"
shaft.inner = "38 mm"          # where the shafts come along; else the old ones stay
```

The first six are needed. Sleeves, truss, gussets, plated brackets, ratio, kingpin spacing and the
axle's mass on a scale may come with it; so may shafts, joint, hubs, knuckles and track. Whatever
was read on the old housing and is not given anew is dropped and told: it is assumed from then on.
Conditions on the old housing go as well, and the new one stands as *never looked at*.

```console
axlewright assess examples/rigs/heron.toml --with examples/changes/heavier-tube.toml
axlewright assess examples/rigs/heron.toml --with examples/changes/heavier-housing.toml
axlewright schema change
```
"""

# Unit in which the doubt of a kind of field is shown, and how many there are to the SI unit.
SHOWN = {
    "length": ("mm", 1e3),
    "distance": ("mm", 1e3),
    "offset": ("mm", 1e3),
    "toe": ("deg", degrees(1)),
    "angle": ("deg", degrees(1)),
    "mass": ("kg", 1.0),
    "force": ("N", 1.0),
    "weight": ("N", 1.0),
    "torque": ("N m", 1.0),
    "stiffness": ("N/m", 1.0),
    "speed": ("m/s", 1.0),
    "place": ("mm", 1e3),
    "pressure": ("kPa", 1e-3),
    "volume": ("l", 1e3),
    "ratio": ("", 1.0),
    "plain": ("", 1.0),
    "count": ("", 1.0),
}

TITLES = {
    "held_by": "What holds it, and what carries the weight",
    "tube": "Tubes",
    "rig": "The rig",
    "use": "Use",
    "points": "Places, taped in a second hour",
    "travel": "Travel, stops and ground clearance",
    "longer": "Rods that do not fit",
}


def page() -> str:
    """Give the whole page."""
    lines = [HEAD.rstrip("\n"), *_units(), "", "## The first thirteen answers", ""]
    lines.append(
        "All that is required; [how each is measured](measuring.md). The last column is how far "
        "a careful reading is doubted (standard uncertainty). "
        f"{_words(tuple(each.path for each in FIELDS if each.path in MAY_BE_UNKNOWN))} may be "
        '`"don\'t know"`; the answer hangs on the others.'
    )
    lines += _table([field for field in FIELDS if field.question is not None], numbered=True)
    lines += ["", "## Everything else, all optional", ""]
    lines.append(
        "What is left out becomes an assumption. The answer says which of these are worth ten "
        "minutes on *this* rig."
    )
    for section, fields in _sections():
        lines += ["", f"### {TITLES.get(section, section.replace('_', ' ').capitalize())}"]
        lines += _table(fields, numbered=False)
    lines.append(CONDITIONS.rstrip("\n"))
    lines.append(f"| `what` | {_words(FOUND)}; needed |")
    lines.append(f"| `where` | {_words(WHERE)} |")
    lines += ["| `date` | the day it was found, year-month-day |", "| `note` | a text |"]
    lines.append(CHANGES.replace("{actions}", _words(ACTIONS)).rstrip("\n"))
    return "\n".join(lines) + "\n"


def _units() -> Iterator[str]:
    kinds = dict.fromkeys(field.kind for field in FIELDS)
    for kind in kinds:
        if kind in NUMBERS or kind in {"word", "text", "tyre", "yes", "place"}:
            continue
        yield f"| {kind} | {_words(tuple(filter(None, known(kind))))} |"


def _sections() -> list[tuple[str, list[Field]]]:
    """Optional fields by the heading of the file that they stand under."""
    found: dict[str, list[Field]] = {}
    for field in FIELDS:
        if field.question is None:
            found.setdefault(field.path.partition(".")[0], []).append(field)
    return list(found.items())


def _table(fields: list[Field], *, numbered: bool) -> list[str]:
    first = "| no. | name |" if numbered else "| name |"
    rule = "|---" * (7 if numbered else 6) + "|"
    lines = ["", f"{first} question | how | accepted | example | doubt |", rule]
    for field in fields:
        number = f"| {field.question} " if numbered else ""
        how = f"{field.how} *{field.caution}*" if field.caution else field.how
        only = "" if field.axle == "both" else f" ({field.axle} axle only)"
        lines.append(
            f"{number}| `{field.path}` | {field.asks}{only} | {how} | {_accepted(field)} "
            f"| `{field.example}` | {_doubt(field)} |"
        )
    return lines


def _accepted(field: Field) -> str:
    """What a field takes: its words, or its range in metric and in US units."""
    if field.choices:
        return _words(field.choices)
    if field.kind == "yes":
        return "`yes`, `no`"
    if field.kind == "place":
        return LIKE
    if field.low is None or field.high is None:
        return "as moulded: size, load index, speed symbol" if field.kind == "tyre" else "a text"
    told = [" to ".join(bounds(field, system)) for system in ("metric", "us")]
    return "; ".join(dict.fromkeys(told))


def _doubt(field: Field) -> str:
    """Standard uncertainty in words."""
    parts = []
    if field.doubt:
        unit, scale = SHOWN[field.kind]
        parts.append(f"{field.doubt * scale:.2g} {unit}".rstrip())
    if field.relative_doubt:
        parts.append(f"{100 * field.relative_doubt:.3g} %")
    return " or ".join(parts)


def _words(words: tuple[str, ...]) -> str:
    return ", ".join(f"`{word}`" for word in words)


def main(words: list[str]) -> int:
    """Write or check the page; gives the exit code."""
    wanted = page()
    if words == ["--check"]:
        same = PAGE.is_file() and PAGE.read_text("utf-8") == wanted
        if not same:
            sys.stderr.write(
                f"{PAGE.name} is behind the catalogue: python -m tools.rig_file_docs\n"
            )
        return 0 if same else 1
    PAGE.write_text(wanted, encoding="utf-8", newline="\n")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
