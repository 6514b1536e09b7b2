"""The picture of an answer that the README opens with, made from the real answer.

``python -m tools.pictures`` writes it again; a house test holds it to what the demo rig says today.
"""

import io
import re
from pathlib import Path

from rich.console import Console
from rich.text import Text

from axlewright.actions import assess_file
from axlewright.views import answer_lines, folded

ROOT = Path(__file__).parents[1]
PICTURE = ROOT / "docs" / "images" / "answer.svg"
RIG = ROOT / "examples" / "rigs" / "heron.toml"
WIDTH = 100
FONTS = "ui-monospace, Menlo, Consolas, monospace"  # what the reader's machine has
STRONG = ("In one bad moment", "Wearing out", "STOP", "WATCH", "Not judged", "Rests on", "Worth")


def answer() -> list[str]:
    """Lines of the demo rig's answer, as the terminal prints them."""
    return folded(answer_lines(assess_file(str(RIG)), "metric", WIDTH), WIDTH)


def picture(lines: list[str]) -> str:
    """The lines as a terminal in SVG, with nothing fetched from outside."""
    console = Console(record=True, width=WIDTH, file=io.StringIO(), legacy_windows=False)
    for number, line in enumerate(lines):
        opening = next((words for words in STRONG if line.startswith(words)), None)
        text = Text(line)
        if number == 0:
            text.stylize("bold")
        elif opening:
            text.stylize("bold", 0, len(opening))
        console.print(text, soft_wrap=True)
    made = console.export_svg(
        title="axlewright assess examples/rigs/heron.toml", unique_id="answer"
    )
    made = re.sub(r"\s*@font-face\s*\{.*?\}", "", made, flags=re.DOTALL)
    made = re.sub(r"font-family: Fira Code, monospace", f"font-family: {FONTS}", made)
    made = re.sub(r"<!--.*?-->\s*", "", made, flags=re.DOTALL)
    return "\n".join(line.rstrip() for line in made.splitlines()) + "\n"


def words(svg: str) -> str:
    """What a picture says, its lines joined."""
    rows: dict[float, list[tuple[float, str]]] = {}
    shown = r'<text class="answer-r[^>]* x="([\d.]+)" y="([\d.]+)"[^>]*>(.*?)</text>'
    for left, top, text in re.findall(shown, svg, re.DOTALL):
        rows.setdefault(float(top), []).append((float(left), text))
    lines = ("".join(text for _, text in sorted(parts)) for _, parts in sorted(rows.items()))
    plain = "\n".join(line.strip("\n") for line in lines)
    for sign, meant in (("&#160;", " "), ("&lt;", "<"), ("&gt;", ">"), ("&#x27;", "'")):
        plain = plain.replace(sign, meant)
    return plain.replace("&quot;", '"').replace("&amp;", "&")


def main() -> None:
    """Write the picture."""
    PICTURE.write_text(picture(answer()), "utf-8", newline="\n")
    print(PICTURE.relative_to(ROOT))


if __name__ == "__main__":
    main()
