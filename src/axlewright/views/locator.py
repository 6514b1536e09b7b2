"""Where it is bent or worn, as lines and JSON: shares, dangerous causes with looks, what next."""

from collections.abc import Mapping
from math import degrees, radians
from typing import Any, Final

from axlewright import units
from axlewright.tables import fingerprint, looks_beyond
from axlewright.upkeep import (
    NOTHING,
    Echo,
    Located,
    OpenJob,
    ShareBand,
    Suspect,
    looks_in_order,
)
from axlewright.views.phrases import plain

SHOWN: Final = 0.02  # a share below this is told as "under 2 %"
PLAIN: Final = 0.5
NEXT: Final = 3
HARDLY: Final = radians(0.5)  # at the steering wheel; common practice, no source
WAYS: Final = {  # what a positive and a negative number mean
    "camber_out": ("top out", "top in"),
    "camber_in": ("top out", "top in"),
    "tube_angle": ("outer end up", "outer end down"),
    "included": ("more than given", "less than given"),
    "caster": ("top further back", "top further forward"),
    "bow_up": ("ends up", "ends down"),
    "bow_back": ("ends back", "ends forward"),
    "setback": ("left wheel ahead", "right wheel ahead"),
    "heading": ("front to the left", "front to the right"),
    "toe_change": ("more toe-in", "more toe-out"),
    "wheel_off": ("turned to the left", "turned to the right"),
}
_TURNS: Final = {1: "to the left", -1: "to the right", 0: "one way or the other"}
RODS: Final = {"tie_rod": "tie rod", "drag_link": "drag link"}


def located_lines(
    found: Located, system: str = "metric", bands: Mapping[str, ShareBand] | None = None
) -> list[str]:
    """The answer for a terminal or a page of text, with the shares' bands where they are known."""

    def share(one: float, key: str) -> str:
        if bands is None:
            return f"{share_words(one):>10}"
        low, high = (share_words(end) for end in (bands[key].low, bands[key].high))
        return f"{share_words(one):>10}  ({low} to {high})".ljust(36)

    lines = [headline(found), ""]
    lines += [f"  {share(one.share, one.key)}  {one.label}" for one in found.suspects if _told(one)]
    lines += [f"  {share(found.nothing, NOTHING)}  none of all these", ""]
    lines += remainder_lines(found)
    lines += ["Not ruled out until somebody has looked, whatever the share:"]
    lines += [
        f"  {share_words(one.share):>10}  {one.label}: {_look(one)}" for one in found.dangerous
    ]
    lines += [f"              {cause}: {look}" for cause, look in looks_besides(found.axle)]
    lines += ["", "Read next (what tells most a minute first):"]
    lines += [f"  {_job(job)}" for job in found.jobs[:NEXT]]
    order = ", then ".join(
        f"{one.label} ({one.minutes:g} min)" for one in looks_in_order(found)[:3]
    )
    lines += [f"  or look at once, the likeliest for its minutes first: {order}", ""]
    lines += ["As it was understood; left and right are the vehicle's:"]
    lines += [f"  {echo_words(echo, system)}" for echo in found.echoes] or ["  nothing yet"]
    floor = (
        "mapped and taken off" if found.floor_mapped else "not mapped: it blurs both sides alike"
    )
    lines += [f"  floor {floor}; {'just after a hit' if found.after_hit else 'no hit known'}", ""]
    return [*lines, RESTS]


RESTS: Final = (
    "Shares rest on common practice, no source, and on the axle's geometry; they say where to "
    "look, never that it may be driven. The maker's manual comes first."
)


def located_json(found: Located) -> dict[str, Any]:
    """Everything about the answer, SI."""
    return {
        "rig": found.rig,
        "axle": found.axle,
        "tables": fingerprint(),
        "after_hit": found.after_hit,
        "floor_mapped": found.floor_mapped,
        "causes": [_suspect_json(one) for one in found.suspects],
        "none_of_these": found.nothing,
        "dangerous": [one.key for one in found.dangerous],
        "may_drive": None,
        "next": [
            {"job": job.key, "label": job.label, "minutes": job.minutes, "bits": job.bits}
            for job in found.jobs
        ],
        "readings": [
            {
                "key": echo.key,
                "label": echo.label,
                "side": echo.side or None,
                "value": echo.value,
                "standard_uncertainty": echo.standard,
                "unit": echo.unit or None,
            }
            for echo in found.echoes
        ],
        "explained": [
            {"rod": one.rod, "bow": one.bow, "low": one.low, "high": one.high, "unit": "rad"}
            | {"way": {1: "left", -1: "right", 0: None}[one.way]}
            for one in found.explains
        ],
        "remainder": None
        if found.remainder is None
        else {"low": found.remainder[0], "high": found.remainder[1], "unit": "rad"},
        "rests_on": RESTS,
    }


