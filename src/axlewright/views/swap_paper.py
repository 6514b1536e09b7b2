"""The swap plan as the words of its job sheets, with who does what along the day as a drawing."""

from dataclasses import dataclass
from html import escape

from axlewright.swap import Plan, Progress
from axlewright.views.swap_words import PlanWords, plan_words


@dataclass(frozen=True, slots=True, kw_only=True)
class SwapData:
    """Everything that the job sheets say, ready to be laid out."""

    stops: list[str]
    words: PlanWords
    day: str
    day_wide: float
    day_high: float
    day_words: str


LEFT, RIGHT, ROW, TOP = 14.0, 174.0, 11.0, 6.0  # mm on paper


def swap_data(
    plan: Plan,
    system: str = "metric",
    progress: Progress | None = None,
    stop_lines: tuple[str, ...] = (),
) -> SwapData:
    """Words and drawing of the job sheets."""
    high = TOP + ROW * plan.people + 8.0
    return SwapData(
        stops=[*stop_lines],
        words=plan_words(plan, system, progress),
        day=day_svg(plan),
        day_wide=RIGHT + 2.0,
        day_high=high,
        day_words=f"Who does what along the day, {plan.people} rows, steps by their number.",
    )


def day_svg(plan: Plan) -> str:
    """A row for each pair of hands, a box for each step, hatched where the axle moves."""
    names = ("A", "B", "C")[: plan.people]
    end = max(plan.schedule.end, 1.0)
    high = TOP + ROW * plan.people + 8.0

    def x(seconds: float) -> float:
        return LEFT + (RIGHT - LEFT) * seconds / end

    head = (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {RIGHT + 2:.0f} {high:.1f}" '
        f'width="{RIGHT + 2:.0f}mm" height="{high:.1f}mm" font-family="DejaVu Sans Mono">'
        '<defs><pattern id="moves" width="1.6" height="1.6" patternUnits="userSpaceOnUse" '
        'patternTransform="rotate(45)"><path d="M0 0V1.6" stroke="currentColor" '
        'stroke-width="0.35"/></pattern></defs>'
    )
    parts = [head]
    for row, name in enumerate(names):
        y = TOP + ROW * row
        parts.append(
            f'<text x="1" y="{y + 5.6:.1f}" font-size="4" fill="currentColor">{escape(name)}</text>'
        )
        parts.append(
            f'<path d="M{LEFT} {y + 8:.1f}H{RIGHT}" stroke="currentColor" stroke-width="0.15"/>'
        )
    for number, slot in enumerate(plan.schedule.slots, 1):
        task = plan.work.by_key[slot.key]
        wide = x(slot.end) - x(slot.start)
        for name in slot.hands:
            y = TOP + ROW * names.index(name)
            fill = "url(#moves)" if task.moves != "no" else "none"
            line = 0.7 if task.under else 0.25
            parts.append(
                f'<rect x="{x(slot.start):.2f}" y="{y:.1f}" width="{wide:.2f}" height="8" '
                f'fill="{fill}" stroke="currentColor" stroke-width="{line}"/>'
            )
            if wide > 3.0:
                parts.append(
                    f'<rect x="{x(slot.start) + wide / 2 - 1.9:.2f}" y="{y + 2.4:.1f}" width="3.8" '
                    'height="3" fill="#fff"/>'
                    f'<text x="{x(slot.start) + wide / 2:.2f}" y="{y + 4.9:.1f}" font-size="2.6" '
                    f'text-anchor="middle" fill="currentColor">{number}</text>'
                )
    foot = TOP + ROW * plan.people
    step = 1800.0 if end <= 6 * 3600 else 3600.0 if end <= 14 * 3600 else 14400.0
    parts.extend(
        f'<path d="M{x(tick * step):.2f} {foot:.1f}v1.6" stroke="currentColor" '
        'stroke-width="0.25"/>'
        f'<text x="{x(tick * step):.2f}" y="{foot + 4.6:.1f}" font-size="2.6" '
        f'text-anchor="middle" fill="currentColor">{tick * step / 3600:g} h</text>'
        for tick in range(int(end / step) + 1)
    )
    return "".join(parts) + "</svg>"
