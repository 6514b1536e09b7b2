"""What other tyres ask of the brakes, in words."""

from axlewright.geometry import BrakesAsked
from axlewright.views.phrases import plain

BRAKES = (
    "No figure here says that the brakes are enough: pads, hoses, fluid and parking brake are "
    "looked at and the brakes tried, empty and loaded, by somebody who may, before the road; "
    "local law may ask for a test."
)


def brake_lines(asked: BrakesAsked | None) -> list[str]:
    """What is said of the brakes beside other tyres; nothing where they are of one height."""
    if asked is None:
        return []
    percent = 100.0 * (asked.torque - 1.0)
    more = "more" if percent > 0.0 else "less"
    heavier = asked.as_mass[1] - asked.as_mass[0]
    lines = [
        (
            f"Brakes: for the same stop they must give {abs(percent):.0f} % {more} torque (it goes "
            f"with the radius), so the pedal asks for {abs(percent):.0f} % {more} push."
        ),
        (
            "The heat of a stop from the same true speed is the vehicle's own and stays; the "
            f"turning wheels count as {plain(asked.as_mass[1], 2)} kg of extra mass instead "
            f"of {plain(asked.as_mass[0], 2)} kg (tyres from memory unless weighed), "
            f"{100.0 * (asked.heat - 1.0):+.1f} % of heat with both axles loaded alike."
        ),
    ]
    if heavier > 0.0 and percent > 0.0:
        lines.append(
            "The discs turn slower under taller tyres: the same heat comes with more pull and less "
            "cooling air."
        )
    return [*lines, BRAKES]
