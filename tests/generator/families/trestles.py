"""Trestles, saddle stands and benches: feet, posts, beams, laps at the ends."""

from fractions import Fraction

from tests.generator.extras import after_glue, top_cuts
from tests.generator.joints import Rail, lap, plain_tenon, tenon
from tests.generator.page import Page


def trestle_bench(page: Page) -> None:
    """Feet, legs and bearers; a beam with tenons through the legs; a seat that is screwed on."""
    draw, say = page.draw, page.say
    page.title = "Trestle bench"
    wide, deep, high = page.size(900, 1400), page.size(280, 380), page.size(400, 480)
    page.measures(wide, deep, high)
    seat, inset = page.size(26, 32), page.value("trestle inset", page.size(100, 160))
    leg, thick = page.size(150, 210), page.size(38, 48)
    places = f"at left and right, set in {inset} across"
    foot = page.size(45, 55)
    page.part(
        f"2 feet, front to back, flat, {say(deep)} x {say(page.size(60, 75))} x {say(foot)}, "
        f"{places}, up 0",
        "feet",
    )
    two = say(page.rounded(leg / 4))
    thin = "1/2" if page.inches else "12"
    page.part(
        f"2 legs, upright, facing side, {say(leg)} x {say(thick)}, into feet, 2 tenons "
        f"{say(page.size(28, 32))} long {thin} thick {two} wide, at left and right",
        "legs",
    )
    loose = page.either("2 wedges, dry", "dry", "2 wedges", "pegged", "knock-down")
    page.part(
        f"1 beam, across, on edge, {say(page.size(100, 125))} x {say(page.size(30, 34))}, "
        f"through tenon {thin} thick {say(page.size(52, 58))} wide into legs, {loose}, "
        f"proud {say(page.size(5, 12))}, {say(page.size(85, 100))} below the top of legs",
        "beam",
    )
    page.part(
        f"2 bearers, front to back, flat, {say(deep - page.size(30, 50))} x "
        f"{say(page.size(60, 65))} x {say(page.size(30, 34))}, {places}",
        "bearers",
    )
    page.cuts.append(
        f"legs into bearers: 2 tenons {say(page.size(18, 21))} long {thin} thick {two} wide"
    )
    page.part(f"1 seat, flat, {say(seat)} thick, glued from {int(deep // 100) + 1}", "seat")
    page.cuts.append("seat onto bearers: screws")
    if draw.chance(50):
        page.cuts.append(
            f"taper in feet: top face, from {say(page.size(25, 40))} beyond legs to "
            f"the ends, {say(foot)} to {say(page.rounded(foot * 2 / 3))}"
        )
    top_cuts(page, "seat", seat, deep)
    page.stage("trestles", "1 foot, 1 leg, 1 bearer", joints=4, count=2)
    if loose in {"2 wedges", "pegged"}:
        page.stage("base", "trestles, beam", joints=2)


def saddle_stand(page: Page) -> None:
    """Two uprights, two feet, a beam on top, a stretcher."""
    draw, say = page.draw, page.say
    page.title = page.either("Saddle stand", "Towel stand")
    wide, deep, high = page.size(450, 800), page.size(300, 450), page.size(500, 900)
    page.measures(wide, deep, high)
    foot, post, thick = page.size(55, 70), page.size(65, 90), page.size(36, 45)
    page.part(
        f"2 feet, front to back, on edge, {say(foot)} x {say(page.size(42, 50))}, "
        f"at left and right, set in {say(page.size(40, 80))} across, up 0",
        "feet",
    )
    page.part(
        f"2 posts, upright, facing side, {say(post)} x {say(thick)}, at left and right, "
        f"{plain_tenon(page, thick, foot)} into feet, set in "
        f"{say((deep - post) / 2)}"
        " front to back",
        "posts",
    )
    beam = page.size(80, 100)
    page.part(f"1 beam, across, on edge, {say(beam)} x {say(page.size(38, 45))}, down 0", "beam")
    page.cuts.append(f"posts into beam: {plain_tenon(page, thick, beam)}")
    page.part(
        f"1 stretcher, across, on edge, {say(page.size(60, 80))} x {say(page.size(22, 26))}, "
        f"{tenon(page, Rail(Fraction(60), Fraction(22), thick, corner=False))} into posts, "
        f"up {say(page.size(150, 260))}",
        "stretcher",
    )
    page.stage("stand", "feet, posts, stretcher, beam", joints=6)
    if draw.chance(40):
        page.cuts.append(
            page.either(
                f"taper in feet: top edge, from {say(page.size(25, 40))} beyond posts to the ends, "
                f"{say(foot)} to {say(page.rounded(foot * 2 / 3))}",
                f"round-over on beam: top edges, {say(page.size(4, 8))} radius",
                f"curve in feet: bottom edge, {say(page.size(6, 10))} deep",
            )
        )


