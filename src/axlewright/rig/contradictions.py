"""Numbers that cannot all be true: each is met by the numbers already there."""

from collections.abc import Iterator, Mapping
from functools import partial
from math import pi

from axlewright.rig.clash import Clash
from axlewright.rig.contradictions_points import Say, place_clashes
from axlewright.rig.given import Given, spoken_system, told_length
from axlewright.rig.reading import Condition
from axlewright.rig.tyre_code import TyreCode

LEAST_CENTRE = 0.10  # a centre casting narrower than this does not hold a ring gear
END = 0.26  # tube end to tyre centre on both sides together, at least


def contradictions(
    words: Mapping[str, str],
    given: Mapping[str, Given],
    tyre: TyreCode,
    conditions: tuple[Condition, ...],
    system: str = "",
) -> list[Clash]:
    """Every contradiction among the answers; works on a rig that is only half answered.

    Lengths are told in ``system``; where that is empty, in the one that most numbers came in.
    """
    say = partial(told_length, system=system or spoken_system(given.values()))
    value = {name: datum.value for name, datum in given.items()}
    return [
        *_tyre(value, say, tyre),
        *_across(value, say),
        *_tubes(value, say),
        *_bars(value, say),
        *_joints(value, say),
        *_words(words, conditions),
        *_barred(words, value),
        *place_clashes(words, value, say),
    ]


def _tyre(value: Mapping[str, float], say: Say, tyre: TyreCode) -> Iterator[Clash]:
    free = 0.5 * tyre.outer_diameter
    for side in ("left", "right"):
        height = value.get(f"hub_height_{side}")
        if height is None:
            continue
        if height > free * 1.03:
            yield Clash(
                f"hub_height.{side}",
                f"the hub stands {say(height)} high, but this tyre is only {say(free)} from "
                "centre to tread",
                "measure from the floor to the hub's centre again, or check the sidewall",
            )
        if height < free * 0.72:
            yield Clash(
                f"hub_height.{side}",
                f"the hub stands {say(height)} high; a loaded tyre of {say(2 * free)} stands at "
                f"{say(0.9 * free)} to {say(0.98 * free)}, so this one would be flat",
                "measure again on level ground at road pressure, or check the sidewall",
            )
    if {"hub_height_left", "hub_height_right"} <= value.keys():
        apart = abs(value["hub_height_left"] - value["hub_height_right"])
        if apart > 0.05:
            yield Clash(
                "hub_height.right",
                f"left and right hub heights differ by {say(apart)}",
                "level floor, both tyres at the same pressure, then measure both again",
            )


def _across(value: Mapping[str, float], say: Say) -> Iterator[Clash]:
    track = value.get("track")
    if track is None:
        return
    springs = value.get("spring_spacing")
    if springs is not None and springs > track - 0.2:
        yield Clash(
            "track.springs",
            f"the springs stand {say(springs)} apart, but the tyres' centres only {say(track)}: "
            "the springs would be inside the wheels",
            "measure both again, each from one edge to the same edge on the other side",
        )
    bare = [value.get(f"tube_bare_{side}") for side in ("left", "right")]
    if all(length is not None for length in bare):
        tubes = sum(length for length in bare if length is not None)
        room = track - tubes - END
        if room < LEAST_CENTRE:
            yield Clash(
                "tube.bare.right",
                f"the bare tubes add up to {say(tubes)}; with end forgings and hubs that leaves "
                f"{say(max(room, 0.0))} for the centre between tyres {say(track)} apart",
                "measure only the bare tube: from the casting's edge to the forging's edge",
            )
        elif room > 0.95:
            yield Clash(
                "tube.bare.right",
                f"the bare tubes add up to only {say(tubes)}; that leaves {say(room)} for the "
                f"centre between tyres {say(track)} apart",
                "measure from the casting's edge to the forging's edge, brackets or not",
            )
    kingpins = value.get("kingpin_spacing")
    if kingpins is not None and kingpins > track:
        yield Clash(
            "kingpin.spacing",
            f"the joints stand {say(kingpins)} apart, further than the tyres' centres "
            f"({say(track)})",
            "measure between the lower joints' centres, across the vehicle",
        )
    arms = value.get("arm_apart")
    if arms is not None and arms > track - 0.2:
        yield Clash(
            "links.apart",
            f"the arms stand {say(arms)} apart, the tyres' centres {say(track)}: the arms would "
            "be inside the wheels",
            "measure between the arms' bolts at the axle",
        )


