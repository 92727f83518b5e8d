"""Sizes and distances of cuts that lean on the placed piece: by now all of it is known."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.piece.declared import Amount, DeclaredFeature, PlacedAmount
from dryfit.placing.site import Site


def known_features(site: Site) -> tuple[DeclaredFeature, ...]:
    """Return the declared cuts with every sum worked out.

    Findings: size-not-positive.
    """
    features = (_known(site, feature) for feature in site.declared.features)
    return tuple(feature for feature in features if feature is not None)


def _known(site: Site, feature: DeclaredFeature) -> DeclaredFeature | None:
    late: list[tuple[str, Fraction]] = []
    for name, amount in feature.late:
        value = site.amount(amount)
        if value is None:
            # Why nothing is known of it has been told where it is placed.
            return None
        if value <= 0:
            _no_size(site, feature, amount, value)
            return None
        late.append((name, value))
    extent = feature.extent and replace(
        feature.extent,
        start=feature.extent.start and _placed(site, feature.extent.start),
        end=feature.extent.end and _placed(site, feature.extent.end),
    )
    places = tuple(_placed(site, place) for place in feature.places)
    return replace(feature, sizes=(*feature.sizes, *late), late=(), places=places, extent=extent)


def _placed(site: Site, place: PlacedAmount) -> PlacedAmount:
    value = site.amount(Amount(place.value, place.span, leans=place.leans))
    return place if value is None else replace(place, value=value, leans=())


def _no_size(site: Site, feature: DeclaredFeature, amount: Amount, value: Fraction) -> None:
    finding = Diagnostic(
        "size-not-positive",
        Severity.ERROR,
        f"{feature.kind}: this comes to {site.declared.display.with_unit(value)}: a size must be "
        "more than nothing",
        amount.span,
        figures={"size": value},
        hints=(Hint("write a size greater than 0"),),
    )
    site.tell_once(finding)
