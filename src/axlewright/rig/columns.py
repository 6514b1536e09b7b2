"""A rig as numbers: one array per quantity, given and assumed, with a leading draw axis."""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from hashlib import sha256

import numpy as np
from numpy.typing import NDArray

from axlewright.rig.assumed_bearing import BEARING
from axlewright.rig.assumed_cases import CASES
from axlewright.rig.assumed_drive import DRIVE
from axlewright.rig.assumed_ends import ENDS
from axlewright.rig.assumed_gears import GEARS
from axlewright.rig.assumed_held import HELD
from axlewright.rig.assumed_housing import HOUSING
from axlewright.rig.assumed_joint import JOINT
from axlewright.rig.assumed_steering import STEERING
from axlewright.rig.assumption import Assumption, Column
from axlewright.rig.fields_points import BUSHED, GEOMETRY, held_quantities
from axlewright.rig.rig import Rig
from axlewright.rig.taped import TAPED, taped_lengths

ASSUMPTIONS: tuple[Assumption, ...] = (
    HOUSING + STEERING + HELD + DRIVE + JOINT + GEARS + BEARING + ENDS + CASES
)
ABSENT = {
    "sleeve_wall_left": 0.0,
    "sleeve_wall_right": 0.0,
    "truss_height": 0.0,
    "truss_outer": 0.0381,
    "truss_wall": 0.0032,
}
FOLLOWS = frozenset(
    {
        "cover_limit",
        "tube_wall",
        "tube_yield",
        "shaft_shear_yield",
        "spline_teeth",
        "spline_outer",
        "cap_to_cap",
        "trunnion",
        "trunnion_hole",
        "trunnion_lever",
        "joint_arm",
        "needles",
        "needle",
        "needle_length",
        "ear_wall",
        "ear_thickness",
        "ear_reach",
        "ear_yield",
        "pinion_teeth",
        "ring_face",
        "side_gear",
        "side_face",
        "side_mates",
        "carrier_span",
        "cap_clamp",
        "row_spread",
        "bearing_static",
        "bearing_rating",
        "bump_stiffness",
        "landing_stiffness",
        "lateral_stiffness",
        "grip_wedged",
        "bias_ratio",
        "line_tyre_mass",
        "line_caster_wanted",
    }
)  # assumptions that go with the part or the ground they belong to when that is changed
SEED = 20_260_501
PAGE = 256  # draws are made a page at a time, so no block size can change them


@dataclass(frozen=True, slots=True)
class Doubt:
    """One quantity that is not sharp: its id, what it is called, and whether it was given."""

    quantity: str
    label: str
    kind: str
    given: bool
    low: float
    middle: float
    high: float
    source: str

    @property
    def remembered(self) -> bool:
        """Whether it stands on memory: assumed, and no source was read for it."""
        return not self.given and "memory" in self.source


def point_columns(rig: Rig) -> dict[str, Column]:
    """Every quantity at its middle; arrays of one draw."""
    return _settle(rig, lambda _: np.zeros(1), 1)


def drawn_columns(rig: Rig, start: int, stop: int, seed: int = SEED) -> dict[str, Column]:
    """Draws ``start`` to ``stop`` of every quantity; the same whatever the block or thread."""
    return _settle(rig, lambda name: scores(seed, name, start, stop), stop - start)


def columns_at(rig: Rig, places: NDArray[np.int64], seed: int = SEED) -> dict[str, Column]:
    """The draws at some places of every quantity; the same as they are in `drawn_columns`."""
    pages, at = np.divmod(places, PAGE)
    wanted, of = np.unique(pages, return_inverse=True)
    spots = of * PAGE + at

    def score_of(name: str) -> Column:
        made = [_page(seed, name, int(page)) for page in wanted]
        return np.asarray(np.concatenate(made)[spots])

    return _settle(rig, score_of, places.size)


def pushed_columns(rig: Rig, names: Sequence[str], scores_of: Sequence[float]) -> dict[str, Column]:
    """Every quantity at its middle but one, which stands at a normal score of its own doubt.

    One lane for each name and score, (names x scores,): all names at the first score, then all
    at the next.
    """
    draws = len(names) * len(scores_of)
    at = {name: number for number, name in enumerate(names)}

    def score_of(name: str) -> Column:
        made = np.zeros(draws)
        if name in at:
            made[at[name] :: len(names)] = scores_of
        return made

    return _settle(rig, score_of, draws)


def geometry_columns(rig: Rig) -> dict[str, Column]:
    """Every quantity at its middle, the places of the second hour among them."""
    return _settle(rig, lambda _: np.zeros(1), 1, geometry=True)


def drawn_geometry_columns(rig: Rig, start: int, stop: int, seed: int = SEED) -> dict[str, Column]:
    """Draws of every quantity, the places of the second hour among them."""
    return _settle(rig, lambda name: scores(seed, name, start, stop), stop - start, geometry=True)


def scores(seed: int, name: str, start: int, stop: int) -> Column:
    """Give standard normal scores of one quantity for draws ``start`` to ``stop``.

    Philox, a counter-based generator, keyed by the seed, the quantity's name and the page.
    """
    first, last = start // PAGE, (stop + PAGE - 1) // PAGE
    pages = [_page(seed, name, page) for page in range(first, last)]
    if len(pages) == 1:
        return pages[0][start - first * PAGE : stop - first * PAGE]
    return np.concatenate(pages)[start - first * PAGE : stop - first * PAGE]


