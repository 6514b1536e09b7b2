"""Lists to take along: torque lines, toe at this tyre, spares, repair cards."""

from collections.abc import Mapping
from dataclasses import dataclass
from math import radians
from typing import Final

from axlewright import units
from axlewright.physics import bolt, steering
from axlewright.rig import doubts
from axlewright.strength import Assessment, kind_of
from axlewright.tables import card_of, card_steps, cards, friction, troubles
from axlewright.views.phrases import plain, quantity, short_name
from axlewright.views.units_in_text import in_units

CLAMP: Final = 0.7  # of proof, as the checks of slipping brackets take it
PITCH: Final = 0.13  # of the diameter, as the same checks take it
TOE_ANGLES: Final = (0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.4, 0.5)  # degrees
TAPE: Final = 0.0016  # m; a tape at the tread, two people: common practice, no source
LEADING, LEADING_WEAR = 5, 4


@dataclass(frozen=True, slots=True, kw_only=True)
class TorqueLine:
    """One fastener: the maker's value is written in by hand; ``range`` is plausibility only."""

    key: str
    what: str
    note: str
    range: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SpareLine:
    """One thing to carry: its mass, where it lies best, and why it is carried besides."""

    key: str
    label: str
    note: str
    why: str
    mass: str
    place: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CardStepWords:
    """One step with its caution."""

    do: str
    caution: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CardWords:
    """One repair card in the reader's units."""

    key: str
    title: str
    leads: str
    can: str
    effort: str
    tools: str
    materials: str
    steps: tuple[CardStepWords, ...]
    after: str
    limits: str
    next_look: str
    never: str
    record: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ToeRow:
    """Total toe as an angle and as a length at the tread."""

    angle: str
    length: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ToeTable:
    """Toe of one tyre, and what a tape can tell."""

    diameter: str
    rows: tuple[ToeRow, ...]
    tape: str
    note: str


def torque_lines(assessment: Assessment, system: str = "metric") -> tuple[TorqueLine, ...]:
    """Every torque line of this axle; none of them is a target."""
    words, front = assessment.rig.words, assessment.rig.axle == "front"
    sealed = words.get("hub.kind", "sealed unit") == "sealed unit"
    lines = [("wheel_nuts", "wheel nuts", "crosswise, wheel on the ground")]
    if sealed:
        lines += [("hub_bolts", "bolts of the hub unit", "")]
        if front:
            lines += [("stub_nut", "nut of the stub shaft", "before the hub carries weight")]
    else:
        lines += [("spindle_nuts", "nuts of the spindle", "seat, back off, lock: three values")]
    if front and words.get("kingpin.kind") == "kingpins":
        lines += [("kingpin_caps", "caps of the kingpins", "")]
    elif front:
        lines += [("ball_joints", "ball joints, lower and upper", "in the maker's order")]
    if front:
        lines += [
            ("steering_nuts", "tapered nuts of tie rod and drag link", "never back to the pin"),
            ("rod_clamps", "clamps of tie rod and drag link", ""),
        ]
    lines += [("caliper", "bolts of caliper and carrier, or of the brake plate", "")]
    if not front:
        lines += [("flange", "bolts of the half-shaft flange", "")]
    lines += [("pinion_nut", "pinion nut", "not beside the track")]
    out = [TorqueLine(key=key, what=what, note=note, range="") for key, what, note in lines]
    if words["held_by.arms"] == "leaves":
        out.append(
            TorqueLine(
                key="leaf_clamps",
                what="leaf clamps",
                note="crosswise, weight on the wheels",
                range="",
            )
        )
    else:
        out.append(_bracket(assessment, "arm_bolt", "bolts of the arms", system))
        if "track_bar_bolt" in assessment.columns:
            out.append(_bracket(assessment, "track_bar_bolt", "bolts of the track bar", system))
    return tuple(out)


def _bracket(assessment: Assessment, column: str, what: str, system: str) -> TorqueLine:
    diameter = float(assessment.columns[column][0])
    found = {doubt.quantity: doubt for doubt in doubts(assessment.rig)}
    middle = float(assessment.columns["bolt_proof"][0])
    doubt = found.get("bolt_proof")
    proofs = (doubt.low, doubt.high) if doubt is not None else (middle, middle)
    area = bolt.stress_area(diameter, PITCH * diameter)
    factor = friction("nut_zinc")
    low, high = (
        float(bolt.torque_from_preload(CLAMP * proof * area, diameter, nut))
        for proof, nut in zip(proofs, (factor.low, factor.high), strict=True)
    )
    unit = units.SYSTEMS[system]["torque"]
    ends = [plain(end / units.known("torque")[unit], 2) for end in (low, high)]
    across = quantity(diameter, "length", system, 3)
    return TorqueLine(
        key=column,
        what=what,
        note="weight on the wheels",
        range=(
            f"plausible {ends[0]} to {ends[1]} {unit} ({across} across, zinc plated and dry, "
            f"clamped to 70 % of proof): no target"
        ),
    )


