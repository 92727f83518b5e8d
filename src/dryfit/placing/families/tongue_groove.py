"""Tongue and groove between the boards of a row (TRADE B10)."""

from __future__ import annotations

from dryfit.joinery.cut import Placed
from dryfit.joinery.tongue_groove import (
    TongueSizes,
    groove_room,
    tongue_and_groove,
    tongue_box,
    usual_tongue_thickness,
)
from dryfit.piece.declared import Contact, JointWords
from dryfit.placing.board_rows import of_tongue, tongue_length
from dryfit.placing.found import Found
from dryfit.placing.free_places import Around
from dryfit.placing.lines import with_words
from dryfit.placing.not_fitting import Wrong, not_fitting
from dryfit.placing.site import Site

_RULE = "B10"
_KIND = "tongue and groove"


def find(site: Site, contact: Contact, guest: Placed, host: Placed, _: Around) -> Found | None:
    """Return the tongue of a board in the groove of the next one of its row."""
    joint, wide = contact.joint, guest.axes[1]
    region = guest.box.overlap(host.box)
    if region is None or joint is None or guest.box.low[wide] >= host.box.low[wide]:
        return None
    sizes = _sizes(site, joint, guest)
    wrong = _wrong(site, guest, sizes)
    if wrong is not None:
        not_fitting(site, contact, "tongue-does-not-fit", wrong)
        return Found(_KIND, guest.name, host.name, region, contact.span, shares=region)
    _assume(site, joint, guest, sizes)
    engaged = region.extent(wide)
    return Found(
        _KIND,
        guest.name,
        host.name,
        tongue_box(region, guest.axes[2], sizes),
        contact.span,
        shares=region,
        clearance=sizes.length + sizes.deeper - engaged,
        cuts=tongue_and_groove(guest, host, region, sizes, contact.span),
    )


def _sizes(site: Site, joint: JointWords, board: Placed) -> TongueSizes:
    display = site.declared.display
    usual = usual_tongue_thickness(board.box.extent(board.axes[2]), display)
    thickness = joint.thickness or of_tongue(joint, "thickness") or usual
    return TongueSizes(tongue_length(site, joint), thickness, groove_room(display))


def _assume(site: Site, joint: JointWords, board: Placed, sizes: TongueSizes) -> None:
    said = all(getattr(joint, name) or of_tongue(joint, name) for name in ("thickness", "length"))
    if not said:
        words = f"{site.shown(sizes.thickness)} thick {site.shown(sizes.length)} long"
        line = with_words(joint.head, f"{_KIND} {words}")
        site.assume_line(f"the tongues of {board.part} are {words}", joint.span, line)


def _wrong(site: Site, board: Placed, sizes: TongueSizes) -> Wrong | None:
    """Return what keeps the boards from being tongued."""
    _, wide, thick = board.axes
    wood, width, shown = board.box.extent(thick), board.box.extent(wide), site.shown
    cheek = (wood - sizes.thickness) / 2
    if sizes.thickness <= 0 or cheek < sizes.thickness / 2:
        return Wrong(
            f"a tongue {shown(sizes.thickness)} thick leaves cheeks of {shown(cheek)} beside its "
            f"groove in {board.part}, {shown(wood)} thick",
            f"a third is usual: `tongue and groove {shown(wood / 3)} thick`",
            {"thickness": sizes.thickness, "wood": wood},
            _RULE,
        )
    if sizes.thickness < wood / 4:
        return Wrong(
            f"a tongue {shown(sizes.thickness)} thick is too weak in {board.part}, {shown(wood)} "
            "thick",
            f"a third is usual: `tongue and groove {shown(wood / 3)} thick`",
            {"thickness": sizes.thickness, "wood": wood},
            _RULE,
        )
    if sizes.length + sizes.deeper > width / 3:
        return Wrong(
            f"a tongue {shown(sizes.length)} long is too long for {board.part}, {shown(width)} "
            "wide",
            "write a shorter tongue, or fewer and wider boards",
            {"length": sizes.length, "width": width},
            _RULE,
        )
    return None
