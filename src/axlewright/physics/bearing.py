"""Rolling bearings and the bearing pair of a hub."""

from typing import NamedTuple

import numpy as np

from axlewright.physics.quantities import Cycles, Metre, Newton, NewtonMetre, Num, Ratio

BALL, ROLLER = 3.0, 10 / 3  # life exponents, iso281
_LINES = (0.4, 1.0)  # viscosity ratios where the life factor's line changes, iso281


class PairLoads(NamedTuple):
    """Axial and equivalent loads of two tapered rows set against each other, N."""

    first_axial: Newton
    second_axial: Newton
    first: Newton
    second: Newton


class HubRows(NamedTuple):
    """Radial loads of the two rows of a hub, signed upward on the hub, and the axial load, N."""

    outer: Newton
    inner: Newton
    axial: Newton


def basic_life(rating: Newton, load: Newton, exponent: Ratio = ROLLER) -> Cycles:
    """Millions of turns that nine bearings in ten outlive.

    Parameters
    ----------
    rating
        Basic dynamic load rating, for one million turns.

    References
    ----------
    iso281

    Examples
    --------
    >>> f"{basic_life(41.0, 20.0, exponent=3.0):.3f}"
    '8.615'
    """
    with np.errstate(divide="ignore"):
        return (np.asarray(rating) / np.abs(load)) ** exponent


def rating_needed(load: Newton, turns: Cycles, exponent: Ratio = ROLLER) -> Newton:
    """Basic dynamic rating for a load to be carried for some millions of turns.

    References
    ----------
    iso281
    """
    return np.abs(load) * np.asarray(turns) ** (1 / np.asarray(exponent))


def reliability_factor(reliability: Ratio) -> Ratio:
    """Factor on basic life for a reliability other than 0.9, up to 0.9995.

    References
    ----------
    iso281, a1 (memory): three-parameter Weibull behind the printed table
    """
    ratio = np.log(1 / np.asarray(reliability)) / np.log(1 / 0.9)
    return np.asarray(0.05 + 0.95 * ratio ** (2 / 3))


def adjusted_life(
    rating: Newton,
    load: Newton,
    exponent: Ratio = ROLLER,
    reliability: Ratio = 0.9,
    condition: Ratio = 1.0,
) -> Cycles:
    """Millions of turns outlived at a reliability, with a factor for oil and dirt.

    References
    ----------
    iso281
    """
    return (
        np.asarray(basic_life(rating, load, exponent)) * reliability_factor(reliability) * condition
    )


def ball_condition_factor(viscosity: Ratio, contamination: Ratio) -> Ratio:
    """Life factor of a radial ball bearing for lubrication and dirt.

    Parameters
    ----------
    viscosity
        Viscosity of the oil over that needed, 0.1 to 4.
    contamination
        Contamination factor times fatigue load limit over equivalent load.

    References
    ----------
    iso281, aISO (memory)
    """
    kappa = np.clip(viscosity, 0.1, 4.0)
    film = np.select(
        [kappa < _LINES[0], kappa < _LINES[1]],
        [2.2649 / kappa**0.054381, 1.9987 / kappa**0.19087],
        1.9987 / kappa**0.071739,
    )
    return _condition(np.maximum(2.5671 - film, 0.0) ** 0.83 * np.cbrt(contamination), 9.3)


def roller_condition_factor(viscosity: Ratio, contamination: Ratio) -> Ratio:
    """Life factor of a radial roller bearing for lubrication and dirt.

    References
    ----------
    iso281, aISO (memory)
    """
    kappa = np.clip(viscosity, 0.1, 4.0)
    film = np.select(
        [kappa < _LINES[0], kappa < _LINES[1]],
        [1.3993 / kappa**0.054381, 1.2348 / kappa**0.19087],
        1.2348 / kappa**0.071739,
    )
    return _condition(np.maximum(1.5859 - film, 0.0) * np.asarray(contamination) ** 0.4, 9.185)


def _condition(clean: Ratio, power: float) -> Ratio:
    with np.errstate(divide="ignore", invalid="ignore"):
        raised = 0.1 * np.maximum(1 - np.asarray(clean), 0.0) ** -power
    return np.asarray(np.minimum(raised, 50.0))


def radial_equivalent(
    radial: Newton, axial: Newton, radial_factor: Ratio, axial_factor: Ratio, turning: Ratio = 1.0
) -> Newton:
    """Equivalent dynamic load once the axial share counts; ``turning`` is 1.2 for an outer race.

    References
    ----------
    iso281; jindal-design, ch. 18
    """
    return np.asarray(radial_factor) * turning * radial + np.asarray(axial_factor) * axial


