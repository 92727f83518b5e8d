"""What is carved out of a box: a box again, of which some wood may be left standing; mm."""

from __future__ import annotations

from dataclasses import dataclass

from dryfit.geometry.box import Box
from dryfit.geometry.convex import Plane


@dataclass(frozen=True, slots=True)
class Carving:
    """A box out of which all goes but what stands within all planes of one of the `left`.

    No two of these share wood.

    So wood is left behind the plane of a chamfer, under the facets of a round edge, on either side
    of a dovetail's socket.  `curved` says that the planes are facets of one round face: their seams
    are no edges.
    """

    box: Box
    left: tuple[tuple[Plane, ...], ...] = ()
    curved: bool = False
