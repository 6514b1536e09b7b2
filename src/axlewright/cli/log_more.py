"""`axlewright log …`, the rest: work, parts, limits, the past, what is due, history, archive."""

from pathlib import Path
from typing import Annotated, Literal

from cyclopts import Parameter

from axlewright.cli.log import (
    NOTHING,
    NOWHERE,
    Entry,
    Side,
    Where,
    _entered,
    _opened,
    _stops,
    _tell,
    app,
)
from axlewright.cli.options import STOPPED
from axlewright.cli.serve import usual_folder


@app.command
def work(
    rig: str,
    task: str,
    *,
    part: str = "",
    side: Side | None = None,
    settles: int = 0,
    interval: str = "",
    torque: str = "",
    shimmy: Annotated[bool, Parameter(negative="")] = False,
    entry: Entry = NOTHING,
) -> int:
    """Enter work that was done.

    Parameters
    ----------
    part
        On which part, as the look named it.
    side
        The vehicle's own side.
    settles
        Number of the look that it answers.
    interval
        The standing job that was done, as `log due` names it, or what begins one: wheel_fitted,
        hub_fitted, suspension_fitted, steering_fitted, gears_fitted.
    torque
        What was set, with the maker's value and where it is printed.
    shimmy
        One thing changed because of a shake.
    """
    from axlewright.rig import Job

    with _opened(entry) as log:
        slug = log.rig(rig)
        body = Job(
            task=f"shimmy: {task}" if shimmy else task,
            part=part,
            side=side or "",
            settles=settles,
            interval=log.interval(interval),
            torque=torque,
        )
        return _entered(log, slug, log.work(slug, body, **entry.said()), entry)


@app.command
def note(rig: str, text: str, *, about: str = "", entry: Entry = NOTHING) -> int:
    """Enter a note by itself."""
    from axlewright.rig import Remark

    with _opened(entry) as log:
        slug = log.rig(rig)
        said = {**entry.said(), "note": text}
        return _entered(log, slug, log.enter(slug, Remark(about=about), **said), entry)


@app.command
def withdraw(rig: str, number: int, reason: str, *, where: Where = NOWHERE) -> int:
    """Say that an earlier entry does not hold; it stays on record."""
    from axlewright.views import WithdrawnTold

    with _opened(where) as log:
        slug = log.rig(rig)
        done = log.withdraw(slug, number, reason)
        told = WithdrawnTold(withdrawn=number, by=done)
        _tell(where, "withdrawn", told, [f"Entry {number} is withdrawn by {done}."])
    return 0


@app.command
def part(kind: str, name: str, *, mark: str = "", where: Where = NOWHERE) -> int:
    """Give a part an identity that it keeps wherever it goes.

    Parameters
    ----------
    kind
        What kind of part.
    name
        What to call it.
    mark
        How it is known again: a number, three dots of paint.
    """
    with _opened(where) as log:
        made = log.book.new_component(kind, name, mark)
        _tell(where, "part", made, [f"{made.key}: {made.name}"])
    return 0


@app.command
def fit(rig: str, part_: str, place: str, *, entry: Entry = NOTHING) -> int:
    """Enter that a part was put in a place."""
    with _opened(entry) as log:
        slug = log.rig(rig)
        return _entered(log, slug, log.fit(slug, part_, place, **entry.said()), entry)


@app.command
def off(rig: str, part_: str, *, reason: str = "", entry: Entry = NOTHING) -> int:
    """Enter that a part was taken out."""
    with _opened(entry) as log:
        slug = log.rig(rig)
        return _entered(log, slug, log.take_off(slug, part_, reason, **entry.said()), entry)


@app.command
def parts(rig: str = "", *, where: Where = NOWHERE) -> int:
    """Show parts, where they were, and what each went through."""
    from axlewright.views import PartTold, part_lines

    with _opened(where) as log:
        told = log.parts(log.rig(rig) if rig else "")
        parts_told = [PartTold(part=one, places=tuple(at), carried=far) for one, at, far in told]
        _tell(where, "parts", parts_told, part_lines(told, where.units))
    return 0


@app.command
def limit(
    rig: str, name: str, *, low: str = "", high: str = "", printed: str, entry: Entry = NOTHING
) -> int:
    """Put the manual's own limit in the place of a general one.

    Parameters
    ----------
    name
        The reading, or the limit as it is shown.
    low
        Its lower end.
    high
        Its upper end.
    printed
        Manual and page: it is shown wherever the limit is.
    """
    from axlewright.actions import own_limit

    with _opened(entry) as log:
        slug = log.rig(rig)
        body = own_limit(name, low, high, printed)
        return _entered(log, slug, log.enter(slug, body, **entry.said()), entry)


@app.command
def chapter(
    rig: str,
    title: str,
    *,
    distance: str,
    tyre: str = "",
    load: str = "",
    ground: Annotated[list[str] | None, Parameter(negative="")] = None,
    broke: Annotated[list[str] | None, Parameter(negative="")] = None,
    entry: Entry = NOTHING,
) -> int:
    """Enter a stretch of the past as far as anybody knows.

    Parameters
    ----------
    distance
        As a band, as in 40000 to 90000 km.
    tyre
        As moulded.
    load
        How it was loaded.
    ground
        A ground and the distance on it; may be given again.
    broke
        What broke; may be given again.
    """
    from axlewright.actions import chapter_of

    with _opened(entry) as log:
        slug = log.rig(rig)
        body = chapter_of(title, distance, tyre, load, ground or [], broke or [])
        return _entered(log, slug, log.enter(slug, body, **entry.said()), entry)


