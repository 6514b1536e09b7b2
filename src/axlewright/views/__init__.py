"""Results as words, rows and figures in the reader's units."""

__all__: list[str] = []
