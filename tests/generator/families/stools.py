"""Stools and benches on legs with round tenons: plumb, or splayed one way or both."""

from fractions import Fraction

from tests.generator.page import Page


def staked(page: Page) -> None:
    """Legs right through a thick seat, wedged, each leaning as it stands or not at all."""
    draw, say = page.draw, page.say
    page.title = page.either("Stool", "Milking stool", "Low bench", "Side table")
    wide, deep, high = page.size(300, 700), page.size(240, 380), page.size(220, 520)
    page.measures(wide, deep, high)
    seat, leg = page.size(28, 45), page.size(34, 48)
    thick = leg if draw.chance(60) else page.rounded(leg - page.size(3, 6))
    inset = page.size(35, 55)
    lean = page.either("splayed", "raked", "splay", "splayed", "")
    if lean:
        ways = ("", " both ways", " to the sides", " front and back")
        slope = page.either("1 in 8", "1 in 10", "7 degrees", "1:6", "5 1/2 degrees", "2 in 15")
        lean = f", {lean} {slope}{draw.one_of(ways)}"
        if draw.chance(20):
            lean = ", splayed 1 in 7 to the sides and 4 degrees front and back"
    page.part(
        f"4 legs, upright, {say(leg)} x {say(thick)}, at corners, set in {say(inset)}, up 0{lean}",
        "legs",
    )
    staves = f", glued from {page.either('2', '3')}" if draw.chance(60) else ""
    page.part(f"1 seat, flat, across, {say(seat)} thick{staves}, up {say(high - seat)}", "seat")
    tenon = page.rounded(min(leg, thick) * 2 / 3) if draw.chance(60) else None
    size = f" {say(tenon)}" if tenon is not None else ""
    if draw.chance(25):
        page.cuts.append(f"chamfer on legs: all long edges, {say(page.size(2, 4))} wide")
    ladders = lean.endswith("to the sides") and "and" not in lean and draw.chance(60)
    if ladders:
        square = page.rounded(max(min(leg, thick) * 2 / 3, Fraction(26)))
        peg = f"{say(page.size(18, 22))} long {page.either('12', '14')} mm thick"
        page.part(
            f"2 stretchers, front to back, {say(square)} x {say(square)}, round tenon {peg} "
            f"into legs, up {say(page.size(60, 110))}",
            "stretchers",
        )
        page.stage("ladders", "2 legs, 1 stretcher", joints=2, count=2)
    through = page.either("wedged", "wedged through", "through")
    page.cuts.append(f"legs into seat: {through} round tenon{size}")
    page.stage("stool", "seat, ladders" if ladders else "seat, legs", joints=4)
