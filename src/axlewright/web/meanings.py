"""Words of the trade, each with its meaning in one or two plain sentences."""

import re
from typing import Final

MEANINGS: Final[dict[str, str]] = {
    "about": "A rough number. The doubt of a careful reading is trebled, and the answer says so.",
    "assumed": "Nobody gave this number, so a usual one stands in, with a band and a source.",
    "backspacing": "From the wheel's mounting face to the inner edge of the rim.",
    "band": "Where nine cases in ten lie. A wide band asks for a measurement.",
    "bare tube": "The length of axle tube between the two welds: at the centre casting, and at "
    "the end forging.",
    "cap across": "How wide a joint's cap is across its face, by calliper.",
    "cap to cap": "How long a joint's cross is, from one cap's face to the opposite one's.",
    "centre": "The casting in the axle that holds ring gear and differential.",
    "end forging": "The forged end of the axle housing that carries the knuckle at the front, or "
    "the hub and brake at the rear.",
    "ET": "Wheel offset as stamped, in millimetres: positive sets the tyre further in.",
    "gives": "Bends, breaks or tears for good. It need not part; it does not come back.",
    "girth": "All the way round the tube. Divided by pi it is the tube's diameter.",
    "hours lost": "From the moment a part gives until the rig moves again, with help or at a "
    "crawl. An hour without steering, brakes or a wheel counts for three.",
    "knuckle": "The part that turns when you steer and carries the hub.",
    "loaded radius": "From the floor to the hub's centre with the load on: the lever of every "
    "pull on the shafts.",
    "look": "Seeing and feeling the real thing, with a date. Only looks can say that a rig may "
    "be driven; a figure cannot.",
    "not judged": "There is no data for this part, so nothing is said about it. That is not good "
    "news.",
    "one bad moment": "A single hard hit, drop or wedge: what gives first, and how hard a moment "
    "it takes.",
    "spacer": "A plate between hub and wheel; it moves the tyre further out.",
    "STOP": "Something found on the rig that means: do not drive. No figure lifts it; only "
    "putting it right and looking again does.",
    "track bar": "The bar across the vehicle that keeps the axle from moving sideways.",
    "wearing out": "What is used up little by little: bearings, brackets, joints, welds.",
}


def anchor(term: str) -> str:
    """Place of a word on the page of words."""
    return re.sub(r"[^a-z0-9]+", "-", term.casefold()).strip("-")
