"""Our kernels and answers beside named general libraries, as ratios."""
