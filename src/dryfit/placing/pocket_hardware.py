"""The pocket screws to buy, counted from the pockets (TRADE B16)."""

from __future__ import annotations

from collections.abc import Sequence

from dryfit.kinds.roles import POCKET
from dryfit.placing.found import Found
from dryfit.placing.model import Hardware, Joint, Part
from dryfit.placing.site import Site


def pocket_screws(
    site: Site, joints: Sequence[Joint], found: Sequence[Found], parts: Sequence[Part]
) -> tuple[Hardware, ...]:
    """Return the screws by length and by what they hold; outdoors of stainless steel.

    Coarse threads hold in softwood and plywood, fine ones do not split hardwood: which of them is
    said for both, since a wood's hardness is in no table of ours.
    """
    written = {copy.name: part.written for part in parts for copy in part.copies}
    item = "stainless pocket screw" if site.declared.outdoors else "pocket screw"
    counts: dict[tuple[str, str], int] = {}
    for joint, made in zip(joints, found, strict=True):
        purpose = f"{written[joint.guest]} into {written[joint.host]}"
        for cut in made.cuts:
            if cut.role == POCKET and cut.form is not None:
                length = dict(cut.form.sizes)["screw"]
                key = (f"{site.declared.display.shown(length)} long", purpose)
                counts[key] = counts.get(key, 0) + 1
    thread = "; coarse thread in softwood and plywood, fine in hardwood"
    return tuple(
        Hardware(item, size, many, purpose + thread) for (size, purpose), many in counts.items()
    )
