"""Where the bay enters things: how each rig stands, and entries that passed their trial."""

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, Any, Final, TypeVar

from axlewright.actions.bay_cache import Latest
from axlewright.actions.bay_words import Said, cleaned
from axlewright.actions.draft import Draft
from axlewright.actions.saying import stop_lines
from axlewright.actions.standing import Standing, gone_on, questions
from axlewright.errors import NotKept, UnknownEntry
from axlewright.rig import FIELDS, Rig

if TYPE_CHECKING:
    from axlewright.records import New, Store

Refusal = TypeVar("Refusal")

ATTEMPTS: Final = 50  # times that another device may be quicker before this one gives up


class Desk:
    """The store, and how each rig stood when it was last looked at."""

    def __init__(self, store: "Store") -> None:
        self.store = store
        self._standings: Latest[str, Standing] = Latest(256)
        self._rigs: Latest[tuple[str, int], Rig] = Latest(64)

    def standing(self, slug: str) -> Standing:
        """How a rig stands now; not to be changed. Raises where there is no such rig."""
        before = self._standings.kept(slug) or Standing(draft=Draft(name="rig"))
        entries = self.store.entries_after(slug, before.number)
        if not entries and not before.number:
            raise UnknownEntry(f"There is no rig {slug[:80]!r}.", remedy="See the list of axles.")
        if not entries:
            return before
        return self._standings.keep(slug, gone_on(before, entries, self.store.text))

    def rig(self, slug: str) -> Rig | None:
        """Checked rig as it stands, None while a required answer is missing."""
        standing = self.standing(slug)
        if standing.draft.missing():
            return None
        return self._rigs.get((slug, standing.number), standing.draft.rig)

    def enter(
        self,
        slug: str,
        news: "Sequence[New]",
        trial: Callable[[Standing], Draft | Refusal],
        device: str,
        key: str,
    ) -> Standing | Refusal:
        """Enter what passes its trial against the newest standing; give that, or the refusal.

        Nothing that another device enters meanwhile comes between the trial and the entry.
        """
        from axlewright.records import Overtaken

        once = cleaned(key)
        if once and self.store.entered(slug, once):
            return self.standing(slug)
        for _ in range(ATTEMPTS):
            standing = self.standing(slug)
            tried = trial(standing)
            if not isinstance(tried, Draft):
                return tried
            version = None if tried.missing() else tried.text()
            try:
                self.store.add(
                    slug,
                    news,
                    device=cleaned(device),
                    key=once,
                    after=standing.number,
                    version=version,
                )
            except Overtaken:
                continue
            return self.standing(slug)
        raise NotKept(
            "Others are entering answers all the time; this was not kept.", remedy="Say it again."
        )

    def said(self, standing: Standing, path: str, text: str, **more: Any) -> Said:  # noqa: ANN401
        """Words on what became of something said, with how the rig stands."""
        count, of = questions(FIELDS, standing.draft)
        told = {"stored": False, **more}
        return Said(
            path=path,
            text=text,
            number=standing.number,
            stop=stop_lines(standing.draft),
            answered=count,
            complete=count == of,
            **told,
        )
