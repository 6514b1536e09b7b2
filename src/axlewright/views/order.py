"""An order sheet in words: field by field from wheel to wheel, and what stands in its way."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import floor, log10
from typing import Final

from axlewright.swap import Filled, Misfit, Order, OrderRow, contradicted_by, differs
from axlewright.tables import OrderField, order_fields
from axlewright.units import SYSTEMS, known, show
from axlewright.views.order_drawing import NAMES, order_picture

ORDER_GROUPS: Final[Mapping[str, str]] = {
    "ratio": "Ratio, tyres first",
    "width": "Width and mounting faces, from the pinion",
    "pinion": "Pinion: side, height, offset",
    "tube": "Tubes",
    "forging": "End forgings",
    "knuckle": "Knuckles and steering",
    "angles": "Angles that are welded in",
    "spring": "Spring seats",
    "arm": "Brackets of the arms",
    "track_bar": "Bracket of the track bar",
    "damper": "Brackets of the dampers",
    "stabiliser": "Stabiliser",
    "gears": "Gears, carrier, lock",
    "ends": "Splines, joints, hubs, brakes, leads, breather",
    "reuse": "What goes on again",
    "delivery": "What to look at on delivery",
}
WEIGHTS: Final[Mapping[str, str]] = {
    "blocks": "cannot be ordered so",
    "settle": "put right before metal is cut",
    "ask": "say that it is meant, or change it",
}
FINE: Final = 5  # digits of a number that metal is cut to
CAUTION: Final = (
    "Decision support, not a certificate: the builder's drawing, the makers' manuals, local law "
    "and licensed practice come first. Welding on end forgings and load-bearing brackets is a "
    "qualified welder's, with this sheet as the brief. Ask your authority what has to be certified."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderLine:
    """One field as a reader sees it."""

    key: str
    group: str
    station: int
    label: str
    said: str
    tolerance: str
    whence: str
    beside: str
    why: str
    how: str
    against: str
    example: str
    accepted: tuple[str, ...]
    missing: bool
    wrong: tuple[str, ...]


def order_field_rows(order: Order, system: str = "metric") -> list[OrderLine]:
    """Every field of a sheet, in its order."""
    return [_line(row, system) for row in order.rows]


def order_sentence(order: Order) -> str:
    """Whether it can be sent, and what keeps it back."""
    whose = f"{order.name}: the order of a {order.axle} axle" if order.name else "The order"
    wrong = [each for each in order.misfits if each.wrong.weight != "ask"]
    if order.blocked:
        count = sum(each.wrong.weight == "blocks" for each in order.misfits)
        places = "one place" if count == 1 else f"{count} places"
        return f"{whose} cannot be sent: it contradicts itself in {places}."
    if wrong or order.missing:
        parts = [f"{_things(len(wrong))} to put right before metal is cut"] if wrong else []
        parts += [missing_words(len(order.missing))] if order.missing else []
        return f"{whose} is not ready: {', and '.join(parts)}."
    asked = sum(each.wrong.weight == "ask" for each in order.misfits)
    also = f" {_things(asked).capitalize()} on it wants saying that it is meant." if asked else ""
    return f"{whose} adds up. Let the builder read it back before metal is cut.{also}"


def missing_words(count: int) -> str:
    """How many needed answers are open."""
    return "one needed answer is open" if count == 1 else f"{count} needed answers are open"


def misfit_words(misfit: Misfit, system: str = "metric") -> str:
    """One contradiction and the way out of it, in the reader's units."""
    numbers = [_show(value, kind, system) for value, kind in misfit.wrong.numbers]
    says = misfit.wrong.says.format(*numbers)
    weight = WEIGHTS[misfit.wrong.weight].capitalize()
    return f"{weight}: {says}. {misfit.wrong.do}"


def order_lines(order: Order, system: str = "metric", *, every: bool = False) -> list[str]:
    """A sheet for the terminal: what stands in its way first; with ``every`` each field's why."""
    out = [order_sentence(order)]
    if order.misfits:
        out += ["", *(f"  {misfit_words(each, system)}" for each in order.misfits)]
    if order.missing:
        out += ["", "Open, and needed:"]
        out += [f"  {each.key}: {_asked(each.label)} {each.how}" for each in order.missing]
    group = ""
    for line in order_field_rows(order, system):
        if not (line.said or line.beside or every):
            continue
        if line.group != group:
            group = line.group
            out += ["", ORDER_GROUPS[group]]
        told = f"{line.said or '________'}{f' ± {line.tolerance}' if line.tolerance else ''}"
        out.append(f"  {line.station:>2}  {_label(line.label)} {told}{line.whence}")
        if line.beside:
            out.append(f"        {line.beside}")
        if every:
            out.append(f"        {line.why} Measure: {line.how}")
            out += [f"        Tried against: {line.against}."] if line.against else []
    return [*out, "", CAUTION]


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderData:
    """Everything that the paper says, ready to be laid out; ``blank`` is the intake sheet."""

    title: str
    stops: list[str]
    sentence: str
    blank: bool
    wrong: list[str]
    open: list[str]
    groups: list[dict[str, object]]
    stations: list[list[str]]
    picture: str
    picture_wide: float
    picture_high: float
    picture_words: str
    caution: str


