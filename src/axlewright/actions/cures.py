"""A cure that travel was tried with, kept as a change: its text, and a file of it."""

from pathlib import Path

from axlewright.actions.bay_changes import change_onto, change_text
from axlewright.errors import AxlewrightError
from axlewright.geometry import Travel


def cure_text(found: Travel, key: str, system: str = "metric", onto: str = "") -> str:
    """Text of a change file that makes a cure; ``onto`` is the text of the change before it.

    Raises `AxlewrightError` where there is no such cure, or it cannot be written as a change.
    """
    from axlewright.views import cure_name

    cure = next((each for each in found.fixes if each.key == key), None)
    if cure is None or not cure.steps:
        raise AxlewrightError(
            "That cure cannot be kept as a change." if cure else "No such cure was tried here.",
            remedy="Look at the cures again, and choose one of them.",
        )
    name = cure_name(cure, system)
    return change_onto(onto, name, cure.steps) if onto else change_text(name, cure.steps)


def write_cure(found: Travel, number: int, path: Path, system: str = "metric") -> None:
    """Write a cure, by its number among those told, as a change file."""
    from axlewright.actions.report import written
    from axlewright.views import cures_told

    told = cures_told(found)
    if not 1 <= number <= len(told):
        raise AxlewrightError(
            f"There is no cure {number}." if told else "No cure was tried here.",
            remedy=f"Give a number from 1 to {len(told)}." if told else "Lift it first.",
        )
    written(cure_text(found, told[number - 1].key, system).encode(), path)
