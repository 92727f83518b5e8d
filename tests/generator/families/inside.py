"""What stands in a case, and its back; each function returns the names that are glued into it."""

from collections.abc import Callable

from tests.generator.families.carcass import Carcass, inner
from tests.generator.families.fitted import hung, pinned, running
from tests.generator.joints import housing
from tests.generator.page import Page


def back(page: Page, made: Carcass) -> None:
    """Write a back that floats in a groove, or is one of sheet goods."""
    say = page.say
    thick = "6 mm" if not page.inches else "1/4"
    depth = page.rounded(made.board / 3)
    wood = page.either(", of birch ply", ", of birch ply", "")
    if not wood:
        thick = say(page.size(7, 9))
    page.part(
        f"1 back, upright, facing front, {thick} thick, inside sides and top and bottom, "
        f"groove {say(depth)}, {say(page.size(8, 14))} from back{wood}"
        + (", glued from 5" if not wood else ""),
        "back",
    )


def rabbeted_back(page: Page, made: Carcass) -> bool:
    """Write a back that drops into a rabbet; return whether it is named in the glue-up."""
    say, draw = page.say, page.draw
    depth = page.either("", f" {say(page.rounded(made.board / 3))}")
    if draw.chance(30) and made.wide > 300:
        count = draw.between(3, 6)
        page.part(
            f"{count} back boards, upright, facing front, {say(page.size(7, 9))} thick, inside "
            f"sides and top and bottom, rabbet{depth}"
            f"{page.either('', ', 1 mm between', ', ship lap')}",
            "back boards",
        )
        return False
    page.part(
        f"1 back, upright, facing front, {'1/4' if page.inches else '6'} thick, of birch ply, "
        f"inside sides and top and bottom, {page.either('rabbet', 'rebate')}{depth}",
        "back",
    )
    return draw.chance(30)


def shelves(page: Page, made: Carcass) -> list[str]:
    """Write shelves in housings, one or a row that is spread."""
    say, draw = page.say, page.draw
    count = draw.between(1, 3) if made.clear > 500 else 1
    run = say(inner(page, made))
    if not made.planted:
        run = page.either(f"depth - {say(made.deep - inner(page, made))}", run)
    sheet = made.staves if "ply" in made.staves or made.deep > 220 else ""
    if count == 1:
        page.part(
            f"1 shelf, flat, {run} x {say(made.board)}, {housing(page, made.board)} into "
            f"sides{page.either('', '', ', glue the front 60 mm')}, "
            f"up {say(page.rounded(made.high / 2))}, 0 from front{sheet}",
            "shelf",
        )
        return ["shelf"]
    page.part(
        f"{count} shelves, across, flat, {run} x {say(made.board)}, "
        f"{housing(page, made.board)} into sides, between bottom and top, "
        f"spread up and down, 0 from front{sheet}",
        "shelves",
    )
    return ["shelves"]


def heights(page: Page, made: Carcass) -> list[str]:
    """Write two shelves at heights of their own."""
    say = page.say
    step = page.rounded(made.clear / 3)
    first = made.high - made.board - made.clear + step
    page.part(
        f"2 shelves, flat, {say(inner(page, made))} x {say(made.board)}, "
        f"{housing(page, made.board)} into sides, 0 from front, up {say(first)}"
        f"{page.either(', ', ' and ')}{say(first + step)}"
        f"{made.staves if made.deep > 220 else ''}",
        "shelves",
    )
    return ["shelves"]


def divider(page: Page, made: Carcass) -> list[str]:
    """Write a divider with shelves on either side of it."""
    say, draw = page.say, page.draw
    run, board = say(inner(page, made)), say(made.board)
    spec = housing(page, made.board)
    sheet = made.staves if made.deep > 220 else ""
    place = page.either("", f", {say(page.rounded(made.wide / 3))} from left")
    page.part(
        f"1 divider, upright, facing side, {run} x {board}, {spec} into bottom and top, "
        f"0 from front{place}{sheet}",
        "divider",
    )
    taken = ["divider"]
    sides = draw.some(("left", "right"), 2)
    base = made.high - made.board - made.clear
    for side in sides:
        up = base + page.rounded(made.clear * draw.between(3, 6) / 10)
        page.part(
            f"1 {side} shelf, flat, {run} x {board}, {spec} into divider and {side} side, "
            f"up {say(up)}, 0 from front{sheet}",
            f"{side} shelf",
        )
        taken.append(f"{side} shelf")
    return taken


