"""Assumptions about hub bearings, from bore and width by the table, or from the rating given.

A sealed unit may run on balls or on taper rollers; where nobody says, its rating is the middle of
both. The table gives a unit's rating for both rows together; one row has 1/2 of the static and,
by ISO 281, 1/2^0.7 (balls) or 1/2^(7/9) (rollers) of the dynamic rating.
"""

from collections.abc import Callable
from functools import cache

import numpy as np

from axlewright.rig.assumption import Assumption, Column, Columns, Words
from axlewright.rig.scaling import MEMORY, load_scale
from axlewright.tables import hub_bearing_fit, hub_bearings

BALLS, TAPERS, PAIR = "unit ball", "unit tapered", "paired tapered"
ONE_ROW = {BALLS: 0.5**0.7, TAPERS: 0.5 ** (7.0 / 9.0), PAIR: 1.0}  # dynamic, ISO 281
ONE_ROW_STATIC = {BALLS: 0.5, TAPERS: 0.5, PAIR: 1.0}  # ISO 76
WITHIN = 0.0015  # m, bore and width of a row both this near
TABLE = "table of hub bearings by bore and width, else its fit by bore; memory"
# A dent ten times that of ISO 76: depth goes with the square of a ball's load, with the cube of a
# roller's (Palmgren, memory).
SPOILT = {BALLS: 10.0**0.5, TAPERS: 10.0 ** (1.0 / 3.0), PAIR: 10.0 ** (1.0 / 3.0)}


def kinds(words: Words) -> tuple[str, ...]:
    """Kinds of the table that this hub may be."""
    if words["hub.kind"] == "tapers on a spindle":
        return (PAIR,)
    if words.get("hub.rows", "") == "balls":
        return (BALLS,)
    return (TAPERS,) if words.get("hub.rows", "") == "taper rollers" else (BALLS, TAPERS)


@cache
def _rows(kind: str) -> dict[str, Column]:
    """Columns of the rows of one kind, each (rows,)."""
    rows = [row for row in hub_bearings().values() if row.kind == kind]
    return {
        "bore": np.array([row.bore for row in rows]),
        "width": np.array([row.width for row in rows]),
        "dynamic": np.array([row.dynamic for row in rows]),
        "static": np.array([row.static for row in rows]),
        "spread": np.array([row.pressure_spread or np.nan for row in rows]),
    }


def _met(columns: Columns, kind: str) -> Column:
    """Row that each draw's bore and width meet, (n,); -1 where they meet none."""
    if "bearing_width" not in columns:
        return np.full(columns["bearing_bore"].shape, -1)
    rows = _rows(kind)
    bore = np.abs(rows["bore"] - columns["bearing_bore"][:, None])
    width = np.abs(rows["width"] - columns["bearing_width"][:, None])
    near = (bore <= WITHIN) & (width <= WITHIN)
    best = np.argmin(np.where(near, bore + width, np.inf), axis=-1)
    return np.where(near.any(axis=-1), best, -1)


def _middle(of: Callable[[Columns, str], Column]) -> Callable[[Columns, Words], Column]:
    """Give the geometric middle over the kinds that the hub may be."""

    def centre(columns: Columns, words: Words) -> Column:
        found = [np.log(of(columns, kind)) for kind in kinds(words)]
        return np.asarray(np.exp(sum(found) / len(found)))

    return centre


def _dynamic(columns: Columns, kind: str) -> Column:
    row, fit = _met(columns, kind), hub_bearing_fit(kind)
    by_bore = fit.dynamic * (columns["bearing_bore"] / fit.reference_bore) ** fit.exponent
    return np.asarray(ONE_ROW[kind] * np.where(row >= 0, _rows(kind)["dynamic"][row], by_bore))


def _static(columns: Columns, kind: str) -> Column:
    row, fit, rows = _met(columns, kind), hub_bearing_fit(kind), _rows(kind)
    ratio = np.where(row >= 0, rows["static"][row] / rows["dynamic"][row], fit.static_to_dynamic)
    return np.asarray(ratio * columns["bearing_rating"] * ONE_ROW_STATIC[kind] / ONE_ROW[kind])


def _spread(columns: Columns, kind: str) -> Column:
    share = hub_bearing_fit(kind).pressure_spread_to_bore
    if share is None:
        return 0.062 * load_scale(columns, 0.3)
    row = _met(columns, kind)
    return np.where(row >= 0, _rows(kind)["spread"][row], share * columns["bearing_bore"])


def _bore(columns: Columns, words: Words) -> Column:
    usual = 0.055 if words["hub.kind"] == "tapers on a spindle" else 0.048
    return usual * load_scale(columns, 0.3)


def _spoilt(_: Columns, words: Words) -> float:
    found = [np.log(SPOILT[kind]) for kind in kinds(words)]
    return float(np.exp(sum(found) / len(found)))


BEARING: tuple[Assumption, ...] = (
    Assumption(
        quantity="bearing_setback",
        label="bearing centre inside the mounting face",
        kind="length",
        centre=0.04,
        spread=0.02,
        family="normal",
        source=MEMORY,
    ),
    Assumption(
        quantity="bearing_bore",
        label="bore of the hub bearing",
        kind="length",
        centre=_bore,
        spread=1.15,
        source=MEMORY,
    ),
    Assumption(
        quantity="row_spread",
        label="spread of the bearing's rows",
        kind="length",
        centre=_middle(_spread),
        spread=1.3,
        source=TABLE,
    ),
    Assumption(
        quantity="bearing_rating",
        label="dynamic rating of one row",
        kind="force",
        centre=_middle(_dynamic),
        spread=1.5,
        source=TABLE,
    ),
    Assumption(
        quantity="bearing_static",
        label="static rating of one row",
        kind="force",
        centre=_middle(_static),
        spread=1.2,
        source="the table's static over dynamic rating; memory",
    ),
    Assumption(
        quantity="bearing_spoilt",
        label="load that spoils a bearing over its static rating",
        kind="plain",
        centre=_spoilt,
        spread=1.5,
        source="dents ten times those of ISO 76, Palmgren's law of dents; memory",
    ),
)
