"""How the gears give: ring and pinion, the differential's gears, the caps that hold them.

Teeth are rated by AGMA 2003-B97 in its textbook form (Budynas and Nisbett, ch. 15). Its allowable
numbers are for ten million turns and 99 gears in 100; here they are raised to an even chance and
a thousand blows (2.7 and 1/0.745 in bending, 2.0 and 1/0.863 in contact), and bending by what one
blow needs more than a thousand (memory). At a crawl nothing is added for speed; the peak torque is
the load, so nothing is added for overload.
"""

import numpy as np

from axlewright.duty import Loads
from axlewright.physics import bevel, bevel_rating, metals
from axlewright.rig import Column, Columns
from axlewright.strength.ledger import Ledger, Row

FEW = 1.0  # turns: as short as the standard's life factors go
EVEN = 0.5  # an even chance, since the bands carry the scatter
HYPOID = "the standard leaves out a hypoid's offset; a hypoid's larger pinion holds more"


def tooth_strength(columns: Columns) -> Column:
    """Bending number at which one blow breaks a carburised tooth, an even chance, (n,), Pa."""
    life = bevel_rating.bending_cycle_factor(FEW)
    chance = bevel_rating.bending_reliability(EVEN)
    return np.asarray(columns["tooth_bending"] * columns["tooth_blow"] * life / chance)


def contact_strength(columns: Columns) -> Column:
    """Contact number at which flanks pit within ten thousand turns, an even chance, (n,), Pa."""
    life = bevel_rating.contact_cycle_factor(FEW)
    return np.asarray(columns["tooth_contact"] * life / bevel_rating.contact_reliability(EVEN))


def ring_bending_limit(columns: Columns) -> Column:
    """Torque on the ring gear at which a tooth of the pair breaks, (n,), N m."""
    ring, face = columns["ring_diameter"], columns["ring_face"]
    module = ring / (columns["axle_ratio"] * columns["pinion_teeth"])
    force = bevel_rating.bending_force(
        tooth_strength(columns), face, module, columns["ring_bending"]
    )
    shared = bevel_rating.bending_size_factor(module) * np.asarray(
        bevel_rating.load_distribution(face, bevel_rating.ONE_STRADDLED)
    )
    return np.asarray(force / shared * 0.5 * ring)


def ring_contact_limit(columns: Columns) -> Column:
    """Torque on the ring gear at which the flanks start to go, (n,), N m."""
    ring, face = columns["ring_diameter"], columns["ring_face"]
    force = bevel_rating.contact_force(
        contact_strength(columns),
        face,
        ring / columns["axle_ratio"],
        columns["ring_pitting"],
        bevel_rating.contact_stiffness(metals.STEEL),
    )
    shared = (
        np.asarray(bevel_rating.contact_size_factor(face))
        * bevel_rating.load_distribution(face, bevel_rating.ONE_STRADDLED)
        * bevel_rating.CROWNED
    )
    return np.asarray(force / shared * 0.5 * ring)


def side_gear_limit(columns: Columns) -> Column:
    """Torque on one shaft at which its side gear or a mate loses a tooth, (n,), N m."""
    gear, face = columns["side_gear"], columns["side_face"]
    module = gear / columns["side_teeth"]
    force = bevel_rating.bending_force(
        tooth_strength(columns), face, module, columns["side_bending"]
    )
    shared = bevel_rating.bending_size_factor(module) * np.asarray(
        bevel_rating.load_distribution(face, bevel_rating.ONE_STRADDLED)
    )
    return np.asarray(force / shared * columns["side_mates"] * 0.5 * gear)


def cap_force(columns: Columns, torque: Column) -> Column:
    """Force that spreads the caps of the nearer carrier bearing, (n, rows), N.

    On the drive side the mesh pushes the ring away from the pinion, into the caps; its thrust
    along the carrier tips the ring and adds to that.
    """
    ring, face = columns["ring_diameter"], columns["ring_face"]
    cone = np.asarray(bevel.pitch_angle(columns["axle_ratio"], 1.0))
    mean = ring - face * np.sin(cone)
    pinion = bevel.spiral_forces(
        1.0, columns["ring_pressure"], columns["ring_spiral"], 0.5 * np.pi - cone
    )
    apart, thrust = np.abs(pinion.axial), np.abs(pinion.radial)
    one = columns["mesh_share"] * apart + 0.5 * mean / columns["carrier_span"] * thrust
    return np.asarray(bevel.tangential_force(torque, mean[:, None]) * one[:, None])


def gear_rows(ledger: Ledger, columns: Columns, loads: Loads) -> None:
    """Write the rows of ring and pinion, side gears and carrier caps."""
    total = np.sum(loads.drive, axis=-1)
    most = np.max(np.abs(loads.drive), axis=-1)
    side = side_gear_limit(columns)
    ledger.add(
        Row(
            part="side_gears",
            mode="break teeth",
            basis="shaft torque over the mates' meshes against tooth bending, AGMA 2003-B97 "
            "(Budynas and Nisbett, ch. 15), an even chance in one blow; size from the ring gear, "
            "J and the blow from memory",
            caveat="a lock that holds a side gear to the case spares that one's teeth",
        ),
        most / side[:, None],
        holds=side,
    )
    bending = ring_bending_limit(columns)
    ledger.add(
        Row(
            part="ring_and_pinion",
            mode="break teeth",
            basis="axle torque against tooth bending, AGMA 2003-B97 (Budynas and Nisbett, ch. 15):"
            " allowable number x 2.7 for few turns / 0.745 for an even chance x what one blow "
            "needs more (memory); J from memory",
            caveat=HYPOID,
        ),
        total / bending[:, None],
        holds=bending,
    )
    contact = ring_contact_limit(columns)
    ledger.add(
        Row(
            part="ring_and_pinion",
            mode="flanks pit or smear",
            basis="axle torque against tooth contact, AGMA 2003-B97: allowable number x 2.0 for "
            "few turns / 0.863 for an even chance; I from memory",
            breaks=False,
            caveat=HYPOID,
        ),
        total / contact[:, None],
        holds=contact,
    )
    clamp = columns["cap_clamp"]
    ledger.add(
        Row(
            part="carrier_caps",
            mode="spread",
            basis="mesh forces of a spiral bevel on its drive side (Budynas and Nisbett, ch. 13) "
            "on the nearer bearing's caps against their clamp (memory)",
            kind="force",
            caveat="on the coast side, or in an axle cut for the other end, the mesh pulls the "
            "ring inward and spares the caps",
        ),
        cap_force(columns, total) / clamp[:, None],
        holds=clamp,
    )