def lapped_bench(page: Page) -> None:
    """Lapped end frames, aprons with blind tenons between them, slats below, a top."""
    draw, say = page.draw, page.say
    page.title = page.either("Boot bench", "Hall bench")
    wide, deep, high = page.size(600, 1150), page.size(280, 420), page.size(380, 480)
    page.measures(wide, deep, high)
    post, thick, top = page.size(42, 52), page.size(27, 32), page.size(20, 24)
    rail = page.value("rail width", page.size(40, 50))
    page.part(
        f"4 posts, upright, facing side, {say(post)} x {say(thick)}, at corners, set in "
        f"{say(page.size(20, 40))} across, {say(page.size(5, 15))} front to back",
        "posts",
    )
    page.part(
        f"2 top end rails, front to back, on edge, {rail} x {say(thick)}, at left and right, "
        "flush with top of posts",
        "top end rails",
    )
    page.part(
        f"2 bottom end rails, front to back, on edge, {rail} x {say(thick)}, at left and "
        f"right, up {say(page.size(60, 120))}",
        "bottom end rails",
    )
    page.cuts.append(f"posts crossing top end rails and bottom end rails: {lap(page)}")
    apron = page.size(90, 110)
    page.part(
        f"2 aprons, across, on edge, {say(apron)} x {say(page.size(20, 24))}, tenon "
        f"{say(page.size(18, 20))} long {say(chisel_of(page))} thick {say(page.size(36, 40))}"
        f" wide, {say(page.size(5, 7))} from bottom, into posts, set back "
        f"{say(page.size(5, 8))}, flush with top of posts",
        "aprons",
    )
    page.part(f"1 top, flat, {say(top)} thick, glued from {draw.between(4, 5)}", "top")
    if draw.chance(50):
        page.cuts.append(
            f"groove in aprons: inside, 6 mm wide, 9 mm deep, 12 mm from top, "
            f"{page.either('through', 'full length')}"
        )
    page.cuts.append(f"top onto aprons: {page.either('', '6 ', '4 ')}buttons")
    if draw.chance(60):
        slat = page.size(30, 42)
        count = max(2, int((deep - 2 * post - 40) / (slat + 8)))
        page.part(
            f"{min(count, 5)} slats, across, flat, {say(slat)} x "
            f"{say(page.size(15, 18))}, onto bottom end rails, between posts, spread front "
            f"to back{page.either('', ', cut after glue up base')}",
            "slats",
        )
        page.cuts.append("slats onto bottom end rails: screws")
    top_cuts(page, "top", top, deep)
    page.stage("end frames", "2 posts, 1 top end rail, 1 bottom end rail", count=2)
    page.stage("base", "end frames, aprons")
    if draw.chance(20):
        after_glue(page, "posts", "end frames")


def chisel_of(page: Page) -> Fraction:
    """Return the usual thickness of a tenon in an apron."""
    return Fraction(127, 20) if page.inches else Fraction(8)


def long_bench(page: Page) -> None:
    """Six legs: rails in two bays, a rail from front to back at each pair of legs."""
    draw, say = page.draw, page.say
    page.title = "Long bench"
    leg, inset = page.size(42, 50), page.size(20, 40)
    half = page.size(450, 560)
    wide, deep, high = 2 * half, page.size(300, 400), page.size(400, 470)
    page.measures(wide, deep, high)
    rail, thick = page.size(55, 70), page.size(20, 24)
    square = f"upright, {page.sizes(leg, leg)}, at front and back"
    for side in ("left", "right"):
        page.part(f"2 {side} legs, {square}, set in {say(inset)}", f"{side} legs")
    page.part(
        f"2 middle legs, {square}, {say(half - leg / 2)} from left, set in {say(inset)} "
        "front to back",
        "middle legs",
    )
    back = page.size(2, 4)
    spec = tenon(page, Rail(rail, thick, leg, back, end=False))
    thin = chisel_of(page)
    short = f"tenon {say(page.size(15, 18))} long {say(thin)} thick"
    for side, hosts in (
        ("left", "left legs and middle legs"),
        ("right", "middle legs and right legs"),
    ):
        page.part(
            f"2 {side} rails, across, {say(rail)} x {say(thick)}, {short} into {hosts}, "
            f"set back {say(back)}",
            f"{side} rails",
        )
    for side in ("left", "middle", "right"):
        page.part(
            f"1 {side} end rail, front to back, {say(rail)} x {say(thick)}, {spec} into "
            f"{side} legs, set back {say(back)}",
            f"{side} end rail",
        )
    page.part(
        f"1 top, flat, {say(page.size(22, 27))} thick, glued from {draw.between(3, 5)}", "top"
    )
    page.cuts.append("top onto left rails and right rails: buttons")
    if draw.chance(50):
        page.stage(
            "frame",
            "left legs, right legs, middle legs, left rails, right rails, left "
            "end rail, middle end rail, right end rail",
            joints=14,
        )
    else:
        page.stage("left pair", "left legs, left end rail", joints=2)
        page.stage("middle pair", "middle legs, middle end rail", joints=2)
        page.stage("right pair", "right legs, right end rail", joints=2)
        page.stage("base", "left pair, middle pair, right pair, left rails, right rails", joints=8)