def tapered_equivalent(radial: Newton, axial: Newton, axial_factor: Ratio) -> Newton:
    """Equivalent dynamic load of one tapered row: never less than its radial load.

    References
    ----------
    iso281, single-row tapered; the change at Fa/Fr = e is where the two forms meet
    """
    radial = np.abs(radial)
    return np.maximum(radial, 0.4 * radial + np.asarray(axial_factor) * axial)


def induced_axial(radial: Newton, axial_factor: Ratio) -> Newton:
    """Axial force that a tapered row makes out of a radial load.

    References
    ----------
    iso281, single-row tapered (maker's practice)
    """
    return np.asarray(np.abs(radial) / (2 * np.asarray(axial_factor)))


def tapered_pair(
    first_radial: Newton,
    second_radial: Newton,
    axial: Newton,
    first_factor: Ratio,
    second_factor: Ratio,
) -> PairLoads:
    """Loads of two tapered rows set against each other, no preload.

    Parameters
    ----------
    axial
        Outside axial force, positive when the first row takes it.
    first_factor
        Axial factor Y of the first row.

    References
    ----------
    budynas9, ch. 11: direct or indirect mounting
    """
    first_own = np.asarray(induced_axial(first_radial, first_factor))
    second_own = np.asarray(induced_axial(second_radial, second_factor))
    pushed = first_own <= second_own + axial
    first_axial = np.where(pushed, second_own + axial, first_own)
    second_axial = np.where(pushed, second_own, first_own - axial)
    return PairLoads(
        first_axial,
        second_axial,
        tapered_equivalent(first_radial, first_axial, first_factor),
        tapered_equivalent(second_radial, second_axial, second_factor),
    )


def hub_rows(
    vertical: Newton, lateral: Newton, offset: Metre, radius: Metre, spread: Metre
) -> HubRows:
    """Loads that a wheel puts on the two rows of its hub.

    Parameters
    ----------
    vertical, lateral
        Ground force at the tyre; lateral positive toward the vehicle (outer wheel of a bend).
    offset
        Centre of the tyre outboard of the centre of the bearing.
    radius
        Loaded radius of the tyre.
    spread
        Distance between the pressure centres of the rows.

    References
    ----------
    derived: statics of the hub

    Examples
    --------
    >>> rows = hub_rows(8000.0, 0.0, offset=0.030, radius=0.40, spread=0.065)
    >>> f"{rows.outer:.0f} {rows.inner:.0f}"
    '7692 308'
    """
    moment = np.asarray(vertical) * offset - np.asarray(lateral) * radius
    half, couple = np.asarray(vertical) / 2, moment / spread
    return HubRows(half + couple, half - couple, lateral)


def hub_moment(vertical: Newton, lateral: Newton, offset: Metre, radius: Metre) -> NewtonMetre:
    """Moment on the hub about the fore-and-aft axis, positive when it loads the outer row.

    References
    ----------
    derived: statics of the hub
    """
    return np.asarray(vertical) * offset - np.asarray(lateral) * radius


def mixed_load(loads: Newton, shares: Ratio, exponent: Ratio = ROLLER) -> Newton:
    """One steady load that wears as much as a mixed duty; duty on the last axis.

    Parameters
    ----------
    shares
        Share of the turns run at each load, adding up to one.

    References
    ----------
    iso281 with miner1945
    """
    mean = np.sum(np.asarray(shares) * np.abs(loads) ** np.asarray(exponent), axis=-1)
    return np.asarray(mean ** (1 / np.asarray(exponent)))


def life_ratio(load: Newton, reference: Newton, exponent: Ratio = ROLLER) -> Ratio:
    """Life under one load over life under another.

    References
    ----------
    iso281
    """
    return np.abs(np.asarray(reference) / load) ** exponent


def static_equivalent(
    radial: Newton, axial: Newton, axial_factor: Ratio, radial_factor: Num = 0.5
) -> Newton:
    """Static equivalent load of one row: never less than its radial load.

    Parameters
    ----------
    radial_factor
        0.5 for a tapered row, 0.6 for a deep-groove ball row.

    References
    ----------
    iso76 (memory)
    """
    radial = np.abs(radial)
    return np.asarray(
        np.maximum(radial, radial_factor * radial + np.asarray(axial_factor) * np.abs(axial))
    )


def static_safety(rating: Newton, load: Newton) -> Ratio:
    """Static rating over static equivalent load: the races dent as it nears one.

    References
    ----------
    iso76
    """
    with np.errstate(divide="ignore"):
        return np.asarray(rating) / np.abs(load)
