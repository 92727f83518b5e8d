"""What is fitted into a case that stands: shelves on pins, hung doors, drawers and their fronts."""

from fractions import Fraction

from tests.generator.families.carcass import Carcass, inner
from tests.generator.page import INCH, Page


def _bay(page: Page) -> None:
    page.values.append("bay = opening between sides and top and bottom")


def pinned(page: Page, made: Carcass) -> list[str]:
    """Write loose shelves on pins: where the rows lie follows, or is said."""
    say, draw = page.say, page.draw
    _bay(page)
    count = draw.between(1, 2) if made.clear > 450 else 1
    run = inner(page, made) - 10
    name = "shelf" if count == 1 else "shelves"
    place = (
        "spread up and down"
        if count == 2
        else f"{say(page.rounded(made.clear / 2))} above the bottom of bay"
    )
    staves = f", glued from {int(run // 130) + 1}" if run > 150 else ""
    page.part(
        f"{count} {name}, across, flat, {say(page.rounded(run))} x {say(page.size(15, 18))}, in "
        f"bay, gap 1 mm at ends, {say(page.size(0, 5))} from front, {place}{staves}",
        name,
    )
    pin = page.either("", " 1/4") if page.inches else page.either("", " 5", " 5, 32 apart")
    page.cuts.append(f"{name} onto sides: shelf pins{pin}")
    return []


def hung(page: Page, made: Carcass) -> list[str]:
    """Write a door on hinges: a plain one, or a framed or a slatted one of the shipped patterns."""
    say, draw = page.say, page.draw
    _bay(page)
    side = page.either("left", "right")
    long = say(INCH * 2 if page.inches else Fraction(draw.one_of((50, 60))))
    gap = page.either("gap 2 mm, ", "gap 1.5 mm, ", "")
    door = f"door to {side} side"
    if 400 < made.wide < 630 and made.clear > 380 and draw.chance(60):
        pattern = page.either("framed door", "framed door", "slatted door")
        page.part(f"1 door, as {pattern}, in bay, {gap}{say(page.size(19, 22))} deep, 0 from front")
        door = f"door's {side} stile to {side} side"
    else:
        page.part(
            f"1 door, upright, facing front, {say(page.size(17, 20))} thick, in bay, {gap}0 from "
            f"front, glued from {int(made.wide // 140) + 1}",
            "door",
        )
    many = "3 " if made.clear > 800 else page.either("2 ", "")
    page.cuts.append(f"{door}: {many}hinges{page.either('', f', {long} long')}")
    return []


TRAY = (
    "pattern tray with width, depth, height, wall = 14 mm, 10 mm to 16 mm",
    "2 tray sides, front to back, on edge, height x wall, at left and right, up 0",
    "2 tray ends, across, on edge, height x wall, between tray sides, at front and back, up 0",
    "tray ends into tray sides: dowels",
    (
        "1 tray bottom, flat, 5 mm thick, of birch ply, inside tray sides and tray ends, groove "
        "4 mm, up 6 mm"
    ),
    "glue up tray box: tray sides, tray ends, tray bottom",
    "end",
)


def running(page: Page, made: Carcass) -> list[str]:
    """Write a drawer on runners in grooves of its sides, with a front on it or without."""
    say, draw = page.say, page.draw
    if made.board < 18:
        # No screw goes through a runner into a thinner side.
        return pinned(page, made)
    page.patterns += TRAY
    _bay(page)
    front = page.size(15, 18)
    run = page.rounded(inner(page, made) - front - 6)
    fronted = draw.chance(60)
    tall = page.rounded(min(made.clear - 12, Fraction(160)))
    up = "4 mm" if fronted else page.either("2 mm", "1.5 mm")
    page.part(
        f"1 drawer, as tray, in bay, gap 1 mm across, {say(run)} deep, {say(tall)} high, "
        f"{say(front)} from front, {up} above the bottom of bay"
    )
    if fronted and made.clear < 250:
        page.part(
            f"1 drawer front, across, on edge, {say(front)} thick, in bay, "
            f"{page.either('gap 2 mm, ', '')}on the front of drawer's tray ends, screws, cut after "
            f"glue up case",
            "drawer front",
        )
    page.part(
        "2 runners, front to back, on the inside of sides, screws, running in drawer's tray sides",
        "runners",
    )
    return []


