"""One file to take along: the same words as a self-contained page and as paper."""

from importlib.resources import files

from axlewright.report.paper import typeset
from axlewright.views import TakeData


def take_page(data: TakeData) -> bytes:
    """Give the file for a phone: one HTML page that asks for nothing else."""
    from jinja2 import Environment, StrictUndefined
    from markupsafe import Markup

    room = files("axlewright.report")
    environment = Environment(
        autoescape=True, undefined=StrictUndefined, trim_blocks=True, lstrip_blocks=True
    )
    template = environment.from_string((room / "take.html.jinja").read_text("utf-8"))
    page = template.render(
        data=data,
        css=Markup((room / "take.css").read_text("utf-8")),  # noqa: S704  (our own file)
        js=Markup((room / "take.js").read_text("utf-8")),  # noqa: S704  (our own file)
        picture=Markup(data.picture),  # noqa: S704  (our own drawing, its words escaped)
    )
    return page.encode()


def take_paper(data: TakeData) -> bytes:
    """Give the same as PDF/UA-1 on A4, with lines to write on."""
    return typeset("take.typ", data)
