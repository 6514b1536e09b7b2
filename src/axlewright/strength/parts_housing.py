"""How the housing gives: tubes, joints to the centre, centre, cover, sleeves, end forgings."""

import numpy as np

from axlewright.duty import Loads
from axlewright.rig import Column, Columns, Words
from axlewright.strength.housing import Housing, larger_moment, tube_sections
from axlewright.strength.ledger import Ledger, Row

SIDES = ("left", "right")
ROOT3 = np.sqrt(3.0)
TUBE_BASIS = (
    "bending and torsion against the fully plastic tube, (M/Mp)^2 + (T/Tp)^2 = 1, von Mises; "
    "Mp = yield (D^3 - d^3)/6"
)
GUSSETED = 1.6  # end forging with gussets against one without, opening and twist; memory


def housing_rows(
    ledger: Ledger, columns: Columns, words: Words, loads: Loads, housing: Housing
) -> None:
    """Write every row that the housing's own section actions decide."""
    for side in SIDES:
        _tube(ledger, columns, words, housing, side)
        _forging(ledger, columns, words, housing, side)
    _centre(ledger, columns, loads, housing)


def _tube(ledger: Ledger, columns: Columns, words: Words, housing: Housing, side: str) -> None:
    tube = tube_sections(columns, side)
    at_end = tube_sections(columns, side, "end")
    strength = columns["tube_yield"]
    soft = columns["softening"]
    spots = [("seat", "bends at the spring", soft), ("end", "bends beside the end forging", soft)]
    if words["held_by.arms"] != "leaves":
        spots.append(("arm", "bends at the arm bracket", soft))
    if f"track_bar_{side}" in housing.place:
        spots.append(("track_bar", "bends at the track-bar bracket", soft))
    spots.append(("joint", "bends beside the centre", soft))
    for station, mode, kept in spots:
        _bending(
            ledger,
            Row(part=f"tube_{side}", mode=mode, basis=TUBE_BASIS),
            housing,
            at_end if station == "end" else tube,
            strength * kept,
            station,
            side,
        )
    _bending(
        ledger,
        Row(
            part=f"tube_joint_{side}",
            mode="works loose or tears at the centre",
            basis=f"{TUBE_BASIS}; times the share that the pressed and welded joint holds",
        ),
        housing,
        tube,
        strength * soft * columns["joint_share"],
        "joint",
        side,
    )
    if np.any(columns[f"sleeve_wall_{side}"] > 0.0):
        _bending(
            ledger,
            Row(
                part=f"sleeve_{side}",
                mode="bends with its tube",
                basis=f"{TUBE_BASIS}; sleeve and tube bend alike, at the spring",
            ),
            housing,
            tube,
            strength * soft,
            "seat",
            side,
        )


def _bending(
    ledger: Ledger,
    row: Row,
    housing: Housing,
    tube: dict[str, Column],
    strength: Column,
    station: str,
    side: str,
) -> None:
    node = housing.place[f"{station}_{side}"]
    inboard, outboard = housing.faces[:, :, node - 1, 1], housing.faces[:, :, node, 0]
    if side == "right":
        inboard, outboard = outboard, inboard
    if station == "joint":
        actions = outboard
    elif station == "end":
        actions = inboard
    else:
        actions = housing.actions(station, side)
    up = strength * tube["plastic_up"]
    fore = strength * tube["plastic_fore"]
    twist = strength / ROOT3 * (np.pi / 2.0) * tube["plastic_fore"]
    ledger.add(
        row,
        actions[..., 3] / up[:, None],
        actions[..., 5] / fore[:, None],
        actions[..., 4] / twist[:, None],
        holds=fore,
    )


def _forging(ledger: Ledger, columns: Columns, words: Words, housing: Housing, side: str) -> None:
    fore = columns["forging_yield"] * columns["forging_modulus"] * columns["forging_factor"]
    strength = fore * (GUSSETED if words["forging.gussets"] == "yes" else 1.0)
    node = housing.place[f"end_{side}"]
    actions = housing.faces[:, :, node - 1, 1] if side == "right" else housing.faces[:, :, node, 0]
    ledger.add(
        Row(
            part=f"end_forging_{side}",
            mode="opens or twists at its neck",
            basis="bending and twist at the neck against its plastic section and yield "
            "(section from memory, scaled with the tube's diameter cubed); gussets do nothing "
            "fore and aft",
        ),
        actions[..., 3] / strength[:, None],
        actions[..., 5] / fore[:, None],
        actions[..., 4] / (1.15 * strength[:, None]),
        holds=strength,
    )


def _centre(ledger: Ledger, columns: Columns, loads: Loads, housing: Housing) -> None:
    strength = (columns["centre_modulus"] * columns["iron_yield"])[:, None]
    node = housing.place["centre"]
    actions = housing.faces[:, :, node, 0]
    before = housing.faces[:, :, node - 1, 1]
    actions = larger_moment(before, actions)
    ledger.add(
        Row(
            part="centre",
            mode="cracks",
            basis="bending and twist of the casting against its section and yield "
            "(section from memory, scaled with the tube's diameter cubed)",
        ),
        actions[..., 3] / strength,
        actions[..., 5] / strength,
        actions[..., 4] / (1.1 * strength),
        holds=strength[:, 0],
    )
    ledger.add(
        Row(
            part="cover",
            mode="is dented onto the ring gear",
            basis="share of the blow under the differential against the blow that dents it "
            "(both from memory)",
            kind="force",
        ),
        (columns["cover_share"] / columns["cover_limit"])[:, None] * loads.centre[..., 2],
        holds=columns["cover_limit"],
    )
