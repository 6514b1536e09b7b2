"""`axlewright serve`: opens the bay in the browser."""

import sys
from pathlib import Path
from typing import Annotated

from cyclopts import Parameter

from axlewright.errors import AxlewrightError

PORT = 8321


def serve(
    *,
    port: int = PORT,
    store: Path | None = None,
    on_the_network: Annotated[bool, Parameter(negative="")] = False,
    forget_phones: Annotated[bool, Parameter(negative="")] = False,
) -> int:
    """Open the bay: your axles, the answer and the paper as pages in a browser.

    On this machine only, unless asked otherwise; nothing ever leaves it.

    Parameters
    ----------
    port
        Port to listen on; 0 takes any that is free.
    store
        Folder that keeps what is said; the usual one is the user's own data folder.
    on_the_network
        Let phones on the same network in, behind a pass phrase that is shown here.
    forget_phones
        Ask every phone that was let in before for the phrase again.
    """
    if not 0 <= port < 65536:
        raise AxlewrightError(f"There is no port {port}.", remedy="Give one from 0 to 65535.")
    from axlewright.web import serve_bay

    folder = store or usual_folder()
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as trouble:
        raise AxlewrightError(
            f"{folder} cannot be used: {trouble.strerror}.", remedy="Give another with --store."
        ) from trouble
    serve_bay(folder, port=port, on_the_network=on_the_network, forget=forget_phones, say=_say)
    return 0


def usual_folder() -> Path:
    """Folder of the store where none is given: the user's own data folder."""
    from platformdirs import user_data_path

    return user_data_path("axlewright", appauthor=False)


def _say(line: str) -> None:
    sys.stdout.write(f"{line}\n")
    sys.stdout.flush()