def doors(page: Page, made: Carcass) -> list[str]:
    """Write one door or two in the opening, and what they hang on."""
    say = page.say
    page.values.append("bay = opening between sides and top and bottom")
    gap = page.either("2 mm", "1.5 mm", "2 mm up and down, 1 mm at ends")
    staves = f", glued from {int(made.wide // 250) + 2}"
    if made.wide > 420:
        page.part(
            f"2 doors, upright, facing front, {say(page.size(18, 20))} thick, in bay, gap "
            f"{gap}, 3 mm between, at left and right{staves}",
            "doors",
        )
    else:
        page.part(
            f"1 door, upright, facing front, {say(page.size(18, 20))} thick, in bay, gap "
            f"{gap}, 0 from front{staves}",
            "door",
        )
    door = "doors" if made.wide > 420 else "door"
    page.bought.append(f"bought {4 if door == 'doors' else 2} hinges, for {door}, order first")
    page.bought.append(f"bought {2 if door == 'doors' else 1} knobs, 25 mm dia, for {door}")
    return []


def trays(page: Page, made: Carcass) -> list[str]:
    """Write trays of a pattern of the notes, on ledgers along the sides."""
    say, draw = page.say, page.draw
    count = draw.between(1, 3) if made.clear > 330 else 1
    tall = page.size(55, 75)
    page.patterns += [
        "pattern tray with width, depth, height, wall = 10 mm, 8 mm to 14 mm",
        "2 tray sides, front to back, on edge, height x wall, at left and right, up 0",
        "2 tray ends, across, on edge, height x wall, between tray sides, at front and back, up 0",
        "tray ends into tray sides: glue",
        (
            "1 tray bottom, flat, 5 mm thick, of birch ply, inside tray sides and tray ends, "
            "groove 4 mm, up 6 mm"
        ),
        "glue up tray box: tray sides, tray ends, tray bottom",
        "end",
    ]
    base = made.high - made.board - made.clear
    ups = [base + page.rounded(made.clear * (n + 1) / (count + 2)) for n in range(count)]
    rise = page.size(18, 22)
    run = page.rounded(made.deep - (35 if made.groove else 15))
    page.part(
        f"{2 * count} ledgers, front to back, on edge, {say(run)} x {say(rise)} x "
        f"{say(page.size(9, 10))}, 0 from front, on the inside of sides, screws, "
        f"up {', '.join(say(up) for up in ups)}",
        "ledgers",
    )
    page.values.append("bay = opening between sides and top and bottom")
    wall = f", wall {say(page.size(9, 12))}" if draw.chance(30) else ""
    if len(ups) == 1:
        page.part(
            f"1 tray, as tray, in bay, gap 2 mm across, {say(run)} deep, {say(tall)} high, "
            f"0 from front, up {say(ups[0] + rise)}{wall}"
        )
    else:
        page.part(
            f"{count} trays, as tray, in bay, gap 2 mm across, {say(run)} deep, {say(tall)} "
            f"high, 0 from front, up {', '.join(say(up + rise) for up in ups)}{wall}"
        )
    return []


def loose(page: Page, made: Carcass) -> list[str]:
    """Write a shelf that lies loose on pins in rows of holes."""
    say, draw = page.say, page.draw
    page.values.append("bay = opening between sides and top and bottom")
    run = inner(page, made) - 10
    page.part(
        f"1 shelf, flat, {say(page.rounded(run))} x {say(page.size(15, 18))}, in bay, gap "
        f"1 mm across, {say(page.rounded(made.clear / 2))} above the bottom of bay, "
        f"{say(page.size(5, 10))} from front"
        f"{', glued from 2' if run > 150 else ''}",
        "shelf",
    )
    pin, deep = ("1/4", "3/8") if page.inches else ("5", "10")
    step = page.size(30, 34)
    first = made.high - made.board - made.clear + page.rounded(made.clear / 3)
    back = 60 if made.groove else 45
    page.cuts.append(
        f"holes in sides: inside, {pin} dia, {deep} deep, rows "
        f"{say(page.size(35, 40))} from front and {say(page.size(back, back + 5))} "
        f"from back, {draw.between(3, 5)} at {say(step)} from {say(first)}"
    )
    page.bought.append(f"bought 4 shelf pins, {pin} dia, for shelf")
    return []


def nothing(page: Page, _: Carcass) -> list[str]:
    """Write nothing that stands inside."""
    page.values.append("bay = opening between sides and top and bottom")
    if page.draw.chance(50):
        page.bought.append("bought 2 hangers, for sides")
    return []


INSIDES: tuple[Callable[[Page, Carcass], list[str]], ...] = (
    shelves,
    shelves,
    heights,
    divider,
    doors,
    trays,
    loose,
    nothing,
    pinned,
    pinned,
    hung,
    hung,
    running,
)
"""What may stand in a case; one of these."""
