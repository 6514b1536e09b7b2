"""How long it takes to find what is wrong: steps as the locator orders them, or not."""

from dataclasses import replace

import numpy as np

from axlewright.upkeep.belief import cause_shares, gains, plain_rods, set_shares, unread
from axlewright.upkeep.network import jobs_readings


def blamed(axles, net, case):
    """Keys of the causes that are really there."""
    return {cause.key for cause in net.causes if axles.blame[cause.key][case]}


def in_fixed_order(net, truth):
    """Minutes until every cause is found, by the trade's order of looks."""
    return _walked(sorted(net.causes, key=lambda cause: cause.row.rank), truth)


def by_habit(net, truth, *, after_hit):
    """Minutes when looks go by how common a cause is against how long its look takes."""
    share = lambda cause: cause.row.after_hit if after_hit else cause.row.in_use
    return _walked(sorted(net.causes, key=lambda c: -share(c) / c.row.minutes), truth)


def _walked(order, truth):
    left, spent = set(truth), 0.0
    for cause in order:
        spent += cause.row.minutes
        left.discard(cause.key)
        if not left:
            return spent
    raise AssertionError(left)


def as_told(net_of, axles, case, truth):
    """Minutes when each step is what the locator says tells most a minute, a reading or a look.

    ``net_of`` gives the network for rods that are plainly bowed.
    """
    base = net_of(())
    read, left, spent = unread(base), set(truth), 0.0
    looked = {}
    while left:
        net = net_of(plain_rods(base, read.numbers, read.standard))
        for at, there in looked.items():
            net = replace(net, prior=np.where(net.holds[:, at] == there, net.prior, 0.0))
        net = replace(net, prior=net.prior / net.prior.sum())
        sets = set_shares(net, read.numbers[None], read.standard, read.signs[None])
        shares = cause_shares(net, sets)[0][:-1]
        rates = {
            at: _worth(shares[at]) / cause.row.minutes
            for at, cause in enumerate(net.causes)
            if at not in looked
        }
        look = max(rates, key=rates.__getitem__)
        options = gains(net, read)
        if options and options[0].rate > rates[look]:
            read = _with(net, read, axles, case, options[0].job)
            spent += options[0].minutes
            continue
        cause = net.causes[look]
        spent += cause.row.minutes
        looked[look] = cause.key in truth
        left.discard(cause.key)
    return spent


def _worth(share):
    """Bits of a look that settles one cause; a cause likelier than not has to be looked at."""
    if share >= 0.5:
        return 1.0
    safe = max(share, 1e-12)
    return -safe * np.log2(safe) - (1.0 - safe) * np.log2(1.0 - safe)


def _with(net, read, axles, case, job):
    numbers, signs = read.numbers.copy(), read.signs.copy()
    for key in jobs_readings(net, job):
        if key in net.numbers:
            numbers[net.numbers.index(key)] = axles.readings[key][case]
        else:
            signs[net.signs.index(key)] = axles.readings[key][case]
    return replace(read, numbers=numbers, signs=signs)
