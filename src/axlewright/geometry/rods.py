"""One rod of an axle: its two ends, its own length, its stiffness."""

from dataclasses import dataclass

import numpy as np

from axlewright.rig import Column


@dataclass(frozen=True, slots=True, kw_only=True)
class Rod:
    """One rod: its name, its ends (n, 3), its own length and stiffness (n,), m and N/m."""

    name: str
    frame: Column
    axle: Column
    length: Column
    stiffness: Column
    soft: float = 0.5

    def give(self, bushing: Column) -> Column:
        """How far its length is off for each metre that its bushings give, (n,).

        ``soft`` is the bushings' stiffness of an arm bushing's: two in a row are half as stiff.
        """
        return np.asarray(np.minimum(np.sqrt(self.soft * bushing / self.stiffness), 1.0))