def standing(page: Page, made: Carcass) -> list[str]:
    """Write a drawer that stands on runners below its sides, which float behind or are glued."""
    say = page.say
    up = page.rounded(made.board + 15)
    tall = page.rounded(made.clear - 15 - made.board - 7)
    if tall < 60 or made.deep < 240:
        return running(page, made)
    page.patterns += TRAY
    rail = f"flat, {say(page.size(45, 60))} x {say(page.rounded(made.board))}"
    spec = f"housing {say(page.rounded(made.board / 3))} into sides, up {say(up)}"
    page.part(f"1 front rail, across, {rail}, {spec}, at front", "front rail")
    page.part(f"1 back rail, across, {rail}, {spec}, at back", "back rail")
    page.values.append("bay = opening between sides and front rail and top")
    page.part(
        f"1 drawer, as tray, in bay, gap 1 mm across, {say(page.rounded(made.deep - 20))} deep, "
        f"{say(tall)} high, 0 from front, 0 above the bottom of bay"
    )
    wide = page.either("", f"{say(page.size(32, 45))} wide, ")
    held = page.either(", glued at front", ", glued at front, gap 2 mm at back", "")
    page.part(
        f"2 runners, front to back, flat, {wide}{say(page.rounded(made.board))} thick, tenon "
        f"{say(page.size(15, 18))} long into front rail and back rail{held}, running under "
        "drawer's tray sides",
        "runners",
    )
    return ["front rail", "back rail", "runners"]


def shipped_drawer(page: Page, made: Carcass) -> list[str]:
    """Write a drawer of a shipped pattern that slides on the bottom."""
    say = page.say
    high = page.rounded(made.clear - 4)
    if not 75 <= high <= 215:
        return running(page, made)
    _bay(page)
    pattern = page.either("dovetailed drawer", "dovetailed drawer", "plywood drawer")
    page.part(
        f"1 drawer, as {pattern}, in bay, {page.either('gap 1 mm across, ', '')}"
        f"{say(page.rounded(inner(page, made) - 6))} deep, {say(high)} high, 0 from front, 0 above "
        "the bottom of bay"
    )
    if page.draw.chance(40):
        page.bought.append(f"bought 1 knob, {'1' if page.inches else '25'} dia, for drawer")
    return []


def low_case(page: Page) -> None:
    """A low case with a drawer that slides on its bottom or hangs on runners."""
    draw, say = page.draw, page.say
    page.title = page.either("Bedside case", "Case for a drawer")
    way = draw.one_of((running, running, shipped_drawer, shipped_drawer, standing, standing))
    wide, deep = page.size(320, 560), page.size(250 if way is standing else 220, 340)
    board = page.size(18, 20)
    high = page.size(180, 280) if way is standing else page.size(120, 220)
    page.measures(wide, deep, high)
    staves = f", glued from {int(deep // 120) + 1}"
    size, spec = f"{say(deep)} x {say(board)}", f"housing {say(page.rounded(board / 3))}"
    page.part(f"2 sides, upright, facing side, {size}, at left and right{staves}", "sides")
    page.part(f"1 top, flat, {size}, {spec} into sides, flush top{staves}", "top")
    page.part(f"1 bottom, flat, {size}, {spec} into sides, flush bottom{staves}", "bottom")
    made = Carcass(wide, deep, high, board, high - 2 * board, False, False, staves)
    inside = way(page, made)
    page.stage("case", ", ".join(("sides, top, bottom", *inside)))


