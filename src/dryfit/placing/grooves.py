"""Declared features with no mate: where the line's words put them on each copy."""

from __future__ import annotations

from collections.abc import Mapping

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.joinery.cut import Cut, Placed
from dryfit.joinery.housing import declared_groove
from dryfit.piece.declared import PLACE_SIDE, DeclaredFeature
from dryfit.placing.site import Site


def declared_cuts(site: Site, placed: Mapping[str, Placed]) -> tuple[Cut, ...]:
    """Return the cuts of all declared features.

    Findings: feature-off-part.
    """
    cuts: list[Cut] = []
    for feature in site.declared.features:
        for host in feature.parts:
            for seat in site.named(host):
                if seat.name in placed:
                    cut = _cut(site, feature, placed[seat.name])
                    if cut is not None:
                        cuts.append(cut)
    return tuple(dict.fromkeys(cuts))


def _cut(site: Site, feature: DeclaredFeature, copy: Placed) -> Cut | None:
    (place_on,) = feature.places
    sizes = dict(feature.sizes)
    surface = _surface(feature.surfaces[0].words[0], copy)
    axis, side = PLACE_SIDE[place_on.place]
    if surface[0] in {copy.axes[0], axis} or axis == copy.axes[0]:
        _off_part(site, feature, copy, "the face and the place do not fit each other")
        return None
    place = (axis, side, place_on.value)
    box = declared_groove(copy, surface, place, sizes["width"], sizes["depth"])
    if not copy.box.contains(box):
        _off_part(site, feature, copy, "it does not lie wholly on the part")
        return None
    return Cut(
        copy.name,
        box,
        "long slot",
        "groove",
        surface[0],
        surface[1],
        "free",
        None,
        feature.span,
        feature.after,
    )


def _surface(face: str, copy: Placed) -> tuple[int, int]:
    if face in {"inside", "outside"}:
        axis = copy.axes[2]
        outward = copy.outward[axis]
        return (axis, outward if face == "outside" else -outward)
    return PLACE_SIDE[face]


def _off_part(site: Site, feature: DeclaredFeature, copy: Placed, why: str) -> None:
    finding = Diagnostic(
        "feature-off-part",
        Severity.ERROR,
        f"{feature.kind} in {copy.part}: {why}",
        feature.span,
        rule="H38",
        hints=(Hint("name a face and a distance from an edge, such as `inside`, `12 from top`"),),
    )
    if finding not in site.findings:
        site.findings.append(finding)
