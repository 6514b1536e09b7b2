"""The words physics signatures are written in.

To the interpreter and to mypy ``Pascal`` is a float or an array of floats and nothing more.
The unit rides along as metadata, so a signature reads like a data sheet, and one test checks
every formula for dimensional consistency. Angles, counts and ratios carry no base unit.
"""

from dataclasses import dataclass
from typing import Annotated, TypeAlias

import numpy as np
from numpy.typing import NDArray

Num: TypeAlias = float | NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class SI:
    """Exponents of the base units kilogram, metre, second and kelvin."""

    kg: int = 0
    m: int = 0
    s: int = 0
    kelvin: int = 0


Ratio = Annotated[Num, SI()]
Cycles = Annotated[Num, SI()]
Count = Annotated[Num, SI()]
Radian = Annotated[Num, SI()]

Metre = Annotated[Num, SI(m=1)]
Metre2 = Annotated[Num, SI(m=2)]
Metre3 = Annotated[Num, SI(m=3)]
Metre4 = Annotated[Num, SI(m=4)]
PerMetre = Annotated[Num, SI(m=-1)]

Second = Annotated[Num, SI(s=1)]
PerSecond = Annotated[Num, SI(s=-1)]
Hertz = Annotated[Num, SI(s=-1)]
RadianPerSecond = Annotated[Num, SI(s=-1)]
RadianPerSecond2 = Annotated[Num, SI(s=-2)]
MetrePerSecond = Annotated[Num, SI(m=1, s=-1)]
MetrePerSecond2 = Annotated[Num, SI(m=1, s=-2)]

Kilogram = Annotated[Num, SI(kg=1)]
KilogramMetre2 = Annotated[Num, SI(kg=1, m=2)]
KilogramPerMetre = Annotated[Num, SI(kg=1, m=-1)]
KilogramPerMetre3 = Annotated[Num, SI(kg=1, m=-3)]

Newton = Annotated[Num, SI(kg=1, m=1, s=-2)]
NewtonMetre = Annotated[Num, SI(kg=1, m=2, s=-2)]
NewtonMetre2 = Annotated[Num, SI(kg=1, m=3, s=-2)]
NewtonPerMetre = Annotated[Num, SI(kg=1, s=-2)]
MetrePerNewton = Annotated[Num, SI(kg=-1, s=2)]
NewtonMetrePerRadian = Annotated[Num, SI(kg=1, m=2, s=-2)]
RadianPerNewtonMetre = Annotated[Num, SI(kg=-1, m=-2, s=2)]
NewtonSecond = Annotated[Num, SI(kg=1, m=1, s=-1)]
NewtonSecondPerMetre = Annotated[Num, SI(kg=1, s=-1)]
Joule = Annotated[Num, SI(kg=1, m=2, s=-2)]
Watt = Annotated[Num, SI(kg=1, m=2, s=-3)]
Pascal = Annotated[Num, SI(kg=1, m=-1, s=-2)]
PascalSecond = Annotated[Num, SI(kg=1, m=-1, s=-1)]

Kelvin = Annotated[Num, SI(kelvin=1)]
PerKelvin = Annotated[Num, SI(kelvin=-1)]
