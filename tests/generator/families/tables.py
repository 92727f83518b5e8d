"""Stools, tables and stands: legs, rails tenoned into them, something below, a top."""

from fractions import Fraction

from tests.generator.extras import hardware, leg_cuts, rail_cuts, top_cuts
from tests.generator.joints import Rail, housing, tenon, through_tenon
from tests.generator.page import Page


def table(page: Page) -> None:
    """A base of four legs and four rails with what stands, lies and hangs on it."""
    draw, say = page.draw, page.say
    small = draw.chance(50)
    wide = page.size(300, 520) if small else page.size(600, 1400 if draw.chance(10) else 1120)
    deep = page.size(240, 340) if small else page.size(320, 700)
    high = page.size(200, 450) if small else page.size(420, 760)
    page.measures(wide, deep, high)
    page.title = page.either("Stool", "Step stool") if small else page.either("Table", "Desk")
    leg = page.size(36, 46) if small else page.size(42, 65)
    overhang = page.size(10, 30)
    seat = page.either("seat", "top") if small else "top"
    top = page.size(20, 28)
    rail = page.size(45, 65) if small else page.size(70, 115)
    thick = page.size(18, 24)
    back = page.size(2, 5)
    clear = high - top - rail
    inset = page.value("overhang", overhang)
    page.part(f"4 legs, {_legs(page, leg, leg)}, at corners, set in {inset}", "legs")
    reveal = page.value("reveal", back)
    joint = tenon(page, Rail(rail, thick, leg, back, end=True))
    flush = page.either(", flush with top of legs", "", "")
    long, short = page.either("long", "long", "side"), page.either("short", "short", "cross")
    rails = page.either("rails", "aprons")
    edge = page.either("on edge, ", "", "on its edge, ")
    apart = page.either(", knock-down", ", dry", ", bolted") if draw.chance(10) else ""
    for name, run, loose in ((long, "across", apart), (short, "front to back", "")):
        page.part(
            f"2 {name} {rails}, {run}, {edge}{say(rail)} x {say(thick)}, {joint}{loose} into legs, "
            f"set back {reveal}{flush}",
            f"{name} {rails}",
        )
    inner = wide - 2 * overhang - 2 * leg
    members = [f"{long} {rails}"]
    joints = 4
    if clear >= 200 and not apart and draw.chance(45):
        clear, joints = _low_rails(page, leg, back, clear, members)
    elif not apart and draw.chance(15):
        middle = page.size(50, 70)
        page.part(
            f"1 stretcher, front to back, flat, {say(middle)} x {say(thick)}, between "
            f"{long} {rails}: {housing(page, thick)}, {say(page.size(10, 14))} below the top",
            "stretcher",
        )
        members.append("stretcher")
        joints += 2
    _top(page, seat, top, deep, (f"{long} {rails}", f"{short} {rails}"))
    leg_cuts(page, "legs", leg, clear)
    rail_cuts(page, f"{long} {rails}", rail, thick, inner)
    hardware(page, "legs")
    frame = page.either("side frames", "side frames", "leg pairs", "leg pairs", "ends")
    lows = ", 1 low rail" if any("low rails," in line for line in page.parts) else ""
    page.stage(frame, f"2 legs, 1 {short} {rails[:-1]}{lows}", count=2, joints=4 if lows else 2)
    if not apart:
        page.stage("base", ", ".join([frame, *members]), joints=joints)


def _legs(page: Page, width: Fraction, thick: Fraction) -> str:
    return f"{page.either('upright', 'upright', 'standing')}, {page.sizes(width, thick)}"


def _low_rails(
    page: Page, leg: Fraction, back: Fraction, clear: Fraction, members: list[str]
) -> tuple[Fraction, int]:
    """Write low rails at the ends, and a stretcher or a shelf between them."""
    draw, say = page.draw, page.say
    width, thick = page.size(36, 55), page.size(18, 24)
    up = page.size(70, max(80, int(clear) - 110))
    joint = tenon(page, Rail(width, thick, leg, back, corner=False))
    page.part(
        f"2 low rails, front to back, on edge, {say(width)} x {say(thick)}, {joint} into "
        f"legs, set back {say(back)}, up {say(up)}",
        "low rails",
    )
    kind = draw.one_of(("stretcher", "slats", "through", "nothing", "ledgers", "board"))
    joints = 4
    if kind == "stretcher":
        spec = tenon(page, Rail(width, thick, thick, corner=False))
        page.part(
            f"1 stretcher, across, on edge, {say(width)} x {say(thick)}, "
            f"{'tenon' if 'tenon' not in spec else spec} into low rails",
            "stretcher",
        )
        members.append("stretcher")
        joints = 6
    elif kind == "through":
        spec = through_tenon(page, Rail(width, thick, thick, corner=False))
        page.part(
            f"1 stretcher, across, on edge, {say(width)} x {say(thick)}, {spec} into low rails",
            "stretcher",
        )
        members.append("stretcher")
        joints = 6
    elif kind in {"slats", "ledgers"}:
        _slats(page, kind)
    elif kind == "board":
        room = page.rounded(page.overall[1] - 2 * leg - 70)
        page.part(
            f"1 low board, across, flat, {say(room)} x {say(page.size(16, 20))}, onto low "
            f"rails{page.either(', glued from 3', ', glued from 4')}",
            "low board",
        )
        page.cuts.append("low board onto low rails: screws")
    return up, joints


