"""What a bad moment leaves behind: the bow that the tubes keep, as camber and toe at each wheel."""

from dataclasses import dataclass

import numpy as np

from axlewright.duty import ROW, live_cases
from axlewright.physics import plastic
from axlewright.rig import Column, Columns
from axlewright.strength.housing import Housing

STEEL = 205e9
CENTRE_OUTER, CENTRE_INNER, CENTRE_YIELD = 0.18, 0.16, 2e9  # the casting stays straight here


@dataclass(frozen=True, slots=True, kw_only=True)
class Bent:
    """Camber and toe that stay after a moment, left and right, (n,), rad.

    Tops outboard and fronts inboard are positive; NaN where the tube folds.
    """

    camber_left: Column
    camber_right: Column
    toe_left: Column
    toe_right: Column


def bent_after(columns: Columns, housing: Housing, case: int, hardness: float) -> Bent:
    """Give the set that one live case at a hardness leaves, elastic and perfectly plastic tubes.

    ``case`` counts as `live_cases`; the tubes yield at their softened yield all along, which is
    the unkind side; sleeves count as part of the wall, a truss does not.
    """
    entry = live_cases()[case]
    first, last = housing.place["end_right"], housing.place["end_left"]
    faces = housing.faces[:, :, first:last]
    loads = hardness * faces[:, ROW[entry.key]]
    if entry.standing:
        loads = loads + faces[:, ROW["standing"]]
    moments = loads[..., [3, 5]]
    outer, inner, strength = _tubes(columns, housing, first, last)
    kept = plastic.permanent_set(
        housing.across[:, first : last + 1],
        moments,
        outer,
        inner,
        strength,
        np.full_like(outer, STEEL),
    )
    folded = kept.status != plastic.KEPT
    camber = np.where(folded[:, None], np.nan, kept.camber)
    toe = np.where(folded[:, None], np.nan, kept.toe)
    return Bent(
        camber_left=camber[:, 1],
        camber_right=camber[:, 0],
        toe_left=toe[:, 1],
        toe_right=toe[:, 0],
    )


def _tubes(
    columns: Columns, housing: Housing, first: int, last: int
) -> tuple[Column, Column, Column]:
    draws, count = housing.across.shape[0], last - first
    outer = np.full((draws, count), CENTRE_OUTER)
    inner = np.full((draws, count), CENTRE_INNER)
    strength = np.full((draws, count), CENTRE_YIELD)
    spans = {
        "right": slice(0, housing.place["joint_right"] - first),
        "left": slice(housing.place["joint_left"] - first, count),
    }
    for side, span in spans.items():
        across = columns[f"tube_outer_{side}"]
        wall = np.minimum(columns["tube_wall"] + columns[f"sleeve_wall_{side}"], 0.499 * across)
        outer[:, span] = across[:, None]
        inner[:, span] = (across - 2.0 * wall)[:, None]
        strength[:, span] = (columns["tube_yield"] * columns["softening"])[:, None]
    return outer, inner, strength
