"""TRADE H01, H05: holes for dowels and pins that meet inside a part."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from dryfit.checks.finding import finding
from dryfit.checks.regions import Ranges, overlap, ranges, solid_parts
from dryfit.diagnostics import Diagnostic, Note, Severity
from dryfit.geometry.frame import LENGTH, SURFACES
from dryfit.joinery.feature import Feature
from dryfit.kinds.roles import PIN_HOLE
from dryfit.placing.model import Model, Part

_DOWEL = "dowel hole"
_HOLDS = {_DOWEL: "dowels", PIN_HOLE: "pins"}
_INTO = frozenset({"mortise", "loose mortise", "biscuit slot", "pilot hole", "screw hole"})
"""What else a dowel may run into."""
Bored = tuple[Feature, Ranges]


def check_bored(model: Model) -> Iterator[Diagnostic]:
    """Yield, once for two lines, holes that meet inside a part.  Findings: holes-meet."""
    for part in solid_parts(model):
        told: set[frozenset[object]] = set()
        for one, two in _near(part):
            cause = frozenset({one[0].span, two[0].span, one[0].mate, two[0].mate})
            if cause in told or not _meet(one, two):
                continue
            told.add(cause)
            yield _told(model, part, one, two)


def _near(part: Part) -> Iterator[tuple[Bored, Bored]]:
    """Yield the pairs, a hole of ours in each, that lie beside one another along the part."""
    roles = _INTO | set(_HOLDS)
    own = [(each, ranges(part, each)) for each in part.features if each.role in roles]
    own.sort(key=lambda each: (each[1][LENGTH], each[0].id))
    for index, one in enumerate(own):
        for two in _reached(one, own[index + 1 :]):
            first, second = sorted((one, two), key=_by_line)
            if first[0].role in _HOLDS or second[0].role in _HOLDS:
                yield first, second


def _reached(one: Bored, following: Sequence[Bored]) -> Iterator[Bored]:
    for two in following:
        if two[1][LENGTH][0] >= one[1][LENGTH][1]:
            return
        if set(one[0].hands) & set(two[0].hands):
            yield two


def _by_line(bored: Bored) -> tuple[int, int, str]:
    span = bored[0].span
    return (span.line, span.column, bored[0].id) if span else (0, 0, bored[0].id)


def _meet(one: Bored, two: Bored) -> bool:
    """Return whether two holes share wood; those side by side by their circles."""
    if one[0].surface == two[0].surface:
        # Beside one another in one row: what lies too near there is told with the joint.
        return False
    if any(overlap(first, second) <= 0 for first, second in zip(one[1], two[1], strict=True)):
        return False
    deep, other = SURFACES[one[0].surface][0], SURFACES[two[0].surface][0]
    round_both = {one[0].kind, two[0].kind} == {"hole"}
    if deep != other or not round_both:
        return True
    beside = [axis for axis in range(3) if axis != deep]
    apart = sum((_middle(one[1], axis) - _middle(two[1], axis)) ** 2 for axis in beside)
    return apart < ((_wide(one, beside) + _wide(two, beside)) / 2) ** 2


def _middle(own: Ranges, axis: int) -> Fraction:
    return (own[axis][0] + own[axis][1]) / 2


def _wide(bored: Bored, beside: Sequence[int]) -> Fraction:
    return min(bored[1][axis][1] - bored[1][axis][0] for axis in beside)


def _told(model: Model, part: Part, one: Bored, two: Bored) -> Diagnostic:
    (first, own), (second, other) = one, two
    deep = SURFACES[first.surface][0]
    opposed = deep == SURFACES[second.surface][0]
    common = overlap(own[deep], other[deep])
    names = " and ".join(dict.fromkeys(_named(each) for each in (first, second)))
    both = {first.role, second.role}
    shown = model.display.with_unit(common, fitted=True)
    return finding(
        "H01" if opposed else "H05",
        "holes-meet",
        Severity.ERROR if _DOWEL in both else Severity.WARNING,
        f"{part.name}: {names} meet in it, by {shown}",
        first.span,
        figures={"common": common},
        remedy=_remedy(both, opposed=opposed, part=part),
        notes=(Note("the other one", second.span),)
        if second.span and second.span != first.span
        else (),
    )


def _named(feature: Feature) -> str:
    what = _HOLDS.get(feature.role) or ("screws" if "hole" in feature.role else feature.role)
    mate = f" of the {feature.mate}" if feature.mate else ""
    return f"the holes for the {what}{mate}" if feature.kind == "hole" else f"the {what}{mate}"


def _remedy(both: set[str], *, opposed: bool, part: Part) -> str:
    if both == {PIN_HOLE}:
        return f"set the rows on its two faces at unequal distances, or use a thicker {part.name}"
    if opposed:
        return f"set the two at unequal heights, or use a thicker {part.name}"
    return (
        f"write another number of dowels for one of the two, so that they stand beside one another,"
        f" or use a thicker {part.name}"
    )
