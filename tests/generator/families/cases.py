"""Cases: sides, top and bottom in housings, and what stands in them."""

from fractions import Fraction

from tests.generator.families.carcass import Carcass
from tests.generator.families.inside import INSIDES, back, rabbeted_back
from tests.generator.joints import at_the_end, housing
from tests.generator.page import INCH, Page


def case(page: Page) -> None:
    """A case that stands or hangs, with shelves, dividers, doors, trays or rows of holes."""
    draw, say = page.draw, page.say
    page.title = page.either("Bookcase", "Wall case", "Cabinet", "Pigeonholes")
    wide, deep = page.size(300, 800), page.size(160, 300)
    high, board = page.size(300, 1000), page.size(15, 20)
    page.measures(wide, deep, high)
    name = page.value("board", board)
    planted = draw.chance(15)
    staves = f", glued from {int(deep // 130) + 1 + draw.below(2)}" if deep > 190 else ""
    if draw.chance(15):
        staves = f", of birch ply{_lips(page)}"
    tall = page.either(f"{say(high)} x ", "height x ", "")
    run = say(deep) if planted else page.either(say(deep), "depth")
    page.part(
        f"2 sides, upright, facing side, {tall}{run} x {name}, at left and right{staves}", "sides"
    )
    spec = housing(page, board)
    page.part(
        f"1 top, flat, {run} x {name}, into sides: {at_the_end(page, board)}, flush top{staves}",
        "top",
    )
    toe = page.size(40, 80)
    low = page.either("flush bottom", f"up {say(toe)}", "up 0")
    page.part(f"1 bottom, flat, {run} x {name}, into sides: {spec}, {low}{staves}", "bottom")
    groove = not planted and draw.chance(50)
    clear = high - 2 * board - (toe if low.startswith("up 4") or "up 5" in low else 0)
    made = Carcass(wide, deep, high, board, clear, groove, planted, staves)
    members = ["sides", "top", "bottom"]
    joints = 4
    if groove:
        back(page, made)
        members.append("back")
        joints += 4
    elif not planted and draw.chance(40) and rabbeted_back(page, made):
        members.append("back")
        joints += 4
    taken = draw.one_of(INSIDES)(page, made)
    members += taken
    if planted:
        _planted_back(page)
    page.stage("case", ", ".join(members), joints=joints + 2 * len(taken))
    if draw.chance(10) and name == "board":
        page.values.append(f"measured board = {say(board - page.size(1, 2) / 4)}")
    _extras(page)
    if not groove and draw.chance(35):
        page.cuts.append(f"chamfer on sides: front edges, {say(page.size(2, 3))} wide")


def _lips(page: Page) -> str:
    """Return how the edges of sheets are covered, if they are."""
    where = page.either("at front", "at front and back", "along both long edges")
    thick = page.say(page.size(3, 10))
    return page.either(
        "",
        f", lipped {thick} of oak {where}",
        f", lipped {thick} thick of ash {where}",
        f", edge banded {where}",
    )


def _extras(page: Page) -> None:
    draw = page.draw
    wide = page.overall[0]
    if draw.chance(12):
        page.header.append(f"at most {page.say(wide + page.size(10, 30))} wide, the niche")
    if draw.chance(12):
        page.bought.append("bought 4 felt pads, for sides")


def _planted_back(page: Page) -> None:
    """Write a back of sheet goods that is screwed on from behind."""
    wide, deep, high = page.overall
    thick = INCH / 4 if page.inches else Fraction(6)
    page.part(
        f"1 back, upright, facing front, {page.say(thick)} thick, on the back of sides and top and "
        f"bottom, screws, of {page.either('birch ply', 'MDF')}",
        "back",
    )
    page.measures(wide, deep + thick, high)


def pattern_case(page: Page) -> None:
    """The shipped case, or a row of them side by side."""
    draw, say = page.draw, page.say
    page.title = "Wall boxes"
    count = draw.between(1, 2)
    each, deep, high = page.size(280, 600), page.size(150, 250), page.size(250, 800)
    page.measures(each * count, deep, high)
    words = "".join(
        draw.some((f", board {say(page.size(15, 20))}", f", back inset {say(page.size(8, 20))}"), 2)
    )
    if count == 1:
        page.part(f"1 box, as case, {say(each)} wide, {say(deep)} deep, {say(high)} high{words}")
    else:
        page.part(
            f"2 boxes, as case, {say(each)} wide, {say(deep)} deep, {say(high)} high{words}, "
            "at left and right"
        )
    owner = "box's" if count == 1 else "boxes'"
    page.bare += [f"{owner} sides", f"{owner} top"]
    if draw.chance(40):
        page.cuts.append(f"chamfer on {owner} sides: front edges, {say(page.size(2, 3))} wide")
    if draw.chance(40):
        page.cuts.append(
            f"holes in {owner} sides: inside, {'1/4' if page.inches else '5'} dia, "
            f"{'3/8' if page.inches else '9'} deep, rows {say(page.size(35, 40))} "
            f"from front, 4 at {say(page.size(30, 35))} from "
            f"{say(page.rounded(high / 3))}"
        )
