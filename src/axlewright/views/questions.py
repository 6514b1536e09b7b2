"""Questions as a person meets them: what is asked, how to measure, what was understood."""

from collections.abc import Collection, Iterable, Sequence
from typing import Final

from axlewright import units
from axlewright.rig import ASSUMPTIONS, Field, near
from axlewright.units import Parsed

THIRTEEN: Final = 13
OF_UNITS: Final = frozenset(
    {"length", "distance", "mass", "force", "weight", "torque", "pressure", "speed", "stiffness"}
)
COMMANDS: Final = (
    'At any question: "?" explains, "back" goes to the question before, "later" leaves; '
    "every answer is kept at once."
)
SIDES_RULE: Final = "Left and right are the vehicle's own, as seen by someone sitting in it."

# What an answer is called when it is said back, with its side.
NAMES: Final[dict[str, str]] = {
    "rig.name": "name",
    "rig.axle": "which axle",
    "held_by.arms": "what holds the axle",
    "held_by.weight_on": "what carries the weight",
    "tyre.sidewall": "tyre",
    "hub_height.left": "left hub centre above the ground",
    "hub_height.right": "right hub centre above the ground",
    "track.tyres": "tyre centre to tyre centre",
    "track.springs": "spring to spring",
    "tube.girth.left": "round the left tube",
    "tube.girth.right": "round the right tube",
    "tube.bare.left": "bare left tube",
    "tube.bare.right": "bare right tube",
    "wheel.offset": "wheel offset, positive with the tyre's centre inside the hub face",
    "wheel.spacer": "spacer on each side",
    "weight.axle": "weight on this axle",
    "joint.cap_across": "joint cap across its face",
    "joint.cap_to_cap": "cross from cap to cap",
    "drive.lock": "differential",
    "drive.unlocking_hubs": "unlocking hubs",
    "rig.condition": "condition",
    "use.hardest": "hardest thing in a usual month",
    "use.from_help": "distance from help",
}
# Where the catalogue speaks of the file, what to say to someone who is being asked.
HOWS: Final[dict[str, str]] = {
    "rig.condition": "1 lists them here, one by one. If nobody has looked, 3 is an answer too.",
}
ON_PAPER: Final[dict[str, str]] = {
    "rig.condition": "List each at the end of this sheet; or say that nothing is, or that nobody "
    "has looked.",
}
# Why it is asked, for those who type a question mark.
REASONS: Final[dict[int, str]] = {
    1: "Arms, leaves and coils decide where forces enter the tube, and where it bends.",
    2: "The size gives the lever of every pull and blow; the load figures tell what it may carry.",
    3: "The hub's height under load is the lever of drive and braking, and the ground beneath.",
    4: "With the spring spacing it gives the lever that bends the tube.",
    5: "What stands outboard of the springs is the lever that bends the tube.",
    6: "Divided by pi it is the tube's diameter; strength goes with its cube.",
    7: "It tells where the centre sits, and where the tube is held.",
    8: "They move the tyre in or out, and with it the load on the hub bearing and the tube.",
    9: "Every load is this weight times something.",
    10: "The cap tells how thick the cross is, and so what torque the joint holds.",
    11: "A lock can put the whole axle's pull on one shaft.",
    12: "What was mended, cracked, bent or wet decides whether to drive at all; no figure does.",
    13: "It tells how hard and how often, and whether a mend beside the track is any use.",
}
DRAWINGS: Final[dict[str, str]] = {
    "four arms": """
      o=========o    upper arm, one each side
     (O)
      o===========o  lower arm, one each side""",
    "three arms": """
      o=========o    upper arm, one for the whole axle
     (O)
      o===========o  lower arm, one each side""",
    "radius arms": """
      o--.
     (O)  >========o one arm each side, bolted twice to the axle
      o--'""",
    "angled arms": """
      o------.  .------o   upper arms, from above:
              (O)            together over the middle
      o===========o        lower arm, one each side""",
    "leaves": """
      o--.___   ___.--o
          '--(O)--'     leaf pack, clamped to the tube each side""",
    "coil on a seat": """
      /\\/\\/\\
      \\/\\/\\/   coil
     ==(__)==  on a seat upon the tube""",
    "coil-over on a damper bracket": """
      /|/|/|   coil round the damper
      \\|\\|\\|
     (__)--o   on a bracket beside the tube""",
    "leaf": """
     ==========
      ======     leaves clamped
       (__)      to the tube""",
}


def field_name(field: Field) -> str:
    """What a field is called in a sentence, its side included."""
    if field.path in NAMES:
        return NAMES[field.path]
    labels = {item.quantity: item.label for item in ASSUMPTIONS}
    return labels.get(field.quantity) or field.path.replace(".", ", ").replace("_", " ")


def example_of(field: Field, system: str = "metric") -> str:
    """Give the example of a field, in inches and pounds for who writes them."""
    if system != "us" or field.kind not in OF_UNITS:
        return field.example
    return units.show(units.parse(field.example, field.kind).value, field.kind, "us", 3)


