"""The drawing of one axle as it grows with its answers, its places leading to their questions."""

from dataclasses import dataclass
from functools import lru_cache

from markupsafe import Markup

from axlewright.actions import Draft, read_draft
from axlewright.views import Links, growing_picture


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawn:
    """One drawing ready for a page, the line below it, and the same in words."""

    svg: Markup
    caption: str
    words: tuple[str, ...]


def picture_of(draft: Draft, system: str) -> Drawn:
    """Drawing of what was said so far, a usual axle where nothing was said."""
    return _drawn(draft.text(), system)


@lru_cache(maxsize=64)
def _drawn(text: str, system: str) -> Drawn:
    draft = read_draft(text)
    known = draft.answers
    made = growing_picture(
        draft.axle,
        draft.words(),
        draft.given(),
        draft.tyre(),
        frozenset(known),
        system=system,
        typed={path: answer.text for path, answer in known.items()} if system == "mixed" else None,
        links=Links(field="#ask-"),
    )
    # S704: made by views, which escapes what was typed.
    return Drawn(svg=Markup(made.svg), caption=made.caption, words=made.words)  # noqa: S704
