"""Frames with half laps or mitres: flat, standing, crossing in the middle, of unequal thickness."""

from fractions import Fraction

from tests.generator.extras import after_glue, rail_cuts, top_cuts
from tests.generator.joints import Rail, bridle, lap, plain_tenon, tenon, tongued
from tests.generator.page import INCH, Page


def flat_frame(page: Page) -> None:
    """A lying frame of bars, with bars between, and perhaps legs, slats or cleats."""
    draw, say = page.draw, page.say
    page.title = page.either("Board frame", "Plinth frame", "Plant frame")
    wide, deep = page.size(300, 1050), page.size(220, 600)
    thick, bar = page.size(18, 32), page.size(40, 75)
    size = f"{say(bar)} x {page.value('bar thick', thick)}"
    on_legs = draw.chance(40)
    high = page.size(200, 600) if on_legs else thick
    floor = "" if on_legs else ", up 0"
    slat = page.size(12, 20) if draw.chance(40) else Fraction(0)
    sunk = f", down {say(slat)}" if slat and on_legs else floor
    page.measures(wide, deep, high + (0 if on_legs else slat))
    page.part(f"2 long bars, across, flat, {size}, at front and back{sunk}", "long bars")
    page.part(f"2 end bars, front to back, flat, {size}, at left and right{sunk}", "end bars")
    members, joints = ["long bars", "end bars"], 4
    corner = f"{lap(page)}{_shows(page, 'long bars')}"
    if not on_legs and not slat and draw.chance(40):
        corner = page.either("mitre", "mitred")
        if draw.chance(50):
            kerf = INCH / 8 if page.inches else Fraction(32, 10)
            deep = page.size(10, 16)
            many = page.either("1 spline", "2 splines")
            corner += f", {many} {say(kerf)} thick {say(deep)} deep"
    page.cuts.append(f"end bars crossing long bars: {corner}")
    room = wide - 2 * bar
    if draw.chance(45) and room > 3 * bar:
        count = 1 if room < 6 * bar or draw.chance(60) else 2
        spread = (
            ", spread across"
            if count == 2
            else page.either("", f", {say(bar + room // 3)} from left")
        )
        name = "middle bar" if count == 1 else "middle bars"
        page.part(f"{count} {name}, front to back, flat, {size}{spread}{sunk}", name)
        page.cuts.append(f"{name} crossing long bars: {lap(page)}")
        members.append(name)
        joints += 2 * count
        if draw.chance(35):
            page.part(f"1 cross bar, across, flat, {size}{sunk}", "cross bar")
            page.cuts.append(f"cross bar crossing end bars and {name}: {lap(page)}")
            members.append("cross bar")
            joints += 2 + count
    page.stage("frame", ", ".join(members), joints=joints)
    after_glue(page, " and ".join(members[:2]), "frame")
    if slat:
        count = max(2, int(deep / page.size(50, 80)))
        if draw.chance(30):
            page.part(
                f"{count} slats, across, flat, {say(slat)} thick, onto end bars, "
                f"{tongued(page, slat)}",
                "slats",
            )
        else:
            page.part(
                f"{count} slats, across, flat, {say(page.size(30, 42))} x {say(slat)}, onto end "
                f"bars, spread front to back{page.either('', ', no gap at ends')}",
                "slats",
            )
        page.cuts.append("slats onto end bars: screws")
    if on_legs:
        _legs_under(page)


def _shows(page: Page, name: str) -> str:
    return f", {name} show" if page.draw.chance(15) else ""


def _legs_under(page: Page) -> None:
    leg, back = page.size(36, 45), page.size(2, 4)
    inset = page.say(page.size(3, 8))
    page.part(
        f"4 legs, upright, {page.sizes(leg, leg)}, under long bars, at corners, set in {inset}",
        "legs",
    )
    rail, thick = page.size(50, 70), page.size(18, 22)
    size = f"{page.say(rail)} x {page.say(thick)}"
    for name, run in (("leg", "across"), ("side", "front to back")):
        spec = tenon(page, Rail(rail, thick, leg, back, end=True))
        page.part(
            f"2 {name} rails, {run}, on edge, {size}, {spec} into legs, flush with top of "
            f"legs, set back {page.say(back)}",
            f"{name} rails",
        )
    page.cuts.append(
        page.either("long bars onto leg rails: screws", "end bars onto side rails: screws")
    )
    page.stage("leg pairs", "2 legs, 1 side rail", count=2, joints=2)
    page.stage("stand", "leg pairs, leg rails")
    rail_cuts(page, "leg rails", rail, thick, page.overall[0] - 2 * leg)


def standing_frame(page: Page) -> None:
    """A trellis, a mirror or a gate: stiles that cross bars."""
    draw, say = page.draw, page.say
    page.title = page.either("Trellis", "Mirror frame", "Screen")
    wide, high, thick = page.size(300, 800), page.size(400, 1100), page.size(18, 30)
    page.measures(wide, thick, high)
    stile, rail = page.size(36, 60), page.size(36, 70)
    count, front = draw.between(0, 3), page.either("", ", 0 from front")
    facing = page.either("upright, facing front", "standing, facing front")
    page.part(
        f"2 stiles, {facing}, {say(stile)} x {say(thick)}, at left and right{front}", "stiles"
    )
    names = ["stiles"]
    if count and wide > (count + 2) * stile * 2:
        name = "mid stile" if count == 1 else "mid stiles"
        words = "" if count == 1 else ", spread across"
        page.part(f"{count} {name}, {facing}, {say(stile)} x {say(thick)}{words}", name)
        names.append(name)
    inset = page.size(60, 120)
    words = page.either("at top and bottom", f"at top and bottom, set in {say(inset)} up and down")
    page.part(f"2 bars, across, on edge, {say(rail)} x {say(thick)}, {words}{front}", "bars")
    show = _shows(page, "stiles") if len(names) == 1 else ""
    if "set in" not in words and thick >= 21 and draw.chance(25):
        page.cuts.append(f"bars {draw.one_of(('into', 'crossing'))} stiles: {bridle(page, thick)}")
        if len(names) > 1:
            page.cuts.append(f"{names[1]} crossing bars: {bridle(page, thick)}")
    else:
        page.cuts.append(
            page.either(
                f"{' and '.join(names)} crossing bars: {lap(page)}{show}",
                f"bars crossing {' and '.join(names)}: {lap(page)}",
            )
        )
    page.stage("frame", ", ".join([*names, "bars"]), joints=2 * (2 + count))
    if len(names) == 1 and "set in" not in words:
        _mirror(page, thick)
    else:
        after_glue(page, "stiles and bars", "frame")


