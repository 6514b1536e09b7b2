"""The compiled chain beside a plain dense twin, its trends, and how it takes bad numbers."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from axlewright.physics import frame

SEEDS = st.integers(0, 2**32 - 1)


def chain(seed, *, count=9, cases=3, lanes=1, seats=4):
    """A bent chain with unlike beams, springs and rods at offsets, and some fixed freedoms."""
    rng = np.random.default_rng(seed)
    nodes = np.cumsum(rng.uniform([-0.06, 0.03, -0.06], [0.06, 0.3, 0.06], (lanes, count, 3)), 1)
    beams = lanes, count - 1
    stiff = [
        rng.uniform(2e8, 6e8, beams),
        rng.uniform(1e5, 6e5, beams),
        rng.uniform(1e5, 6e5, beams),
        rng.uniform(1e5, 6e5, beams),
    ]
    seat = rng.integers(0, count, seats)
    offset = rng.uniform(-0.2, 0.2, (lanes, seats, 3))
    springs = frame.point_support(
        offset, rng.uniform(1e6, 1e8, (lanes, seats, 3)), rng.uniform(1e4, 1e6, (lanes, seats, 3))
    )
    springs += frame.rod_support(offset, rng.normal(size=(lanes, seats, 3)), np.full(seats, 1e8))
    fixed = rng.uniform(size=(count, 6)) < 0.1
    loads = rng.uniform(-1e4, 1e4, (lanes, cases, count, 6))
    shear = rng.uniform(0.0, 2e-8, (2, *beams))
    return (nodes, *stiff, seat, springs, fixed, loads, *shear)


def twin(nodes, axial, up, fore, torsion, seat, springs, fixed, loads, soft_up, soft_fore):
    """One lane by the textbook: 12 x 12 beams in their own axes, turned, summed, solved."""
    count = len(nodes)
    whole = np.zeros((6 * count, 6 * count))
    kept = []
    for beam in range(count - 1):
        line = nodes[beam + 1] - nodes[beam]
        length = np.linalg.norm(line)
        x = line / length
        upward = np.array([0.0, 0.0, 1.0])
        if np.hypot(x[0], x[1]) < 1e-6:
            upward = np.array([1.0, 0.0, 0.0])
        z = upward - x * (x @ upward)
        z /= np.linalg.norm(z)
        turn = np.kron(np.eye(4), np.array([x, np.cross(z, x), z]))
        own = np.zeros((12, 12))
        for first, second, stiffness in ((0, 6, axial[beam]), (3, 9, torsion[beam])):
            own[np.ix_([first, second], [first, second])] += (
                stiffness / length * np.array([[1, -1], [-1, 1]])
            )
        # Deflection along own y turns about own z; along own z it turns about minus own y.
        for shift, rotate, sign, bend, soft in (
            (1, 5, 1, fore[beam], soft_fore[beam]),
            (2, 4, -1, up[beam], soft_up[beam]),
        ):
            p = 12 * bend * soft / length**2
            e, s = bend / (length**3 * (1 + p)), sign * length
            block = e * np.array(
                [
                    [12, 6 * s, -12, 6 * s],
                    [6 * s, (4 + p) * s * s, -6 * s, (2 - p) * s * s],
                    [-12, -6 * s, 12, -6 * s],
                    [6 * s, (2 - p) * s * s, -6 * s, (4 + p) * s * s],
                ]
            )
            where = [shift, rotate, shift + 6, rotate + 6]
            own[np.ix_(where, where)] += block
        turned = turn.T @ own @ turn
        span = slice(6 * beam, 6 * beam + 12)
        whole[span, span] += turned
        kept.append(turned)
    for node, spring in zip(seat, springs, strict=True):
        whole[6 * node : 6 * node + 6, 6 * node : 6 * node + 6] += spring
    free = ~fixed.ravel()
    moved = np.zeros((len(loads), 6 * count))
    load = loads.reshape(len(loads), -1)
    inner = whole[np.ix_(free, free)]
    scale = 1.0 / np.sqrt(np.diag(inner))
    solve = lambda right: scale * np.linalg.solve(scale[:, None] * inner * scale, scale * right)
    for case in range(len(loads)):
        answer = solve(load[case, free])
        answer += solve(load[case, free] - inner @ answer)
        moved[case, free] = answer
    faces = np.empty((len(loads), count - 1, 2, 6))
    for beam, turned in enumerate(kept):
        ends = moved[:, 6 * beam : 6 * beam + 12] @ turned
        faces[:, beam, 0], faces[:, beam, 1] = -ends[:, :6], ends[:, 6:]
    return moved.reshape(loads.shape), faces


def lane(arguments, index):
    """One lane of a batch, as a batch of one."""
    shared = {5, 7}
    return tuple(
        each if place in shared else each[index : index + 1] for place, each in enumerate(arguments)
    )


@settings(max_examples=60, deadline=None)
@given(seed=SEEDS, count=st.integers(2, 10), cases=st.sampled_from([1, 3, 8, 9, 17]))
def test_the_kernel_does_what_its_dense_twin_does(seed, count, cases):
    given_chain = chain(seed, count=count, cases=cases)
    solved = frame.solve_chain(*given_chain)
    alone = [each if place in {5, 7} else each[0] for place, each in enumerate(given_chain)]
    moved, faces = twin(*alone)
    assert solved.status[0] == frame.SOLVED
    # The dense matrix has a condition of some 1e6 to 1e8 (ten to eight digits of its answer);
    # faces of the twin are differences of large numbers and lose a little more.
    np.testing.assert_allclose(
        solved.displacement[0], moved, rtol=0, atol=1e-10 * np.max(np.abs(moved))
    )
    np.testing.assert_allclose(solved.face[0], faces, rtol=0, atol=1e-8 * np.max(np.abs(faces)))


# Eight cases go through in squares of eight by eight numbers, of which the last may overlap.
@pytest.mark.parametrize("cases", [1, 8, 17])
@pytest.mark.parametrize("count", [2, 3, 4, 5, 12, 13])
def test_chains_of_any_length_do_what_their_dense_twin_does(count, cases):
    given_chain = list(chain(count, count=count, cases=cases, seats=3))
    given_chain[7][:] = False
    solved = frame.solve_chain(*given_chain)
    moved, faces = twin(*[x if i in {5, 7} else x[0] for i, x in enumerate(given_chain)])
    near = 1e-10 * np.max(np.abs(moved))
    np.testing.assert_allclose(solved.displacement[0], moved, rtol=0, atol=near)
    near = 1e-8 * np.max(np.abs(faces))
    np.testing.assert_allclose(solved.face[0], faces, rtol=0, atol=near)


@pytest.mark.parametrize("cases", [1, 8])
def test_a_lone_node_sits_on_its_spring(cases):
    load = np.arange(1.0, 6.0 * cases + 1.0).reshape(cases, 1, 6)
    none = np.zeros(0)
    solved = frame.solve_chain(
        np.zeros((1, 3)), none, none, none, none, [0], 4.0 * np.eye(6)[None],
        np.zeros((1, 6), dtype=bool), load,
    )  # fmt: skip
    np.testing.assert_allclose(solved.displacement[0], load / 4.0, rtol=1e-15)


def test_a_well_held_chain_agrees_with_its_twin_to_twelve_digits():
    given_chain = list(chain(11))
    given_chain[7] = np.zeros((9, 6), dtype=bool)
    given_chain[7][[0, 4, 8]] = True
    solved = frame.solve_chain(*given_chain)
    moved, faces = twin(*[x if i in {5, 7} else x[0] for i, x in enumerate(given_chain)])
    near = 1e-12 * np.max(np.abs(moved))
    np.testing.assert_allclose(solved.displacement[0], moved, rtol=0, atol=near)
    near = 1e-12 * np.max(np.abs(faces))
    np.testing.assert_allclose(solved.face[0], faces, rtol=0, atol=near)


@settings(max_examples=40, deadline=None)
@given(seed=SEEDS)
def test_every_free_body_is_in_balance(seed):
    given_chain = chain(seed)
    nodes, seat, springs, fixed, loads = (given_chain[place] for place in (0, 5, 6, 7, 8))
    solved = frame.solve_chain(*given_chain)
    out = frame.out_of_balance(solved, seat, springs, loads)
    largest = np.max(np.abs(loads))
    assert np.max(np.abs(np.where(fixed, 0.0, out))) <= 1e-9 * largest
    missing = frame.free_body_residual(nodes, out, fixed)
    assert np.max(np.abs(missing)) <= 1e-9 * largest


def test_short_stiff_beams_on_soft_springs_keep_their_balance():
    # Five millimetres beside a spring of 40 N/mm: a billion between stiffest and softest.
    place = np.array([-0.8, -0.505, -0.5, -0.495, 0.495, 0.5, 0.505, 0.8])
    nodes = np.stack([0 * place, place, 0 * place], axis=-1)
    seats = [2, 5]
    springs = frame.point_support(np.zeros((2, 3)), [3e5, 2e5, 4e4], [0.0, 1e5, 0.0])
    loads = np.zeros((1, 8, 6))
    loads[0, 7, 2] = 27e3
    solved = frame.solve_chain(
        nodes, *(np.full(7, value) for value in (3e8, 1.8e5, 1.8e5, 1.4e5)), seats, springs,
        np.zeros((8, 6), dtype=bool), loads,
    )  # fmt: skip
    out = frame.out_of_balance(solved, seats, springs, loads)
    assert np.max(np.abs(out)) <= 1e-10 * 27e3


@pytest.mark.parametrize("cases", [1, 7, 8, 9, 20])
def test_a_lane_of_many_is_the_same_lane_alone(cases):
    many = chain(3, lanes=5, cases=cases)
    together = frame.solve_chain(*many)
    for index in range(5):
        alone = frame.solve_chain(*lane(many, index))
        np.testing.assert_array_equal(together.displacement[index], alone.displacement[0])
        np.testing.assert_array_equal(together.face[index], alone.face[0])


def test_a_case_among_many_is_the_same_case_alone():
    many = list(chain(4, cases=11))
    together = frame.solve_chain(*many)
    for case in (0, 7, 8, 10):
        alone = frame.solve_chain(*many[:8], many[8][:, case : case + 1], *many[9:])
        np.testing.assert_array_equal(together.displacement[:, [case]], alone.displacement)


def test_what_is_shared_by_all_lanes_may_be_given_once():
    one = list(chain(5))
    loads = np.random.default_rng(6).uniform(-1e4, 1e4, (4, *one[8].shape[1:]))
    shared = frame.solve_chain(*one[:8], loads, *one[9:])
    spread = [
        each if place in {5, 7} else np.repeat(each, 4, axis=0) for place, each in enumerate(one)
    ]
    spread[8] = loads
    np.testing.assert_array_equal(shared.displacement, frame.solve_chain(*spread).displacement)


@settings(max_examples=25, deadline=None)
@given(seed=SEEDS, factor=st.floats(-3.0, 3.0))
def test_displacements_add_and_scale(seed, factor):
    given_chain = list(chain(seed, cases=3))
    loads = given_chain[8]
    loads[:, 2] = loads[:, 0] + factor * loads[:, 1]
    moved = frame.solve_chain(*given_chain).displacement[0]
    near = 1e-11 * np.max(np.abs(moved))
    np.testing.assert_allclose(moved[2], moved[0] + factor * moved[1], rtol=0, atol=near)


@settings(max_examples=25, deadline=None)
@given(seed=SEEDS)
def test_work_is_returned(seed):
    # Maxwell and Betti: the work of one set of loads on the other's displacements is mutual.
    given_chain = chain(seed, cases=2)
    loads = np.where(given_chain[7], 0.0, given_chain[8][0])
    moved = frame.solve_chain(*given_chain).displacement[0]
    there, back = np.sum(loads[0] * moved[1]), np.sum(loads[1] * moved[0])
    scale = np.sum(np.abs(loads[0] * moved[1]))
    assert there == pytest.approx(back, abs=1e-11 * scale)


@settings(max_examples=25, deadline=None)
@given(seed=SEEDS, angle=st.floats(-3.0, 3.0))
def test_a_round_chain_may_be_turned_about_the_vertical_and_tipped(seed, angle):
    # With equal bending stiffness the answer turns with the chain, vertical or not.
    nodes, axial, up, _, torsion, seat, springs, fixed, loads, *_ = chain(seed)
    cos, sin = np.cos(angle), np.sin(angle)
    turn = np.array([[1, 0, 0], [0, cos, -sin], [0, sin, cos]]) @ np.array(
        [[cos, -sin, 0], [sin, cos, 0], [0, 0, 1]]
    )
    both = np.kron(np.eye(2), turn)
    free = np.zeros_like(fixed)
    straight = frame.solve_chain(nodes, axial, up, up, torsion, seat, springs, free, loads)
    turned = frame.solve_chain(
        nodes @ turn.T, axial, up, up, torsion, seat, both @ springs @ both.T, free,
        loads @ both.T,
    )  # fmt: skip
    expected = straight.face @ both.T
    near = 1e-8 * np.max(np.abs(expected))
    np.testing.assert_allclose(turned.face, expected, rtol=0, atol=near)


@pytest.mark.parametrize("way", [1.0, -1.0])
def test_a_vertical_beam_takes_forward_as_up(way):
    nodes = np.array([[0.0, 0.0, 0.0], [0.0, 0.0, way]])
    fixed = np.zeros((2, 6), dtype=bool)
    fixed[0] = True
    loads = np.zeros((1, 2, 6))
    loads[0, 1, :3] = 3.0, 3.0, 0.0
    solved = frame.solve_chain(
        nodes, [1e3], [10.0], [20.0], [10.0], [], np.zeros((0, 6, 6)), fixed, loads
    )
    # Closed form P L^3 / 3EI.
    assert solved.displacement[0, 0, 1, :2] == pytest.approx([0.1, 0.05])
    assert solved.displacement[0, 0, 1, 3:5] == pytest.approx([-way * 0.075, way * 0.15])


def test_what_can_move_freely_is_told_and_the_other_lanes_stand():
    many = list(chain(7, lanes=3))
    many[7] = np.zeros_like(many[7])
    many[6][1] = 0.0  # no springs at all in the middle lane
    solved = frame.solve_chain(*many)
    assert solved.status.tolist() == [frame.SOLVED, frame.SINGULAR, frame.SOLVED]
    assert np.all(np.isnan(solved.displacement[1]))
    assert np.all(np.isfinite(solved.displacement[[0, 2]]))


def test_a_chain_that_only_slides_sideways_is_singular():
    nodes = np.array([[0.0, place, 0.0] for place in np.linspace(-0.7, 0.7, 15)])
    springs = frame.point_support(np.zeros((2, 3)), [1e7, 0.0, 1e7], [1e5, 1e5, 1e5])
    loads = np.ones((1, 15, 6))
    solved = frame.solve_chain(
        nodes, *(np.full(14, value) for value in (3e8, 1.8e5, 1.8e5, 1.4e5)), [3, 11], springs,
        np.zeros((15, 6), dtype=bool), loads,
    )  # fmt: skip
    assert solved.status[0] == frame.SINGULAR


@pytest.mark.parametrize("bad", [np.nan, np.inf])
@pytest.mark.parametrize("place", [0, 1, 2, 4, 6, 8])
def test_a_bad_number_is_told_and_never_raised(place, bad):
    many = [np.array(each) for each in chain(8, lanes=2)]
    many[7][0] = False  # what pushes on a fixed freedom moves nothing, good number or bad
    many[place][1].flat[0] = bad
    solved = frame.solve_chain(*many)
    assert solved.status[0] == frame.SOLVED
    assert solved.status[1] == frame.NOT_FINITE
    assert np.all(np.isnan(solved.face[1]))


def test_a_beam_without_length_is_not_finite():
    many = [np.array(each) for each in chain(9)]
    many[0][0, 3] = many[0][0, 2]
    assert frame.solve_chain(*many).status[0] == frame.NOT_FINITE


@given(seed=SEEDS)
def test_rods_and_springs_at_an_offset_are_carried_exactly(seed):
    rng = np.random.default_rng(seed)
    offset, line = rng.normal(size=3), rng.normal(size=3)
    displacement, along = rng.normal(size=6), rng.normal(size=3)
    end = displacement[:3] + np.cross(displacement[3:], offset)
    pull = -5.0 * end @ (line / np.linalg.norm(line))
    assert frame.rod_tension(displacement, offset, line, 5.0) == pytest.approx(pull)
    force = pull * line / np.linalg.norm(line)
    felt = frame.shifted_load(force, np.zeros(3), offset)
    np.testing.assert_allclose(
        -frame.rod_support(offset, line, 5.0) @ displacement, felt, atol=1e-12
    )
    springs = frame.point_support(offset, np.abs(along), np.zeros(3))
    felt = frame.shifted_load(-np.abs(along) * end, np.zeros(3), offset)
    np.testing.assert_allclose(-springs @ displacement, felt, atol=1e-12)
    about = frame.point_support(offset, np.zeros(3), np.abs(along))
    np.testing.assert_allclose(about @ displacement, [0, 0, 0, *(np.abs(along) * displacement[3:])])


def test_offsets_broadcast():
    stiffness = frame.rod_support(np.zeros((4, 1, 3)), np.ones((2, 3)), 1e6)
    assert stiffness.shape == (4, 2, 6, 6)
    assert frame.shifted_load(np.ones((4, 1, 3)), np.zeros(3), np.ones((2, 3))).shape == (4, 2, 6)
    assert frame.rigid_transfer(np.zeros((5, 3))).shape == (5, 6, 6)
