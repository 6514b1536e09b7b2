"""A change to a rig: an ordered list of set, add and remove by field."""

from dataclasses import dataclass, replace
from hashlib import sha256

from axlewright.errors import BadFile, Fault
from axlewright.rig.contradictions import contradictions
from axlewright.rig.given import Given
from axlewright.rig.reading import RawChange, Step, read_change_file, read_change_text
from axlewright.rig.rig import Rig, given_of
from axlewright.rig.tyre_code import parse_tyre

OVERRIDES = {"tube.outer": ("tube_girth_left", "tube_girth_right")}
NEW_PARTS = {  # fields whose new value makes readings taken on the old part worthless
    "tyre.sidewall": ("tyre_stiffness",),
    "shaft.steel": (),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """One named change: steps in order, and the digest of its text."""

    name: str
    steps: tuple[Step, ...]
    file: str = ""
    digest: str = ""


def load_change(path: str) -> Change:
    """Read a change file; raises `BadFile` with every fault."""
    return _change(read_change_file(path), path)


def change_from_text(text: str, file: str = "change.toml") -> Change:
    """Read the text of a change file; raises `BadFile` with every fault."""
    return _change(read_change_text(text, file=file), file)


def changed_rig(rig: Rig, change: Change) -> tuple[Rig, tuple[str, ...]]:
    """Give the rig after a change, and the readings that went with what was replaced."""
    words, given, tyre = dict(rig.words), dict(rig.given), rig.tyre
    dropped: list[str] = []
    for step in change.steps:
        if step.action == "remove":
            _remove(step, given, change)
            continue
        answer = step.answer
        if answer is None or answer.dont_know:
            continue
        if answer.field.kind == "tyre":
            tyre = parse_tyre(answer.text)
        elif answer.field.quantity:
            given[answer.field.quantity] = given_of(answer)
        else:
            words[answer.field.path] = str(answer.value)
        gone = [name for name in NEW_PARTS.get(answer.field.path, ()) if name in given]
        dropped.extend(given.pop(name).path for name in gone)
    new = replace(
        rig,
        words=words,
        given=given,
        tyre=tyre,
        changes=(*rig.changes, change.name),
        built=rig.built or rig,
        digest=sha256(f"{rig.digest}+{change.digest}".encode()).hexdigest(),
    )
    _check(new, change)
    return new, tuple(dropped)


def _remove(step: Step, given: dict[str, Given], change: Change) -> None:
    held = [name for name, datum in given.items() if datum.path == step.path]
    if not held:
        raise BadFile(
            change.file,
            [
                Fault(
                    file=change.file,
                    line=step.line,
                    field=step.path,
                    problem="there is nothing of this name on the rig to remove",
                    accepted="the name of a field that the rig file gives",
                )
            ],
        )
    for name in held:
        datum = given.pop(name)
        if name.startswith(("sleeve", "truss")) or name == "wheel_spacer":
            given[name] = replace(datum, value=0.0, doubt=0.0, text="removed")


def _check(rig: Rig, change: Change) -> None:
    given = dict(rig.given)
    if "tube_outer" in given:
        for name in OVERRIDES["tube.outer"]:
            given.pop(name, None)
    clashes = contradictions(rig.words, given, rig.tyre, rig.conditions)
    if clashes:
        raise BadFile(
            change.file or change.name,
            [
                Fault(
                    file=change.file, field=clash.path, problem=clash.problem, accepted=clash.remedy
                )
                for clash in clashes
            ],
        )


def _change(raw: RawChange, file: str) -> Change:
    return Change(name=raw.name, steps=raw.steps, file=file, digest=raw.sha256)
