"""One file for each version of the store, from the first on."""

__all__: list[str] = []
