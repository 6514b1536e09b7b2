"""A change to a rig: an ordered list of set, add and remove by field."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass, replace
from hashlib import sha256

from axlewright.errors import BadFile, Fault
from axlewright.rig.answer import Answer
from axlewright.rig.contradictions import contradictions
from axlewright.rig.fields_points import PLACE
from axlewright.rig.given import Given
from axlewright.rig.reading import (
    Condition,
    RawChange,
    Step,
    read_change_file,
    read_change_text,
)
from axlewright.rig.replaced import HOUSING, assumed_anew, gone_with, on_housing
from axlewright.rig.rig import WORD_DEFAULTS, Rig, field_quantities, given_of, given_place
from axlewright.rig.tyre_code import parse_tyre

NEW_PARTS = {  # fields whose new value makes readings taken on the old part worthless
    "tyre.sidewall": ("tyre_stiffness",),
    "tube.outer": ("tube_girth_left", "tube_girth_right", "tube_wall"),
    "joint.cap_across": ("cap_to_cap", "trunnion", "cross_factor"),
}
ALIKE = 0.02  # tyres this close in height leave the hubs where they were measured


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
    dropped: list[str] = []
    fresh = {
        answer.field.quantity
        for step in change.steps
        for answer in (*((step.answer,) if step.answer else ()), *step.brought)
    }
    new = replace(rig, words=dict(rig.words), given=dict(rig.given))
    for step in change.steps:
        if step.action == "remove":
            new = _without(new, step, change)
        elif step.path == HOUSING:
            new, gone = _with_housing(new, step)
            dropped += gone
        elif step.answer is not None and not step.answer.dont_know:
            new = _with_answer(new, step.answer)
            names = [
                name
                for name in NEW_PARTS.get(step.path, ())
                if name in new.given and name not in fresh
            ]
            dropped += [new.given[name].path for name in names]
            new = replace(new, given=_less(new.given, names))
    _hubs_follow(rig, new, fresh, change)
    new = replace(
        new,
        changes=(*rig.changes, change.name),
        built=rig.built or rig,
        digest=sha256(f"{rig.digest}+{change.digest}".encode()).hexdigest(),
    )
    _check(new, change)
    return new, tuple(dict.fromkeys(dropped))


def _with_answer(rig: Rig, answer: Answer) -> Rig:
    if answer.field.kind == "tyre":
        return replace(rig, tyre=parse_tyre(answer.text))
    if answer.field.kind == PLACE:
        return replace(rig, given={**rig.given, **given_place(answer)})
    if answer.field.quantity:
        return replace(rig, given={**rig.given, answer.field.quantity: given_of(answer)})
    return rig.with_word(answer.field.path, str(answer.value))


def _with_housing(rig: Rig, step: Step) -> tuple[Rig, list[str]]:
    """Rig with another housing: its own numbers in, what was read on the old one out."""
    gone = gone_with(step.names)
    names = [name for name, datum in rig.given.items() if datum.path.startswith(gone)]
    words = {
        path: WORD_DEFAULTS.get(path, "") if path.startswith(gone) else word
        for path, word in rig.words.items()
    }
    lost = [rig.given[name].path for name in names if rig.given[name].path not in step.names]
    lost += [
        path for path, word in rig.words.items() if word != words[path] and path not in step.names
    ]
    stays = tuple(each for each in rig.conditions if not on_housing(each.part))
    lost += [f"{each.part}, {each.what}" for each in rig.conditions if on_housing(each.part)]
    unseen = Condition(part="the new housing", what="never looked at")
    new = replace(
        rig,
        words={**words, "rig.condition": "as listed"},
        given=_less(rig.given, names),
        conditions=(*stays, unseen),
        renewed=rig.renewed | assumed_anew(gone, field_quantities()),
    )
    for answer in step.brought:
        new = _with_answer(new, answer)
    return new, lost


def _hubs_follow(old: Rig, new: Rig, fresh: Collection[str], change: Change) -> None:
    """Refuse another tyre without the height at which its hubs stand."""
    ratio = new.tyre.outer_diameter / old.tyre.outer_diameter
    names = [name for name in ("hub_height_left", "hub_height_right") if name not in fresh]
    if abs(ratio - 1.0) < ALIKE or not names:
        return
    step = next(step for step in change.steps if step.path == "tyre.sidewall")
    raise BadFile(
        change.file or change.name,
        [
            Fault(
                file=change.file,
                line=step.line,
                field=old.given[name].path,
                problem="the new tyre is not as high as the old one, so the hub stands elsewhere",
                accepted=f"a step that sets {old.given[name].path}; measured, or in proportion",
                example=f'to = "about {1e3 * ratio * old.given[name].value:.0f} mm"',
            )
            for name in names
        ],
    )


def _less(given: Mapping[str, Given], names: Collection[str]) -> dict[str, Given]:
    return {name: datum for name, datum in given.items() if name not in names}


def _without(rig: Rig, step: Step, change: Change) -> Rig:
    held = [name for name, datum in rig.given.items() if datum.path == step.path]
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
    given = _less(rig.given, held)
    for name in held:
        if name.startswith(("sleeve", "truss")) or name == "wheel_spacer":
            given[name] = replace(rig.given[name], value=0.0, doubt=0.0, text="removed")
    return replace(rig, given=given)


def _check(rig: Rig, change: Change) -> None:
    clashes = contradictions(rig.words, rig.given, rig.tyre, rig.conditions)
    if clashes:
        raise BadFile(
            change.file or change.name,
            [clash.as_fault(change.file) for clash in clashes],
        )


def _change(raw: RawChange, file: str) -> Change:
    return Change(name=raw.name, steps=raw.steps, file=file, digest=raw.sha256)
