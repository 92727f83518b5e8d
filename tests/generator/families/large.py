"""Large pieces: patterns and families on top of each other."""

from fractions import Fraction

from tests.generator.joints import Rail, housing, tenon
from tests.generator.page import Page


def cabinet_on_stand(page: Page) -> None:
    """A case, shipped or written out, on a base, shipped or written out."""
    draw, say = page.draw, page.say
    page.title = "Cabinet on a stand"
    wide, deep = page.size(450, 900), page.size(240, 320)
    low, up, over = page.size(250, 420), page.size(350, 600), page.size(10, 20)
    board, leg = page.size(16, 20), page.size(36, 46)
    page.measures(wide, deep, low + up)
    if draw.chance(60):
        page.part(
            f"1 stand, as apron base, {say(wide - 2 * over)} wide, {say(deep - 2 * over)} "
            f"deep, {say(low)} high, leg {say(leg)}, set in {say(over)}, up 0"
        )
        rails = ("stand's long aprons", "stand's short aprons")
        page.bare.append("stand's posts")
    else:
        _stand(page, leg, over, low)
        rails = ("long rails", "short rails")
    if draw.chance(60):
        page.part(
            f"1 chest, as case, {say(wide)} wide, {say(deep)} deep, {say(up)} high, board "
            f"{say(board)}, down 0"
        )
        bottom, sides = "chest's bottom", "chest's sides"
        page.bare.append("chest's sides")
    else:
        _chest(page, deep, up, board, low)
        bottom, sides = "bottom", "sides"
    page.cuts.append(
        f"{bottom} onto {rails[0]}{page.either('', ' and ' + rails[1])}: "
        f"{page.either('screws', 'buttons')}"
    )
    if draw.chance(50):
        page.cuts.append(
            f"holes in {sides}: inside, {'1/4' if page.inches else '5'} dia, "
            f"{'3/8' if page.inches else '9'} deep, rows {say(page.size(35, 40))} "
            f"from front, {draw.between(3, 6)} at {say(page.size(30, 35))} from "
            f"{say(page.rounded(up / 3))}"
        )


def _stand(page: Page, leg: Fraction, over: Fraction, low: Fraction) -> None:
    say = page.say
    rail, thick, back = page.size(55, 80), page.size(18, 22), page.size(2, 4)
    page.part(
        f"4 legs, upright, {say(low)} x {page.sizes(leg, leg)}, at corners, set in "
        f"{say(over)}, up 0",
        "legs",
    )
    spec = tenon(page, Rail(rail, thick, leg, back, end=True))
    for name, run in (("long", "across"), ("short", "front to back")):
        page.part(
            f"2 {name} rails, {run}, on edge, {say(rail)} x {say(thick)}, {spec} into legs, "
            f"set back {say(back)}, flush with top of legs",
            f"{name} rails",
        )
    page.stage("ends", "2 legs, 1 short rail", count=2, joints=2)
    page.stage("stand", "ends, long rails")


def _chest(page: Page, deep: Fraction, up: Fraction, board: Fraction, low: Fraction) -> None:
    say = page.say
    staves = f", glued from {int(deep // 120) + 1}"
    spec = housing(page, board)
    size = f"{say(deep)} x {say(board)}"
    page.part(
        f"2 sides, upright, facing side, {say(up)} x {size}, at left and right, down 0{staves}",
        "sides",
    )
    page.part(f"1 lid, flat, {size}, into sides: {spec}, flush top{staves}", "lid")
    page.part(f"1 bottom, flat, {size}, into sides: {spec}, up {say(low)}{staves}", "bottom")
    count = page.draw.between(1, 2)
    name = "shelf" if count == 1 else "shelves"
    place = (
        f"up {say(low + page.rounded(up / 2))}"
        if count == 1
        else "between bottom and lid, spread up and down"
    )
    page.part(f"{count} {name}, across, flat, {size}, {spec} into sides, {place}{staves}", name)
    page.stage("case", f"sides, lid, bottom, {name}", joints=6 + 2 * count)


