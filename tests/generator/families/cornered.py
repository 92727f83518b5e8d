"""Boxes whose corners are fingers or tails, and drawers with tails in front."""

from fractions import Fraction

from tests.generator.page import INCH, Page


def cornered(page: Page) -> None:
    """A box of four boards: finger joints of a cutter's width, or dovetails, and a bottom."""
    draw, say = page.draw, page.say
    page.title = page.either("Pencil box", "Chest", "Box for chisels")
    wide, deep = page.size(260, 500), page.size(180, 320)
    wall = page.size(10, 15)
    inch = [INCH / 4, INCH * 3 / 8, INCH / 2]
    finger = draw.one_of(inch if page.inches else [Fraction(each) for each in (6, 8, 10)])
    fingers = draw.chance(50)
    high = finger * draw.between(9, 13) if fingers else page.size(70, 150)
    page.measures(wide, deep, high)
    page.part(
        f"2 sides, front to back, on edge, {say(high)} x {say(wall)}, at left and right", "sides"
    )
    page.part(f"2 ends, across, on edge, {say(high)} x {say(wall)}, at front and back", "ends")
    word = page.either("crossing", "into")
    if fingers:
        size = page.either(f" {say(finger)}", f" {say(finger)}")
        page.cuts.append(f"ends {word} sides: {page.either('box joint', 'finger joint')}{size}")
    else:
        count = page.either("", "2 ", "3 ") if high > 90 else ""
        tails = page.either("", "", ", ends carry the tails")
        page.cuts.append(f"ends {word} sides: {count}dovetails{tails}")
    if draw.chance(70):
        sheet = "1/4" if page.inches else page.either("5", "6")
        up = say(page.size(8, 11))
        page.part(
            f"1 bottom, flat, {sheet} thick, inside sides and ends, groove "
            f"{say(page.rounded(wall / 3))}, up {up}, of birch ply",
            "bottom",
        )
        page.stage("box", "sides, ends, bottom", joints=12)
    else:
        page.stage("box", "sides, ends", joints=8)


def tailed_drawer(page: Page) -> None:
    """A drawer: tails behind a lap in front, tails right through behind."""
    say = page.say
    page.title = page.either("Drawer", "Drawer for thread")
    wide, deep, high = page.size(260, 500), page.size(220, 400), page.size(70, 150)
    wall, front = page.size(10, 13), page.size(16, 21)
    page.measures(wide, deep, high)
    page.part(f"1 front, across, on edge, {say(high)} x {say(front)}, at front", "front")
    count = page.either("", "2 ", "3 ") if high > 90 else ""
    lap = page.size(5, 6)
    deep_words = page.either("", f" {say(front - lap)} deep")
    page.part(
        f"2 sides, front to back, on edge, {say(high)} x {say(wall)}, at left and right, "
        f"{count}half-blind dovetails{deep_words} into front, 0 from back",
        "sides",
    )
    page.part(
        f"1 back, across, on edge, {say(page.rounded(high - page.size(10, 16)))} x {say(wall)}, "
        "dovetails into sides, at back, flush with top of sides",
        "back",
    )
    page.stage("drawer", "front, sides, back", joints=8)
