"""A rig in memory: what was said, checked; what is assumed is settled by `columns`."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from axlewright.errors import Fault
from axlewright.physics.measurement import NINETY
from axlewright.rig.answer import Answer
from axlewright.rig.clash import Clash
from axlewright.rig.contradictions import contradictions
from axlewright.rig.fields import FIELDS
from axlewright.rig.fields_points import DOUBT, PLACE, POINT_FIELDS, place_quantities
from axlewright.rig.given import Given, spoken_system
from axlewright.rig.place_text import parse_place
from axlewright.rig.reading import Condition, RawRig, read_rig_file, read_rig_text
from axlewright.rig.tyre_code import TyreCode, parse_tyre
from axlewright.rig.words import SIDES

MAY_BE_UNKNOWN = frozenset(
    {
        "joint.cap_across",
        "joint.cap_to_cap",
        "wheel.offset",
        "wheel.spacer",
        "track.springs",
        "use.from_help",
    }
)
WORD_DEFAULTS: Mapping[str, str] = {
    "drive.unlocking_hubs": "no",
    "driveline.joints": "one at each end",
    "driveline.yokes": "in line",
    "tube.steel": "",
    "forging.gussets": "no",
    "cover.heavy": "no",
    "kingpin.kind": "ball joints",
    "steering.tie_rod_ahead": "no",
    "steering.drive_side": "left",
    "steering.drag_link_on": "knuckle",
    "track_bar.on_axle": "right",
    "brackets.plated": "no",
    "shaft.steel": "",
    "hub.kind": "sealed unit",
}
TYRE = "tyre.sidewall"
ANY_TYRES = ("255/85R16", "33x12.50R15")  # stand in where a tyre is not given
ABOUT = 3.0  # "about" trebles a careful reading's doubt


@dataclass(frozen=True, slots=True, kw_only=True)
class Rig:
    """One vehicle as it stands, with one of its axles, its answers and its condition.

    After a change, ``built`` is the rig before the first one: what is assumed about a part that
    was not changed stays what it was. ``renewed`` names what is assumed of a part that was
    replaced: it is settled from the new part's numbers.
    """

    name: str
    words: Mapping[str, str]
    given: Mapping[str, Given]
    tyre: TyreCode
    conditions: tuple[Condition, ...]
    answers: int
    file: str = ""
    digest: str = ""
    changes: tuple[str, ...] = ()
    built: "Rig | None" = None
    renewed: frozenset[str] = frozenset()

    @property
    def axle(self) -> str:
        """Which axle: front or rear."""
        return self.words["rig.axle"]

    def with_word(self, key: str, value: str) -> "Rig":
        """Give the same rig with one word set."""
        return replace(self, words={**self.words, key: value})


def load_rig(path: str) -> Rig:
    """Read and check a rig file; raises `BadFile` with every fault."""
    return _built(read_rig_file(path, more=_disagreements), path)


def rig_from_text(text: str, file: str = "rig.toml") -> Rig:
    """Read and check the text of a rig file; raises `BadFile` with every fault."""
    return _built(read_rig_text(text, file=file, more=_disagreements), file)


def _built(raw: RawRig, file: str) -> Rig:
    words, given = _told(raw.axle, raw.answers)
    return Rig(
        name=raw.name,
        words=words,
        given=given,
        tyre=parse_tyre(raw.answers[TYRE].text),
        conditions=raw.conditions,
        answers=sum(
            not answer.dont_know and answer.field not in POINT_FIELDS
            for answer in raw.answers.values()
        ),
        file=file,
        digest=raw.sha256,
    )


def _told(axle: str, answers: Mapping[str, Answer]) -> tuple[dict[str, str], dict[str, Given]]:
    """Words by path and numbers by quantity, as they were said."""
    words = dict(WORD_DEFAULTS)
    words["rig.axle"] = axle
    given: dict[str, Given] = {}
    for path, answer in answers.items():
        if answer.dont_know:
            continue
        if answer.field.kind == PLACE:
            given |= given_place(answer)
        elif answer.field.quantity:
            given[answer.field.quantity] = given_of(answer)
        elif isinstance(answer.value, str) and answer.field.kind in {"word", "yes", "text"}:
            words[path] = answer.value
    return words, given


def _disagreements(raw: RawRig) -> Iterator[Fault]:
    """Faults of answers that can be read each by itself: left open, or contradicting others."""
    for answer in raw.answers.values():
        if answer.dont_know and answer.field.required and answer.field.path not in MAY_BE_UNKNOWN:
            yield _fault(raw.file, answer, "this one cannot be left open: the answer hangs on it")
    for clash in _clashes(raw, raw.answers):
        found = raw.answers.get(clash.path)
        beside = [raw.answers[path] for path in _behind(raw, clash)]
        yield clash.as_fault(
            raw.file,
            line=None if found is None else found.line,
            given="" if found is None else found.text,
            beside=tuple(f"{each.field.path}, line {each.line}: {each.text}" for each in beside),
        )


def _clashes(raw: RawRig, answers: Mapping[str, Answer], stand_in: str = "") -> list[Clash]:
    """Contradictions among answers; without a tyre its heights are left out, or one stands in."""
    words, given = _told(raw.axle, answers)
    tyre = answers.get(TYRE)
    known = tyre is not None and not tyre.dont_know
    if not known and not stand_in:
        given = {name: each for name, each in given.items() if "hub_height" not in name}
    size = parse_tyre(tyre.text if tyre is not None and known else stand_in or ANY_TYRES[0])
    system = spoken_system(_told(raw.axle, raw.answers)[1].values())
    return contradictions(words, given, size, raw.conditions, system)


def _behind(raw: RawRig, clash: Clash) -> list[str]:
    """Other answers that a contradiction hangs on: without one, or both sides, it is gone."""
    others = [path for path in raw.answers if path != clash.path]
    sides = [[f"{stem}.{side}" for side in SIDES] for stem in dict.fromkeys(map(_stem, others))]
    both = [pair for pair in sides if set(pair) <= set(others)]
    alone = [[path] for path in others if _gone(raw, clash, [path])]
    found = alone or [pair for pair in both if _gone(raw, clash, pair)]
    return [path for pair in found for path in pair]


def _gone(raw: RawRig, clash: Clash, without: Sequence[str]) -> bool:
    rest = {path: answer for path, answer in raw.answers.items() if path not in without}
    tyres = ANY_TYRES if TYRE in without else ("",)
    return any(
        all((each.path, each.problem) != (clash.path, clash.problem) for each in left)
        for left in (_clashes(raw, rest, tyre) for tyre in tyres)
    )


def _stem(path: str) -> str:
    return path.rpartition(".")[0]


def given_of(answer: Answer) -> Given:
    """Turn an answer into a value with its standard uncertainty, in SI."""
    field = answer.field
    value = float(answer.value)
    doubt = max(field.doubt, field.relative_doubt * abs(value))
    if answer.uncertainty is not None:
        doubt = answer.uncertainty / NINETY
    elif answer.band is not None:
        low, high = answer.band
        value, doubt = 0.5 * (low + high), 0.5 * (high - low) / NINETY
    elif answer.about:
        doubt *= ABOUT
    return Given(
        quantity=field.quantity,
        path=field.path,
        value=value,
        doubt=doubt,
        about=answer.about,
        text=answer.text,
        kind=field.kind,
    )


def given_place(answer: Answer) -> dict[str, Given]:
    """Turn a place into its three coordinates with their standard uncertainty, m."""
    place, about = parse_place(str(answer.value))
    return {
        quantity: Given(
            quantity=quantity,
            path=answer.field.path,
            value=value,
            doubt=DOUBT * (ABOUT if about else 1.0),
            about=about,
            text=answer.text,
            kind="length",
        )
        for quantity, value in zip(place_quantities(answer.field.path), place, strict=True)
    }


def usual_words() -> Mapping[str, str]:
    """Words that stand where nobody said another."""
    return WORD_DEFAULTS


def field_quantities() -> Mapping[str, str]:
    """Column name of each field that feeds one, to the field's path."""
    return {field.quantity: field.path for field in FIELDS if field.quantity}


def _fault(file: str, answer: Answer, problem: str) -> Fault:
    return Fault(
        file=file,
        line=answer.line,
        field=answer.field.path,
        given=answer.text,
        problem=problem,
        accepted=answer.field.how,
        example=f'{answer.field.path} = "{answer.field.example}"',
    )
