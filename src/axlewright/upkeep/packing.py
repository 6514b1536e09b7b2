"""Which spares to pack: the choice that saves most within a mass, found exactly."""

from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

Num: TypeAlias = NDArray[np.float64]
EVEN = 1e-12  # two choices whose gain differs by less than this share are alike: the lighter wins


def gain_of(chosen: NDArray[np.bool_], gains: Num, held: Num) -> float:
    """What a choice saves beyond what is held already.

    ``gains`` is (spares, parts), what each spare saves of each part's risk; ``held`` (parts,) what
    is saved without any. Two spares for one part save what the better of them saves.
    """
    best = np.max(np.where(chosen[:, None], gains, 0.0), axis=0, initial=0.0)
    return float(np.sum(np.maximum(best, held)) - np.sum(held))


def best_choice(gains: Num, held: Num, masses: Num, room: float) -> NDArray[np.bool_]:
    """Choose the spares that save most and together weigh no more than ``room`` (kg).

    Branch and bound. What one more spare adds never grows with what is packed already, so no
    choice beyond a node saves more than its own gain plus the fractional knapsack of what each
    spare that is left would add alone.
    """
    count = len(masses)
    best = np.zeros(count, dtype=bool)
    order = list(np.argsort(-np.sum(np.maximum(gains - held, 0.0), axis=1), kind="stable"))
    found = {"gain": 0.0, "mass": 0.0}

    def better(gain: float, mass: float) -> bool:
        near = EVEN * max(gain, found["gain"])
        return gain > found["gain"] + near or (
            gain > found["gain"] - near and mass < found["mass"] - 1e-9
        )

    def visit(left: list[int], chosen: NDArray[np.bool_], saved: Num, gain: float) -> None:
        mass = float(np.sum(masses[chosen]))
        if better(gain, mass):
            best[:] = chosen
            found["gain"], found["mass"] = gain, mass
        space = room - mass + 1e-9
        left = [each for each in left if masses[each] <= space]
        more = np.sum(np.maximum(gains[left] - saved, 0.0), axis=1)
        left = [each for each, one in zip(left, more, strict=True) if one > 0.0]
        more = more[more > 0.0]
        if not left or gain + _fractional(more, masses[left], space) <= found["gain"]:
            return
        first = left[int(np.argmax(more / np.maximum(masses[left], 1e-9)))]
        rest = [each for each in left if each != first]
        taken = chosen.copy()
        taken[first] = True
        after = np.maximum(saved, gains[first])
        visit(rest, taken, after, gain + float(np.sum(after - saved)))
        visit(rest, chosen, saved, gain)

    visit(order, np.zeros(count, dtype=bool), held.astype(np.float64), 0.0)
    return best


def _fractional(more: Num, masses: Num, space: float) -> float:
    """Gain of the knapsack that may take a part of its last piece."""
    total = 0.0
    for each in np.argsort(-more / np.maximum(masses, 1e-9)):
        share = 1.0 if masses[each] <= space else space / masses[each]
        total += share * float(more[each])
        space -= share * float(masses[each])
        if space <= 0.0:
            break
    return total
