"""A process that enters answers until it is killed; tells the number of each once it is kept."""

import sys
from pathlib import Path

from axlewright.records import New, Store


def main(file, rig, name, count):
    store = Store.open(Path(file))
    for each in range(count):
        new = New(kind="answer", path=name, text=f"{name} {each}")
        store.add(rig, [new], device=name, version=f"{name} {each}\n" * 40)
        sys.stdout.write(f"{each}\n")
        sys.stdout.flush()


if __name__ == "__main__":
    main(sys.argv[1], sys.argv[2], sys.argv[3], int(sys.argv[4]))
