"""The command `axlewright`."""

import gc
import sys

from axlewright.cli import run


def main() -> None:
    """Run the command line and leave with its exit code."""
    code = run(sys.argv[1:])
    gc.freeze()  # all goes back to the system at once: no search for circles on the way out
    sys.exit(code)


if __name__ == "__main__":
    main()
