"""A radius arm as two rods from its eye, which hold the axle and twist as its bushings do.

The arm is rigid and its two bolts at the axle sit in soft rubber. Rods to the bolts themselves lie
almost in one line with the eye: they fold over within the axle's travel, which no arm does. So the
two rods end beside the middle of the bolts, square to the arm, and turn with the bolts.
"""

from collections.abc import Mapping
from typing import Final

import numpy as np

from axlewright.geometry.rods import Rod
from axlewright.physics import linkage
from axlewright.rig import Column

TWIST_BUSH: Final = 0.15  # share of an arm's bushing that a radius arm's soft one has; memory
RADIUS_APART: Final = 0.2  # how far the rods end beside the middle, of the bolts' own distance


def radius_end(at: Mapping[str, Column], name: str) -> Column:
    """Where one of an arm's two rods ends at the axle, (n, 3) m: square to the arm, from the side.

    The two rods twist as two bushings half the bolts' distance from the middle do when each is as
    stiff as ``TWIST_BUSH / RADIUS_APART**2`` arm bushings.
    """
    side = _side(name)
    middle, half, _, _ = _bolts(at, side)
    arm = middle - at[f"arm_frame{side}"]
    square = np.stack([-arm[..., 2], 0.0 * arm[..., 1], arm[..., 0]], axis=-1)
    square = _unit(square)
    off = (-1.0 if name.startswith("arm_far") else 1.0) * RADIUS_APART * half
    return np.asarray(middle + off[..., None] * square)


def radius_end_moved(old: Mapping[str, Column], new: Mapping[str, Column], rod: Rod) -> Column:
    """Carry a rod's end along with the arm's two bolts, from the places ``old`` to ``new``."""
    side = _side(rod.name)
    was, _, along, across = _bolts(old, side)
    now, _, along_now, across_now = _bolts(new, side)
    off = rod.axle - was
    one = np.sum(off * along, axis=-1, keepdims=True)
    two = np.sum(off * across, axis=-1, keepdims=True)
    return np.asarray(now + one * along_now + two * across_now)


def _bolts(at: Mapping[str, Column], side: str) -> tuple[Column, Column, Column, Column]:
    """Middle of the bolts, half their distance, and unit vectors along and square to them."""
    near, far = at[f"arm_axle{side}"], at[f"arm_axle_far{side}"]
    apart = near - far
    length = linkage.rod_lengths(near, far)
    along = _unit(apart)
    across = np.stack([along[..., 2], 0.0 * along[..., 1], -along[..., 0]], axis=-1)
    return np.asarray(0.5 * (near + far)), np.asarray(0.5 * length), along, _unit(across)


def _unit(vector: Column) -> Column:
    """Vectors of length one along (..., 3); of none where bolts are taped onto one another."""
    length = np.linalg.norm(vector, axis=-1, keepdims=True)
    return np.asarray(vector / np.maximum(length, 1e-12))


def _side(name: str) -> str:
    return f"_{name.rpartition('_')[2]}"
