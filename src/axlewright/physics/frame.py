"""A housing as a chain of beams in space, on springs and rods, under many load cases at once.

Beam k joins node k to node k+1, in any direction. Each node has six displacements: three along
x forward, y left, z up (ISO 8855), then three small turns about the same axes. Everything off
the chain (a bracket, a tyre contact, a link end) is carried to its node by exact rigid-body
transfer. Displacements are small and material elastic.

The closed-form stiffness of each beam is written as a tensor in global axes, so nothing is
rotated to and fro; the block-tridiagonal matrix is factorised once per housing for all cases,
and one step of refinement with the true out-of-balance brings equilibrium to rounding even
where a stiff short beam hangs on a soft spring.

References
----------
przemieniecki1968, ch. 5 (beam stiffness with shear); ch. 6 (transfer of a node to a new point)
"""

from typing import NamedTuple, TypeAlias

import numpy as np
from numpy.typing import ArrayLike, NDArray

from axlewright.physics._chain import chain_kernel

Array: TypeAlias = NDArray[np.float64]

SOLVED, SINGULAR, NOT_FINITE = 0, 1, 2


class ChainSolution(NamedTuple):
    """What a chain does under its loads. In memory the cases lie innermost.

    ``displacement`` (B, C, N, 6): m and rad. ``face`` (B, C, N-1, 2, 6): N and N m, the actions
    on the cut whose outward normal points along the chain, at the first and second end of each
    beam, in global axes about the node. ``status`` (B,): SOLVED, SINGULAR (something can
    move freely, or a beam has no stiffness) or NOT_FINITE; a lane not solved holds NaN.
    """

    displacement: Array
    face: Array
    status: NDArray[np.int64]


def solve_chain(
    nodes: ArrayLike,
    axial: ArrayLike,
    bending_up: ArrayLike,
    bending_fore: ArrayLike,
    torsion: ArrayLike,
    support_node: ArrayLike,
    support: ArrayLike,
    fixed: ArrayLike,
    loads: ArrayLike,
    shear_up: ArrayLike | None = None,
    shear_fore: ArrayLike | None = None,
) -> ChainSolution:
    """Displacements and section actions of B chains of N nodes under C load cases.

    Parameters
    ----------
    nodes
        (B, N, 3), m.
    axial, torsion
        (B, N-1): EA in N, GJ in N m2.
    bending_up, bending_fore
        (B, N-1), N m2: EI against bending in the vertical plane of the beam, and across it. A
        vertical beam takes x forward as its "up".
    support_node, support
        (S,) nodes and (B, S, 6, 6) stiffness about each node, N/m, N, N m; a node may repeat.
        See ``rod_support`` and ``point_support``.
    fixed
        (N, 6): true where a displacement is zero, eliminated exactly.
    loads
        (B, C, N, 6): force and moment on each node.
    shear_up, shear_fore
        (B, N-1), 1/N: one over shear stiffness kGA. Left out: rigid in shear (Euler-Bernoulli).

    Notes
    -----
    The axis B may be 1 for any argument, or left out for all; B of the answer is the largest.

    References
    ----------
    przemieniecki1968, ch. 5
    """
    place = _batched(nodes, 3)
    stiffness = (
        _batched(axial, 2),
        _batched(bending_up, 2),
        _batched(bending_fore, 2),
        _batched(torsion, 2),
    )
    shear = (
        _NO_SHEAR if shear_up is None else _batched(shear_up, 2),
        _NO_SHEAR if shear_fore is None else _batched(shear_fore, 2),
    )
    held = np.ascontiguousarray(fixed, dtype=np.bool_)
    seats = np.ascontiguousarray(support_node, dtype=np.int64)
    springs = _batched(support, 4)
    acting = _batched(loads, 4)
    lanes = max(map(len, (place, springs, acting, *stiffness, *shear)))
    _, cases, count, _ = acting.shape
    eights = cases + -cases % 8
    displacement = np.empty((lanes, count, 6, eights))
    face = np.empty((lanes, count - 1, 2, 6, eights))
    status = np.empty(lanes, np.int64)
    chain_kernel(
        place, *stiffness, *shear, seats, springs, held, acting, displacement, face, status
    )
    if eights > cases:
        displacement, face = displacement[..., :cases], face[..., :cases]
    return ChainSolution(displacement.transpose(0, 3, 1, 2), face.transpose(0, 4, 1, 2, 3), status)


def rod_support(offset: ArrayLike, direction: ArrayLike, stiffness: ArrayLike) -> Array:
    """Stiffness (..., 6, 6) about a node of a ball-ended rod attached at an offset from it.

    Offset (..., 3) in m; direction (..., 3) of any length, along the rod; stiffness (...) in N/m,
    rod and bushings in series.
    """
    pull = _rod_pull(offset, direction)
    along = np.asarray(stiffness, dtype=np.float64)[..., None, None]
    return np.asarray(along * pull[..., :, None] * pull[..., None, :])


