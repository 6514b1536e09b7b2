"""Our own past numbers: the leading rows of every demo rig, before and after each change.

``python -m tools.pinned`` writes them again, and prints what moved. A number that changes on
purpose gets its line in `CHANGELOG.md` under "Numbers that changed, and why".
"""

import json
from collections.abc import Mapping
from pathlib import Path
from typing import TypeAlias

from axlewright.actions import assess_file
from axlewright.strength import Assessment, Comparison

ROOT = Path(__file__).parents[1]
KEPT = ROOT / "tests" / "pinned" / "leading_rows.json"
RIGS = sorted((ROOT / "examples" / "rigs").glob("*.toml"))
CHANGES = sorted((ROOT / "examples" / "changes").glob("*.toml"))
LEADING, WEARING = 5, 3
CHANGED_RIG = "heron"  # the rig that the demo changes are meant for

Numbers: TypeAlias = dict[str, float]


def names() -> list[str]:
    """What is pinned: each rig, and one rig with each change."""
    return [
        *(rig.stem for rig in RIGS),
        *(f"{CHANGED_RIG} with {change.stem}" for change in CHANGES),
    ]


def today(name: str) -> Numbers:
    """Middle values of the leading rows by part and side: no draws, so no luck in it."""
    rig, _, change = name.partition(" with ")
    [path] = [each for each in RIGS if each.stem == rig]
    changes = [str(each) for each in CHANGES if each.stem == change]
    answer = assess_file(str(path), changes, draws=0)
    return _numbers(answer.after if isinstance(answer, Comparison) else answer)


def kept() -> Mapping[str, Numbers]:
    """The numbers as they were when they were last written."""
    read: dict[str, Numbers] = json.loads(KEPT.read_text("utf-8"))
    return read


def moved(before: Numbers, now: Numbers, share: float) -> list[str]:
    """What is no longer the same to within a share, in words."""
    out = [f"{key} is new: {now[key]:.4g}" for key in now if key not in before]
    out += [f"{key} has left the leading rows" for key in before if key not in now]
    return out + [
        f"{key}: {before[key]:.4g} became {now[key]:.4g}"
        for key in before
        if key in now and abs(now[key] - before[key]) > share * abs(before[key])
    ]


def _numbers(assessment: Assessment) -> Numbers:
    out = {
        f"gives at, {place.part}, {place.mode}": place.margin
        for place in assessment.order[:LEADING]
    }
    out |= {
        f"life in km, {place.part}, {place.mode}": place.life
        for place in assessment.wearing[:WEARING]
    }
    return {key: float(f"{value:.5g}") for key, value in out.items()}


def main() -> None:
    """Write the numbers, and say what moved."""
    before = kept() if KEPT.is_file() else {}
    now = {name: today(name) for name in names()}
    for name, numbers in now.items():
        for line in moved(before.get(name, {}), numbers, 1e-4):
            print(f"{name}: {line}")
    KEPT.write_text(json.dumps(now, indent=1) + "\n", "utf-8", newline="\n")
    print(f"{KEPT.relative_to(ROOT)}: say in CHANGELOG.md which numbers changed, and why")


if __name__ == "__main__":
    main()