def pot_stand(page: Page) -> None:
    """The shipped lapped frame on posts with rails, slats on it, and a bought tray."""
    draw, say = page.draw, page.say
    page.title = "Plant stand"
    wide, deep, high = page.size(450, 800), page.size(260, 360), page.size(350, 650)
    page.measures(wide, deep, high)
    lath, reveal = page.size(15, 20), page.value("reveal", page.size(3, 6))
    page.values.append(f"lath = {say(lath)}")
    page.part(
        f"1 frame, as lapped frame, {say(wide)} wide, {say(deep)} deep, "
        f"{say(page.size(24, 28))} high, bar {say(page.size(44, 50))}, down lath"
    )
    leg = page.size(38, 44)
    page.part(
        f"4 posts, upright, {page.sizes(leg, leg)}, under frame, at corners, set in {reveal}",
        "posts",
    )
    rail, thick = page.size(55, 65), page.size(18, 20)
    spec = tenon(page, Rail(rail, thick, leg, Fraction(5), end=True))
    for name, run in (("long", "across"), ("side", "front to back")):
        page.part(
            f"2 {name} rails, {run}, on edge, {say(rail)} x {say(thick)}, {spec} into posts, "
            f"set back {reveal}, flush with top of posts",
            f"{name} rails",
        )
    lows = draw.chance(60)
    if lows:
        low = page.size(40, 50)
        page.part(
            f"2 low rails, front to back, on edge, {say(low)} x {say(thick)}, "
            f"{tenon(page, Rail(low, thick, leg, Fraction(5), corner=False))} into posts, "
            f"set back {reveal}, up {say(page.size(80, 140))}",
            "low rails",
        )
        if draw.chance(60):
            page.values.append("well = opening between posts and low rails")
            page.bought.append(
                f"bought 1 drip tray, {say(page.size(30, 40))} high, in well, gap "
                f"{reveal}, 0 above low rails, order first"
            )
    count = int(deep / 44)
    page.part(
        f"{count} slats, across, flat, {say(page.size(30, 36))} x lath, onto frame, spread "
        f"front to back{page.either('', ', no gap at ends')}",
        "slats",
    )
    page.cuts += [
        "frame's frame rails onto long rails: screws",
        "frame's frame ends onto side rails: screws",
        "slats onto frame: screws",
    ]
    if draw.chance(30):
        page.cuts.append(
            f"slot in side rails: outside, centred, {say(page.size(20, 22))} wide, "
            f"{say(page.size(80, 90))} long, through"
        )
    page.stage("sides", f"2 posts, 1 side rail{', 1 low rail' if lows else ''}", count=2)
    page.stage("stand", "sides, long rails")


def rack(page: Page) -> None:
    """A pattern of the notes in several instances, held together by rails."""
    draw, say = page.draw, page.say
    page.title = page.either("Shoe rack", "Wine rack", "Drying rack")
    wide, deep, high = page.size(500, 1000), page.size(260, 360), page.size(350, 700)
    page.measures(wide, deep, high)
    thick, bar = page.size(20, 26), page.size(40, 50)
    unit = "in" if page.inches else "mm"
    into = page.either("", ", tenon into standards")
    low = page.size(50, 80)
    page.patterns += [
        f"pattern ladder with width, depth, height, bar = {say(bar)} {unit}",
        "2 standards, upright, facing side, bar x width, at front and back",
        f"1 low rung, front to back, on edge, bar x width, up {say(low)} {unit}{into}",
        (
            f"1 high rung, front to back, on edge, bar x width, down "
            f"{say(page.size(25, 60))} {unit}{into}"
        ),
        *([] if into else ["low rung and high rung crossing standards: half lap"]),
        "glue up ladder frame: standards, low rung, high rung",
        "end",
    ]
    page.part(
        f"2 ladders, as ladder, {say(thick)} wide, {say(deep)} deep, {say(high)} high, "
        "at left and right"
    )
    count = draw.between(2, 4)
    for level in ("low", "high"):
        page.part(
            f"{count} {level} slats, across, flat, {say(page.size(30, 38))} x "
            f"{say(page.size(15, 18))}, onto ladders' {level} rungs, spread front to back"
            ", between ladders' standards",
            f"{level} slats",
        )
        page.cuts.append(f"{level} slats onto ladders' {level} rungs: screws")
    page.bare.append("ladders' standards")
