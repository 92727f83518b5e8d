"""Legs that lean: their round tenons and the holes for them, by hand to a sliding bevel.

A bevel is set to a line that is drawn to the slope, so that no angle has to be read off a scale.
The shoulder of a splayed leg is level when the leg leans: its line falls on two faces by the slope
to one side, on the other two by that to the other.  A hole is bored along its sight line, in which
the leg leans by the resultant of both slopes (common practice; plane trigonometry).
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from dryfit.geometry.frame import OPPOSITE, SURFACES, WIDTH
from dryfit.geometry.lean import angle_of, steepest
from dryfit.joinery.splay import Sloped, Slopes, outward_sides, shoulder_corners
from dryfit.kinds.roles import ROUND, TENON_HOLE
from dryfit.operations import naming
from dryfit.operations.cut import Cut, Site
from dryfit.operations.cuts.mortises import hole_cut, mortise_cut
from dryfit.operations.minutes import worked
from dryfit.placing.ladders import as_sawn
from dryfit.placing.model import Model, Part
from dryfit.plan.operation import Detail
from dryfit.quantities import Display
from dryfit.quantities.units import INCH
from dryfit.shop.shop import Shop

ROLES = frozenset({ROUND, TENON_HOLE})
_SIDES = 4


def with_slopes(model: Model) -> Model:
    """Return the model with splayed parts as long as they are sawn, for what is milled."""
    if all(part.sloped is None for part in model.parts):
        return model
    parts = tuple(
        part if part.sloped is None else replace(part, length=part.sloped.length)
        for part in model.parts
    )
    return replace(model, parts=parts)


def round_cut(site: Site, *, to_marks: bool, display: Display, shop: Shop) -> Cut:
    """Return the cut of a round tenon, or of the hole for one; what leans is done by hand."""
    if site.feature.role == ROUND:
        return _tenon(site, display, shop)
    if not site.feature.slopes and site.part.sloped is not None:
        return _in_a_leg(site, to_marks=to_marks, display=display, shop=shop)
    if not site.feature.slopes:
        return hole_cut(site, to_marks=to_marks, display=display, shop=shop)
    return _leaning_hole(site, display, shop)


def _in_a_leg(site: Site, *, to_marks: bool, display: Display, shop: Shop) -> Cut:
    """Return the boring of a hole square into a splayed leg, while both its ends are square."""
    true = _as_sawn(site)
    cut = hole_cut(true, to_marks=to_marks, display=display, shop=shop)
    return replace(cut, site=site, details=(_along_the_slope(true), *cut.details))


def mortise_in_a_leg(site: Site, *, to_marks: bool, shop: Shop) -> Cut:
    """Return the chopping of a mortise square into a splayed leg, while its ends are square."""
    true = _as_sawn(site)
    cut = mortise_cut(true, to_marks=to_marks, shop=shop)
    return replace(cut, site=site, details=(_along_the_slope(true), *cut.details))


def _as_sawn(site: Site) -> Site:
    """Return a cut in a splayed leg where it stands along the slope, on the leg as it was sawn."""
    index, sawn = site.part.features.index(site.feature), as_sawn(site.part)
    return replace(site, part=sawn, feature=sawn.features[index])


def _along_the_slope(site: Site) -> Detail:
    return (
        (
            f"Square into {site.feature.surface}: the {naming.plural(site.part.name)} lean only "
            "the other way. The middle stands "
        ),
        sum(site.feature.along, Fraction(0)) / 2,
        " from R, the foot, as long as it was sawn; that is counted along the slope",
    )


def slope_line(slope: Fraction, display: Display) -> Detail:
    """Return the line that a bevel is set to: so far up from the edge of a board, so far aside."""
    up = Fraction(200) if display.unit == "mm" else 8 * INCH
    degrees = float(angle_of(slope))
    return (
        "a line ",
        up,
        " up from the edge of a board and ",
        slope * up,
        f" aside, about {degrees:.1f} degrees",
    )


def _tenon(site: Site, display: Display, shop: Shop) -> Cut:
    feature, part = site.feature, site.part
    count = Fraction(len(site.copies), _SIDES)
    cut = Cut(
        site=site,
        what=naming.what_of(feature),
        kind=naming.kind_of(feature),
        station="bench",
        settings=(),
        hold=None,
        passes=(),
        exact=worked(shop, "round tenon", each=count),
        deed="Saw the shoulders and round the tenons on",
        check="it goes into a test hole of the same bit by hand, its shoulder shut all round",
        slopes=feature.slopes,
    )
    round_off = (
        "Saw on the shoulder lines of all four sides down to the round, ",
        feature.depth,
        " at the middle of a side, split off the waste, and round the tenon to ",
        _diameter(site),
        " with knife and rasp, straight over its whole length",
    )
    if part.sloped is None:
        at_r = feature.along[0] == 0
        shoulder = feature.along[1] if at_r else feature.along[0]
        square: Detail = ("Knife the shoulder all round, ", shoulder, " from R")
        return replace(cut, details=(square, round_off))
    return replace(cut, details=(*_shoulder(part, part.sloped, display), round_off))


def _diameter(site: Site) -> Fraction:
    feature, part = site.feature, site.part
    whole = part.width if SURFACES[feature.surface][0] == WIDTH else part.thickness
    return whole - 2 * feature.depth


def _shoulder(part: Part, sloped: Sloped, display: Display) -> tuple[Detail, ...]:
    """Return where the shoulder of a splayed leg stands, corner by corner, and how it is drawn."""
    toward = outward_sides(each.slopes for each in part.features)
    corners = shoulder_corners(toward, sloped, (part.width, part.thickness))
    places: list[str | Fraction] = []
    for corner, place in corners.items():
        edge, face = sorted(corner, key=lambda side: side not in {"E", "E2"})
        places += [f"{', ' if places else ''}corner of {edge} and {face} ", place]
    rows: list[Detail] = [
        (
            (
                "The shoulder is level when the leg leans. From end R, which is the foot, it "
                "stands at the "
            ),
            *places,
        )
    ]
    for slope, across, along in (
        (sloped.wide, ("F", "B"), ("E", "E2")),
        (sloped.deep, ("E", "E2"), ("F", "B")),
    ):
        if slope:
            falls = next(side for side in along if side in toward)
            rows.append(
                (
                    f"On {across[0]} and {across[1]} it runs nearer to R toward {falls}: bevel to ",
                    *slope_line(slope, display),
                )
            )
        else:
            rows.append((f"On {across[0]} and {across[1]} it is square",))
    if len(part.hands()) > 1:
        rows.append(
            ("A and B are mirror images: E and F are marked on the outer sides of both",)
            if toward == {"E", "F"}
            else ("A and B are mirror images: go by the marks of each",)
        )
    return tuple(rows)


def _leaning_hole(site: Site, display: Display, shop: Shop) -> Cut:
    feature = site.feature
    slope = steepest(rise for _, rise in feature.slopes)
    along, across = (sum(limits, Fraction(0)) / 2 for limits in (feature.along, feature.across))
    down = OPPOSITE[feature.surface]
    bit = feature.across[1] - feature.across[0]
    sight = _sight_line(feature.slopes, display)
    lean = " and ".join(surface for surface, _ in feature.slopes)
    out = _exit(site, along, across)
    return Cut(
        site=site,
        what=naming.what_of(feature),
        kind="hole",
        station="bench",
        settings=(),
        hold=None,
        passes=(),
        exact=worked(shop, "leaning hole", each=len(site.copies)),
        deed="Bore the tenon holes in",
        manner=", each along its sight line",
        check=f"the middle of each hole on {down} against its figure",
        details=(
            (
                (
                    f"{feature.surface} up, a waste board clamped under {down}. Stand a bevel on "
                    "the sight line, set to "
                ),
                *slope_line(slope, display),
                ": off plumb, not off the board",
            ),
            (
                "A bit of ",
                bit,
                (
                    " in a brace or a hand drill: a square beside the sight line keeps it upright "
                    "sideways, the bevel holds its slope. Try both in scrap first"
                ),
            ),
            (
                f"{feature.id}: middle ",
                along,
                " from R and ",
                across,
                " from E; draw its sight line from there to a point ",
                *sight,
                (
                    f". The bit leans along it, its upper end toward {lean}; on {down} the middle "
                    "comes out "
                ),
                out[0],
                " from R and ",
                out[1],
                " from E",
            ),
        ),
        slopes=feature.slopes,
    )


def _sight_line(slopes: Slopes, display: Display) -> Detail:
    """Return how far a second point of the sight line lies toward each surface."""
    far = Fraction(100) if display.unit == "mm" else 4 * INCH
    most = max(slope for _, slope in slopes)
    words: list[str | Fraction] = []
    for surface, slope in slopes:
        words += [" and " if words else "", far * slope / most, f" toward {surface}"]
    return tuple(word for word in words if word != "")


def _exit(site: Site, along: Fraction, across: Fraction) -> tuple[Fraction, Fraction]:
    """Return where the middle of a leaning hole comes out on the other side, from R and from E."""
    slopes, thick = dict(site.feature.slopes), site.feature.depth
    return (
        along + thick * (slopes.get("R", Fraction(0)) - slopes.get("R2", Fraction(0))),
        across + thick * (slopes.get("E", Fraction(0)) - slopes.get("E2", Fraction(0))),
    )