@lru_cache(maxsize=8192)  # 16 MB: ten thousand draws of one rig are asked for by every change
def _page(seed: int, name: str, page: int) -> Column:
    key = int.from_bytes(sha256(f"{seed}/{name}".encode()).digest()[:8], "little")
    made = np.random.Generator(np.random.Philox(key=[key, page])).standard_normal(PAGE)
    made.flags.writeable = False
    return made


def assumed(rig: Rig) -> tuple[Assumption, ...]:
    """Assumptions that stand in for what this rig's owner did not give."""
    rig = _joined(rig)
    return tuple(
        item
        for item in _items(rig)
        if item.quantity not in rig.given and item.matters(rig.words, rig.given)
    )


def doubts(rig: Rig) -> tuple[Doubt, ...]:
    """Everything that is drawn for this rig: given readings with doubt, then assumptions."""
    columns, rig = point_columns(rig), _joined(rig)
    held = held_quantities(rig.words["held_by.arms"])
    labels = {item.quantity: item.label for item in ASSUMPTIONS}
    given = [
        Doubt(
            quantity=datum.quantity,
            label=labels[datum.quantity] if datum.text == TAPED else datum.path,
            kind=datum.kind,
            given=True,
            low=datum.value - 1.645 * datum.doubt,
            middle=datum.value,
            high=datum.value + 1.645 * datum.doubt,
            source=f"from {TAPED}" if datum.text == TAPED else f"given as '{datum.text}'",
        )
        for datum in rig.given.values()
        if datum.doubt > 0.0
        and datum.quantity != "from_help"
        and (not datum.quantity.startswith(GEOMETRY) or datum.quantity in held)
    ]
    return (*given, *_taken(assumed(rig), columns))


def geometry_doubts(rig: Rig) -> tuple[Doubt, ...]:
    """What geometry alone assumes for this rig: places not taped, travel and driveline."""
    from axlewright.rig.assumed_points import point_assumptions
    from axlewright.rig.assumed_shaft import LINE

    items = [
        item
        for item in (*point_assumptions(rig.given), *LINE)
        if item.quantity not in rig.given and item.matters(rig.words, rig.given)
    ]
    return _taken(items, geometry_columns(rig))


def _taken(items: Iterable[Assumption], columns: dict[str, Column]) -> tuple[Doubt, ...]:
    taken = []
    for item in items:
        middle = float(columns[item.quantity][0])
        low, high = item.band(middle)
        taken.append(
            Doubt(
                quantity=item.quantity,
                label=item.label,
                kind=item.kind,
                given=False,
                low=low,
                middle=middle,
                high=high,
                source=item.source,
            )
        )
    return tuple(taken)


def _settle(
    rig: Rig, score_of: Callable[[str], Column], draws: int, *, geometry: bool = False
) -> dict[str, Column]:
    columns: dict[str, Column] = {name: np.full(draws, value) for name, value in ABSENT.items()}
    rig = rig if geometry else _joined(rig)
    held = held_quantities(rig.words["held_by.arms"])
    for name, datum in rig.given.items():
        if not geometry and name.startswith(GEOMETRY) and name not in held:
            continue
        drawn = datum.value + (datum.doubt * score_of(name) if datum.doubt > 0.0 else 0.0)
        columns[name] = np.broadcast_to(np.asarray(drawn, dtype=np.float64), (draws,))
    _derive(columns)
    built: dict[str, Column] = {}
    if rig.built is not None:
        built = _settle(rig.built, score_of, draws, geometry=geometry)
        if not geometry:  # rods keep the lengths that fitted when their ends were taped
            columns |= {f"taped_{name}": built[name] for name in held if name in built}
            columns["taped_radius"] = built["radius"]
    items, follows = _items(rig, geometry=geometry), FOLLOWS
    if geometry or len(held) > len(BUSHED):
        from axlewright.rig.assumed_points import mirrored

        follows |= mirrored(rig.given)
    kept = set(built) - _given_of(rig.built, geometry=geometry) - follows - rig.renewed
    for item in items:
        if item.quantity in columns or not item.matters(rig.words, rig.given):
            continue
        if item.quantity in kept:
            columns[item.quantity] = built[item.quantity]
            continue
        columns[item.quantity] = item.values(columns, rig.words, score_of(item.quantity))
    return columns


def _joined(rig: Rig) -> Rig:
    """The same rig, with what its taped places settle beside what was given."""
    more = taped_lengths(rig.given, rig.words, None if rig.built is None else rig.built.given)
    return replace(rig, given={**more, **rig.given}) if more else rig


def _given_of(rig: Rig | None, *, geometry: bool) -> set[str]:
    if rig is None:
        return set()
    return set(rig.given if geometry else _joined(rig).given)


def _items(rig: Rig, *, geometry: bool = False) -> tuple[Assumption, ...]:
    """Assumptions of a rig; of the second hour all, or what the strength reads of it."""
    held = held_quantities(rig.words["held_by.arms"])
    if not geometry and not held:
        return ASSUMPTIONS
    from axlewright.rig.assumed_points import point_assumptions

    if not geometry:
        return ASSUMPTIONS + point_assumptions(rig.given, held)
    from axlewright.rig.assumed_shaft import LINE

    return ASSUMPTIONS + point_assumptions(rig.given) + LINE


def _derive(columns: dict[str, Column]) -> None:
    for side in ("left", "right"):
        columns[f"tube_outer_{side}"] = (
            columns["tube_outer"]
            if "tube_outer" in columns
            else columns[f"tube_girth_{side}"] / np.pi
        )
    columns["radius"] = 0.5 * (columns["hub_height_left"] + columns["hub_height_right"])
