"""Choices that take a while: begun once, gone on with while the visitor is away, kept when done."""

import datetime as dt
import threading
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from hashlib import sha256
from typing import TYPE_CHECKING, Final

from axlewright.actions.bay_cache import Latest, content_hash
from axlewright.actions.bay_words import cleaned
from axlewright.actions.deciding import ABOUT, DecisionAnswer, decide_rig, kept_terms
from axlewright.decide import DRAWS, Terms, read_terms, terms_text, with_record
from axlewright.errors import AxlewrightError
from axlewright.rig import Job as JobDone
from axlewright.rig import Kept, Remark, Rig

if TYPE_CHECKING:
    from axlewright.actions.log import Log

KEPT: Final = 6
MANY: Final = 10_000
LONGEST: Final = 40_000  # signs of a file of prices
USE: Final = ("skill", "km_a_year", "help_km")


class _StoppedError(Exception):
    """The visitor asked to stop."""


@dataclass(slots=True, kw_only=True)
class Job:
    """One choice being worked out: what it is at, how far (0 to 1), and how it ended."""

    draws: int
    what: str = ""
    share: float = 0.0
    answer: DecisionAnswer | None = None
    trouble: str = ""
    stopped: bool = False


class Choosing:
    """Choices of the rigs of one store; every method may be called from any thread."""

    def __init__(self) -> None:
        self._jobs: Latest[str, Job] = Latest(KEPT)
        self._turn, self._lock = threading.Lock(), threading.Lock()
        self._wanted: dict[str, int] = {}

    # -- the owner's own prices ----------------------------------------------------------------

    def terms(self, log: "Log", slug: str) -> Terms:
        """What this rig's owner pays and how it is used, as told last; else the rough figures."""
        return kept_terms(log, slug)

    def keep_terms(self, log: "Log", slug: str, text: str, device: str = "") -> Terms:
        """Keep a file of prices beside a rig; raises `BadFile` with every fault."""
        if len(text) > LONGEST:
            raise AxlewrightError("These prices are too long.", remedy="A page or two will do.")
        terms = read_terms(text, "your prices")
        digest = log.store.keep_upload(text.encode(), "prices.toml")
        log.enter(slug, Remark(about=ABOUT), note=digest, device=device)
        return terms

    def tell(self, log: "Log", slug: str, said: Mapping[str, str], device: str = "") -> Terms:
        """Take a short form of use and one price; what it leaves out stays as it was."""
        text = terms_text(self.terms(log, slug))
        return self.keep_terms(log, slug, with_said(text, said), device)

    # -- the choice ----------------------------------------------------------------------------

    def ask(self, log: "Log", slug: str, draws: int = 0, *, again: bool = False) -> Job | None:
        """The choice of a rig as far as it is; begun where nobody has, None until answered.

        ``draws`` 0 means as many as were asked for last. ``again`` begins what was stopped.
        """
        rig = log.desk.rig(slug)
        if rig is None:
            return None
        if draws:
            self._wanted[slug] = min(max(draws, DRAWS), MANY)
        many = self._wanted.get(slug, DRAWS)
        terms, history, today = self.terms(log, slug), log.history(slug), log.today
        jobs = [each.number for each in history if isinstance(each.body, JobDone)]
        driven = with_record(terms, rig, history, today)[1]
        told = f"{terms_text(terms)}{jobs}{driven and driven.band}"
        key = f"{slug} {content_hash(rig, many)} {sha256(told.encode()).hexdigest()}"
        with self._lock:
            job = self._jobs.kept(key)
            if job is not None and not (again and (job.stopped or job.trouble)):
                return job
            job = self._jobs.keep(key, Job(draws=many))

        def run() -> None:
            self._run(job, rig, terms, history, today)

        threading.Thread(target=run, name="choice", daemon=True).start()
        return job

    def _run(
        self, job: Job, rig: Rig, terms: Terms, history: Sequence[Kept], today: dt.date
    ) -> None:
        def told(what: str, done: int, of: int) -> None:
            if job.stopped:
                raise _StoppedError
            job.what, job.share = what, done / max(of, 1)

        try:
            with self._turn:
                job.answer = decide_rig(
                    rig, terms, history, draws=job.draws, progress=told, today=today
                )
        except _StoppedError:
            return
        except AxlewrightError as trouble:
            job.trouble = str(trouble)


def with_said(text: str, said: Mapping[str, str]) -> str:
    """Text of a file of prices after a short form: your use, and one price of your own."""
    terms = read_terms(text)
    you = {key: cleaned(said.get(key, "")) for key in USE}
    flags = {key: "true" if said.get(key) == "yes" else "false" for key in ("hoist", "papers")}
    if "skill" not in said:
        flags = {"hoist": str(terms.hoist).lower(), "papers": str(terms.papers).lower()}
    out = ["axlewright_prices = 1"]
    currency = cleaned(said.get("currency", "")) or terms.currency
    usd = cleaned(said.get("one_usd", "")) or repr(terms.one_usd)
    out += [f"currency = {_quoted(currency)}", f"one_usd = {_number(usd)}", "", "[you]"]
    out += [
        f"skill = {_quoted(you['skill'] or terms.skill)}",
        *(f"{key} = {flags[key]}" for key in flags),
    ]
    for key in ("km_a_year", "help_km", "years"):
        if you.get(key):
            out.append(f"{key} = {_pair(you[key])}")
        elif key in terms.own and key not in said:
            band = terms.bands[key]
            out.append(f"{key} = [{band.low!r}, {band.high!r}]")
    costs = [line for line in _table(text, "costs") if line]
    out += ["", "[costs]", *costs] if costs else []
    chosen = cleaned(said.get("change", ""))
    for key in terms.prices:
        if key != chosen and key != cleaned(said.get("drop", "")):
            out += ["", f"[prices.{key}]", *_table(text, f"prices.{key}")]
    if chosen:
        today = dt.datetime.now(dt.UTC).astimezone().date()
        low, high = (cleaned(said.get(name, "")) for name in ("low", "high"))
        out += ["", f"[prices.{chosen if _bare(chosen) else _quoted(chosen)}]"]
        out += [f"low = {_number(low)}", f"high = {_number(high or low)}", f"date = {today}"]
        out.append(f"who = {_quoted(cleaned(said.get('who', '')) or 'the owner')}")
    return "\n".join(out) + "\n"


def _table(text: str, name: str) -> list[str]:
    """Lines of one table of a text of our own."""
    rows = text.split("\n")
    if f"[{name}]" not in rows:
        return []
    start = rows.index(f"[{name}]") + 1
    ends = [at for at in range(start, len(rows)) if rows[at].startswith("[")]
    return [row for row in rows[start : ends[0] if ends else len(rows)] if row]


def _pair(text: str) -> str:
    low, _, high = text.replace("–", " to ").partition(" to ")
    return f"[{_number(low)}, {_number(high or low)}]"


def _number(text: str) -> str:
    """A number as a file takes it; what is none is passed on in quotes, to be told as it is."""
    plain = text.strip().replace(" ", "").replace(",", ".")
    try:
        float(plain)
    except ValueError:
        return _quoted(text)
    return repr(float(plain))


def _bare(key: str) -> bool:
    return key.replace("_", "").isalnum() and key.isascii()


def _quoted(text: str) -> str:
    import json

    return json.dumps(text)