def question_lines(
    field: Field, known: str = "", *, optional: bool = False, system: str = "metric"
) -> list[str]:
    """One question: where we are, what is asked, how to measure, choices or an example."""
    head = f"{field.question} of {THIRTEEN}. " if field.question else ""
    lines = [f"{head}{field.asks}", f"   {how(field)}"]
    if field.caution:
        lines.append(f"   ! {field.caution}")
    if field.path.endswith(".left"):
        lines.append(f"   {SIDES_RULE}")
    lines += choice_lines(options(field))
    if not options(field):
        lines.append(f"   For example: {example_of(field, system)}")
    if known:
        lines.append(f"   So far: {known}. An empty line keeps it.")
    elif optional:
        lines.append("   An empty line passes it over.")
    return lines


def how(field: Field, *, paper: bool = False) -> str:
    """How to measure or look, for someone who answers here, or on paper, and not in a file."""
    return (ON_PAPER if paper else HOWS).get(field.path, field.how)


def options(field: Field) -> tuple[str, ...]:
    """Words to choose from; none where a text or number is asked for."""
    return ("yes", "no") if field.kind == "yes" else field.choices


def choice_lines(words: Sequence[str]) -> list[str]:
    """Numbered words to choose from, each with its drawing where there is one."""
    lines = []
    for number, word in enumerate(words, 1):
        lines.append(f"   {number}  {word}")
        lines += [f"     {row}".rstrip() for row in DRAWINGS.get(word, "").split("\n") if row]
    return lines


def chosen(said: str, words: Sequence[str]) -> str | None:
    """Give the word meant by a number, a whole word or the beginning of only one of them.

    Examples
    --------
    >>> chosen("2", ("open", "limited slip")), chosen("LIM", ("open", "limited slip"))
    ('limited slip', 'limited slip')
    >>> chosen("locks", ("locks by itself", "locks on command")) is None
    True
    """
    key = _plain(said)
    if not key:
        return None
    numbered = key.removesuffix(".")
    if numbered.isascii() and numbered.isdigit() and 1 <= len(numbered) <= 3:
        place = int(numbered)
        return words[place - 1] if 1 <= place <= len(words) else None
    whole = [word for word in words if _plain(word) == key]
    begun = whole or [word for word in words if _plain(word).startswith(key)]
    return begun[0] if len(begun) == 1 else None


def not_chosen_line(said: str, words: Sequence[str]) -> str:
    """What to say to a word that is none of the choices, or more than one of them."""
    key = _plain(said)
    begun = [word for word in words if key and _plain(word).startswith(key)]
    if len(begun) > 1:
        return f"{_short(said)!r} could be {_or(begun)}. Give its number, or more of the word."
    ends = [(at, word) for at, word in enumerate(words, 1) if key and _plain(word).endswith(key)]
    meant = [at for at, word in enumerate(words, 1) if word in near(said, words, 1, 0.75)]
    meant = [ends[0][0]] if len(ends) == 1 else meant
    guess = f" Did you mean {meant[0]}, {words[meant[0] - 1]}?" if meant else ""
    return (
        f"{_short(said)!r} is not one of the words for this.{guess} Give a number from 1 to "
        f"{len(words)}."
    )


def echo_line(field: Field, parsed: Parsed | None, text: str) -> str:
    """What was understood, in words, with unit and side."""
    if parsed is None:
        return f"Understood: {field_name(field)}: {text}."
    if parsed.dont_know:
        return f"Understood: {field_name(field)}: not known; it is assumed, with a wide band."
    told = units.echo(parsed)
    if parsed.note:
        told += f" ({parsed.note})"
    return f"Understood: {field_name(field)}: {told}."


def explanation_lines(field: Field, *, open_ok: bool) -> list[str]:
    """More about one question: why it is asked, and what may be said."""
    lines = [REASONS[field.question]] if field.question in REASONS else []
    lines.append(f"How: {how(field)} For example: {field.example}.")
    lines += [f"Caution: {field.caution}"] if field.caution else []
    if field.kind not in {"word", "yes", "text", "tyre"}:
        lines.append('Rough is welcome: "about ..." trebles the doubt; "5 to 8 mm" gives a band.')
    if open_ok:
        lines.append('"don\'t know" will do; it is then assumed, with a wide band.')
    elif field.required:
        lines.append('This one cannot be left open, but it can wait: "later" leaves for now.')
    return [*lines, COMMANDS]


def missing_line(paths: Collection[str]) -> str:
    """Which answers are still missing for a first answer."""
    named = [NAMES.get(path, path) for path in paths]
    return f"For a first answer there is still missing: {'; '.join(named)}."


def _plain(word: str) -> str:
    return " ".join(word.replace("-", " ").replace("'", "").casefold().split())


def _short(said: str) -> str:
    return said if len(said) <= 40 else f"{said[:37]}..."


def _or(words: Iterable[str]) -> str:
    *most, last = words
    return f"{', '.join(most)} or {last}" if most else last
