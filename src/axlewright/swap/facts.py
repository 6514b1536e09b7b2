"""What the plan hangs on: the kind of change, and what this rig has, each with who says so."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final, Literal, TypeAlias

from axlewright.errors import AxlewrightError
from axlewright.rig import Change, Rig

Who: TypeAlias = Literal["rig", "change", "said", "assumed"]

KINDS: Final = (
    "bare housing",
    "part-built housing",
    "geared axle",
    "gears",
    "brackets",
    "shafts",
    "springs",
    "wheels",
)
SKILLS: Final = ("practised", "first-timer")
_BY_NAME: Final[tuple[tuple[str, tuple[str, ...]], ...]] = (  # the largest kind first
    ("bare housing", ("housing", "tube.", "sleeve.", "forging.modulus", "travel.forgings")),
    ("gears", ("gear.", "drive.lock")),
    ("brackets", ("truss.", "forging.", "brackets.", "damper_bracket.")),
    ("shafts", ("shaft.", "joint.", "hub.", "kingpin.", "knuckle.", "drive.unlocking")),
    (
        "springs",
        ("travel.", "spring", "links.", "longer.", "points.", "track_bar.", "track.springs"),
    ),
    ("wheels", ("tyre.", "wheel.", "hub_height.", "track.tyres", "severity.")),
)
QUESTIONS: Final[Mapping[str, tuple[str, tuple[str, ...]]]] = {
    "track_bar": ("Has it a track bar?", ("yes", "no")),
    "stabiliser": ("Has it a stabiliser with links at the axle?", ("yes", "no")),
    "sensors": ("Has it wheel-speed sensors?", ("yes", "no")),
    "lock_new": ("Is the lock's switch and line still to be laid?", ("yes", "no")),
    "brackets": ("Do the brackets come welded on the housing?", ("yes", "no")),
    "tie_rod": ("Which tie rod goes on?", ("old", "its own")),
    "pinion": ("Does the pinion stand below or above the axle's line?", ("below", "above")),
    "arms_moved": ("Are the arms' bolts at the frame undone as well?", ("yes", "no")),
    "springs_moved": ("Are the leaf eyes or shackles undone as well?", ("yes", "no")),
    "running": ("Is it run on stands before it goes down on its wheels?", ("yes", "no")),
}
_ARMS: Final = {
    "four arms": "four",
    "three arms": "three",
    "radius arms": "radius",
    "leaves": "leaves",
}
_SPRINGS: Final = {
    "coil on a seat": "coil",
    "coil-over on a damper bracket": "coil-over",
    "leaf": "leaf",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Fact:
    """One fact: its name, the word that answers it, and who says so."""

    name: str
    word: str
    who: Who


@dataclass(frozen=True, slots=True)
class Facts:
    """Everything that chooses tasks."""

    each: tuple[Fact, ...]

    def word(self, name: str) -> str:
        """Word of a fact, empty where there is none such."""
        return next((fact.word for fact in self.each if fact.name == name), "")

    def saying(self, name: str, word: str) -> "Facts":
        """Give the same facts with one of them answered otherwise."""
        rest = tuple(fact for fact in self.each if fact.name != name)
        return Facts((*rest, Fact(name=name, word=word, who="said")))

    def hold(self, only_if: str) -> bool:
        """Whether all of a condition's words hold; parted by a stroke, any of them will do.

        Examples
        --------
        >>> facts = Facts((Fact(name="spring", word="leaf", who="rig"),))
        >>> facts.hold("spring=coil/leaf"), facts.hold("spring=coil"), facts.hold("")
        (True, False, True)
        """
        for clause in only_if.split():
            name, _, words = clause.partition("=")
            if _token(self.word(name)) not in words.split("/"):
                return False
        return True


def kind_of(changes: Sequence[Change]) -> str:
    """Kind of work that some changes come to, by what they set; the largest of them."""
    names = [name for change in changes for step in change.steps for name in step.names]
    for kind, openings in _BY_NAME:
        if any(name.startswith(openings) for name in names):
            return kind
    raise AxlewrightError(
        "What this change asks of hands cannot be told from its names.",
        remedy=f"Say which kind it is: {', '.join(KINDS)}.",
    )


def facts_of(
    before: Rig,
    after: Rig,
    changes: Sequence[Change] = (),
    said: Mapping[str, str] | None = None,
    kind: str = "",
) -> Facts:
    """Facts of a rig and a change; what was said stands before what is assumed."""
    told = dict(said or {})
    known(kind, told)
    found: dict[str, Fact] = {}

    def put(name: str, word: str, who: Who) -> None:
        found[name] = Fact(name=name, word=word, who=who)

    what = kind or kind_of(changes)
    named = any(step.path == "housing" for change in changes for step in change.steps)
    put("kind", what, "said" if kind else ("assumed" if named else "change"))
    put("axle", before.axle, "rig")
    put("arms", _ARMS[after.words["held_by.arms"]], "rig")
    put("spring", _SPRINGS[after.words["held_by.weight_on"]], "rig")
    commanded = "locks on command"
    now, was = after.words.get("drive.lock", "open"), before.words.get("drive.lock", "open")
    put("lock", "command" if now == commanded else "other", "rig")
    put("lock_new", "yes" if now == commanded and was != commanded else "no", "change")
    bar = after.words["held_by.arms"] in {"three arms", "radius arms"} or (
        after.words["held_by.arms"] == "four arms" and before.axle == "front"
    )
    put("track_bar", "yes" if bar else "no", "assumed")
    put("stabiliser", "yes", "assumed")
    put("sensors", "yes", "assumed")
    put("brackets", "yes", "assumed")
    put("pinion", "below", "assumed")
    put("tie_rod", "its own" if what == "geared axle" else "old", "assumed")
    raised = what == "springs" or any(
        step.path.startswith("travel.lift") for change in changes for step in change.steps
    )
    put("arms_moved", "yes" if raised else "no", "assumed")
    put("springs_moved", "yes" if raised else "no", "assumed")
    put("running", "yes" if what in KINDS[:3] else "no", "assumed")
    for name, word in told.items():
        put(name, word, "said")
    return Facts(tuple(found.values()))


def known(kind: str, said: Mapping[str, str]) -> None:
    """Refuse a kind, a question or a word that nobody knows; says which are known."""
    if kind and kind not in KINDS:
        raise AxlewrightError(
            f"There is no kind of work {kind[:40]!r}.", remedy=f"One of: {', '.join(KINDS)}."
        )
    for name, word in said.items():
        if name not in QUESTIONS:
            raise AxlewrightError(
                f"There is no question {name[:40]!r}.",
                remedy=f"One of: {', '.join(QUESTIONS)}.",
            )
        if word not in QUESTIONS[name][1]:
            raise AxlewrightError(
                f"{name} is not {word[:40]!r}.",
                remedy=f"One of: {', '.join(QUESTIONS[name][1])}.",
            )


def _token(word: str) -> str:
    return word.replace(" ", "_").replace("part-built", "part_built")