def _mirror(page: Page, thick: Fraction) -> None:
    draw, say = page.draw, page.say
    if draw.chance(70):
        depth = page.rounded(thick / 3)
        page.cuts.append(
            f"{page.either('rabbet', 'rebate')} in frame: back inner edges, "
            f"{say(page.size(8, 10))} wide, {say(depth)} deep, after glue up frame"
        )
        page.values.append("light = opening between stiles and bars")
        page.bought.append(
            f"bought 1 mirror, {page.either('4 mm', '3 mm')} thick, in light"
            f"{page.either('', ', order after measured')}"
        )


def ladder(page: Page) -> None:
    """Stiles or rails with a row of members tenoned between them: a ladder, the side of a crib."""
    draw, say = page.draw, page.say
    page.title = page.either("Towel ladder", "Crib side", "Fence panel")
    wide, high, thick = page.size(350, 700), page.size(500, 1100), page.size(22, 34)
    page.measures(wide, thick, high)
    stile, count = page.size(40, 60), draw.between(3, 6)
    page.part(
        f"2 stiles, upright, facing front, {say(stile)} x {say(thick)}, at left and right", "stiles"
    )
    if draw.chance(50):
        rung = page.size(30, 45)
        spread = page.either(
            "spread up and down",
            "spread up and down, half a gap at ends",
            "spread up and down, same gap at the ends",
        )
        spec = tenon(page, Rail(rung, thick, stile, corner=False))
        page.part(
            f"{count} rungs, across, on edge, {say(rung)} x {say(thick)}, {spec} into "
            f"stiles, {spread}",
            "rungs",
        )
        page.stage("ladder", "stiles, rungs", joints=2 * count)
        return
    rail, slat, thin = page.size(45, 60), page.size(20, 30), page.size(13, 16)
    spec = plain_tenon(page, thick, stile)
    page.part(
        f"2 rails, across, on edge, {say(rail)} x {say(thick)}, {spec} into stiles, at "
        f"bottom and top",
        "rails",
    )
    page.part(
        f"{count} bars, upright, facing front, {say(slat)} x {say(thin)}, between stiles, "
        "spread across",
        "bars",
    )
    page.cuts.append(f"bars into rails: {page.either('tenon', 'tenon 16 mm')}")
    page.stage("panel", "stiles, rails, bars", joints=4 + 2 * count)


def duckboard(page: Page) -> None:
    """Thin slats lapped into thicker bearers, flush on top; or lying on them."""
    draw, say = page.draw, page.say
    page.title = page.either("Duckboard", "Trivet", "Bath mat")
    wide, deep, thick = page.size(350, 900), page.size(250, 500), page.size(26, 36)
    slat, count = page.size(45, 70), draw.between(3, 5)
    count = min(count, int(deep / (slat + 15)))
    page.measures(wide, deep, thick)
    inset = page.size(40, 80)
    page.part(
        f"2 bearers, front to back, flat, {say(page.size(45, 60))} x {say(thick)}, at left "
        f"and right, set in {say(inset)} across, up 0",
        "bearers",
    )
    thin = page.rounded(thick * Fraction(7, 10))
    spread = page.either(
        "spread front to back",
        "spread front to back, no gap at ends",
        "spread front to back, same gap at ends",
    )
    page.part(
        f"{count} slats, across, flat, {say(wide)} x {say(slat)} x {say(thin)}, {spread}, "
        f"flush with top of bearers",
        "slats",
    )
    page.cuts.append(f"slats crossing bearers: {lap(page)}")
    page.stage("board", "bearers, slats", joints=2 * count)


def pattern_frame(page: Page) -> None:
    """The shipped lapped frame with slats or a board on it."""
    draw, say = page.draw, page.say
    page.title = "Low deck"
    wide, deep, thick = page.size(400, 1000), page.size(260, 500), page.size(22, 32)
    board = page.size(15, 22)
    page.measures(wide, deep, thick + board)
    words = f", bar {say(page.size(40, 70))}" if draw.chance(60) else ""
    page.part(
        f"1 frame, as lapped frame, {say(wide)} wide, {say(deep)} deep, {say(thick)} high"
        f"{words}, up 0"
    )
    page.bare += ["frame's frame rails", "frame's frame ends"]
    if draw.chance(60):
        count = max(2, int(deep / 55))
        page.part(
            f"{count} slats, across, flat, {say(page.size(30, 42))} x {say(board)}, onto "
            f"frame, spread front to back{page.either('', ', no gap at ends')}",
            "slats",
        )
        page.cuts.append(f"slats onto {page.either('frame', 'frame s'[:5])}: screws")
    else:
        sheet = page.either(", of birch ply", ", of poplar ply")
        page.part(f"1 board, flat, {say(board)} thick{sheet}", "board")
        page.cuts.append("board onto frame: screws")
        top_cuts(page, "board", board, deep) if draw.chance(10) else None