def echo_words(echo: Echo, system: str = "metric") -> str:
    """One reading in words, with side, unit and which way."""
    name = f"{echo.label}, {echo.side}" if echo.side else echo.label
    if not echo.unit:
        return f"{name}: {'yes' if echo.value else 'no'}"
    kind = "angle" if echo.unit == "rad" else "length"
    unit = units.SYSTEMS[system][kind]
    size = units.known(kind)[unit]
    fine = 2 if unit == "in" else 1
    digits = 2 if kind == "angle" and abs(degrees(echo.value)) < 2.0 else fine
    ways = WAYS.get(echo.key.removesuffix(f"_{echo.side}"))
    value = abs(echo.value) if ways else echo.value
    way = "" if not ways or not echo.value else f" ({ways[0] if echo.value > 0 else ways[1]})"
    doubt = plain(1.645 * echo.standard / size, 2)
    return f"{name}: {value / size:.{digits}f} {unit}{way}, give or take {doubt} {unit}"


def headline(found: Located) -> str:
    """The answer in one sentence."""
    top = found.suspects[0]
    if found.nothing > max(PLAIN, top.share):
        return (
            f"Nothing on this list stands out ({share_words(found.nothing)} for none of it, as far "
            "as this was read). That is no leave to drive: the looks below are still owed."
        )
    if top.share >= PLAIN:
        return f"Most likely: {top.label} ({share_words(top.share)})."
    return f"Not settled; likeliest: {top.label} ({share_words(top.share)}). Read on."


def _told(one: Suspect) -> bool:
    return one.share >= SHOWN


def share_words(share: float) -> str:
    """A share in words, never surer than the tables are."""
    if share < SHOWN:
        return f"under {100 * SHOWN:.0f} %"
    return f"over {100 * (1 - SHOWN):.0f} %" if share > 1 - SHOWN else f"{100 * share:.0f} %"


def _look(one: Suspect) -> str:
    return f"{one.look}. STOP: {one.stop} ({one.minutes:g} min)"


def looks_besides(axle: str) -> list[tuple[str, str]]:
    """What is not on the locator's list and can look alike."""
    wanted = {"bracket", "box", "bracket_rear", "tyre"}
    rows = sorted(looks_beyond().values(), key=lambda row: row.rank)
    return [
        (row.cause, row.look) for row in rows if row.key in wanted and row.axle in {axle, "both"}
    ]


def _job(job: OpenJob) -> str:
    return f"{job.label} ({job.minutes:g} min, {job.tool}): {job.how}"


def remainder_lines(found: Located) -> list[str]:
    """What bowed rods explain of the steering wheel's angle, and what they leave."""
    lines = [
        f"A {RODS[one.rod]} bowed by {one.bow * 1e3:.0f} mm explains {degrees(one.low):.0f} to "
        f"{degrees(one.high):.0f} deg at the steering wheel, {_TURNS[one.way]}."
        for one in found.explains
        if one.high > HARDLY
    ]
    if lines and found.remainder is not None:
        low, high = (degrees(end) for end in found.remainder)
        lines.append(
            f"That leaves {low:.0f} to {high:.0f} deg to explain."
            if low > 0.0
            else f"That can be all of it (up to {high:.0f} deg may be left)."
        )
    return [*lines, ""] if lines else []


def _suspect_json(one: Suspect) -> dict[str, Any]:
    return {
        "key": one.key,
        "label": one.label,
        "side": one.side or None,
        "share": one.share,
        "danger": one.danger or None,
        "look": one.look,
        "stop": one.stop,
        "minutes": one.minutes,
    }
