"""The pages of the bay, one module for each."""

__all__: list[str] = []
