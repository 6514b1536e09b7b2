"""Commands: read what a person asks, call one action, show one view."""

__all__: list[str] = []
