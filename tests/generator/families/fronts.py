"""Fronts that lie alone on the bench: doors and frames of the shipped patterns, and mouldings."""

from fractions import Fraction

from tests.generator.page import Page

FRONTS = ("face frame", "framed door", "slatted door", "panelled frame")


def moulded(page: Page) -> None:
    """A plain door of sheet goods with a moulding on its face, or a shipped face frame or door."""
    draw, say = page.draw, page.say
    wide, high = page.size(300, 600), page.size(400, 800)
    kind = draw.one_of(("moulding", "strips", *FRONTS))
    page.title = f"Front with a {kind}"
    if kind in FRONTS:
        thick = page.size(24, 26) if kind == "panelled frame" else page.size(18, 20)
        page.measures(wide, thick, high)
        stile = page.either("", f", stile {say(page.size(45, 60))}")
        page.part(
            f"1 front, as {kind}, {say(wide)} wide, {say(thick)} deep, {say(high)} high"
            f"{'' if kind == 'panelled frame' else stile}"
        )
        return
    if kind == "moulding":
        _beaded(page, wide, high)
        return
    slab, strip = page.size(17, 19), page.size(7, 10)
    page.measures(wide, slab + strip, high)
    page.values.append(f"rim = {say(page.size(35, 60))}")
    page.part(
        f"1 slab, upright, facing front, of {page.either('plywood', 'birch ply', 'MDF')}, height x "
        f"width x {say(slab)}, 0 from back",
        "slab",
    )
    size = page.sizes(page.size(18, 26), strip)
    place = "set in rim across, rim up and down, glued"
    page.part(
        f"2 side strips, upright, facing front, {size}, on the front of slab, at left and right, "
        f"{place}",
        "side strips",
    )
    page.part(
        f"2 end strips, across, on edge, {size}, on the front of slab, at top and bottom, {place}",
        "end strips",
    )
    page.cuts.append("end strips crossing side strips: mitre")
    page.stage("door", "slab, side strips, end strips, pins", joints=8)


def _beaded(page: Page, wide: Fraction, high: Fraction) -> None:
    """Write a frame with a panel and a ring of beads in the opening before it."""
    say = page.say
    thick = page.size(22, 25)
    page.measures(wide, thick, high)
    bead = say(page.size(8, 10))
    page.part(
        f"2 stiles, upright, facing front, {page.sizes(page.size(50, 60), thick)}, at left and "
        "right",
        "stiles",
    )
    page.part(
        f"2 rails, across, on edge, {page.sizes(page.size(58, 66), thick)}, "
        f"{page.either('2 dowels', 'loose tenon', 'biscuits', 'tenon')} into stiles, at bottom and "
        "top",
        "rails",
    )
    page.values.append("bay = opening between stiles and rails")
    page.part(
        f"1 beading, as moulding, {bead} deep, in bay, strip {bead}, gap 0, 0 from front",
    )
    page.cuts += [
        f"beading's {side} strips against {host}: glued"
        for side, host in (("side", "stiles"), ("end", "rails"))
    ]
    page.stage("door", "stiles, rails")
    page.stage("beaded door", "door, beading, pins", joints=8)
