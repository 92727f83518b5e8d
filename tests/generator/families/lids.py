"""Plank lids and tops with board ends that they can move in."""

from fractions import Fraction

from tests.generator.joints import chisel
from tests.generator.page import Page


def lid(page: Page) -> None:
    """Write a plank of several staves with a board end at either side."""
    draw, say = page.draw, page.say
    page.title = page.either("Chest lid", "Sideboard top", "Bread board")
    wide, deep, thick = page.size(500, 1000), page.size(240, 420), page.size(18, 26)
    end = page.size(55, 85)
    page.measures(wide, deep, thick)
    staves = int(deep // 110) + 1
    page.part(
        f"1 top, across, flat, {say(deep)} wide {say(thick)} thick, from {staves} staves", "top"
    )
    page.part(
        f"2 board ends, front to back, flat, {page.sizes(deep, end, thick)}, at left and right, "
        "up 0",
        "board ends",
    )
    tenon = chisel(page, thick)
    long = page.rounded(end * Fraction(6, 10))
    each = page.rounded(min(5 * tenon, deep / 7))
    tongue = draw.one_of(("tongue", f"tongue {say(page.rounded(long / 3))} long"))
    pegs = draw.one_of(("", "", ", pegged", f", pegs {say(page.size(6, 8))}"))
    page.cuts.append(
        f"top into board ends: {tongue}, 3 tenons {say(long)} long {say(tenon)} thick "
        f"{say(each)} wide, glue the middle {say(page.size(60, 75))}{pegs}"
    )
    page.stage("lid", "top, board ends", joints=2)
