"""Space that two copies take up together after all cuts: a joint is missing, or a place wrong."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.geometry.box import Box, spanning
from dryfit.geometry.solid import Solid
from dryfit.joinery.cut import Cut
from dryfit.joinery.form import Region
from dryfit.placing.apart_words import overlap_words
from dryfit.placing.face_seats import apart_words
from dryfit.placing.model import Copy, Part
from dryfit.placing.openings import wider_than_drawn
from dryfit.placing.overlap_remedies import overlap_remedy
from dryfit.placing.overlapping_things import in_different_things, thing_of, things_overlap
from dryfit.placing.site import Site

MOST_TOLD = 20
Pair = tuple[Part, Copy, Part, Copy]


def report_overlaps(site: Site, parts: Sequence[Part], cuts: Mapping[str, Sequence[Cut]]) -> None:
    """Report, once for two parts, that copies of them stand in the same space.

    Inside a third copy that both enter, the space is that copy's: whether two tenons meet in a
    leg is a question of its mortises (H05).  Findings: overlap, copies-in-one-place.
    """
    entered, near = _entered(cuts), _Cuts(cuts)
    told: set[tuple[str, str]] = set()
    roomy = wider_than_drawn(site)
    for part, copy, other_part, other in _near_pairs(parts):
        asunder = in_different_things(copy, other)
        names = (part.name, other_part.name)
        pair = (thing_of(names[0]) or "", thing_of(names[1]) or "") if asunder else names
        if pair in told:
            continue
        common = copy.box.overlap(other.box)
        if common is None or _is_room((copy, other), common, roomy):
            continue
        removed = [*near.within(copy.name, common), *near.within(other.name, common)]
        removed += _shared_hosts(entered, part.name, other_part.name)
        removed += _closed_mitres(near.forms(copy.name), near.forms(other.name))
        left = Solid(common, tuple(removed)).cells()
        left = _less_forms(left, [*near.forms(copy.name), *near.forms(other.name)])
        if left:
            told.add(pair)
            site.findings.append(
                things_overlap(site, parts, (part, copy), (other_part, other))
                if asunder
                else _finding(site, part, copy, other_part, other, left)
            )
        if len(told) >= MOST_TOLD:
            return


def _is_room(
    pair: tuple[Copy, Copy], common: Box, roomy: Mapping[tuple[str, int], Fraction]
) -> bool:
    # What stands in an opening that came out wider than drawn reaches into its wall on paper only.
    return any(
        common.extent(axis) <= roomy.get((copy.name, axis), 0) for copy in pair for axis in range(3)
    )


class _Cuts:
    """The cuts of each copy, found by place: a rail may have hundreds."""

    def __init__(self, cuts: Mapping[str, Sequence[Cut]]) -> None:
        # Comparing floats is enough to pass over what lies far away; the rest is exact.
        self._bounds = {
            name: [
                (float(c.box.low[0]), float(c.box.high[0]), c.box) for c in own if c.form is None
            ]
            for name, own in cuts.items()
        }
        self._forms = {
            name: tuple(cut.region for cut in own if cut.form is not None)
            for name, own in cuts.items()
        }

    def forms(self, name: str) -> tuple[Region, ...]:
        """Return the cuts of a copy that are no boxes."""
        return self._forms.get(name, ())

    def within(self, name: str, common: Box) -> list[Box]:
        """Return what the cuts of a copy take from a box."""
        low, high = float(common.low[0]) - 1, float(common.high[0]) + 1
        near = (box for start, end, box in self._bounds.get(name, ()) if start < high and end > low)
        return [cut for box in near if (cut := box.overlap(common))]


def _closed_mitres(own: Sequence[Region], others: Sequence[Region]) -> list[Box]:
    """Return the boxes that two copies share out between them: each has one half, none is left."""
    return [one.box for one in own for two in others if one.completes(two)]


def _less_forms(left: tuple[Box, ...], forms: Sequence[Region]) -> tuple[Box, ...]:
    # Of a cut that is no box only what surely goes counts: the rest of its box is wood.
    for form in forms:
        kept: list[Box] = []
        for box in left:
            inside = box.overlap(form.box)
            gone = inside is not None and form.takes(inside)
            kept += Solid(box, (form.box,)).cells() if gone else (box,)
        left = tuple(kept)
    return left


def _near_pairs(parts: Sequence[Part]) -> Iterator[Pair]:
    # In the order of their left sides only copies that begin before one ends can meet it.
    order = {part.name: index for index, part in enumerate(parts)}
    copies = sorted(
        ((part, copy) for part in parts for copy in part.copies),
        key=lambda entry: (entry[1].box.low[0], order[entry[0].name]),
    )
    open_ones: list[tuple[Part, Copy]] = []
    for part, copy in copies:
        open_ones = [each for each in open_ones if each[1].box.high[0] > copy.box.low[0]]
        for other_part, other in open_ones:
            if order[part.name] < order[other_part.name]:
                yield part, copy, other_part, other
            else:
                yield other_part, other, part, copy
        open_ones.append((part, copy))


def _entered(cuts: Mapping[str, Sequence[Cut]]) -> dict[str, list[tuple[str, Box]]]:
    # By the part that enters: which copies it enters, and where.
    entered: dict[str, list[tuple[str, Box]]] = {}
    for name, own in cuts.items():
        for cut in own:
            if cut.mate is not None and cut.role in {"mortise", "housing", "rabbet", "lap"}:
                entered.setdefault(cut.mate, []).append((name, cut.box))
    return entered


def _shared_hosts(
    entered: Mapping[str, Sequence[tuple[str, Box]]], first: str, second: str
) -> list[Box]:
    hosts = {name for name, _ in entered.get(second, ())}
    return [box for name, box in entered.get(first, ()) if name in hosts]


def _finding(
    site: Site, part: Part, copy: Copy, other_part: Part, other: Copy, left: tuple[Box, ...]
) -> Diagnostic:
    depth: Fraction = min(left[0].extent(axis) for axis in range(3))
    span = part.spans[0] if part.spans else (other_part.spans or (None,))[0]
    if part is other_part and copy.box == other.box:
        return Diagnostic(
            "copies-in-one-place",
            Severity.ERROR,
            f"{copy.name} and {other.name} are in one place",
            span,
            rule="H28",
            figures={"depth": depth},
            hints=(Hint(apart_words(site.declared.display)),),
        )
    return Diagnostic(
        "overlap",
        Severity.ERROR,
        f"{copy.name} and {other.name} take up the same space, and no joint says how: "
        f"{overlap_words(site, spanning(left))}",
        span,
        rule="H28",
        figures={"depth": depth},
        hints=(Hint(overlap_remedy(site, (part, copy), (other_part, other))),),
    )
