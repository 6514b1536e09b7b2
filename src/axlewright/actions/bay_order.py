"""The order sheet of an axle in the store: what was written on it, kept field by field."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from axlewright.actions.bay_desk import Desk
from axlewright.actions.bay_words import cleaned
from axlewright.errors import AxlewrightError, BadFile, Fault
from axlewright.rig import (
    change_from_text,
    changed_rig,
    order_sheet_from_text,
    order_sheet_said,
    order_sheet_text,
    sheet_fields,
)
from axlewright.swap import Order, ordered


@dataclass(frozen=True, slots=True, kw_only=True)
class Written:
    """What became of words written on a sheet: fields kept, and what is wrong with the others."""

    kept: tuple[str, ...]
    faults: Mapping[str, Fault]


class OrderDesk:
    """The order sheets over one desk; every method may be called from any thread."""

    def __init__(self, desk: Desk) -> None:
        self._desk = desk

    def sheet(self, slug: str, change: str = "") -> Order:
        """The sheet as far as it is written, beside the rig after a change's text."""
        return _sheet(self._desk, slug, change)

    def words(self, slug: str) -> dict[str, str]:
        """What was written on the sheet, by field, as it was written."""
        return dict(self._desk.standing(slug).order)

    def text(self, slug: str) -> str:
        """The sheet as a file."""
        return _text(self._desk, slug)

    def write(
        self, slug: str, said: Mapping[str, str], device: str = "", *, key: str = ""
    ) -> Written:
        """Keep what can be read of some fields; an empty text takes a field off again."""
        return _write(self._desk, slug, said, device, key)

    def take_file(self, slug: str, text: bytes, name: str, device: str = "") -> Written:
        """Take in a sheet that came as a file; raises `BadFile` with every fault."""
        return _take_file(self._desk, slug, text, name, device)


def _sheet(desk: Desk, slug: str, change: str = "") -> Order:
    """Lay a kept sheet out beside the rig as it stands, or as it is after a change's text."""
    standing = desk.standing(slug)
    rig = desk.rig(slug)
    if rig is not None and change:
        rig, _ = changed_rig(rig, change_from_text(change))
    axle = standing.draft.axle
    sheet = order_sheet_said(_read(standing.order, axle), axle)
    if rig is None:  # the rest of the thirteen questions is still open
        return replace(ordered(sheet), name=standing.draft.name)
    return ordered(sheet, rig)


def _text(desk: Desk, slug: str) -> str:
    """A kept sheet as a file."""
    standing = desk.standing(slug)
    axle = standing.draft.axle
    return order_sheet_text(order_sheet_said(_read(standing.order, axle), axle))


def _write(
    desk: Desk, slug: str, said: Mapping[str, str], device: str = "", key: str = ""
) -> Written:
    """Keep what can be read of some fields; an empty text takes a field off the sheet again."""
    from axlewright.records import New

    standing = desk.standing(slug)
    fields = sheet_fields(standing.draft.axle)
    faults: dict[str, Fault] = {}
    news: list[New] = []
    for path, text in said.items():
        told = cleaned(text).strip()
        if path not in fields or told == standing.order.get(path, ""):
            continue
        try:
            order_sheet_said({path: told}, standing.draft.axle)
        except BadFile as wrong:
            faults[path] = wrong.faults[0]
            continue
        news.append(New(kind="ordered", path=path, text=told))
    if news:
        desk.store.add(slug, news, device=cleaned(device), key=cleaned(key))
    return Written(kept=tuple(each.path for each in news), faults=faults)


def _take_file(desk: Desk, slug: str, text: bytes, name: str, device: str = "") -> Written:
    """Take in a sheet that came as a file; raises `BadFile` with every fault."""
    axle = desk.standing(slug).draft.axle
    sheet = order_sheet_from_text(text, cleaned(name)[:80] or "order.toml", axle)
    if not sheet.answers:
        raise AxlewrightError("Nothing is written on that sheet.", remedy="Fill it in first.")
    said = {path: answer.text for path, answer in sheet.answers.items()}
    return _write(desk, slug, said, device)


def _read(said: Mapping[str, str], axle: str) -> dict[str, str]:
    """What of a kept sheet this version still reads."""
    out = {}
    for path, text in said.items():
        if path in sheet_fields(axle):
            try:
                order_sheet_said({path: text}, axle)
            except BadFile:
                continue
            out[path] = text
    return out
