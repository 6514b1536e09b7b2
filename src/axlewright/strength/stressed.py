"""Section actions and elastic stress of the tubes at every station, for whoever checks the sums."""

from dataclasses import dataclass

import numpy as np

from axlewright.duty import ROW, live_cases
from axlewright.physics import section
from axlewright.rig import Column, Columns
from axlewright.strength.binding import HELD
from axlewright.strength.housing import Housing, tube_sections

OUTWARD = {"right": -1.0, "left": 1.0}


@dataclass(frozen=True, slots=True, kw_only=True)
class Stressed:
    """One station of a tube, in the live case that presses it hardest at its reference hardness.

    ``actions`` (n, 6) are pull along the tube, shear forward and up, twist, moment up and fore,
    N and N m; ``fibre`` (n,) is the largest stress along the tube round its outside, ``mises``
    with the twist's shear, Pa; elastic, so beyond yield they are no stresses but a measure.
    """

    station: str
    side: str
    across: Column
    case: int
    actions: Column
    fibre: Column
    mises: Column


def stressed(columns: Columns, housing: Housing) -> tuple[Stressed, ...]:
    """Every station of both tubes from the end forging to the centre, right to left."""
    out = []
    for name, node in sorted(housing.place.items(), key=lambda item: item[1]):
        station, _, side = name.rpartition("_")
        if side in OUTWARD and station in {"end", "seat", "arm", "track_bar", "joint"}:
            out.append(_at(columns, housing, station, side, node))
    return tuple(out)


def _at(columns: Columns, housing: Housing, station: str, side: str, node: int) -> Stressed:
    tube = tube_sections(columns, side, station)
    inboard, outboard = housing.faces[:, :, node - 1, 1], housing.faces[:, :, node, 0]
    if side == "right":
        inboard, outboard = outboard, inboard
    met = {"joint": outboard, "end": inboard}
    faces = met[station] if station in met else housing.actions(station, side)
    acts = np.stack(
        [
            faces[:, ROW[case.key]]
            + (faces[:, ROW["standing"]] if case.standing else 0.0)
            + faces[:, HELD]
            for case in live_cases()
        ],
        axis=1,
    )[..., [1, 0, 2, 4, 3, 5]]
    bend = np.hypot(
        acts[..., 4] / tube["modulus_up"][:, None], acts[..., 5] / tube["modulus"][:, None]
    )
    fibre = bend + np.abs(acts[..., 0]) / tube["area"][:, None]
    shear = acts[..., 3] / (2.0 * tube["modulus"][:, None])
    mises = np.asarray(section.von_mises(fibre, shear))
    case = int(np.argmax(mises[0]))
    return Stressed(
        station=station,
        side=side,
        across=housing.across[:, node],
        case=case,
        actions=acts[:, case],
        fibre=fibre[:, case],
        mises=mises[:, case],
    )
