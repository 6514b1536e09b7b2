"""Typeset paper made out of views."""

__all__: list[str] = []
