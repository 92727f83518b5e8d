"""What a line says of a tenon beyond its sizes: shoulders, haunch, wedges, pegs (TRADE B3).

What is left open takes the habits of the trade, each listed as an assumption.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.joinery.cut import Placed
from dryfit.kinds.joints import joint_kinds, kind_written
from dryfit.piece.declared import PLACE_SIDE, Contact, Detail, JointWords
from dryfit.placing.lines import with_words
from dryfit.placing.site import SIDE_WORDS, Site
from dryfit.quantities.units import INCH

_SIDE_OF = {"below": "bottom", "above": "top"}
_NAMES = {
    "haunch": "haunch",
    "through": "`through`",
    "wedges": "wedges",
    "pegs": "pegs",
    "proud": "`proud`",
    "shoulder": "shoulders",
    "offset": "`offset`",
    "keys": "keys",
    "shows": "`show`",
    "pockets": "pockets",
    "apart": "distance from one to the next",
    "tongue": "tongue",
    "stopped": "stop",
}
_TWO_PEGS = Fraction(60)
"""A tenon wider than this takes two pegs, so that it cannot turn on one (common practice)."""


@dataclass(frozen=True, slots=True)
class Shoulders:
    """Edge shoulders as written, at the low and the high coordinate of the rail's width; mm."""

    low: Fraction | None
    high: Fraction | None

    @property
    def written(self) -> bool:
        """Return whether the line names any."""
        return self.low is not None or self.high is not None


def details(joint: JointWords | None, kind: str) -> tuple[Detail, ...]:
    """Return the details of one kind that a joint's line names."""
    return tuple(each for each in (joint.details if joint else ()) if each.kind == kind)


def is_through(joint: JointWords | None) -> bool:
    """Return whether a tenon comes out on the far side: as written, or since wedges spread it.

    With a length of its own a wedged tenon may end inside, on wedges that its bottom drives home.
    """
    if joint is None:
        return False
    wedged = bool(details(joint, "wedges")) and joint.length is None
    return wedged or any(details(joint, kind) for kind in ("through", "proud"))


def proud_of(joint: JointWords | None) -> Fraction:
    """Return how far a through tenon stands out on the far side."""
    return sum(
        (dict(each.sizes).get("length", Fraction(0)) for each in details(joint, "proud")),
        Fraction(0),
    )


def check_details(site: Site, contact: Contact) -> None:
    """Report details that a joint of this kind does not have.  Findings: detail-not-for-joint."""
    joint = contact.joint
    if joint is None:
        return
    family = kind_written(joint.kind)
    known = family.details if family else frozenset()
    keyed = {feature.span for feature in site.declared.features if feature.kind == "keys"}
    for each in joint.details:
        if each.kind in known or each.span in keyed:
            continue
        fits = next((kind.written for kind in joint_kinds() if each.kind in kind.details), None)
        remedy = f"they belong to a {fits}" if fits else "cut them as a line of their own"
        if each.kind == "keys":
            remedy = "keys are cut in what is glued: name both parts in one glue-up"
        what = (
            joint.kind if family and family.cut and not family.rowed else f"joint with {joint.kind}"
        )
        _error(
            site,
            each,
            "detail-not-for-joint",
            f"a {what} has no {_NAMES[each.kind]}",
            remedy,
        )


def shoulders(site: Site, rail: Placed, joint: JointWords) -> Shoulders:
    """Return the edge shoulders as written.  Findings: tenon-side-unclear."""
    found: dict[int, Fraction] = {}
    for each in details(joint, "shoulder"):
        amount = dict(each.sizes).get("length")
        side = _side(site, rail, each, rail.axes[1]) if each.place else (-1 if not found else 1)
        if amount is not None and side:
            found[side] = amount
    return Shoulders(found.get(-1), found.get(1))


def offset(site: Site, rail: Placed, joint: JointWords) -> tuple[int, Fraction] | None:
    """Return the axis along which a tenon is moved from the middle, and how far by coordinate.

    Findings: tenon-side-unclear.
    """
    for each in details(joint, "offset"):
        amount = dict(each.sizes).get("length")
        if amount is None:
            continue
        axis, side = PLACE_SIDE.get(_SIDE_OF.get(each.place or "", each.place or ""), (None, 0))
        if axis not in rail.axes[1:]:
            _unclear(site, rail, each, rail.axes[2])
            continue
        return axis, side * amount
    return None


def _side(site: Site, rail: Placed, detail: Detail, wide: int) -> int:
    word = detail.place or ""
    axis, side = PLACE_SIDE.get(_SIDE_OF.get(word, word), (None, 0))
    if axis == wide:
        return side
    _unclear(site, rail, detail, wide)
    return 0


def _unclear(site: Site, rail: Placed, detail: Detail, axis: int) -> None:
    low, high = (SIDE_WORDS[axis, side] for side in (-1, 1))
    show = site.declared.display.example
    _error(
        site,
        detail,
        "tenon-side-unclear",
        f"the tenons of {rail.part} have room towards the {low} and the {high}, and this names "
        "neither",
        f"write `offset {show(Fraction(2))} to {low}`"
        if detail.kind == "offset"
        else f"write `shoulder {show(Fraction(5))} {'below' if axis == 2 else low}`",
    )


def wedges(site: Site, rail: Placed, joint: JointWords, tenons: int) -> int:
    """Return how many wedges one joint takes: as many in each tenon as the line says, else two."""
    said = details(joint, "wedges")
    if not said:
        return 0
    if said[0].count is not None:
        return said[0].count * tenons
    _assume(
        site, said[0], f"each tenon of the {site.written(rail.part)} takes 2 wedges", "2 wedges"
    )
    return 2 * tenons


def pegs(site: Site, rail: Placed, joint: JointWords, width: Fraction) -> tuple[int, Fraction]:
    """Return how many pegs a joint takes, and their diameter.

    One peg, two where the tenon is wider than 60 mm; 6 mm or 1/4 in thick (common practice).
    """
    said = details(joint, "pegs")
    if not said:
        return 0, Fraction(0)
    diameter = next((value for each in said for value in dict(each.sizes).values()), None)
    count = next((each.count for each in said if each.count is not None), None)
    parts = site.written(rail.part)
    if diameter is None:
        diameter = site.declared.display.either(Fraction(6), INCH / 4)
        shown = site.shown(diameter)
        text = said[0].span.text()
        _assume(
            site, said[0], f"the pegs in the {parts} are {shown} thick", f"{text}, pegs {shown}"
        )
    if count is None and details(joint, "tongue"):
        # Of a board end each tenon has its peg: the outer ones hold it close, and slide.
        return joint.count or 1, diameter
    if count is None:
        count = 2 if width > _TWO_PEGS else 1
        words = "1 peg" if count == 1 else f"{count} pegs"
        _assume(site, said[0], f"each joint of the {parts} takes {words}", None)
    return count, diameter


def drawn(site: Site, joint: JointWords) -> Fraction:
    """Return how far a drawbored hole is moved: 1 mm, 1/32 in on inch pieces (common practice)."""
    if not any(each.place == "drawbore" for each in details(joint, "pegs")):
        return Fraction(0)
    return site.declared.display.either(Fraction(1), INCH / 32)


def _assume(site: Site, detail: Detail, text: str, phrase: str | None) -> None:
    line = with_words(detail.span, phrase) if phrase else None
    site.assume_line(text, detail.span, line)


def _error(site: Site, detail: Detail, code: str, message: str, remedy: str) -> None:
    finding = Diagnostic(code, Severity.ERROR, message, detail.span, "H03", hints=(Hint(remedy),))
    site.tell_once(finding)
