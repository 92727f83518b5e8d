"""H52: sheet goods rarely measure what they are called, and slots are cut to what they measure.

TRADE A5.5: 18 mm plywood is 17.5 to 18.2, 3/4 in 0.70 to 0.72 (common practice).  What was not
measured is taken as it is called, and that is listed once for each kind of sheet.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from dryfit.diagnostics import Assumption
from dryfit.kinds.joints import joint_kind
from dryfit.placing.model import Joint, Part
from dryfit.placing.site import Site

_ON_THE_PIECE = frozenset({"opening", "measurement"})


def sheet_assumptions(
    site: Site, parts: Sequence[Part], joints: Sequence[Joint]
) -> Iterator[Assumption]:
    """Yield, once a sheet, the thickness that slots are cut to and nobody measured."""
    # A value, or the thickness of a part, may stand for the sheet that was measured.
    measured = {each.taken for each in site.declared.measured if each.kind not in _ON_THE_PIECE}
    measured |= {line.measured for line in site.declared.stock if line.measured is not None}
    entering = {
        copy
        for joint in joints
        if (kind := joint_kind(joint.kind)).enters or kind.panelled
        for copy in (joint.guest, *((joint.host,) if kind.corner else ()))
    }
    sheets = {
        (part.timber, part.thickness)
        for part in parts
        if part.stock == "sheet" and any(copy.name in entering for copy in part.copies)
    }
    # What stands inside a pattern has its thickness from there, which a measurement does not reach.
    outside = {
        (part.timber, part.thickness)
        for part in parts
        if part.stock == "sheet" and not part.made and site.part(part.name).within is None
    }
    show = site.declared.display
    for part in parts:
        sheet = (part.timber, part.thickness)
        if part.timber is None or sheet not in sheets or part.thickness in measured:
            continue
        sheets.discard(sheet)
        thick = show.shown(part.thickness, fitted=True)
        yield Assumption(
            f"{part.timber} of {show.with_unit(part.thickness, fitted=True)} is taken to measure "
            "that; what it goes into is cut to it, and most sheets are a little thinner",
            None,
            f"measured {part.timber} {thick} = {thick}" if sheet in outside else None,
        )
