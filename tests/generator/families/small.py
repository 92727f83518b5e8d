"""Small things: trays and boxes, boards with cleats, framed panels, rails with holes."""

from fractions import Fraction

from tests.generator.extras import after_glue, slab, top_cuts
from tests.generator.joints import chisel, housing
from tests.generator.page import Page


def tray(page: Page) -> None:
    """A box tray: ends housed or butted between the sides, a bottom in a groove all round."""
    draw, say = page.draw, page.say
    page.title = page.either("Tea tray", "Seed tray", "Box", "Crate")
    wide, deep, high = page.size(300, 600), page.size(220, 400), page.size(50, 140)
    wall = page.size(12, 18)
    page.measures(wide, deep, high)
    high_words = page.either(say(high), "height")
    page.part(
        f"2 long sides, across, on edge, {high_words} x {say(wall)}, at front and back, up 0",
        "long sides",
    )
    inset = page.either("", f", set in {say(page.size(15, 25))} across")
    joint = ", into long sides: " + housing(page, wall) if inset or draw.chance(30) else ""
    if joint:
        inset = inset or f", set in {say(page.size(12, 20))} across"
    between = "" if joint else ", between long sides"
    page.part(
        f"2 ends, front to back, on edge, {high_words} x {say(wall)}, at left and right"
        f"{inset}{between}{joint}, up 0",
        "ends",
    )
    if not joint:
        page.cuts.append("ends between long sides: glue")
    sheet = "1/4" if page.inches else page.either("5", "6")
    page.part(
        f"1 bottom, {page.either('across, ', '')}flat, {sheet} thick, inside long sides and "
        f"ends, groove {say(page.rounded(wall / 3))}, up {say(page.size(7, 10))}, "
        f"of {page.either('birch ply', 'poplar ply')}",
        "bottom",
    )
    members = ["long sides", "ends", "bottom"]
    joints = 4
    if draw.chance(40) and wide > 380:
        page.part(
            f"1 divider, front to back, on edge, {say(page.rounded(high * 3 / 5))} x "
            f"{say(page.size(9, 12))}, into long sides: {housing(page, wall)}, up "
            f"{say(page.size(17, 20))}",
            "divider",
        )
        members.append("divider")
        joints += 2
    page.stage("tray", ", ".join(members), joints=joints + 4)
    if draw.chance(30):
        page.cuts.append(
            f"slot in ends: outside, centred, {say(page.size(20, 24))} wide, "
            f"{say(page.size(80, 90))} long, through"
            if high > 90
            else f"chamfer on long sides: outer top edges, {say(page.size(2, 3))} wide"
        )


def drawer(page: Page) -> None:
    """A loose drawer whose bottom slides in under the back, of sheet goods or of solid wood."""
    say = page.say
    page.title = page.either("Drawer", "Sewing drawer", "Drawer for nails")
    wide, deep, high = page.size(260, 560), page.size(220, 420), page.size(80, 150)
    wall = page.size(11, 15)
    page.measures(wide, deep, high)
    page.part(
        f"2 sides, front to back, on edge, {say(high)} x {say(wall)}, at left and right", "sides"
    )
    joint = page.either("rabbet", f"rabbet {say(page.rounded(wall / 2))}", housing(page, wall))
    back = page.either(housing(page, wall), "dowels" if wall >= 12 else "housing")
    page.part(
        f"1 front, across, on edge, {say(high)} x {say(page.size(16, 20))}, {joint} into sides"
        f"{', screws' if joint.startswith('rabbet') and page.draw.chance(40) else ''}, at front",
        "front",
    )
    page.part(
        f"1 back, across, on edge, {say(wall)} thick, {back} into sides, at back, "
        f"{say(page.size(2, 4))} below the top of sides",
        "back",
    )
    thick = "1/4" if page.inches else page.either("5", "6")
    wood = page.either(f"{thick} thick, of birch ply", f"{thick} thick, of birch ply", "")
    wood = wood or f"{say(page.size(7, 9))} thick, glued from {int(deep // 120) + 1}"
    deep_groove = say(page.rounded(wall / 2))
    groove = page.either("", f", groove {deep_groove}")
    if "glued from" in wood and page.draw.chance(60):
        groove = f", groove {'3/16' if page.inches else '5'} wide {deep_groove} deep"
    page.part(
        f"1 bottom, flat, {wood}, inside sides and front{groove}, under back"
        f"{page.either('', ', screws')}",
        "bottom",
    )
    page.stage("drawer", "sides, front, back", joints=4)


