"""One function for each thing a person asks for."""

__all__: list[str] = []