def toe_table(assessment: Assessment, system: str = "metric") -> ToeTable:
    """Toe in this tyre's own lengths, the diameter named."""
    diameter = assessment.rig.tyre.outer_diameter
    tape = 2.0 * float(steering.toe_angle(TAPE / 2.0, diameter))
    rear = "A straight rear beam has no toe: what you tape here shows a bend."
    front = "Both wheels together: rear less front distance, taped at the tread at hub height."
    return ToeTable(
        diameter=quantity(diameter, "length", system, 3),
        rows=tuple(
            ToeRow(
                angle=f"{angle:g} deg",
                length=units.show(
                    float(steering.toe_length(radians(angle), diameter)), "length", system, 2
                ),
            )
            for angle in TOE_ANGLES
        ),
        tape=(
            f"A tape read to {quantity(TAPE, 'length', system, 2)} tells "
            f"{quantity(tape, 'angle', system, 1)}, no less."
        ),
        note=front if assessment.rig.axle == "front" else f"{front} {rear}",
    )


def repair_cards(assessment: Assessment, system: str = "metric") -> tuple[CardWords, ...]:
    """Cards of the leading parts of both orders, then every other that this axle has."""
    axle = assessment.rig.axle
    leads: dict[str, list[str]] = {}
    for kind, name in _leading(assessment):
        card = card_of(kind, axle)
        if card is not None:
            leads.setdefault(card.key, []).append(name)
    for key in cards_of(axle, assessment.rig.words):
        leads.setdefault(key, [])
    return tuple(card_words(key, names, system) for key, names in leads.items())


def cards_of(axle: str, words: Mapping[str, str]) -> tuple[str, ...]:
    """Cards that such an axle has use for, in the order of the table."""
    own = {key for key, trouble in troubles().items() if trouble.fits(axle, words)}
    return tuple(
        card.key
        for card in cards().values()
        if card.axle in {axle, "both"}
        if not card.serves or any(kind in own or kind not in troubles() for kind in card.serves)
    )


def _leading(assessment: Assessment) -> list[tuple[str, str]]:
    """Kinds of the leading parts of both orders, each with its name in words, once."""
    places = [
        *((place.part, place.side) for place in assessment.order[:LEADING]),
        *((place.part, place.side) for place in assessment.wearing[:LEADING_WEAR]),
    ]
    out: dict[str, str] = {}
    for part, side in places:
        out.setdefault(kind_of(part), short_name(part, side))
    return list(out.items())


_CAN: Final = {
    "yes": "Can be mended beside the track.",
    "partly": "Mended to get out of danger, not home.",
    "no": "Not mended beside the track.",
}


def card_words(key: str, names: list[str], system: str) -> CardWords:
    """One card in the reader's units; ``names`` are the leading parts that it is shown for."""
    card = cards()[key]
    effort = [f"{card.people} {'person' if card.people == 1 else 'people'}"]
    if card.duration is not None:
        low, high = (
            card.duration / 60.0 * factor
            for factor in (1.0 / card.origin.spread, card.origin.spread)
        )
        effort.append(f"{5 * round(low / 5)} to {5 * round(high / 5)} min")
    after = ""
    if card.speed is not None and card.distance is not None:
        after = (
            f"Then at most {quantity(card.speed, 'speed', system, 1)} for at most "
            f"{quantity(card.distance, 'distance', system, 1)}: to get out of danger, not home."
        )
    elif card.serves:
        after = "Not driven: it is loaded, or waits for help."
    return CardWords(
        key=key,
        title=card.title,
        leads=", ".join(names),
        can=_CAN[card.mendable] if card.serves else "What to do, in this order.",
        effort=", ".join(effort) if card.serves else "",
        tools=card.tools if card.serves else "",
        materials=card.materials if card.serves else "",
        steps=tuple(
            CardStepWords(do=in_units(step.do, system), caution=in_units(step.caution, system))
            for step in card_steps().values()
            if step.card == key
        ),
        after=after,
        limits=card.limits,
        next_look=in_units(card.next_look, system),
        never=card.never,
        record=card.record,
    )
