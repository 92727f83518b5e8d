"""The table of derived figures: every size with the sum and the facts behind it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from dryfit.diagnostics import Figure, Term
from dryfit.kinds.joints import overlaps_mate
from dryfit.piece.declared import PART_DIMENSIONS, PIECE_DIMENSIONS, Amount, Opening
from dryfit.piece.sum_words import figure_words, lean_figure, times_words
from dryfit.placing.feature_reasons import feature_figures, made_for, tops_buttoned
from dryfit.placing.found import Found
from dryfit.placing.model import EndAdd, Part
from dryfit.placing.positions import Fact
from dryfit.placing.relations import told_in_measures
from dryfit.placing.site import Site, both, size_name
from dryfit.placing.solving import merged

_B25 = "TRADE B25, common practice"


def figures_of(site: Site, parts: Sequence[Part], found: Sequence[Found]) -> dict[str, Figure]:
    """Return the figures by name: overall, sizes of parts and openings, shoulders, features."""
    figures: dict[str, Figure] = {}
    for word, amount in zip(PIECE_DIMENSIONS, site.declared.overall, strict=True):
        if amount is not None:
            name = f"overall.{word}"
            figures[name] = _as_written(site, name, amount.value, amount)
    for part in parts:
        if part.made:
            _made_sizes(site, part, figures)
        else:
            _part_sizes(site, part, found, figures)
        figures.update(feature_figures(site, part, parts))
    for opening in site.declared.openings:
        _opening_sizes(site, opening, figures)
    for instance, box in site.boxes.items():
        _instance_sizes(site, instance, box, figures)
    return figures


def _part_sizes(site: Site, part: Part, found: Sequence[Found], figures: dict[str, Figure]) -> None:
    declared = site.part(part.name)
    sizes = (part.length, part.width, part.thickness)
    for axis, dimension, value, written in zip(
        declared.axes, PART_DIMENSIONS, sizes, declared.sizes, strict=True
    ):
        name = f"{part.name}.{dimension}"
        chain = telling_chain(site, part.name, axis)
        if written is not None:
            figures[name] = _as_written(site, name, value, written)
            continue
        figures[name] = _from_chain(name, value, chain, apart=dimension != "length")
    if part.adds and part.shoulder_length is not None:
        _shoulders(site, part, _lapped_sizes(site, part, found), figures)


def _as_written(site: Site, name: str, value: Fraction, amount: Amount) -> Figure:
    spans = (amount.span, *amount.behind.spans)
    said = {lean_figure(lean): site.figure_of(lean) for lean in amount.leans}
    behind = (said.get(figure, figure) for figure in amount.behind.figures)
    inputs = tuple(figure for figure in behind if figure != name)
    if not amount.leans:
        return Figure(name, value, "written", "as written", (), inputs, spans)
    # A sum of what only the placed piece knows is told with what its terms came to.
    terms = [Term("as written", amount.value)] if amount.value else []
    for lean in amount.leans:
        faces = site.faces_of(lean)
        size = site.positions.distance(*faces) if faces else None
        of = figure_words(site.figure_of(lean))
        label, often = times_words(lean.factor, of), abs(lean.factor)
        terms.append(Term(label, lean.factor * (size or Fraction(0)), often, of))
    words = f"written as {site.said(amount)}"
    ordered = tuple(sorted(terms, key=_from_the_whole_down))
    return Figure(name, value, "written", words, ordered, inputs, spans)


def _opening_sizes(site: Site, opening: Opening, figures: dict[str, Figure]) -> None:
    for axis, dimension in enumerate(PIECE_DIMENSIONS):
        faces = both(opening.name, axis)
        value, chain = site.positions.distance(*faces), site.positions.chain(*faces)
        if value is not None:
            name = f"{opening.name}.{dimension}"
            figures[name] = _from_chain(name, value, chain, apart=True)


def _instance_sizes(site: Site, instance: str, box: str, figures: dict[str, Figure]) -> None:
    for axis, dimension in enumerate(PIECE_DIMENSIONS):
        name, faces = f"{instance}.{dimension}", both(box, axis)
        value, chain = site.positions.distance(*faces), site.positions.chain(*faces)
        if value is not None:
            figure = _from_chain(name, value, chain, apart=True)
            inputs = tuple(each for each in figure.inputs if each != name)
            figures[name] = replace(figure, inputs=inputs)


def telling_chain(site: Site, part: str, axis: int) -> tuple[Fact, ...]:
    """Return the facts behind a size of a part along a piece axis, whole openings as one.

    "All copies are alike" explains nothing: the copy that was worked out first does.
    """
    chains = (site.positions.chain(*both(seat.name, axis)) for seat in site.seats(part))
    first = next(chains)
    if any(fact.reason.rule == "alike" for fact in first):
        telling = (chain for chain in chains if all(fact.reason.rule != "alike" for fact in chain))
        first = next(telling, first)
    return told_in_measures(first, site.equations.measures)


def _from_chain(name: str, value: Fraction, chain: Sequence[Fact], *, apart: bool) -> Figure:
    # A length takes what its joints add as one term each (`_shoulders`).
    moved = [term for fact in chain if fact.distance for term in fact.terms(apart=apart)]
    if any(fact.reason.shares for fact in chain):
        moved = _mixed(chain)
    # A sum reads from the whole down to what is taken off, whichever end the chain began at.
    terms = tuple(sorted(moved, key=_from_the_whole_down))
    spans = tuple(
        dict.fromkeys(
            span
            for fact in chain
            for span in (fact.reason.span, *fact.reason.also)
            if span is not None
        )
    )
    inputs = tuple(dict.fromkeys(figure for fact in chain for figure in fact.reason.figures))
    words = "; ".join(dict.fromkeys(fact.reason.words for fact in chain if fact.reason.words))
    assumed = any(fact.reason.assumed for fact in chain)
    return Figure(name, value, "worked out", words, terms, inputs, spans, assumed=assumed)


def _mixed(chain: Sequence[Fact]) -> list[Term]:
    # What relations tell is a mix, in which the terms of the rest of the chain may occur again.
    shares = merged(share for fact in chain for share in fact.shares())
    return [
        Term(
            times_words(share.count, share.label),
            share.count * share.amount,
            abs(share.count),
            share.label,
        )
        for share in shares
    ]


def _from_the_whole_down(term: Term) -> tuple[bool, bool]:
    return term.amount < 0, not (term.of or term.label).startswith("overall ")


def _lapped_sizes(site: Site, part: Part, found: Sequence[Found]) -> tuple[str, ...]:
    # What a lap adds is a size of the mate, along the part's run.
    axis, names = site.part(part.name).axes[0], {copy.name for copy in part.copies}
    part_of = {seat.name: seat.part for seat in site.seating.all()}
    return tuple(
        dict.fromkeys(
            size_name(site, part_of[mate], axis)
            for joint in found
            if overlaps_mate(joint.kind)
            for copy, mate in ((joint.guest, joint.host), (joint.host, joint.guest))
            if copy in names
        )
    )


def _added(site: Site, add: EndAdd) -> str:
    proud = f", {site.shown(add.proud)} of it proud" if add.proud else ""
    return f"{_cut_of(add)} at {add.end}{proud}"


def _cut_of(add: EndAdd) -> str:
    # What a panel slides into is a groove.
    return "groove" if add.joint == "slid panel" else add.joint.removeprefix("back ")


def _shoulders(site: Site, part: Part, lapped: tuple[str, ...], figures: dict[str, Figure]) -> None:
    length = figures[f"{part.name}.length"]
    added = tuple(Term(_added(site, add), add.length) for add in part.adds)
    if length.terms and any(not overlaps_mate(add.joint) for add in part.adds):
        shoulder = _between_shoulders(part, length)
        figures[shoulder.name] = shoulder
        terms = (Term("between shoulders", shoulder.value), *added)
        words = "shoulder length and what the joints add"
        figures[length.name] = replace(
            length, rule="B25", words=words, terms=terms, inputs=(shoulder.name,), source=_B25
        )
        return
    name = f"{part.name}.shoulder length"
    figures[name] = Figure(
        name,
        part.shoulder_length or Fraction(0),
        "B25",
        "the length less what the joints add",
        (Term("length", part.length), *(Term(term.label, -term.amount) for term in added)),
        (length.name, *lapped),
        length.spans,
        _B25,
        length.assumed,
    )


def _between_shoulders(part: Part, length: Figure) -> Figure:
    # The joints' own terms stand at the two ends of the chain; what is left is the distance
    # between the faces that the shoulders meet.
    shoulder = part.shoulder_length or Fraction(0)
    inner = tuple(term for term in length.terms if not _is_add(term, part))
    inner += tuple(
        Term(f"floating end at {add.end}", -add.floats) for add in part.adds if add.floats
    )
    adds_up = sum((term.amount for term in inner), Fraction(0)) == shoulder
    return replace(
        length,
        name=f"{part.name}.shoulder length",
        value=shoulder,
        words="between the faces that its shoulders meet",
        terms=inner if adds_up else (),
    )


def _is_add(term: Term, part: Part) -> bool:
    return any(
        term.amount == add.length - add.floats and term.label.startswith(f"{_cut_of(add)} ")
        for add in part.adds
    )


def _made_sizes(site: Site, part: Part, figures: dict[str, Figure]) -> None:
    for dimension, value in zip(
        PART_DIMENSIONS, (part.length, part.width, part.thickness), strict=True
    ):
        name = f"{part.name}.{dimension}"
        figures[name] = Figure(
            name,
            value,
            "B26.2",
            "from the slot that its tongue enters and the movement of the top",
            inputs=tops_buttoned(site),
            spans=made_for(site),
            source="TRADE B22 and B26.2, common practice",
        )
