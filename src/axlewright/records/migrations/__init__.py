"""How a store of any earlier version becomes one of today."""

__all__: list[str] = []
