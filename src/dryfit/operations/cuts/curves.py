"""Curves: sawn beside a line at the band saw, else with a saw in the hand (TRADE B0).

The line is a flat arc through the ends of its span and its rise: from a bent batten, a long
trammel, or the template that equal parts share.
"""

from __future__ import annotations

from fractions import Fraction

from dryfit.geometry.frame import SURFACES
from dryfit.joinery.feature import Feature
from dryfit.operations import setting_of
from dryfit.operations.cut import Cut, Site
from dryfit.operations.cuts.tapers import BAND_SAW
from dryfit.operations.machine_limits import Piece, why_not_at_band_saw
from dryfit.operations.minutes import METRE, worked
from dryfit.operations.shapes import CURVE, shaped_before
from dryfit.plan.operation import Detail
from dryfit.plan.setting import Hold, Pass
from dryfit.shop.shop import Shop

CHECK = "the curve runs fair under a bent batten, without bumps or flats, and parts lie alike"
_LYING = ("B", "F", "E", "E2", "R", "R2")

_BESIDE: Detail = ("Saw a hair outside the line in one sweep, the fence aside",)
_TEMPLATE: Detail = (
    (
        "Make a template of thin board and fair it; draw half the line from it, turn it over on "
        "the middle for the other half, and mark all parts from it"
    ),
)
_IN_HAND: Detail = (
    (
        "Saw a hair outside the line with a jigsaw or a bow saw, the part clamped over the edge of "
        "the bench; fair it with a spokeshave from both ends to the middle, then with paper"
    ),
)


def radius_of(span: Fraction, rise: Fraction) -> Fraction | None:
    """Return the radius of the arc of that span and rise, exactly; None beyond a half circle.

    In mm; from first principles: (span^2 / 4 + rise^2) / (2 rise).
    """
    if 2 * rise > span:
        return None
    return (span * span / 4 + rise * rise) / (2 * rise)


def size_of(feature: Feature) -> tuple[Fraction, Fraction]:
    """Return span and rise of a curve in mm."""
    assert feature.form is not None
    sizes = dict(feature.form.sizes)
    return sizes["span"], sizes["rise"]


def curve_cut(site: Site, shop: Shop) -> Cut:
    """Return the cut of a curve at the band saw where that takes the part, else by hand."""
    down = _lies(site)
    span, _ = size_of(site.feature)
    metres = span * len(site.copies) / METRE
    details = (_line(site), _struck(site), *_template(site))
    deep = site.sizes[SURFACES[down][0]] if down is not None else Fraction(0)
    piece = Piece(site.part.length, site.part.width, deep)
    if down is None or why_not_at_band_saw(piece, shop) is not None:
        return Cut(
            site=site,
            what=CURVE,
            kind=CURVE,
            station="bench",
            settings=(),
            hold=None,
            passes=(),
            exact=worked(shop, "hand curve", each=len(site.copies), per_metre=metres),
            deed="Saw and fair the curves on",
            check=CHECK,
            details=(*details, _IN_HAND),
        )
    blade = next(cutter for cutter in shop.cutters_at(BAND_SAW))
    settings = (setting_of.named("cutter", blade.name), setting_of.named("fence", "off"))
    return Cut(
        site=site,
        what=CURVE,
        kind=CURVE,
        station=BAND_SAW,
        settings=setting_of.known_to(shop, BAND_SAW, settings),
        hold=Hold(down, None, None),
        passes=(Pass(),),
        exact=worked(shop, "curve", each=len(site.copies), per_metre=metres),
        deed="Saw the curves on",
        manner=" beside their lines",
        check="the saw stays on the waste side, and the cut is square to the face",
        details=(*details, _BESIDE),
    )


def _lies(site: Site) -> str | None:
    """Return the face that lies on the saw's table: square to the line, and still flat."""
    feature = site.feature
    if feature.after is not None:
        return None
    assert feature.form is not None
    assert feature.form.toward is not None
    used = {SURFACES[feature.surface][0], SURFACES[feature.form.toward][0]}
    gone = shaped_before(site)
    return next(
        (each for each in _LYING if SURFACES[each][0] not in used and each not in gone), None
    )


def _line(site: Site) -> Detail:
    feature = site.feature
    start, end = feature.along
    origin = "E" if feature.surface in {"R", "R2"} else "R"
    return (
        f"{feature.id}: on {feature.surface}, from ", start, " to ", end, f" from {origin}, ",
        feature.depth, " deep in the middle, ", (start + end) / 2, f" from {origin}",
    )  # fmt: skip


def _struck(site: Site) -> Detail:
    span, rise = size_of(site.feature)
    radius = radius_of(span, rise)
    if radius is None:
        return ("Draw it on card by eye or with a batten, and cut the card out as a pattern",)
    return (
        "Bend a thin straight batten through the three points, or swing an arc of radius ",
        radius,
    )


def _template(site: Site) -> tuple[Detail, ...]:
    if len(site.part.copies) < 2:
        return ()
    return (_TEMPLATE,)
