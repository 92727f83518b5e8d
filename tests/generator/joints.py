"""The words of a joint: which one, how big, where it sits, by the rules a maker goes by."""

from dataclasses import dataclass
from fractions import Fraction

from tests.generator.page import INCH, Page

CHISELS = tuple(Fraction(each) for each in (6, 8, 10, 12))
INCH_CHISELS = tuple(INCH * each for each in (Fraction(1, 4), Fraction(3, 8), Fraction(1, 2)))


@dataclass(frozen=True, slots=True)
class Rail:
    """A rail that is tenoned: its width and thickness, how deep the host is, how far set back.

    `corner`: another rail meets it in the same host.  `end`: it is flush with the end of its host.
    """

    width: Fraction
    thick: Fraction
    host: Fraction
    back: Fraction = Fraction(0)
    corner: bool = True
    end: bool = False


def plain_tenon(page: Page, thick: Fraction, host: Fraction) -> str:
    """Return a tenon of a member that may stand, with sizes or without."""
    length = page.rounded(min(host * Fraction(6, 10), Fraction(32)))
    size = f"{page.say(length)} long {page.say(chisel(page, thick))} thick"
    return page.either(
        "tenon", f"tenon {page.say(length)}", f"tenon {size}", f"tenon {size}, pegged"
    )


def chisel(page: Page, thick: Fraction) -> Fraction:
    """Return the thickness of a tenon: the nearest cutter under half of the rail."""
    sizes = INCH_CHISELS if page.inches else CHISELS
    fitting = [each for each in sizes if each * 2 <= thick]
    return fitting[-1] if len(fitting) < 2 or page.draw.chance(50) else fitting[-2]


def tenon(page: Page, rail: Rail) -> str:
    """Return how rails are tenoned into their hosts, from `tenon` alone to all its sizes."""
    draw, say = page.draw, page.say
    if draw.chance(16):
        made = (dowels, dowels, loose_tenon, biscuits)
        return draw.one_of(made if rail.width >= 58 else made[:3])(page, rail)
    if draw.chance(8) and 12 <= rail.thick <= 40 and 45 <= rail.width <= 75:
        return pocket_screws(page)
    thick = chisel(page, rail.thick)
    free = rail.host - 6
    if rail.corner:
        free = min(
            rail.host * Fraction(6, 10), rail.host - rail.back - (rail.thick + thick) / 2 - 5
        )
    length = page.rounded(min(free, Fraction(32), rail.host * Fraction(7, 10)))
    word = draw.one_of(("tenon", "tenon", "tenon", "mortise and tenon"))
    usual = 15 if length >= 15 else 90
    if draw.chance(20) or length < 12:
        return word
    if draw.chance(usual):
        return f"{word} {say(length)}"
    whole = f"{word} {say(length)} long {say(thick)} thick"
    ways = [whole, f"{whole} {say(_width(page, rail, thick))} wide"]
    if rail.width >= 100 and not rail.end:
        each = page.rounded((rail.width - 30) * Fraction(3, 10))
        ways.append(f"2 tenons {say(length)} long {say(thick)} thick {say(each)} wide")
    if rail.end and rail.width >= 60:
        ways.append(f"{whole}, haunch {say(page.size(8, 11))} long {say(page.size(5, 7))} deep")
        ways.append(f"haunched tenon {say(length)}")
    if rail.width >= 45:
        wide = _width(page, rail, thick)
        ways.append(f"{whole} {say(wide)} wide, {say(page.size(6, 8))} from bottom")
        below = page.size(6, 9)
        ways.append(f"{whole}, shoulders {say(below)} below {say(rail.width - below - wide)} above")
    if not rail.corner and not rail.end:
        ways.append(f"{whole}, pegged")
    said = draw.one_of(ways)
    if "peg" not in said and draw.chance(10) and rail.thick >= 18 and length >= 20:
        said += page.either(", pegged", ", drawbored", ", pegs 6 mm dia")
    return said


def dowels(page: Page, rail: Rail) -> str:
    """Return how rails are dowelled to their hosts, as many and as thick as fit, or unsaid."""
    draw, say = page.draw, page.say
    thick = say(INCH / 4 if page.inches else Fraction(6))
    count = 2 if rail.width < 90 else 3
    return draw.one_of(
        (
            "dowels",
            "dowelled",
            f"{count} dowels",
            f"{count} dowels {thick} dia {say(page.size(28, 34))} long",
        )
    )


def loose_tenon(page: Page, rail: Rail) -> str:
    """Return how rails are held by loose tenons, one or two, with sizes or without."""
    say = page.say
    long = f"{say(page.size(42, 50))} long"
    return page.either(
        "loose tenon",
        f"loose tenon {long}",
        f"{'2 loose tenons' if rail.width >= 95 else 'loose tenon'} {long} "
        f"{say(INCH / 4 if page.inches else Fraction(6))} thick {say(page.size(18, 24))} wide",
    )


def biscuits(page: Page, rail: Rail) -> str:
    """Return how rails are held by biscuits, as many as fit."""
    return page.either("biscuits", "biscuits", "2 biscuits" if rail.width >= 130 else "biscuit")


def pocket_screws(page: Page) -> str:
    """Return how rails are screwed to their hosts from pockets, with the face said or not."""
    return page.draw.one_of(
        ("pocket screws", "2 pocket screws", "pocket screws, pockets inside", "pocket screws, dry")
    )


def _width(page: Page, rail: Rail, thick: Fraction) -> Fraction:
    most = min(rail.width * Fraction(6, 10), thick * 5, rail.width - 14)
    return page.rounded(max(most, Fraction(10)))


def through_tenon(page: Page, rail: Rail) -> str:
    """Return a tenon right through its host, wedged or pegged or plain."""
    draw, say = page.draw, page.say
    thick = chisel(page, rail.thick)
    words = f"through tenon {say(thick)} thick {say(_width(page, rail, thick))} wide"
    return words + draw.one_of(
        ("", "", ", 2 wedges", f", 2 wedges, {say(page.size(2, 4))} proud", ", pegged")
    )


def housing(page: Page, thick: Fraction) -> str:
    """Return a housing in a part of a thickness, with its depth or without."""
    if page.draw.chance(25):
        return page.either("housing", "dado")
    depth = page.rounded(thick / 3)
    return f"{page.either('housing', 'housing', 'dado', 'trench')} {page.say(depth)}"


def at_the_end(page: Page, thick: Fraction) -> str:
    """Return how a board goes into another at its end: housed, or now and then in a rabbet."""
    if page.draw.chance(70):
        return housing(page, thick)
    word = page.either("rabbet", "rebate")
    return word if page.draw.chance(40) else f"{word} {page.say(page.rounded(thick / 2))}"


def lap(page: Page) -> str:
    """Return a word for a half lap."""
    return page.either("half lap", "half lap", "halving joint", "lap")


def bridle(page: Page, thick: Fraction) -> str:
    """Return a bridle in wood of a thickness, with that of its tenon or without."""
    third = page.rounded(thick / 3)
    return page.either("bridle", "bridle joint", f"bridle {page.say(third)} thick")


def tongued(page: Page, thick: Fraction) -> str:
    """Return how boards of a thickness are tongued into one another, with sizes or without."""
    say = page.say
    size = f"{say(page.rounded(thick / 3))} thick {say(page.size(6, 9))} long"
    return page.either(
        "tongue and groove", f"tongued and grooved {size}", f"tongue and groove, tongue {size}"
    )
