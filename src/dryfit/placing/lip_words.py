"""What covers the edges of a part, said in the cut list: ``lipped 6 of oak at front``."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.geometry.frame import SURFACES
from dryfit.placing.lip import Lip
from dryfit.placing.model import Part
from dryfit.placing.site import SIDE_WORDS
from dryfit.placing.strips import core_of
from dryfit.quantities import Display


def lip_remarks(part: Part, display: Display) -> Iterator[str]:
    """Yield what covers the edges of a part, alike edges together, and how large its core is cut.

    An edge is called by where it lies, or by its mark where copies lie otherwise.
    """
    alike: dict[tuple[bool, str], list[str]] = {}
    for lip in part.lips:
        of = f" of {lip.timber}" if lip.timber else ""
        words = f"{display.shown(lip.thickness, fitted=lip.banded)}{of}"
        alike.setdefault((lip.banded, words), []).append(_where(part, lip))
    for (banded, words), places in alike.items():
        where = "all round" if len(places) == len(part.lips) == 4 else f"at {' and '.join(places)}"
        yield f"{'edge banded' if banded else 'lipped'} {words} {where}"
    if part.lips:
        core = core_of(part)
        yield f"core {display.shown(core.length)} x {display.shown(core.width)}"


def _where(part: Part, lip: Lip) -> str:
    direction, far = SURFACES[lip.surface]
    sides = {
        (axis, sign if far else -sign)
        for axis, sign in (copy.frame.axes[direction] for copy in part.copies)
    }
    return SIDE_WORDS[sides.pop()] if len(sides) == 1 else lip.surface
