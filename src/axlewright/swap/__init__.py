"""The job: what to order; the swap's tasks in order for these hands, torques, oil and gates."""

from axlewright.swap.bolts import (
    OwnBolt,
    TorqueLine,
    bolt_range,
    own_bolt,
    plausible_range,
    torque_lines,
)
from axlewright.swap.chosen import STAGES, Work, chosen, in_order
from axlewright.swap.doubt import Band, middle_of
from axlewright.swap.facts import KINDS, QUESTIONS, SKILLS, Fact, Facts, facts_of, kind_of
from axlewright.swap.gates import (
    Progress,
    Set,
    leave_refusals,
    lines_of,
    missing_values,
    next_up,
    ready,
    refusals,
    undone,
)
from axlewright.swap.oil import OilLevel, oil_level
from axlewright.swap.order import Order, OrderRow, contradicted_by, differs, ordered
from axlewright.swap.order_fill import Filled
from axlewright.swap.order_rules import Misfit
from axlewright.swap.plan import Plan, planned
from axlewright.swap.schedule import Schedule, Slot, apart, scheduled

__all__ = [
    "KINDS",
    "QUESTIONS",
    "SKILLS",
    "STAGES",
    "Band",
    "Fact",
    "Facts",
    "Filled",
    "Misfit",
    "OilLevel",
    "Order",
    "OrderRow",
    "OwnBolt",
    "Plan",
    "Progress",
    "Schedule",
    "Set",
    "Slot",
    "TorqueLine",
    "Work",
    "apart",
    "bolt_range",
    "chosen",
    "contradicted_by",
    "differs",
    "facts_of",
    "in_order",
    "kind_of",
    "leave_refusals",
    "lines_of",
    "middle_of",
    "missing_values",
    "next_up",
    "oil_level",
    "ordered",
    "own_bolt",
    "planned",
    "plausible_range",
    "ready",
    "refusals",
    "scheduled",
    "torque_lines",
    "undone",
]
