"""A bracket's welds in the strength study beside the general group of weld lines.

Outside reference: the group itself is held to Budynas and Nisbett, tables 9-1 and 9-2, and to
published worked examples in tests/validation/test_welds.py.
"""

import numpy as np
import pytest

from axlewright.physics import weld
from axlewright.strength.parts_held import bracket_strength


@pytest.mark.parametrize("plated", [False, True])
@pytest.mark.parametrize("height", [0.03, 0.06, 0.12])
def test_a_force_that_tears_the_welds_is_that_of_the_general_group(height, plated):
    width, leg, steel = np.array([0.05, 0.08]), np.array([0.005, 0.008]), 250e6
    columns = {"bracket_width": width, "weld_leg": leg, "plate_yield": np.full(2, steel)}
    _, tears = bracket_strength(columns, np.full(2, 0.006), np.full(2, height), plated=plated)
    for wide, thick_leg, force in zip(width, leg, tears, strict=True):
        # Two cheeks across the pull, a line on each face of each: four lines of the cheeks' width.
        ends = [-0.5 * wide, 0.5 * wide]
        lines = np.array([[[ends[0], y], [ends[1], y]] for y in (-0.031, -0.025, 0.025, 0.031)])
        group = weld.line_group(lines)
        corner = np.array([0.5 * wide, 0.031])
        push, turn = np.array([force, 0.0, 0.0]), np.array([0.0, force * height, 0.0])
        stress = weld.throat_stress(
            weld.line_force(group, corner, push, turn), weld.throat(thick_leg)
        )
        assert stress == pytest.approx(0.75 * 1.45 * steel, rel=1e-12)
