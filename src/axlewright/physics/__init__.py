"""Mechanics as plain functions on SI arrays; each module is imported by name."""

__all__: list[str] = []
