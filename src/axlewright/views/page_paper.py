"""Papers and files of one axle: what each is for, and where it lies."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Paper:
    """One paper or file: ``tail`` is the end of its address; ``answered`` if it needs an answer."""

    title: str
    says: str
    tail: str
    kind: str
    answered: bool = True


PAPERS: tuple[Paper, ...] = (
    Paper(
        title="The report",
        says="The answer, the drawing, both orders, what it rests on and every source. Some "
        "four sheets, for the folder or for whoever does the work.",
        tail="/paper/report.pdf",
        kind="PDF",
    ),
    Paper(
        title="One file to take along",
        says="Opens on any phone without network or server: the stop list, “I just hit "
        "something”, torque lines, spares, and the limits of this axle.",
        tail="/take.html",
        kind="HTML",
    ),
    Paper(
        title="The same, on paper",
        says="For the door pocket, where no battery runs flat.",
        tail="/paper/take.pdf",
        kind="PDF",
    ),
    Paper(
        title="The log",
        says="What happened to this axle: who, when, at which odometer. What is open, and every "
        "hit, weld and bend, stand first and cannot be left out.",
        tail="/been/log.pdf",
        kind="PDF",
        answered=False,
    ),
    Paper(
        title="What to carry, with the repair cards",
        says="The packing list to tick, for the trip that was last packed for, and every card of "
        "this axle.",
        tail="/carry/list.pdf",
        kind="PDF",
        answered=False,
    ),
    Paper(
        title="How it moves",
        says="The axle pose by pose, what ends its travel, cures, propeller shaft and room.",
        tail="/moves/travel.pdf",
        kind="PDF",
    ),
    Paper(
        title="The alignment, with a brief for the shop",
        says="What was read in the garage, what to turn, and what the shop needs to know.",
        tail="/align/worksheet.pdf",
        kind="PDF",
    ),
    Paper(
        title="Where the rods end, as a sheet",
        says="Every place to tape, numbered on a drawing, with boxes to write in.",
        tail="/ends/sheet.pdf",
        kind="PDF",
    ),
    Paper(
        title="The thirteen questions as a sheet",
        says="To fill in beside the vehicle with tape and pencil.",
        tail="/paper/sheet.pdf",
        kind="PDF",
        answered=False,
    ),
    Paper(
        title="The rig file",
        says="Everything that was said, as text that a person can read and change.",
        tail="/rig.toml",
        kind="TOML",
        answered=False,
    ),
    Paper(
        title="The answer for a machine",
        says="Every check, band, assumption and source, in SI whatever the reader's units.",
        tail="/answer.json",
        kind="JSON",
    ),
)
