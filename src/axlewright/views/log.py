"""The log in words: may I drive, a reading and its verdicts, what is due, what happened."""

from collections.abc import Iterable, Sequence
from math import isinf

from axlewright import units
from axlewright.rig import (
    Chapter,
    Fitted,
    Hit,
    Job,
    Kept,
    LookTaken,
    Noticed,
    OwnLimit,
    Reading,
    Remark,
    TakenOff,
    Trip,
    Withdrawn,
)
from axlewright.upkeep import (
    FIRST_LINE,
    Drive,
    Due,
    LimitShown,
    Outlived,
    Sheet,
    Verdict,
    WantedLook,
)
from axlewright.views.phrases import to_doubt
from axlewright.views.units_in_text import in_units

HEAD = {
    "stop": "STOP: do not drive.",
    "fix before trip": "FIX BEFORE TRIP.",
    "not looked at": "NOT LOOKED AT, and so not known to be sound.",
    "watch": "WATCH: it may go, and these are looked at again.",
    "go": "GO, by the looks of these days. A look is of its own day.",
}
SUPPORT = "Decision support, not a certificate; the maker's manual and local law come first."


def drive_answer_lines(drive: Drive, system: str = "metric") -> list[str]:
    """May I drive: the answer first, then every reason."""
    lines = [f"May I drive? {HEAD[drive.state]}"]
    lines.append(f"{drive.looked} of {drive.wanted} looks are there and of use.")
    for each in drive.reasons:
        lines.append(f"  {each.state.upper()}: {each.what}: {each.why}")
        lines.append(in_units(f"      {each.do}", system))
    return [*lines, SUPPORT]


def wanted_look_lines(looks: Sequence[WantedLook], system: str = "metric") -> list[str]:
    """A list of looks, each with how to look and what each end means."""
    lines = []
    for number, each in enumerate(looks, 1):
        lines.append(f"{number}. {each.title}  [{each.key}]")
        lines.append(f"   {each.how}")
        lines += [f"   {state.upper()}: {told}" for state, told in each.ends.items()]
    return [in_units(line, system) for line in lines]


def limit_words(shown: LimitShown, kind: str, system: str) -> str:
    """A limit with its scope and source, as it is always shown."""
    ends = []
    if not isinf(shown.low):
        ends.append(f"at least {units.show(shown.low, kind, system, 3)}")
    if not isinf(shown.high):
        ends.append(f"at most {units.show(shown.high, kind, system, 3)}")
    state = f", {shown.status}" if shown.status not in {"read", "given"} else ""
    return f"{' and '.join(ends)} (for {shown.scope}; {shown.source}{state})"


def verdict_lines(verdict: Verdict, kind: str, system: str, *, stops: bool = False) -> list[str]:
    """One verdict: the word, the limit with scope and source, what would settle it.

    ``stops`` says that out is a STOP for this reading.
    """
    word = {"within": "within", "out": "OUT", "cannot tell": "CANNOT TELL"}[verdict.judged]
    lines = [f"  {word}: {limit_words(verdict.limit, kind, system)}"]
    if not verdict.limit.own:
        lines.append("      Another axle's may differ: the manual's comes first, `log limit`.")
    if verdict.judged == "cannot tell":
        ways = []
        if verdict.repeats:
            ways.append(f"{verdict.repeats} readings in all")
        ways += [f"three with {each}" for each in verdict.better]
        lines.append(f"      It would be settled by {'; or '.join(ways) or 'a finer instrument'}.")
    if stops and verdict.judged == "out":
        lines.append("      STOP: do not drive. It steers, stops or holds a wheel.")
    elif verdict.says == "fix before trip":
        lines.append("      FIX BEFORE TRIP: it steers, stops or holds a wheel.")
    return lines


def due_lines(dues: Sequence[Due], system: str) -> list[str]:
    """What is due, the most pressing first."""
    lines = []
    for each in dues:
        parts = []
        if each.at_distance is not None:
            far, at = (
                units.show(one, "distance", system) for one in (each.driven, each.at_distance)
            )
            parts.append(f"{far} of {at}")
        if each.by is not None:
            parts.append(f"by {each.by}")
        last = f"last {each.last}" if each.last else "nothing on record"
        told = "; ".join([*parts, last])
        lines.append(f"{each.state.upper()}: {each.title} ({told})  [{each.key}]")
        if each.state in {"due", "never recorded"}:
            lines.append(in_units(f"    {each.note}", system))
    return lines


