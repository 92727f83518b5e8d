"""Sizes that wait for a measurement on the glued piece (TRADE C5): their formula and its figure.

What stands in an opening is as large as that has become in the clamps, less its gaps.  How much of
the opening is in a size follows from the chain of reasons behind it, so that a rail of a door is
measured for as the door itself is.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.piece.declared import PART_DIMENSIONS, PIECE_DIMENSIONS, DeclaredPart, Measured, Opening
from dryfit.placing.formula import in_words, worked_out
from dryfit.placing.found import Found
from dryfit.placing.measured_openings import measured_in
from dryfit.placing.model import Assembly, Measure, Part
from dryfit.placing.openings import hosts_of, size_as_drawn, walls_on
from dryfit.placing.positions import Fact, Share
from dryfit.placing.reasons import telling_chain
from dryfit.placing.relations import measures_of
from dryfit.placing.site import SIDE_WORDS, Site, part_words
from dryfit.placing.solving import merged
from dryfit.placing.stages import copies_inside

ZERO, ONE = Fraction(0), Fraction(1)
_ALONG_WORDS = ("length", "depth", "height")
_MEASURED = ("length", "width")
"""A thickness is planed to the drawing; nobody measures an opening for it."""
AS_DRAWN = "as drawn"
_SAYS_AS_DRAWN = "cut as drawn"
_SAYS_TO_MEASURE = "cut to measure"
PLANE = "plane"
_CLOSING = frozenset({"door", "lid", "flap"})
"""What closes an opening, and is seen with its gaps all round."""
_MOST_PLANED = Fraction(5)
"""What is taken off by a plane in mm, both edges together; more is sawn off: common practice."""


@dataclass(frozen=True, slots=True)
class _Space:
    """An opening on one axis: its measurement, the copies it lies between, and their glue-up."""

    opening: str
    axis: int
    walls: tuple[str, ...]
    glued: Assembly
    nominal: Fraction
    taken: Fraction | None

    @property
    def name(self) -> str:
        return f"{self.opening} {PIECE_DIMENSIONS[self.axis]}"


def with_measures(
    site: Site, parts: Sequence[Part], assemblies: Sequence[Assembly], found: Sequence[Found]
) -> tuple[Part, ...]:
    """Return the parts, each with the measurements that its sizes wait for.

    A size waits where its line says ``cut after`` a glue-up (its length), and where it comes from
    an opening whose walls are glued up without the part.  What does so without a word on its line
    is listed, unless the line says `as drawn`.
    """
    inside = copies_inside(assemblies)
    spaces = _spaces(site, assemblies, inside)
    return tuple(
        replace(part, measures=_measures(site, part, spaces, inside, assemblies, found))
        for part in parts
    )


def with_drawn_sizes(site: Site) -> tuple[Measured, ...]:
    """Return what was measured, openings with the size that they have on paper."""
    return tuple(
        replace(each, planned=_drawn(site, each))
        if each.kind == "opening" and each.planned is None
        else each
        for each in site.declared.measured
    )


def _drawn(site: Site, measured: Measured) -> Fraction | None:
    name, _, dimension = measured.name.rpartition(".")
    opening = site.opening(name)
    if opening is None or dimension not in PIECE_DIMENSIONS:
        return None
    return size_as_drawn(site, opening, PIECE_DIMENSIONS.index(dimension))


def _spaces(
    site: Site, assemblies: Sequence[Assembly], inside: Mapping[str, frozenset[str]]
) -> dict[str, _Space]:
    """Return the openings that a glue-up closes, by the name of their figure."""
    spaces: dict[str, _Space] = {}
    for opening in site.declared.openings:
        for axis, dimension in enumerate(PIECE_DIMENSIONS):
            walls = _walls(site, opening, axis)
            nominal = size_as_drawn(site, opening, axis)
            glued = next((each for each in assemblies if set(walls) <= inside[each.name]), None)
            if walls and glued is not None and nominal is not None:
                measured = measured_in(site, opening, axis)
                taken = measured.taken if measured else None
                space = _Space(opening.name, axis, walls, glued, nominal, taken)
                spaces[f"{opening.name}.{dimension}"] = space
    return spaces


def _walls(site: Site, opening: Opening, axis: int) -> tuple[str, ...]:
    walls = walls_on(site, opening, axis)
    seats = walls.all() if walls is not None else ()
    return tuple(seat.name for seat in seats or hosts_of(site, opening))


def _measures(
    site: Site,
    part: Part,
    spaces: Mapping[str, _Space],
    inside: Mapping[str, frozenset[str]],
    assemblies: Sequence[Assembly],
    found: Sequence[Found],
) -> tuple[Measure, ...]:
    if part.made:
        return part.measures
    declared, own = site.part(part.name), {copy.name for copy in part.copies}
    measures: list[Measure] = []
    for dimension in _MEASURED if declared.fitted != AS_DRAWN else ():
        share = _share_of(site, part, dimension, spaces)
        if share is None or own & inside[share[0].glued.name]:
            continue
        measures.append(_from_space(site, part, dimension, *share))
    if _is_planed(site, part, declared, measures):
        measures = [_sawn_to_the_opening(each, site) for each in measures]
    if declared.cut_after is not None and not any(m.dimension == "length" for m in measures):
        stage = declared.cut_after[0]
        glued = [inside[each.name] for each in assemblies if each.stage == stage]
        there = frozenset().union(*glued)
        measures.insert(0, _after_stage(site, part, declared, stage, there, found))
    if measures and declared.cut_after is None and not declared.fitted:
        _list_measured(site, declared, measures)
    return tuple(measures)


def _is_planed(site: Site, part: Part, declared: DeclaredPart, measures: Sequence[Measure]) -> bool:
    """Return whether a part is planed to its gaps in its opening (TRADE C5.4).

    Solid wood that closes an opening is, where its line does not say otherwise; what is larger
    than its gaps let it be is cut to measure.  Findings: not-planed-to-fit.
    """
    usual = declared.name.rpartition(" ")[2] in _CLOSING and part.stock == "solid"
    whole = part.opening is not None and declared.within is None
    little = measures and all(0 < each.clearance <= _MOST_PLANED for each in measures)
    if declared.fitted == PLANE and not (whole and little):
        _not_planed(site, declared)
    if not whole or not little:
        return False
    return declared.fitted == PLANE or (not declared.fitted and usual)


def _not_planed(site: Site, declared: DeclaredPart) -> None:
    name = declared.within or declared.name
    finding = Diagnostic(
        "not-planed-to-fit",
        Severity.WARNING,
        f"{name}: planed to fit is what stands whole in an opening with small gaps; it is cut to "
        "measure",
        declared.span.used_by or declared.span,
        rule="C5.4",
        hints=(Hint("write `cut to measure`"),),
    )
    site.tell_once(finding)


def _sawn_to_the_opening(measure: Measure, site: Site) -> Measure:
    sawn = worked_out(measure.name, measure.share, ZERO)
    words = in_words(sawn, site.declared.display)
    return replace(measure, trim=measure.clearance, sawn_formula=words, sawn_worked=sawn)


def _share_of(
    site: Site, part: Part, dimension: str, spaces: Mapping[str, _Space]
) -> tuple[_Space, Fraction] | None:
    """Return the opening that a size comes from and how often it counts, or None.

    Where several count, the one that counts most is measured.
    """
    declared = site.part(part.name)
    written = declared.sizes[PART_DIMENSIONS.index(dimension)]
    counts: dict[str, Fraction] = {}
    if written is not None:
        for lean in written.leans:
            name = site.figure_of(lean)
            counts[name] = counts.get(name, ZERO) + lean.factor
    else:
        axis = declared.axes[PART_DIMENSIONS.index(dimension)]
        counts = _counts(telling_chain(site, part.name, axis), site.declared.openings)
    known = [(spaces[name], count) for name, count in counts.items() if count and name in spaces]
    return max(known, key=lambda each: abs(each[1]), default=None)


def _counts(chain: Sequence[Fact], openings: Sequence[Opening]) -> dict[str, Fraction]:
    shares: tuple[Share, ...] = merged(share for fact in chain for share in fact.shares())
    figures = {each.reason.label: each.reason.figures[0] for each in measures_of(openings)}
    sign = -ONE if sum((fact.distance for fact in chain), ZERO) < 0 else ONE
    return {figures[share.label]: sign * share.count for share in shares if share.label in figures}


def _from_space(site: Site, part: Part, dimension: str, space: _Space, share: Fraction) -> Measure:
    size = part.length if dimension == "length" else part.width
    measured = space.nominal if space.taken is None else space.taken
    clearance = share * measured - size
    worked = worked_out(space.name, share, clearance)
    return Measure(
        dimension=dimension,
        name=space.name,
        stage=space.glued.stage,
        nominal=space.nominal,
        clearance=clearance,
        formula=in_words(worked, site.declared.display),
        along=_between(site, space),
        worked=worked,
        share=share,
        walls=space.walls,
        taken=space.taken,
    )


def _between(site: Site, space: _Space) -> str:
    opening = site.opening(space.opening)
    assert opening is not None
    seats = [seat for seat in hosts_of(site, opening) if seat.name in space.walls]
    walls = walls_on(site, opening, space.axis)
    if walls is None or not walls.all():
        front, back = SIDE_WORDS[space.axis, -1], SIDE_WORDS[space.axis, 1]
        return f"from the {front} to the {back} of {part_words(site, seats)}"
    return f"between {part_words(site, seats)}"


def _after_stage(
    site: Site,
    part: Part,
    declared: DeclaredPart,
    stage: str,
    there: frozenset[str],
    found: Sequence[Found],
) -> Measure:
    own = {copy.name for copy in part.copies}
    # What is laid in with the part, as the beads that it is mitred to, is not there to measure on.
    hosts = {joint.host for joint in found if joint.guest in own} & there
    under = sorted(
        other.written.lower()
        for other in site.parts()
        if any(seat.name in hosts for seat in site.seats(other.name))
    )
    name = f"{stage} {_ALONG_WORDS[declared.axes[0]]}"
    return Measure(
        dimension="length",
        name=name,
        stage=stage,
        nominal=part.length,
        clearance=ZERO,
        formula=name,
        worked=(name,),
        along=f"along the {' and '.join(under) or stage}, where the {declared.written} will lie",
    )


def _list_measured(site: Site, declared: DeclaredPart, measures: Sequence[Measure]) -> None:
    first = measures[0]
    names = " and ".join(dict.fromkeys(each.name for each in measures))
    of = f" of the {declared.within}" if declared.within else ""
    text = (
        f"the {declared.written}{of}: cut to size when {names} "
        f"{'are' if ' and ' in names else 'is'} measured in the glued {first.stage}"
    )
    if first.trim:
        site.assume(
            f"the {declared.written}: sawn to the opening and planed to fit",
            declared.span,
            _SAYS_TO_MEASURE,
        )
    # What is said of an instance of a pattern stands on its own line.
    site.assume(text, declared.span.used_by or declared.span, _SAYS_AS_DRAWN)
