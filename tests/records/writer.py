"""A process that enters answers until it is killed; tells the number of each once it is kept.

With a count it enters so many. Without, it makes a copy of itself for each name that it is told,
so that a thousand can be killed without a thousand starts of Python.
"""

import os
import sys
from pathlib import Path

from axlewright.records import New, Store


def main(target, rig, name, count):
    store = Store.open(target if "://" in target else Path(target))
    for each in range(count):
        new = New(kind="answer", path=name, text=f"{name} {each}")
        store.add(rig, [new], device=name, version=f"{name} {each}\n" * 40)
        tell(f"{each}")


def copies(target, rig):
    for line in sys.stdin:
        child = os.fork()
        if not child:
            tell(f"pid {os.getpid()}")
            main(target, rig, line.strip(), 100_000)
            os._exit(1)
        os.waitpid(child, 0)
        tell("gone")


def tell(line):
    os.write(1, f"{line}\n".encode())  # one write: whole or not at all


if __name__ == "__main__":
    if len(sys.argv) > 3:
        main(sys.argv[1], sys.argv[2], sys.argv[3], int(sys.argv[4]))
    else:
        copies(sys.argv[1], sys.argv[2])