def rod_tension(
    displacement: ArrayLike, offset: ArrayLike, direction: ArrayLike, stiffness: ArrayLike
) -> Array:
    """Tension (...), N, of a rod whose direction points from the axle to its other end.

    Displacement (..., 6) is that of the node; the other end stands still.
    """
    pull = _rod_pull(offset, direction)
    moved = np.sum(pull * np.asarray(displacement, dtype=np.float64), axis=-1)
    return np.asarray(-np.asarray(stiffness, dtype=np.float64) * moved)


def point_support(offset: ArrayLike, translational: ArrayLike, rotational: ArrayLike) -> Array:
    """Stiffness (..., 6, 6) about a node of springs along and about x, y, z at an offset.

    Offset (..., 3) in m; translational (..., 3) in N/m; rotational (..., 3) in N m/rad.
    """
    carry = rigid_transfer(offset)
    along, about = np.broadcast_arrays(
        np.asarray(translational, dtype=np.float64), np.asarray(rotational, dtype=np.float64)
    )
    each = np.concatenate([along, about], axis=-1)
    return np.asarray(np.swapaxes(carry, -1, -2) @ (each[..., :, None] * carry))


def shifted_load(force: ArrayLike, moment: ArrayLike, offset: ArrayLike) -> Array:
    """Load (..., 6) on a node of a force and moment (..., 3) that act at an offset from it."""
    push = np.asarray(force, dtype=np.float64)
    turn = np.asarray(moment, dtype=np.float64) + np.cross(
        np.asarray(offset, dtype=np.float64), push
    )
    push, turn = np.broadcast_arrays(push, turn)
    return np.concatenate([push, turn], axis=-1)


def rigid_transfer(offset: ArrayLike) -> Array:
    """Matrix (..., 6, 6) that gives the displacement at an offset from that of the node."""
    arm = np.asarray(offset, dtype=np.float64)
    carry = np.zeros((*arm.shape[:-1], 6, 6))
    carry[..., range(6), range(6)] = 1.0
    carry[..., 0, 4], carry[..., 0, 5] = arm[..., 2], -arm[..., 1]
    carry[..., 1, 3], carry[..., 1, 5] = -arm[..., 2], arm[..., 0]
    carry[..., 2, 3], carry[..., 2, 4] = arm[..., 1], -arm[..., 0]
    return carry


def out_of_balance(
    solution: ChainSolution,
    support_node: ArrayLike,
    support: ArrayLike,
    loads: ArrayLike,
) -> Array:
    """Force and moment (B, C, N, 6) that loads, springs and beams leave on each node.

    Zero to rounding, except along fixed displacements: there it is minus the reaction.
    """
    left = np.array(np.broadcast_to(_batched(loads, 4), solution.displacement.shape))
    left[..., :-1, :] += solution.face[..., 0, :]
    left[..., 1:, :] -= solution.face[..., 1, :]
    springs = _batched(support, 4)
    for order, node in enumerate(np.asarray(support_node, dtype=np.int64)):
        moved = solution.displacement[:, :, node, :]
        left[:, :, node, :] -= np.einsum("bij,bcj->bci", springs[:, order], moved)
    return left


def free_body_residual(nodes: ArrayLike, out: ArrayLike, fixed: ArrayLike) -> Array:
    """Force and moment about the origin (B, C, 6) missing for the whole chain to balance.

    ``out`` is ``out_of_balance``; what fixed displacements carry counts as reaction.
    """
    rest = np.where(np.asarray(fixed, dtype=np.bool_), 0.0, np.asarray(out, dtype=np.float64))
    place = _batched(nodes, 3)[:, None]
    turn = rest[..., 3:] + np.cross(place, rest[..., :3])
    return np.concatenate([rest[..., :3].sum(axis=-2), turn.sum(axis=-2)], axis=-1)


def _rod_pull(offset: ArrayLike, direction: ArrayLike) -> Array:
    """Row (..., 6) that gives the travel of the rod's end along the rod."""
    line = np.asarray(direction, dtype=np.float64)
    line = line / np.sqrt(np.sum(line * line, axis=-1, keepdims=True))
    arm = np.asarray(offset, dtype=np.float64)
    pull = np.empty((*np.broadcast_shapes(arm.shape, line.shape)[:-1], 6))
    pull[..., :3] = line
    for turn, (one, other) in enumerate(((1, 2), (2, 0), (0, 1)), start=3):  # arm x line
        pull[..., turn] = arm[..., one] * line[..., other] - arm[..., other] * line[..., one]
    return pull


def _batched(values: ArrayLike, axes: int) -> Array:
    """Give contiguous floats with a batch axis in front."""
    array = np.asarray(values, _FLOAT, "C")
    return array if array.ndim == axes else array[None]


_FLOAT = np.dtype(np.float64)
_NO_SHEAR = np.zeros((1, 1))