def order_data(
    order: Order,
    system: str = "metric",
    stop_lines: Sequence[str] = (),
    *,
    blank: bool = False,
) -> OrderData:
    """Words of the order sheet on paper, or of the blank intake sheet that a shop mails.

    ``stop_lines`` are what was found on the rig that says STOP; they stand before the sheet.
    """
    picture = order_picture(order, system, blank=blank)
    lines = order_field_rows(order, system)
    groups: list[dict[str, object]] = [
        {
            "title": title,
            "rows": [_paper_row(each, blank=blank) for each in lines if each.group == group],
        }
        for group, title in ORDER_GROUPS.items()
        if any(each.group == group for each in lines)
    ]
    whose = f"{order.name}: " if order.name else ""
    return OrderData(
        title=f"Intake sheet: a {order.axle} axle" if blank else f"{whose}order of an axle",
        stops=[] if blank else [*stop_lines],
        sentence=BLANK if blank else order_sentence(order),
        blank=blank,
        wrong=[] if blank else [misfit_words(each, system) for each in order.misfits],
        open=[] if blank else [each.label for each in order.missing],
        groups=groups,
        stations=[[f"{number}", name] for number, name in NAMES.items()],
        picture=picture.svg,
        picture_wide=picture.wide,
        picture_high=picture.high,
        picture_words=picture.words,
        caution=CAUTION,
    )


BLANK: Final = (
    "Fill in what is known, with its unit; leave open what is not. Left and right are the "
    "vehicle's. Everything marked with a dot is needed before metal is cut. Measure twice, and say "
    "who measured."
)


def _paper_row(line: OrderLine, *, blank: bool) -> dict[str, object]:
    return {
        "station": f"{line.station}",
        "label": line.label,
        "said": "" if blank else line.said,
        "tolerance": line.tolerance,
        "whence": "" if blank else line.whence.strip(" ()"),
        "why": f"{line.how}" if blank else line.why,
        "needed": line.missing or (blank and _needed(line.key)),
        "wrong": [] if blank else list(line.wrong),
        "choices": list(line.accepted) if blank else [],
        "beside": "" if blank else line.beside,
    }


def _needed(key: str) -> bool:
    return order_fields()[key].needed


def _line(row: OrderRow, system: str) -> OrderLine:
    field = row.field
    said = _told(row.filled, field, system)
    assumed = row.filled is not None and not row.filled.holds
    kind = field.kind
    return OrderLine(
        key=field.key,
        group=field.group,
        station=field.station,
        label=field.label,
        said="" if assumed else said,
        tolerance="" if field.tolerance is None else _within(field.tolerance, _of(kind), system),
        whence=_whence(row.filled),
        beside=_beside(row, system),
        why=field.why,
        how=field.how,
        against=", ".join(order_fields()[key].label.lower() for key in contradicted_by(field.key)),
        example=field.example,
        accepted=field.choices or (("yes", "no") if kind == "yes" else ()),
        missing=row.missing,
        wrong=tuple(_at_field(each, field.key, system) for each in row.misfits),
    )


def _at_field(misfit: Misfit, key: str, system: str) -> str:
    """Words at a field: whole at the first of a contradiction's fields, short at the others."""
    first = misfit.fields[0]
    if key == first:
        return misfit_words(misfit, system)
    return f"Does not go together with: {order_fields()[first].label.lower()}."


def _whence(filled: Filled | None) -> str:
    if filled is None or filled.whence == "the sheet" or not filled.holds:
        return ""
    return " (from the rig)" if filled.whence == "the rig" else " (worked out from the rig)"


def _beside(row: OrderRow, system: str) -> str:
    if row.filled is not None and not row.filled.holds:
        kind = row.field.kind
        low, high = row.filled.band or (0.0, 0.0)
        span = ""
        if high > low:
            span = f", {_rough(low, kind, system)} to {_rough(high, kind, system)}"
        if row.filled.whence == "too rough":
            told = f"about {_told(row.filled, row.field, system)}{span} by tape"
            return f"{told}: measure it again, to the tolerance"
        value = row.filled.value
        told = value if isinstance(value, str) else _rough(value, kind, system)
        return f"assumed {told}{span}: measure it before it is ordered"
    if differs(row):
        own = row.beside is not None and row.beside.whence == "the rig"
        has = "the rig has" if own else "worked out from the rig:"
        return f"{has} {_told(row.beside, row.field, system)}"
    return ""


def _told(filled: Filled | None, field: OrderField, system: str) -> str:
    if filled is None:
        return ""
    if isinstance(filled.value, str):
        return filled.value
    if field.kind == "length" and field.tolerance is not None and filled.value:
        return show(filled.value, "length", system, _digits(filled.value, field.tolerance, system))
    return _show(filled.value, field.kind, system)


def _digits(value: float, tolerance: float, system: str) -> int:
    """Digits that a tolerance leaves worth reading: to a tenth of its own first one."""
    unit = known("length")[SYSTEMS[system]["length"]]
    after = 1 - floor(log10(tolerance / unit))
    return min(FINE, max(1, floor(log10(abs(value) / unit)) + 1 + after))


def _show(value: float, kind: str, system: str) -> str:
    if kind == "count":
        return f"{value:.0f}"
    if kind in {"plain", "ratio"}:
        return f"{value:.5g}"
    if kind == "offset":
        return f"ET {show(value, 'length', 'mm', FINE)}"
    digits = FINE if kind == "length" else 3
    return show(value + 0.0, kind, system, digits)  # no minus before nought


def _within(value: float, kind: str, system: str) -> str:
    if kind not in {"angle", "length"}:
        return _show(value, kind, system)
    return show(value, kind, system, 2)


def _rough(value: float, kind: str, system: str) -> str:
    if kind in {"plain", "ratio"}:
        return f"{value:.3g}"
    return _show(value, kind, system) if kind == "count" else show(value, _of(kind), system)


def _label(label: str) -> str:
    return label if label.endswith("?") else f"{label}:"


def _asked(label: str) -> str:
    return label if label.endswith("?") else f"{label}."


def _of(kind: str) -> str:
    return "length" if kind == "offset" else kind


def _things(count: int) -> str:
    return "one thing" if count == 1 else f"{count} things"
