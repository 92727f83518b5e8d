"""Setting up what is held on the work: once for each setting, whoever needs it first (TRADE B26).

Jigs, templates and machines in the hand have no axes in the shop file; their set-up is work of the
first cut that is made with them, as the notes have the parts.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from dryfit.kinds.roles import FINGER, HINGE_RECESS, PIN, PIN_HOLE, POCKET, TAIL
from dryfit.operations.cut import Cut
from dryfit.operations.cuts.corner_cuts import DOVETAIL_JIG
from dryfit.operations.cuts.curves import size_of
from dryfit.operations.cuts.fingers import wide
from dryfit.operations.minutes import worked
from dryfit.operations.shapes import CURVE
from dryfit.operations.ways.machines import has_hand_router
from dryfit.shop.shop import Shop

_SET_UP = {
    POCKET: "pocket jig",
    PIN_HOLE: "pin template",
    HINGE_RECESS: "hinge router",
    "dowel hole": "dowel jig",
    "biscuit slot": "biscuit joiner",
    FINGER: "finger jig",
    CURVE: "curve template",
    TAIL: DOVETAIL_JIG,
    PIN: DOVETAIL_JIG,
}
"""What is set up for a cut, by its role, as its minutes are named."""


def with_set_ups(cuts: Iterable[Cut], shop: Shop) -> list[Cut]:
    """Return the cuts, the first of each setting of a jig with the minutes of setting it up."""
    known: set[tuple[object, ...]] = set()
    rows: list[Cut] = []
    for cut in cuts:
        setting = _setting(cut, shop)
        if setting is None or setting in known:
            rows.append(cut)
            continue
        known.add(setting)
        set_up = worked(shop, _SET_UP[cut.site.feature.role], each=1)
        rows.append(replace(cut, exact=cut.exact + set_up))
    return rows


def _setting(cut: Cut, shop: Shop) -> tuple[object, ...] | None:
    """Return what has to be set for a cut: by the wood for pockets, by their sizes for the rest."""
    feature = cut.site.feature
    if feature.role == FINGER:
        # One jig serves all boards whose fingers are as wide; by hand there is none.
        return (FINGER, wide(feature), cut.station) if cut.station != "bench" else None
    if feature.role == CURVE:
        alone = len(cut.site.part.copies) == 1
        return None if alone else (CURVE, *size_of(feature))
    if feature.role in {TAIL, PIN}:
        return (DOVETAIL_JIG,) if shop.accessory(DOVETAIL_JIG) is not None else None
    if feature.role not in _SET_UP or cut.station != "bench":
        return None
    if feature.role == POCKET:
        return POCKET, cut.site.part.thickness
    if feature.role == HINGE_RECESS:
        return (HINGE_RECESS, feature.depth) if has_hand_router(shop) else None
    return (feature.role,)
