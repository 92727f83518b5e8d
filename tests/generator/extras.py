"""Cuts that have no mate: on legs, on rails, on tops and boards, and in what is glued already."""

from fractions import Fraction

from tests.generator.page import Page


def leg_cuts(page: Page, legs: str, leg: Fraction, clear: Fraction) -> None:
    """Write what makes legs lighter to the eye; `clear` is how much of them is bare below."""
    draw, say = page.draw, page.say
    if draw.chance(60):
        return
    ways = [f"chamfer on {legs}: bottom end, {say(page.size(2, 4))} wide"]
    below = say(page.rounded(clear) - page.size(15, 25))
    if clear >= 90:
        thin = page.rounded(leg * Fraction(7, 10))
        ways += [
            (
                f"taper in {legs}: inside faces, from {below}"
                f" above the bottom to the bottom end, {say(leg)} to {say(thin)}"
            ),
            (
                f"taper in {legs}: {draw.one_of(('all', 'left', 'left and right'))} faces, "
                f"from {below} above the bottom to the bottom end, {say(leg)} to {say(thin)}"
            ),
            f"bevel in {legs}: bottom inside end, {draw.one_of(('4', '8'))} degrees",
            f"chamfer on {legs}: all long edges, {say(page.size(2, 4))} wide",
            f"round-over on {legs}: outer edges, {say(page.size(3, 6))} radius",
        ]
    page.cuts.append(draw.one_of(ways))


def rail_cuts(page: Page, rails: str, width: Fraction, thick: Fraction, run: Fraction) -> None:
    """Write an arch, a bead, a slot to carry by, holes or a notch in rails on edge."""
    draw, say = page.draw, page.say
    if draw.chance(65) or width < 45:
        return
    far = page.rounded(run / 5)
    rise = page.rounded(width / 5)
    ways = [
        (
            f"curve in {rails}: bottom edge, {say(rise)} deep, from {say(far)} from left to "
            f"{say(far)} from right"
        ),
        f"arch in {rails}: bottom edge, {say(rise)} rise",
        f"bevel in {rails}: bottom outside edge, {draw.one_of(('10', '20'))} degrees",
        f"chamfer on {rails}: bottom edges, {say(page.size(2, 4))} wide",
        f"round-over on {rails}: lower outer edge, {say(page.size(3, 5))} radius",
        (
            f"notch in {rails}: bottom edge, {say(page.rounded(run / 4))} wide, {say(rise)} deep, "
            f"centred"
        ),
        (
            f"groove in {rails}: outside, {say(page.size(4, 6))} wide, {say(page.size(3, 5))} deep,"
            f" {say(page.rounded(width / 4))} from bottom, through"
        ),
        (
            f"rabbet in {rails}: bottom inner edge, {say(page.rounded(thick / 3))} wide, "
            f"{say(page.rounded(thick / 3))} deep"
        ),
    ]
    middle = say(page.rounded(width / 2))
    if width >= 60:
        hole = page.either("8", "10", "5") if not page.inches else page.either("1/4", "3/8")
        ways += [
            (
                f"slot in {rails}: outside, centred, {say(page.size(18, 24))} wide, "
                f"{say(page.size(80, 100))} long, through"
            ),
            (
                f"holes in {rails}: outside, {hole} dia, through, rows {middle}"
                f" from bottom, {draw.between(3, 6)} at {say(page.rounded(run / 12))} from "
                f"{say(page.rounded(run / 4))}"
            ),
            (
                f"2 holes in {rails}: outside, {hole} dia, {say(page.rounded(thick / 2))} deep, "
                f"{say(page.rounded(run / 5))} from each end"
            ),
        ]
    page.cuts.append(draw.one_of(ways))


def top_cuts(page: Page, top: str, thick: Fraction, deep: Fraction) -> None:
    """Write a moulding, a chamfer below, a hole or a slot in a top that lies flat."""
    draw, say = page.draw, page.say
    if draw.chance(60):
        return
    small = page.rounded(thick / 4)
    ways = [
        f"round-over on {top}: top edges, {say(small)} radius",
        f"chamfer on {top}: all bottom edges, {say(small)} wide",
        f"chamfer on {top}: all top edges, {say(small)} wide",
        (
            f"profile on {top}: front and end top edges, {page.either('ogee', 'ovolo', 'cove')}, "
            f"{say(page.rounded(thick / 3))} wide"
        ),
        (
            f"slot in {top}: top, centred, {say(page.size(20, 25))} wide, {say(page.size(80, 110))}"
            " long, through"
        ),
        (
            f"2 holes in {top}: top, {'3/8' if page.inches else '10'} dia, "
            f"{page.either('through', say(page.rounded(thick / 2)) + ' deep')}, "
            f"{say(page.size(60, 90))} from each end"
        ),
        (
            f"groove in {top}: top, {say(page.size(6, 10))} wide, {say(page.size(5, 7))} deep, "
            f"{say(page.rounded(deep / 4))} from back, "
            f"{page.either('through', 'stopped ' + say(page.size(40, 60)) + ' from left')}"
        ),
        f"bevel in {top}: front edge, {draw.one_of(('10', '15', '30'))} degrees",
        (
            f"bevel in {top}: front bottom edge and back bottom edge, 30 degrees\n"
            f"bevel in {top}: left bottom end and right bottom end, 30 degrees"
        ),
    ]
    page.cuts.append(draw.one_of(ways))


def after_glue(page: Page, parts: str, stage: str) -> None:
    """Write a cut that waits until its parts are glued up."""
    if page.draw.chance(25):
        small = page.say(page.size(2, 4))
        page.cuts.append(
            page.either(
                f"chamfer on {parts}: outer edges, {small} wide, after glue up {stage}",
                f"round-over on {parts}: outer edges, {small} radius, after glue up {stage}",
            )
        )


def hardware(page: Page, legs: str) -> None:
    """Write things to buy that go to the feet, and are never milled."""
    if page.draw.chance(25):
        thick = "1 1/4 dia" if page.inches else page.either("30 dia", "25 dia")
        page.bought.append(
            page.either(
                f"bought 4 glides, {thick}, for {legs}",
                f"bought 4 felt pads, for {legs}",
                f"buy four x levelling feet for {legs}, order first",
            )
        )


def stock(page: Page, wood: str) -> None:
    """Write wood on hand, enough or not."""
    draw = page.draw
    if draw.chance(20):
        rough = page.either(", rough", "", ", rough, cup 3 mm", ", rough, twist 2 mm")
        length = draw.one_of(("1800 mm", "2400 mm", "2100 mm", "8'"))
        page.header.append(
            f"have {draw.between(1, 4)} boards of {wood}, {length} x {draw.between(110, 220)} mm x "
            f"{draw.one_of((27, 34, 40, 52))} mm{rough}"
        )


def slab(page: Page) -> None:
    """Write a slab for a board that keeps a waney edge, wide and long enough or not."""
    draw = page.draw
    if draw.chance(30):
        return
    long, wide, _ = page.overall
    room = draw.one_of((-10, 8, 20, 60, 260))
    narrower = draw.one_of((0, 0, 15, 40))
    wood = page.header[0].partition(" ")[2]
    bad = page.either("", ", cup 2 mm", ", knot 100 mm to 150 mm, 60 mm to 90 mm from the edge")
    page.header.append(
        f"have 1 slab of {wood}, {int(long) + draw.one_of((60, 250, 900))} mm x "
        f"{int(wide) + room + narrower} mm to {int(wide) + room} mm x 52 mm, waney both edges{bad}"
    )
