"""What each part bears in each load case, and what gives first."""

__all__: list[str] = []
