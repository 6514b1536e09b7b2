"""Commands: read what a person asks, call one action, show one view."""

from axlewright.cli.app import run

__all__ = ["run"]
