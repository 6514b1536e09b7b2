"""A first answer out of a rig that is only half described, and which question would move it."""

from collections.abc import Callable, Iterable
from typing import Final, TypeAlias

from axlewright import units
from axlewright.actions.draft import STAND_INS, Draft, complete_rig
from axlewright.errors import BadFile
from axlewright.rig import FIELDS, Field, Rig
from axlewright.strength import Assessment, assess_rig
from axlewright.views import (
    drive_lines,
    giving,
    measure_next,
    missing_line,
    not_judged_line,
    order_rows,
    rests_line,
    sentence,
)

Assess: TypeAlias = Callable[[Rig, int], Assessment]

DRAWS: Final = 256
LOCKS: Final = ("open", "locks on command")
JOINT: Final = {"front": ("cross_joint_left", "yoke_ears_left"), "rear": ("propeller_shaft",)}
# Words that settle a quantity of their own are ranked by it.
SETTLES: Final = {
    "tube.steel": "tube_yield",
    "shaft.steel": "shaft_shear_yield",
    "forging.gussets": "forging_modulus",
    "hub.kind": "bearing_static",
    "hub.rows": "bearing_static",
    "brackets.plated": "plate_yield",
}


def assessed(rig: Rig, draws: int) -> Assessment:
    """Assess a rig with so many draws."""
    return assess_rig(rig, draws=draws)


class FirstAnswer:
    """What the answers so far say about what gives first; remembers what it has said."""

    def __init__(self, assess: Assess = assessed, system: str = "") -> None:
        self._assess, self._system = assess, system
        self._said: list[str] = []

    def so_far(self, draft: Draft, path: str) -> list[str]:
        """Lines after one answer: nothing before the weight, the whole once all is answered."""
        if not draft.missing():
            return self._narrowed(draft, path)
        if "weight.axle" not in draft.answers:
            return []
        if draft.needed():
            return [missing_line(draft.needed())] if path == "weight.axle" else []
        told: dict[str, str] = {}
        first: Assessment | None = None
        for lock in LOCKS if "drive.lock" not in draft.answers else LOCKS[:1]:
            rig = draft.provisional({"drive.lock": lock})
            if rig is None:
                return []
            assessment = self._assess(rig, DRAWS)
            first = first or assessment
            told[lock] = _gives(assessment, self._units(draft))
        lines = (
            [_joint_line(first, draft, self._units(draft))]
            if first and path.startswith("joint.")
            else []
        )
        now = [next(iter(told.values()))]
        if len(set(told.values())) > 1:
            now = [f"With an open differential: {now[0]}", f"Locked: {told[LOCKS[1]]}"]
        return [*filter(None, lines), *self._moved(now)]

    def whole(self, draft: Draft) -> list[str] | BadFile:
        """Lines once every required answer is there."""
        rig = complete_rig(draft)
        if isinstance(rig, BadFile):
            return rig
        assessment = self._assess(rig, DRAWS)
        system = self._units(draft)
        self._said = [_gives(assessment, system)]
        stopped = bool(assessment.stops)
        lines = [] if stopped else drive_lines(assessment.findings)
        first = order_rows(assessment, system)[0]
        lines += [sentence(assessment), f"It {giving(first.gives_at)}."]
        lines += [not_judged_line(assessment), rests_line(assessment, system)]
        nexts = measure_next(assessment, system)[:1]
        return lines + [f"Worth measuring next: {line}" for line in nexts]

    def moving(self, draft: Draft) -> list[str]:
        """Optional paths, those first that would move this rig's answer most."""
        rig = complete_rig(draft)
        if isinstance(rig, BadFile):
            return []
        influences = self._assess(rig, DRAWS).influences
        rank = {item.doubt.quantity: place for place, item in enumerate(influences)}
        asked = [each for each in FIELDS if not each.required and _fits(each, draft)]
        last = len(rank)
        return [
            each.path
            for each in sorted(
                asked,
                key=lambda each: rank.get(SETTLES.get(each.path, each.quantity), last),
            )
        ]

    def _narrowed(self, draft: Draft, path: str) -> list[str]:
        if path not in {each.path for each in FIELDS if not each.required}:
            return []
        rig = complete_rig(draft)
        if isinstance(rig, BadFile):
            return []
        return self._moved([_gives(self._assess(rig, DRAWS), self._units(draft))])

    def line(self, draft: Draft) -> str:
        """What gives first as far as the answers go, in one line; empty before the weight."""
        if draft.missing():
            return " ".join(self.so_far(draft, "weight.axle"))
        rig = complete_rig(draft)
        if isinstance(rig, BadFile):
            return ""
        return _gives(self._assess(rig, DRAWS), self._units(draft))

    def _units(self, draft: Draft) -> str:
        """System to tell it in: the reader's where one was picked, else the one of the answers."""
        return self._system if self._system not in {"", "metric"} else draft.system()

    def _moved(self, now: list[str]) -> list[str]:
        before, self._said = self._said, now
        if now == before:
            return ["The answer so far stands."]
        head = "The answer so far" if before else "A first answer, with the rest assumed"
        return [f"{head}: {now[0]}"] if len(now) == 1 else [f"{head}.", *now]


def first_line(draft: Draft, assess: Assess = assessed, system: str = "") -> str:
    """What gives first as far as the answers go, in one line; empty before the weight."""
    return FirstAnswer(assess, system).line(draft)


def _gives(assessment: Assessment, system: str) -> str:
    return f"{sentence(assessment)} It {giving(order_rows(assessment, system)[0].gives_at)}."


def _joint_line(assessment: Assessment, draft: Draft, system: str) -> str:
    keys = JOINT[draft.axle]
    solved = assessment.point.solved
    holds = [
        float(solved.capacity[number, 0])
        for number, row in enumerate(solved.rows)
        if row.part in keys and row.breaks
    ]
    if not holds or not _known(draft, ("joint.cap_across", "joint.cap_to_cap")):
        return ""
    torque = units.show(float(f"{min(holds):.2g}"), "torque", system, 2)
    where = "at full lock" if draft.axle == "front" else "at the pinion"
    return f"With usual steel such a joint holds about {torque} {where}, give or take a half."


def _known(draft: Draft, paths: Iterable[str]) -> bool:
    return all(path in draft.answers and not draft.answers[path].dont_know for path in paths)


SINCE_TAPED: Final = frozenset({"travel.lift", "travel.forgings_turned"})  # against places taped
_LACKING: Final = {"leaves": ("links", "track_bar"), "angled arms": ("track_bar",)}


def _fits(asked: Field, draft: Draft) -> bool:
    """Whether an optional question makes sense for what has been said."""
    words, path = draft.words(), asked.path
    table = path.partition(".")[0]
    taped = any(each.startswith("points.") for each in draft.answers)
    if not draft.belongs(asked) or path in STAND_INS or (path in SINCE_TAPED and not taped):
        return False
    if table in _LACKING.get(words.get("held_by.arms", ""), ()):
        return False
    if (
        table == "damper_bracket"
        and words.get("held_by.weight_on") != "coil-over on a damper bracket"
    ):
        return False
    if path in {"truss.outer", "truss.wall"}:
        return _known(draft, ("truss.height",))
    if path in {"hub.spindle", "hub.rows"}:
        other = "sealed" if path == "hub.spindle" else "tapers"
        return other not in words.get("hub.kind", "")
    offset = draft.answers.get("wheel.offset")
    return path != "wheel.width" or (offset is not None and "back" in offset.text.casefold())