@app.command
def past(rig: str, *, where: Where = NOWHERE) -> int:
    """Show how far it has gone, and what broke beside what the order says would go first."""
    from axlewright.views import past_lines

    with _opened(where) as log:
        slug = log.rig(rig)
        told, stops = log.past(slug), _stops(log.drive(slug))
        _tell(where, "past", told, [*stops, *past_lines(told, where.units)])
        return STOPPED if stops else 0


@app.command
def shimmy(
    rig: str,
    *answers: str,
    entry: Entry = NOTHING,
) -> int:
    """Show the sheet after a shake; with answers, enter what the driver noticed, from memory.

    Nothing here is tried out on a road. Checks are entered with `log look RIG shimmy.NAME go`.

    Parameters
    ----------
    answers
        A question and its answer, as in still=yes.
    """
    from axlewright.actions import noticed_of
    from axlewright.views import sheet_lines, shimmy_question_lines

    with _opened(entry) as log:
        slug = log.rig(rig)
        if answers:
            log.enter(slug, noticed_of(answers), **entry.said())
        stands = log.sheet(slug)
        asked = [] if stands.noticed else shimmy_question_lines(entry.units)
        first, *rest = sheet_lines(stands, entry.units)
        stops = [each for each in _stops(log.drive(slug)) if "a shake of the steering" not in each]
        _tell(entry, "shimmy", stands, [first, *stops, *rest, *asked])
        return STOPPED if stands.still or stops else 0


@app.command
def bent(
    rig: str,
    *readings: str,
    after_hit: bool | None = None,
    floor_mapped: bool | None = None,
    where: Where = NOWHERE,
) -> int:
    """Where is it bent or worn? From the record, and from readings that are typed in.

    It gives shares over causes, the looks that rule out what is dangerous, and what to read next;
    never that it may be driven.

    Parameters
    ----------
    readings
        A reading and what it was, as in "camber_out_left=-0.9 deg" or "knock=yes"; not kept.
    after_hit
        Whether it was just hit; without it, whether a hit is on record.
    floor_mapped
        Whether the floor's slope was taken off; without it, as the readings on record say.
    """
    from axlewright.actions import typed_readings, where_bent
    from axlewright.views import bent_lines

    with _opened(where) as log:
        slug = log.rig(rig)
        typed = typed_readings(readings)
        told = where_bent(log, slug, typed, after_hit=after_hit, floor_mapped=floor_mapped)
        stops = _stops(log.drive(slug))
        _tell(where, "bent", told, [*stops, *bent_lines(told, where.units)])
        return STOPPED if stops else 0


@app.command
def drive(
    rig: str,
    *,
    beside_the_track: Annotated[bool, Parameter(negative="")] = False,
    where: Where = NOWHERE,
) -> int:
    """May I drive? Out of dated looks alone; a figure can only make it worse.

    Parameters
    ----------
    beside_the_track
        After a hit: may it go on slowly? The five looks alone.
    """
    from axlewright.views import drive_answer_lines

    with _opened(where) as log:
        told = log.drive(log.rig(rig), beside_the_track=beside_the_track)
        _tell(where, "drive", told, drive_answer_lines(told, where.units))
        return STOPPED if told.state == "stop" else 0


@app.command
def due(rig: str, *, where: Where = NOWHERE) -> int:
    """Show what is due, the most pressing first."""
    from axlewright.views import due_lines

    with _opened(where) as log:
        slug = log.rig(rig)
        told, stops = log.due(slug), _stops(log.drive(slug))
        _tell(where, "due", told, [*stops, *due_lines(told, where.units)])
        return STOPPED if stops else 0


@app.command
def history(
    rig: str,
    *,
    only: Annotated[list[str] | None, Parameter(negative="")] = None,
    latest: int | None = None,
    replaced: Annotated[bool, Parameter(negative="")] = False,
    report: Path | None = None,
    where: Where = NOWHERE,
) -> int:
    """Show what happened, by day.

    Parameters
    ----------
    only
        One kind alone: look, reading, trip, hit, job, limit, chapter, noticed, fitted, remark.
    latest
        So many of the last.
    replaced
        What was put right or withdrawn as well.
    report
        A PDF to write as well. Open findings, hits, welds and bends stand in it whatever is chosen.
    """
    from axlewright.actions import write_log_sheet
    from axlewright.views import history_lines

    with _opened(where) as log:
        slug = log.rig(rig)
        told = log.history(slug, only or (), replaced=replaced, latest=latest)
        gone = log.readings(slug)[1]
        if report is not None:
            write_log_sheet(log, slug, report, where.units, only=only or (), latest=latest)
        stops = _stops(log.drive(slug))
        _tell(where, "history", told, [*stops, *history_lines(told, where.units, gone)])
        return STOPPED if stops else 0


@app.command
def archive(way: Literal["out", "in"], file: Path, *, where: Where = NOWHERE) -> int:
    """Write the whole store into one file, or take such a file into an empty store."""
    from axlewright.actions import archive_in, archive_out

    folder = where.store or usual_folder()
    counts = archive_out(folder, file) if way == "out" else archive_in(folder, file)
    told = ", ".join(f"{count} {name}" for name, count in counts.items() if count)
    _tell(where, "counts", counts, [f"{file}: {told or 'nothing in it'}"])
    return 0
