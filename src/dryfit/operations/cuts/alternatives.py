"""The ways to cut a family of joints that were weighed, and the rule that chose (TRADE B0.1)."""

from __future__ import annotations

from dryfit.operations.cuts.cutting import ACROSS, ENDS, Joinery
from dryfit.operations.cuts.groove_families import GrooveFamily
from dryfit.operations.minutes import in_minutes
from dryfit.operations.ways.cross_cuts import CROSS_KINDS
from dryfit.operations.ways.methods import BY_ORDER, choice_in_words
from dryfit.operations.ways.reference_ends import FROM_R, NEARER
from dryfit.plan.operation import Alternative


def alternatives_of(joinery: Joinery) -> tuple[Alternative, ...]:
    """Return, for cuts across the grain and for grooves, the chosen method and those not taken."""
    grooves = (_of_grooves(family, joinery) for family in joinery.grooves)
    return (*_across(joinery), *_of_ends(joinery), *(row for rows in grooves for row in rows))


def _of_grooves(family: GrooveFamily, joinery: Joinery) -> tuple[Alternative, ...]:
    """Return the ways to cut the grooves for one panel, with the minutes of each."""
    ways = dict.fromkeys(way for _, way in family.sites)
    if family.mate is None or len(ways) != 1 or not family.minutes:
        return ()
    chosen = next(iter(ways))
    keys = {key for key, _ in family.sites}
    ids = tuple(
        operation.id
        for operation, cuts in zip(joinery.operations, joinery.cuts, strict=True)
        if any((cut.site.part.name, cut.site.feature.id) in keys for cut in cuts)
    )
    took = ", ".join(f"{way} {in_minutes(spent)}" for way, spent in family.minutes.items())
    reason = f"{family.reason}; with set-up: {took}"
    group = f"grooves for {family.mate}"
    others = (way for way in family.minutes if way != chosen)
    return (
        Alternative(group, chosen, ids, chosen=True, reason=reason),
        *(Alternative(group, way, ids, chosen=False, reason=reason) for way in others),
    )


def _across(joinery: Joinery) -> tuple[Alternative, ...]:
    ids = tuple(
        operation.id
        for operation, cuts in zip(joinery.operations, joinery.cuts, strict=True)
        if cuts[0].site.feature.kind in CROSS_KINDS
    )
    if not ids:
        return ()
    choice = joinery.choice
    figures = choice_in_words(choice)
    return (
        Alternative(ACROSS, choice.chosen, ids, chosen=True, reason=figures),
        *(
            Alternative(ACROSS, way, ids, chosen=False, reason=figures, weigh=weigh)
            for way, weigh in choice.others
        ),
    )


def _of_ends(joinery: Joinery) -> tuple[Alternative, ...]:
    """Return from which end slots are measured that could share a stop from the nearer one."""
    turned = joinery.turned
    ids = tuple(
        operation.id
        for operation, cuts in zip(joinery.operations, joinery.cuts, strict=True)
        if any((cut.site.part.name, cut.site.feature.id) in turned.sites for cut in cuts)
    )
    if not ids:
        return ()
    reason = BY_ORDER if turned.taken else "one reference end for all cuts of a part"
    return tuple(
        Alternative(ENDS, way, ids, chosen=taken, reason=reason, weigh=not taken)
        for way, taken in ((NEARER, turned.taken), (FROM_R, not turned.taken))
    )
