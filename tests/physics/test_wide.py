"""Eight numbers at once beside the same in NumPy."""

import numpy as np

from axlewright.physics import _wide
from axlewright.physics.compiled import ordered_kernel


@ordered_kernel
def worked(given, out):
    one, other = _wide.row(given, 3), _wide.row(given, 11)
    _wide.put(out, 0, _wide.plus(one, other))
    _wide.put(out, 8, _wide.minus(one, other))
    _wide.put(out, 16, _wide.times(one, other))
    _wide.put(out, 24, _wide.more(one, other, _wide.each(given, 2)))
    _wide.put(out, 32, _wide.less(one, other, _wide.full(0.5)))
    return _wide.element(one, 6)


@ordered_kernel
def turned(given, out):
    _wide.transpose(given, 5, 11, out, 2, 9)


def test_each_operation_does_what_numpy_does():
    given, out = np.random.default_rng(1).normal(size=20), np.zeros(48)
    one, other = given[3:11], given[11:19]
    assert worked(given, out) == one[6]
    # A product that is rounded together with its sum may differ in the last place.
    expected = [one + other, one - other, one * other, one + other * given[2], one - other * 0.5]
    np.testing.assert_allclose(out[:40].reshape(5, 8), expected, rtol=0, atol=1e-15)
    assert not out[40:].any()


def test_a_square_is_turned_and_nothing_beside_it_touched():
    given = np.arange(90.0)
    out = np.full(80, -1.0)
    turned(given, out)
    rows = np.arange(8)
    expected = np.full(80, -1.0)
    expected[2 + 9 * rows[:, None] + rows] = given[5 + 11 * rows + rows[:, None]]
    np.testing.assert_array_equal(out, expected)


def test_a_number_does_not_depend_on_its_neighbours():
    given, out, again = np.random.default_rng(2).normal(size=20), np.zeros(48), np.zeros(48)
    worked(given, out)
    given[[4, 12]] = np.nan, np.inf
    worked(given, again)
    kept = [0, 2, 3, 4, 5, 6, 7]
    np.testing.assert_array_equal(again.reshape(6, 8)[:, kept], out.reshape(6, 8)[:, kept])
