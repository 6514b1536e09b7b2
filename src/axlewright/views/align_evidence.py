"""What the readings of an alignment say besides: sweeps, finders, frame, and what is bent."""

from axlewright.geometry import Alignment
from axlewright.views.align_phrases import angle, measured


def evidence_lines(alignment: Alignment, system: str = "metric") -> list[str]:
    """What the figures say about what is bent, and how the simple rule errs."""
    lines = []
    for sweep in alignment.sweeps:
        how = "three readings, exact" if sweep.three else "two readings, within 0.04 deg"
        told = f"{sweep.side} caster by the sweep: {measured(sweep.caster, system)} ({how})"
        if sweep.rule is not None:
            told += f"; one and a half times the change of camber says {angle(sweep.rule)}"
        if sweep.rule_off is not None:
            told += f", {100.0 * sweep.rule_off:.1f} % off"
        lines.append(told)
        if sweep.inclination is not None:
            lines.append(
                f"{sweep.side} inclination {measured(sweep.inclination, system)}: a sweep "
                "magnifies what the gauge leaves open, so wide a band is honest"
            )
    for side, flat in alignment.flats.items():
        lines.append(
            f"{side} caster by the finder on the knuckle: {measured(flat, system)}"
            f"{_taken_out(alignment)}"
        )
    for side, level in alignment.level_frame.items():
        lines.append(
            f"{side} caster with the frame level, nose-down added: {measured(level, system)}"
        )
    if alignment.setback is not None:
        ahead = "left" if alignment.setback.value > 0.0 else "right"
        lines.append(
            f"axle turned in plan by {angle(abs(alignment.setback.value))} ± "
            f"{angle(alignment.setback.half)}, {ahead} side ahead"
        )
    return lines + _bent_lines(alignment)


def _bent_lines(alignment: Alignment) -> list[str]:
    """Included angle as evidence: knuckle or tube."""
    together = alignment.of("included")
    cambers = [each for each in alignment.judged if each.key == "camber"]
    off = [each.side for each in cambers if each.verdict == "out"]
    if not off:
        return []
    sides = " and ".join(off)
    if together is None or together.verdict == "cannot tell":
        return [
            (
                f"{sides} camber is out and a beam axle has no adjustment for it: knuckle or tube "
                "is bent, or a joint is loose. Camber and inclination together would tell which; "
                "here it cannot be told"
            )
        ]
    if together.verdict == "out":
        return [
            (
                f"{sides} camber is out, and camber with inclination differs left to right: that "
                "angle belongs to the knuckle. Look there first"
            )
        ]
    return [
        (
            f"{sides} camber is out while camber with inclination agrees left to right: the "
            "knuckle is as it was, the tube or end forging is bent"
        )
    ]


def _taken_out(alignment: Alignment) -> str:
    """What was taken out of a finder's reading, or that it was not."""
    slopes = alignment.readings.values("floor.along")
    if not slopes:
        return " (the floor taken as level: its slope was not read)"
    mean = sum(slopes) / len(slopes)
    if abs(mean) < 9e-5:
        return " (the floor is level)"
    way = "rise" if mean > 0.0 else "fall"
    return f" (the floor's {way} of {angle(abs(mean))} to the front is taken out)"
