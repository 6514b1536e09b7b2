"""Elastic constants of the metals of an axle, Pa.

Steel's modulus is printed as 200 GPa (Beer), 207 GPa (Budynas and Nisbett, table A-5) and 210 GPa
(EN 1993-1-1, 3.2.6), its shear modulus as 79 to 81 GPa: the middle stands here. Ductile iron is
given as 160 to 170 GPa (memory). No strength hangs on them; how loads are shared does, a little.

References
----------
beer-mechanics; budynas9
"""

from typing import Final

STEEL: Final = 205e9
STEEL_SHEAR: Final = 80e9
IRON: Final = 165e9
IRON_SHEAR: Final = 65e9