def _slats(page: Page, kind: str) -> None:
    draw, say = page.draw, page.say
    count, wide, thick = draw.between(3, 5), page.size(18, 30), page.size(12, 18)
    host = "low rails"
    if kind == "ledgers":
        page.part(
            f"2 ledgers, front to back, on edge, {say(page.size(20, 25))} x "
            f"{say(page.size(18, 20))}, on the inside of low rails, screws, "
            f"{say(thick)} below the top",
            "ledgers",
        )
        host = "ledgers"
    spread = page.either(
        "spread front to back", "spread front to back", "spread front to back, same gap at ends"
    )
    after = page.either(", cut after glue up base", "", "", "")
    page.part(
        f"{count} slats, across, flat, {say(wide)} x {say(thick)}, onto {host}, "
        f"{'between legs, ' if kind == 'slats' else ''}{spread}{after}",
        "slats",
    )
    page.cuts.append(f"slats onto {host}: screws")


def _top(page: Page, seat: str, thick: Fraction, deep: Fraction, rails: tuple[str, str]) -> None:
    """Write a top: one board, staves, sheet goods or a row of slats."""
    draw, say = page.draw, page.say
    kind = draw.one_of(("staves", "staves", "staves", "board", "slats", "sheet"))
    if kind == "slats":
        slat = page.size(40, 70)
        count = max(2, int(deep / (slat + 12)))
        page.part(
            f"{count} {seat} slats, across, flat, {say(slat)} x {say(thick)}, onto "
            f"{rails[1]}, spread front to back, set in 0 across, 0 at front and back",
            f"{seat} slats",
        )
        page.cuts.append(f"{seat} slats onto {rails[1]} and {rails[0]}: screws")
        return
    words = ""
    if kind == "staves" or (kind == "board" and deep > 200):
        least = int(deep // 130) + 1
        words = (
            f", {page.either('glued from', 'glued from', 'glued up from')} "
            f"{draw.between(least, least + 2)}{page.either('', ' staves')}"
        )
        if draw.chance(8):
            words += ", in sequence"
    if kind == "sheet":
        words = ", of birch ply"
        thick_words = say(thick)
    else:
        thick_words = page.value("top thick", thick)
    page.part(f"1 {seat}, flat, {thick_words} thick{words}", seat)
    hosts = f"{rails[0]} and {rails[1]}"
    if kind == "sheet":
        way = "screws"
    else:
        way = page.either(
            *("buttons", "buttons", f"{draw.one_of((4, 6, 8))} buttons", "wooden buttons"),
            *("clips", f"{draw.one_of((4, 6, 8))} clips"),
            *("figure-8 plates", "figure-8 plates", "slotted screws"),
        )
        if "buttons" in way and draw.chance(30):
            hosts = rails[0]
        if "buttons" in way and draw.chance(25):
            narrow = page.size(6, 8)
            page.cuts.append(
                f"groove in {rails[0]}: inside, {say(narrow)} wide, "
                f"{say(page.size(8, 9))} deep, {say(page.size(11, 13))} from top, "
                f"{page.either('through', 'full length')}"
            )
            hosts = rails[0] if "6" in way or draw.chance(50) else hosts
    legs = "" if "base's" in hosts else page.either("", "legs and ")
    page.cuts.append(f"{seat} onto {legs}{hosts}: {way}")
    top_cuts(page, seat, thick, deep)


def pattern_table(page: Page) -> None:
    """A table on the shipped base of legs and aprons."""
    draw, say = page.draw, page.say
    wide, deep, high = page.size(500, 1300), page.size(320, 640), page.size(380, 760)
    page.measures(wide, deep, high)
    page.title = "Table on a base"
    top, over = page.size(20, 28), page.size(15, 40)
    leg, apron = page.size(40, 65), page.size(60, 110)
    words = "".join(
        draw.some(
            (
                f", leg {say(leg)}",
                f", apron {say(apron)}",
                f", board {say(page.size(18, 26))}",
                f", reveal {say(page.size(2, 5))}",
            ),
            4,
        )
    )
    page.part(
        f"1 base, as apron base, {say(wide - 2 * over)} wide, {say(deep - 2 * over)} deep, "
        f"{say(high - top)} high{words}, set in {say(over)}",
    )
    _top(page, "top", top, deep, ("base's long aprons", "base's short aprons"))
    page.bare.append("base's posts")
    if draw.chance(40):
        page.cuts.append(f"chamfer on base's posts: bottom end, {say(page.size(2, 3))} wide")
    if draw.chance(30):
        rail_cuts(page, "base's long aprons", Fraction(60), Fraction(18), wide / 2)