def biscuited(page: Page) -> None:
    """A case of butted boards with biscuits, perhaps on a plinth or with a face frame."""
    draw, say = page.draw, page.say
    page.title = page.either("Shoe case", "Low bookcase")
    wide, deep, high = page.size(400, 800), page.size(220, 300), page.size(300, 600)
    board = page.size(18, 20)
    foot = page.size(70, 110) if draw.chance(30) else Fraction(0)
    page.measures(wide, deep, high + foot)
    staves = page.either(", of birch ply", f", glued from {int(deep // 120) + 1}")
    page.part(
        f"2 sides, upright, facing side, {say(deep)} x {say(board)}, at left and right"
        f"{f', up {say(foot)}' if foot else ''}{staves}",
        "sides",
    )
    page.part(
        f"1 top, flat, {page.sizes(wide, deep, board)}{staves}, down 0"
        if foot
        else f"1 top, flat, {page.sizes(wide, deep, board)}{staves}",
        "top",
    )
    page.cuts.append(f"top onto sides: {page.either('biscuits', '2 biscuits', '4 dowels')}")
    inside = page.rounded(deep - page.size(10, 30))
    shelf = foot + page.rounded(high * draw.between(35, 60) / 100)
    page.part(
        f"1 shelf, across, flat, {say(inside)} x {say(board)}, {page.either('2 ', '')}biscuits"
        f"{page.either('', ' 53 mm long')} into sides, up {say(shelf)}{staves}",
        "shelf",
    )
    page.part(
        f"1 rail, across, on edge, {say(page.size(60, 80))} x {say(board)}, "
        f"{page.either('biscuits', 'loose tenon 20 mm long', 'pocket screws')} into sides, up "
        f"{say(foot + page.size(10, 25))}",
        "rail",
    )
    page.stage("case", "sides, shelf, rail, top", joints=8)
    if foot:
        page.part(
            f"1 plinth, as plinth, {say(wide)} wide, {say(deep)} deep, {say(foot)} high, up 0"
        )
        page.cuts.append("sides onto plinth")


def chest(page: Page) -> None:
    """A chest whose floor lies on cleats, under a plank top of the shipped pattern or open."""
    draw, say = page.draw, page.say
    page.title = page.either("Blanket chest", "Toy chest")
    wide, deep, high = page.size(500, 900), page.size(280, 400), page.size(200, 300)
    wall, top = page.size(16, 20), page.size(20, 24)
    lid = draw.chance(40)
    page.measures(wide, deep, high + (top if lid else 0))
    staves = f", glued from {int(high // 120) + 1}"
    for name, run, place in (
        ("sides", "across", "at front and back"),
        ("ends", "front to back", "at left and right"),
    ):
        inset = ""
        if name == "ends":
            inset = f", {page.either('rabbet', 'housing')} into sides"
            inset += f", set in {say(page.size(14, 24))} across" if "housing" in inset else ""
        page.part(
            f"2 {name}, {run}, on edge, {say(high)} x {say(wall)}, {place}{inset}, up 0{staves}",
            name,
        )
    rise, board = page.size(18, 22), page.size(12, 15)
    page.part(
        f"2 cleats, across, on edge, {page.sizes(rise, rise)}, on the inside of sides, between "
        f"ends, screws, up {say(page.size(10, 20))}",
        "cleats",
    )
    count = int(wide // 120)
    if draw.chance(50):
        page.part(
            f"{count} floor boards, front to back, flat, {say(board)} thick, onto cleats, between "
            f"ends and sides, {page.either('ship lap', 'tongue and groove')}",
            "floor boards",
        )
    else:
        page.part(
            f"{count} floor boards, front to back, flat, {say(page.size(80, 95))} x {say(board)}, "
            "onto cleats, between ends and sides, spread left to right",
            "floor boards",
        )
    page.cuts.append("floor boards onto cleats: screws")
    page.stage("chest", "sides, ends")
    if lid:
        page.part(
            f"1 lid, as plank top, {say(wide)} wide, {say(deep)} deep, {say(top)} high, onto sides"
        )
