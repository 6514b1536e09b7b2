"""Changes side by side: wait, mend, reinforce, ease the load or replace, and which to choose."""

from axlewright.decide.decision import DRAWS, LEAVE, Choice, Decision, Told, decide
from axlewright.decide.flips import AWAY, FURTHER, TYRE, Flip, flips
from axlewright.decide.hands import Hands, hands_for
from axlewright.decide.looks import BENT_LOOK, WorthLook, worth_looking
from axlewright.decide.mends import Faster, Mend, coming_faster, trend_of
from axlewright.decide.money import Cost, World, cost_of, summed, world_of
from axlewright.decide.offers import Offer, offers
from axlewright.decide.regret import (
    Sorrow,
    cheapest,
    fewer_draws,
    sorrow,
    standard_error,
    worth_of_a_look,
    worth_of_a_reading,
    worth_of_knowing_all,
)
from axlewright.decide.spoken import terms_text
from axlewright.decide.terms import COSTS, SKILLS, Price, Terms, read_terms
from axlewright.decide.tried import Tried, tried
from axlewright.decide.tyres import Carried, still_carries, tyre_grid
from axlewright.decide.yearly import KM_A_YEAR, Yearly, with_record, yearly

__all__ = [
    "AWAY",
    "BENT_LOOK",
    "COSTS",
    "DRAWS",
    "FURTHER",
    "KM_A_YEAR",
    "LEAVE",
    "SKILLS",
    "TYRE",
    "Carried",
    "Choice",
    "Cost",
    "Decision",
    "Faster",
    "Flip",
    "Hands",
    "Mend",
    "Offer",
    "Price",
    "Sorrow",
    "Terms",
    "Told",
    "Tried",
    "World",
    "WorthLook",
    "Yearly",
    "cheapest",
    "coming_faster",
    "cost_of",
    "decide",
    "fewer_draws",
    "flips",
    "hands_for",
    "offers",
    "read_terms",
    "sorrow",
    "standard_error",
    "still_carries",
    "summed",
    "terms_text",
    "trend_of",
    "tried",
    "tyre_grid",
    "with_record",
    "world_of",
    "worth_looking",
    "worth_of_a_look",
    "worth_of_a_reading",
    "worth_of_knowing_all",
    "yearly",
]
