"""Words of a person about a look, as the log means them."""

from axlewright.actions.bay_words import cleaned
from axlewright.errors import AxlewrightError
from axlewright.rig import FOUND, LookState


def state_of(word: str) -> LookState:
    """Give the state that a word of a person means; "cannot tell" is fix before trip."""
    words: dict[str, LookState] = {
        "go": "go",
        "ok": "go",
        "watch": "watch",
        "fix": "fix before trip",
        "fix before trip": "fix before trip",
        "cannot tell": "fix before trip",
        "can't tell": "fix before trip",
        "stop": "stop",
    }
    told = cleaned(word).casefold()
    if told not in words:
        raise AxlewrightError(
            f"A look does not end in {word[:40]!r}.",
            remedy="One of: go, watch, fix, stop; or cannot tell, which counts as fix.",
        )
    return words[told]


def found_of(word: str) -> str:
    """Give one of the words for what was found; empty stays empty."""
    told = cleaned(word).casefold()
    if told and told not in FOUND:
        raise AxlewrightError(
            f"{word[:40]!r} is not one of the words for what was found.",
            remedy=f"One of: {', '.join(FOUND)}.",
        )
    return told
