"""Stops and fences of cuts that move with a measurement: set by its formula (TRADE C5.2)."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from dryfit.joinery.feature import Range
from dryfit.operations.cut import Cut
from dryfit.placing.formula import Worked, in_words, worked_out
from dryfit.placing.model import Drift, Measure, Part
from dryfit.plan.setting import Setting
from dryfit.quantities import Display

ZERO = Fraction(0)
_ENDS = ("R", "R2")
_EDGES = ("E", "E2")


def by_its_formula(cut: Cut, display: Display) -> Cut:
    """Return the cut with each stop and fence that moves with a measurement labelled so.

    The figure on paper stays as its value until the measurement is in the notes.
    """
    drifts = [each for each in cut.site.part.drifts if each.feature == cut.site.feature.id]
    if not drifts:
        return cut
    settings = cut.settings
    for drift in drifts:
        settings = tuple(_labelled(each, cut.site.part, drift, display) for each in settings)
    return replace(cut, settings=settings)


def _labelled(setting: Setting, part: Part, drift: Drift, display: Display) -> Setting:
    if setting.far is None or not isinstance(setting.value, Fraction):
        return setting
    measure = next(each for each in part.measures if each.name == drift.measure)
    shares = _shares(setting, measure, drift)
    if shares is None or shares == (ZERO, ZERO):
        return setting
    near, far = (
        _said(value, share, measure)
        for value, share in zip((setting.value, setting.far), shares, strict=True)
    )
    worked = (*near, " and ", *far) if setting.to == "both" else (*near, " to the near side")
    words = in_words(worked, display)
    return replace(setting, measure=measure.name, formula=words, worked=worked)


def _shares(setting: Setting, measure: Measure, drift: Drift) -> Range | None:
    """Return how often the measurement counts in near and far face of a setting."""
    if setting.axis == "stop" and setting.origin in _ENDS and measure.dimension == "length":
        start, end, far_end = *drift.along, setting.origin == "R2"
    elif setting.axis == "fence" and setting.origin in _EDGES and measure.dimension == "width":
        start, end, far_end = *drift.across, setting.origin == "E2"
    else:
        return None
    if far_end:
        start, end = measure.share - end, measure.share - start
    # A pair of stops stands at both limits; one stop is set for the limit that lies farther.
    return (start, end) if setting.to == "both" else (end, end)


def _said(value: Fraction, share: Fraction, measure: Measure) -> Worked:
    if not share:
        return (value,)
    return worked_out(measure.name, share, share * measure.nominal - value)