def _tubes(value: Mapping[str, float], say: Say) -> Iterator[Clash]:
    outers = []
    for side in ("left", "right"):
        girth = value.get(f"tube_girth_{side}")
        if girth is not None:
            outers.append(girth / pi)
    if len(outers) == 2 and abs(outers[0] - outers[1]) > 0.2 * max(outers):
        yield Clash(
            "tube.girth.right",
            f"the strips make the tubes {say(outers[0])} and {say(outers[1])} across; tubes of "
            "one axle are nearly alike",
            "wrap the strip round bare tube, clear of brackets and welds, and measure both again",
        )
    outer = value.get("tube_outer", min(outers) if outers else None)
    if "tube_outer" in value and outers:
        apart = abs(value["tube_outer"] - sum(outers) / len(outers))
        if apart > 0.006:
            yield Clash(
                "tube.outer",
                f"the calliper says {say(value['tube_outer'])}, the paper strip "
                f"{say(sum(outers) / len(outers))} (girth over pi)",
                "measure both again on bare metal; one of them may be the girth",
            )
    wall = value.get("tube_wall")
    if outer is not None and wall is not None and 2.0 * wall >= outer:
        yield Clash(
            "tube.wall",
            f"a wall of {say(wall)} is half or more of a tube {say(outer)} across",
            "is one of them a radius or an inside diameter?",
        )
    for side in ("left", "right"):
        sleeve = value.get(f"sleeve_wall_{side}")
        if outer is not None and wall is not None and sleeve is not None:
            room = 0.5 * outer - wall
            if sleeve > room:
                yield Clash(
                    f"sleeve.wall.{side}",
                    f"a sleeve {say(sleeve)} thick does not go into a bore of {say(2.0 * room)}",
                    "give the sleeve's wall, not its diameter",
                )


def _bars(value: Mapping[str, float], say: Say) -> Iterator[Clash]:
    pairs = (
        ("tie_rod", "steering.tie_rod_wall"),
        ("drag_link", "steering.drag_link_wall"),
        ("track_bar", "track_bar.wall"),
        ("arm", "links.wall"),
    )
    for name, path in pairs:
        outer, wall = value.get(f"{name}_outer"), value.get(f"{name}_wall")
        if outer is not None and wall is not None and wall > 0.5 * outer * 1.001:
            yield Clash(
                path,
                f"a wall of {say(wall)} does not fit in {say(outer)} across",
                "a solid bar has a wall of half its diameter",
            )


def _joints(value: Mapping[str, float], say: Say) -> Iterator[Clash]:
    cap, across = value.get("cap_across"), value.get("cap_to_cap")
    if cap is not None and across is not None and across < 1.8 * cap:
        yield Clash(
            "joint.cap_to_cap",
            f"the cross is {say(across)} from cap to cap with caps {say(cap)} across; "
            "a cross is about three caps long",
            "measure over two opposite caps, outer face to outer face",
        )
    trunnion = value.get("trunnion")
    if cap is not None and trunnion is not None and trunnion >= cap:
        yield Clash(
            "joint.trunnion",
            f"the trunnion ({say(trunnion)}) is not thinner than its cap ({say(cap)})",
            "measure the bare trunnion with the cap off",
        )
    shaft, ring = value.get("inner_shaft"), value.get("ring_diameter")
    if shaft is not None and ring is not None and ring < 3.0 * shaft:
        yield Clash(
            "gear.ring",
            f"a ring gear {say(ring)} across does not go with a shaft of {say(shaft)}",
            "measure across the teeth of the large gear, and the shaft at its thinnest",
        )


def _barred(words: Mapping[str, str], value: Mapping[str, float]) -> Iterator[Clash]:
    if words.get("held_by.arms") == "angled arms" and any("track_bar_" in name for name in value):
        yield Clash(
            "held_by.arms",
            "'angled arms' hold the axle sideways by themselves, but measures of a track bar are "
            "given as well",
            "say four arms where there is a track bar, or leave the track bar out",
        )


def _words(words: Mapping[str, str], conditions: tuple[Condition, ...]) -> Iterator[Clash]:
    arms, weight_on = words.get("held_by.arms"), words.get("held_by.weight_on")
    if (arms == "leaves") != (weight_on == "leaf") and arms and weight_on:
        yield Clash(
            "held_by.weight_on",
            f"'{arms}' and '{weight_on}' do not go together: leaves both hold and carry",
            "say leaves and leaf, or arms and a coil",
        )
    said = words.get("rig.condition")
    if said == "as listed" and not conditions:
        yield Clash(
            "rig.condition",
            "'as listed', but no [[condition]] is listed",
            "list what was mended or hurts, or say 'nothing mended, nothing hurts'",
        )
    if said in {"nothing mended, nothing hurts", "never looked at"} and conditions:
        yield Clash(
            "rig.condition",
            f"'{said}', but {len(conditions)} [[condition]] entries follow",
            "say 'as listed'",
        )
