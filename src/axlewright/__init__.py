"""Find out what gives first on a beam axle, and what is wearing out."""

__all__: list[str] = []
