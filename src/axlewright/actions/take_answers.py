"""Take answers from a form: all that were said together are kept, or none of them."""

from collections.abc import Mapping

from axlewright.actions.bay_desk import Desk
from axlewright.actions.bay_words import Said, cleaned
from axlewright.actions.draft import Draft, number_of, told_of
from axlewright.actions.saying import (
    contradicted,
    fault_words,
    known,
    refused,
    unreadable,
    with_all,
    worded,
)
from axlewright.actions.standing import Standing
from axlewright.views import echo_line


def take_answers(
    desk: Desk, slug: str, texts: Mapping[str, str], device: str, key: str
) -> dict[str, Said]:
    """Enter answers that read and fit the others; say what became of each."""
    from axlewright.records import New

    clean = {path: worded(known(path), cleaned(text)) for path, text in texts.items()}
    news = [New(kind="answer", path=path, text=text) for path, text in clean.items()]

    def trial(standing: Standing) -> Draft | dict[str, Said]:
        wrong = refused(standing.draft, clean)
        if wrong:
            return {
                path: desk.said(
                    standing,
                    path,
                    text,
                    fault=fault_words(known(path), wrong[path], text) if path in wrong else "",
                    near=wrong[path].near if path in wrong else (),
                )
                for path, text in clean.items()
            }
        tried = with_all(standing.draft, clean)
        clashing = contradicted(standing.draft, tried, tuple(clean))
        why = "" if clashing else unreadable(tried)
        if not clashing and not why:
            return tried
        return {
            path: desk.said(standing, path, text, fault=why, contradictions=clashing)
            for path, text in clean.items()
        }

    kept = desk.enter(slug, news, trial, device, key)
    if isinstance(kept, dict):
        return kept
    return {path: _told(desk, kept, path, text) for path, text in clean.items()}


def take_back(desk: Desk, slug: str, path: str, device: str, key: str) -> Said:
    """Enter that one answer is taken back."""
    from axlewright.records import New

    known(path)

    def trial(standing: Standing) -> Draft | Said:
        tried = standing.draft.with_answer(path, None)
        why = unreadable(tried)
        return desk.said(standing, path, "", fault=why) if why else tried

    kept = desk.enter(slug, [New(kind="clear", path=path)], trial, device, key)
    return kept if isinstance(kept, Said) else desk.said(kept, path, "", stored=True)


def _told(desk: Desk, standing: Standing, path: str, text: str) -> Said:
    draft = standing.draft
    answer = draft.answers.get(path)
    if answer is None:  # another device took it back in the meantime
        return desk.said(standing, path, text, stored=True)
    told = tuple(told_of(draft, path))
    echo = echo_line(answer.field, number_of(answer), answer.text)
    return desk.said(standing, path, answer.text, stored=True, echo=echo, told=told)