def board(page: Page) -> None:
    """A panel of staves, or a board with its waney edges, with cleats under it, or feet."""
    draw, say = page.draw, page.say
    page.title = page.either("Pastry board", "Bench top", "Lap board")
    wide, deep, thick = page.size(350, 900), page.size(250, 500), page.size(18, 30)
    cleat = page.size(20, 30)
    page.measures(wide, deep, thick + cleat)
    least = int(deep // 130) + 1
    staves = f"glued from {draw.between(least, least + 2)}"
    grown = draw.chance(20)
    if grown:
        staves = f"waney at {page.either('front', 'back', 'front and back')}"
    size = page.either(
        f"{say(wide)} x {say(deep)} x {say(thick)}",
        f"{say(thick)} thick",
        f"? x {say(deep)} x {say(thick)}",
    )
    page.part(f"1 board, across, flat, {size}, {staves}, down 0", "board")
    count = 2 if wide < 700 or draw.chance(50) else 3
    inset = page.size(30, 60)
    run = page.rounded(deep - page.size(20, 60))
    place = f"at left and right, set in {say(inset)} across" if count == 2 else "spread across"
    page.part(
        f"{count} cleats, front to back, flat, {say(run)} x {say(page.size(36, 50))} x "
        f"{say(cleat)}, {place}, under board, up 0",
        "cleats",
    )
    page.cuts.append("cleats under board: screws")
    if grown:
        slab(page)
    else:
        top_cuts(page, "board", thick, deep)


def panelled(page: Page) -> None:
    """A door: stiles and rails with tenons, panels in grooves, one or two of them."""
    draw, say = page.draw, page.say
    page.title = page.either("Cupboard door", "Panel", "Screen door")
    wide, high, thick = page.size(280, 560), page.size(400, 1000), page.size(20, 24)
    page.measures(wide, thick, high)
    stile, rail = page.size(50, 65), page.size(50, 75)
    page.part(
        f"2 stiles, upright, facing front, {page.either('', say(high) + ' x ', 'height x ')}"
        f"{say(stile)} x {say(thick)}, at left and right"
        + (f", horns {say(page.size(18, 26))}" if draw.chance(25) else ""),
        "stiles",
    )
    size = f"{say(chisel(page, thick * Fraction(7, 10)))} thick"
    length = say(page.rounded(stile * Fraction(6, 10)))
    joint = page.either(
        f"tenon {length} long {size}",
        f"tenon {length} long {size}",
        "tenon",
        f"through tenon {size}",
        f"tenon {length} long {size}, pegged",
        f"haunched tenon {length}",
    )
    page.part(
        f"2 rails, across, on edge, {say(rail)} x {say(thick)}, {joint} into stiles, at "
        "bottom and top",
        "rails",
    )
    groove = page.size(7, 9)
    members, panel = ["stiles", "rails"], ["panel"]
    wood = page.either("", "", ", of birch ply")
    thin = ("1/4" if page.inches else "6") if wood else say(page.size(7, 9))
    count = int(wide // 130) + 1
    wood = wood or f", glued from {count}" if wide > 230 else wood
    if draw.chance(35):
        up = page.rounded(high * draw.between(40, 60) / 100)
        page.part(
            f"1 lock rail, across, on edge, {say(rail)} x {say(thick)}, {joint} into stiles, "
            f"up {say(up)}".replace("haunched tenon", "tenon"),
            "lock rail",
        )
        members += ["lock rail", "upper panel", "lower panel"]
        panel = ["upper panel", "lower panel"]
        page.part(
            f"1 upper panel, upright, facing front, {thin} thick, inside stiles and lock rail"
            f" and top rail, groove {say(groove)}{wood}",
            "upper panel",
        )
        page.part(
            f"1 lower panel, upright, facing front, {thin} thick, inside stiles and bottom "
            f"rail and lock rail, groove {say(groove)}{wood}",
            "lower panel",
        )
    else:
        members.append("panel")
        page.part(
            f"1 panel, upright, facing front, {thin} thick, inside stiles and rails, "
            f"groove {say(groove)}{wood}",
            "panel",
        )
    page.stage("door", ", ".join(members), joints=4 + 2 * len(panel))
    after_glue(page, "stiles and rails", "door")
    for each in panel:
        if draw.chance(60):
            page.wishes.append(f"finish {each} before glue up door")


def hook_rail(page: Page) -> None:
    """One board or two with holes, notches and mouldings, and bought pegs."""
    draw, say = page.draw, page.say
    page.title = page.either("Hook rail", "Peg rail", "Key board")
    wide, high, thick = page.size(400, 1000), page.size(80, 120), page.size(18, 24)
    shelf = draw.chance(50)
    deep = page.size(90, 140) if shelf else thick
    top = page.size(16, 20)
    page.measures(wide, deep, high)
    page.part(
        f"1 back board, across, on edge, {say(high - top if shelf else high)} x {say(thick)}"
        f", 0 from back, up 0",
        "back board",
    )
    count = draw.between(3, 6)
    step = page.rounded(wide / (count + 1))
    hole = page.either("1/2", "3/8") if page.inches else page.either("10", "12")
    through = page.either("through", f"{say(page.rounded(thick * 3 / 5))} deep")
    page.cuts.append(
        f"holes in back board: front, {hole} dia, {through}, rows "
        f"{say(page.rounded(high / 3))} from {page.either('top', 'bottom')}, {count} "
        f"at {say(step)} from {say(page.rounded((wide - (count - 1) * step) / 2))}"
    )
    page.bought.append(f"bought {count} pegs, {hole} dia, for back board")
    if shelf:
        page.part(f"1 shelf, across, flat, {say(deep)} x {say(top)}, down 0", "shelf")
        page.cuts.append(f"shelf onto back board: {page.either('screws', 'screws', 'glue')}")
        if page.cuts[-1].endswith("glue"):
            page.stage("rack", "shelf, back board", joints=1)
        if draw.chance(30):
            page.part(
                f"2 brackets, front to back, on edge, {say(page.size(40, 60))} x "
                f"{say(page.size(16, 20))}, in front of back board, under shelf, at left and "
                f"right, set in {say(page.size(40, 90))} across",
                "brackets",
            )
            page.cuts.append("brackets under shelf: screws")
        top_cuts(page, "shelf", top, deep)
    elif draw.chance(50):
        page.cuts.append(
            page.either(
                f"chamfer on back board: all front edges, {say(page.size(3, 5))} wide",
                f"profile on back board: top front edge, ogee, {say(page.size(8, 10))} wide",
                f"notch in back board: bottom edge, {say(page.size(40, 80))} wide, "
                f"{say(page.size(10, 20))} deep, at left",
                f"round-over on back board: top front edge, {say(page.size(4, 6))} radius",
            )
        )


def screwed(page: Page) -> None:
    """A butted and screwed frame with a board on it."""
    draw, say = page.draw, page.say
    page.title = page.either("Trestle top", "Plinth", "Saw bench top")
    wide, deep, rail = page.size(400, 1000), page.size(250, 450), page.size(60, 100)
    thick, top = page.size(18, 24), page.size(18, 22)
    page.measures(wide, deep, rail + top)
    page.part(
        f"2 long rails, across, on edge, {say(rail)} x {say(thick)}, at front and back, up 0",
        "long rails",
    )
    page.part(
        f"2 end rails, front to back, on edge, {say(rail)} x {say(thick)}, at left and "
        "right, between long rails, up 0",
        "end rails",
    )
    page.cuts.append("end rails between long rails: screws")
    kind = page.either(
        ", of birch ply", ", of MDF", f", glued from {int(deep // 120) + 1}", "slats"
    )
    if kind == "slats":
        count = max(3, int(deep / 90))
        page.part(
            f"{count} boards, across, flat, {say(page.size(60, 75))} x {say(top)}, onto end "
            "rails, spread front to back, no gap at ends",
            "boards",
        )
        page.cuts.append("boards onto end rails: screws")
    else:
        page.part(f"1 board, across, flat, {say(top)} thick, onto long rails{kind}", "board")
        page.cuts.append("board onto long rails: screws")
    if draw.chance(50):
        count = 1 if wide < 700 else 2
        words = "" if count == 1 else ", spread across"
        name = "cleat" if count == 1 else "cleats"
        page.part(
            f"{count} {name}, front to back, flat, {say(page.size(50, 60))} x {say(thick)}, "
            f"between long rails, under {'boards' if kind == 'slats' else 'board'}{words}",
            name,
        )
        page.cuts.append(f"{name} under {'boards' if kind == 'slats' else 'board'}: screws")