def sheet_lines(sheet: Sheet, system: str = "metric") -> list[str]:
    """Sheet after a shake: what to do when it happens first of all."""
    lines = [in_units(FIRST_LINE, system)]
    if sheet.still:
        lines.append(
            "STOP: it may still be there. Do not drive, and do not try to bring it on; a cure is "
            "proved by play, run-out and readings."
        )
    if sheet.too_many:
        lines.append("More than one thing was changed: nobody can tell which one it was.")
    if sheet.damper_early:
        lines.append("The damper was changed before the rest was looked at: it hides, not cures.")
    for each in sheet.checks:
        told = "open"
        if each.kept is not None:
            told = f"{getattr(each.kept.body, 'state', '')}, {each.kept.on}"
        lines.append(f"  {each.check.title} [{each.check.key}]: {told}")
    if sheet.next is not None:
        lines += [
            in_units(f"Next: {sheet.next.title}. {sheet.next.how}", system),
            in_units(f"    {sheet.next.finding}".rstrip(), system),
        ]
    return lines


def history_lines(
    history: Iterable[Kept], system: str, outlived: Sequence[Outlived] = ()
) -> list[str]:
    """What happened, by day; a reading that its part did not outlive says so."""
    lines, over = [], {each.reading.number: each for each in outlived}
    for kept in history:
        at = "" if kept.odometer is None else f", {units.show(kept.odometer, 'distance', system)}"
        who = f", {kept.who}" if kept.who else ""
        put = f" (replaced by {kept.replaced})" if kept.replaced else ""
        puts = f" (in place of {kept.replaces})" if kept.replaces else ""
        photos = f" [{len(kept.photos)} photos]" if kept.photos else ""
        lines.append(
            f"{kept.on}{at}{who}  {kept.number}: {happened(kept, system)}{puts}{put}{photos}"
        )
        if kept.note:
            lines.append(f"      {kept.note}")
        if kept.number in over:
            lines.append(f"      no longer counts: {over[kept.number].why}")
    return lines


def happened(kept: Kept, system: str) -> str:  # noqa: PLR0911, PLR0912  (one way out for each kind)
    """One happening in a few words."""
    match kept.body:
        case LookTaken() as look:
            found = f", {look.found}" if look.found else ""
            return f"look {look.look}: {look.state.upper()}{_at(look.part, look.side)}{found}"
        case Reading() as reading:
            value, doubt = reading_shown(reading, system)
            side = f"{reading.side} " if reading.side else ""
            return f"{side}{reading.quantity} {value}, give or take {doubt} ({reading.given})"
        case Trip() as trip:
            return f"trip {trip.name}, {units.show(trip.distance, 'distance', system)}"
        case Hit() as hit:
            return f"hit {hit.what}{_at('', hit.side)}"
        case Job() as job:
            return f"work: {job.task}{_at(job.part, job.side)}"
        case OwnLimit() as limit:
            return f"limit {limit.limit}: {limit.given} ({limit.printed})"
        case Chapter() as chapter:
            ends = [
                units.show(each, "distance", system) for each in (chapter.shortest, chapter.longest)
            ]
            broke = f"; broke: {', '.join(chapter.broke)}" if chapter.broke else ""
            return f"before: {chapter.title}, {ends[0]} to {ends[1]}{broke}"
        case Noticed(about="packing") as packing:
            ticks = ", ".join(f"{name.replace('.', ' ')} {word}" for name, word in packing.answers)
            return f"packing list: {ticks.replace('_', ' ')}"
        case Noticed() as noticed:
            said = [(name, word) for name, word in noticed.answers if name != "told" and word]
            told = ", ".join(f"{name} {word}" for name, word in said)
            return f"noticed, {noticed.about}: {told}"
        case Fitted() as fitted:
            return f"{fitted.component} fitted at {fitted.place}"
        case TakenOff() as off:
            return f"{off.component} taken off{f': {off.reason}' if off.reason else ''}"
        case Remark() as remark:
            return f"note{f' on {remark.about}' if remark.about else ''}"
        case Withdrawn() as withdrawn:
            return f"withdrawn: {withdrawn.reason}"


def reading_shown(reading: Reading, system: str) -> tuple[str, str]:
    """Value and doubt in the unit that was read; a pull on a radius is told as its torque."""
    own = reading.unit in units.known(reading.kind)
    unit = reading.unit if own else system
    doubt = 2.0 * reading.standard
    name = unit if own else units.SYSTEMS[system][reading.kind]
    value, within = (
        f"{to_doubt(each, doubt, reading.kind, unit)} {name}" for each in (reading.value, doubt)
    )
    return value, within


def _at(part: str, side: str) -> str:
    where = f"{side} {part}".strip()
    return f", {where}" if where else ""
