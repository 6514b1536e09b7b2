"""Benches of axles put before the locator: what it states beside what is there."""

from functools import cache
from pathlib import Path

import numpy as np

from axlewright.rig import load_rig
from axlewright.upkeep.belief import cause_shares, plain_rods, set_shares, unread
from axlewright.upkeep.network import network
from axlewright.upkeep.signatures import sizes_of
from upkeep.axles_by_geometry import JOBS, axles, size_of
from upkeep.rear_by_geometry import rear_axles, rear_size_of

ROOT = Path(__file__).parents[2]
OWNER = {key: job for job, keys in JOBS.items() for key in keys}


@cache
def rig_called(name):
    return load_rig(str(ROOT / "examples" / "rigs" / f"{name}.toml"))


@cache
def net_of(name, hit, held=(), tables=None):
    return network(sizes_of(rig_called(name)), after_hit=hit, held=held, tables=tables)


def bench(name, count, seed):
    rig = rig_called(name)
    if rig.axle == "rear":
        return rear_axles(rear_size_of(rig), count, seed)
    return axles(size_of(rig), count, seed)


def stated_and_there(name, made, tables=None):
    """Shares that the locator states and what is there, (axles, causes + 1); last is "none"."""
    hits = made.blame["hit"]
    causes = net_of(name, hit=True, tables=tables).causes
    there = np.stack([made.blame[cause.key] for cause in causes], axis=1)
    there = np.concatenate([there, ~there.any(axis=1, keepdims=True)], axis=1)
    stated = np.zeros(there.shape)
    for hit in (True, False):
        net = net_of(name, hit, tables=tables)
        standard = unread(net).standard
        at = np.flatnonzero(hits == hit)
        numbers = np.stack([_column(made, key, at) for key in net.numbers], axis=1)
        signs = np.stack([_column(made, key, at) for key in net.signs], axis=1)
        rods = [plain_rods(net, row, standard) for row in numbers]
        for held in sorted(set(rods)):
            some = np.array([each == held for each in rods])
            sure = net_of(name, hit, held, tables)
            sets = set_shares(sure, numbers[some], standard, signs[some])
            stated[at[some]] = cause_shares(sure, sets)
    return stated, there


def _column(made, key, at):
    return np.where(made.done[OWNER[key]][at], made.readings[key][at], np.nan)


def log_loss(stated, there):
    sure = np.clip(stated, 1e-6, 1.0 - 1e-6)
    return -np.mean(np.where(there, np.log(sure), np.log1p(-sure)))


def base_rates(made, there):
    """Share of each cause among axles that were hit, or not: the truth's own, not the table's."""
    hits = made.blame["hit"]
    rates = np.zeros(there.shape)
    for hit in (True, False):
        rates[hits == hit] = there[hits == hit].mean(axis=0)
    return rates


def deciles(stated, there):
    """Count, mean stated and share there, of each tenth of the stated shares that has any."""
    found = []
    for tenth in range(10):
        some = (stated >= tenth / 10) & ((stated < (tenth + 1) / 10) | (tenth == 9))
        if some.any():
            found.append((int(some.sum()), float(stated[some].mean()), float(there[some].mean())))
    return found
