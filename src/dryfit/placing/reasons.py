"""The table of derived figures: every size with the sum and the facts behind it."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from dryfit.diagnostics import Figure, Term
from dryfit.placing.model import Part
from dryfit.placing.positions import Fact
from dryfit.placing.site import DIMENSIONS, Site, both

_OVERALL = ("width", "depth", "height")


def figures_of(site: Site, parts: Sequence[Part]) -> dict[str, Figure]:
    """Return the figures by name: overall sizes, sizes of parts, shoulder lengths, features."""
    figures: dict[str, Figure] = {}
    for word, amount in zip(_OVERALL, site.declared.overall, strict=True):
        if amount is not None:
            name = f"overall.{word}"
            figures[name] = Figure(
                name, amount.value, "written", "as written", spans=(amount.span,)
            )
    for part in parts:
        if part.made:
            _made_sizes(part, figures)
        else:
            _part_sizes(site, part, figures)
        _features(part, figures)
    return figures


def _part_sizes(site: Site, part: Part, figures: dict[str, Figure]) -> None:
    declared = site.part(part.name)
    sizes = (part.length, part.width, part.thickness)
    for axis, dimension, value, written in zip(
        declared.axes, DIMENSIONS, sizes, declared.sizes, strict=True
    ):
        name = f"{part.name}.{dimension}"
        chain = _telling_chain(site, part.name, axis)
        if written is not None:
            figures[name] = Figure(name, value, "written", "as written", spans=(written.span,))
            continue
        figures[name] = _from_chain(name, value, chain)
    if part.adds and part.shoulder_length is not None:
        _shoulders(part, figures)


def _telling_chain(site: Site, part: str, axis: int) -> tuple[Fact, ...]:
    # "All copies are alike" explains nothing: the copy that was worked out first does.
    chains = (site.positions.chain(*both(seat.name, axis)) for seat in site.seats(part))
    first = next(chains)
    if all(fact.reason.rule != "alike" for fact in first):
        return first
    telling = (chain for chain in chains if all(fact.reason.rule != "alike" for fact in chain))
    return next(telling, first)


def _from_chain(name: str, value: Fraction, chain: Sequence[Fact]) -> Figure:
    moved = [Term(fact.reason.label, fact.distance) for fact in chain if fact.distance]
    # A sum reads from the whole down to what is taken off, whichever end the chain began at.
    terms = tuple(sorted(moved, key=lambda term: term.amount < 0))
    spans = tuple(dict.fromkeys(fact.reason.span for fact in chain if fact.reason.span is not None))
    inputs = tuple(dict.fromkeys(f.reason.figure for f in chain if f.reason.figure is not None))
    words = "; ".join(dict.fromkeys(fact.reason.words for fact in chain if fact.reason.words))
    assumed = any(fact.reason.assumed for fact in chain)
    return Figure(name, value, "worked out", words, terms, inputs, spans, assumed=assumed)


def _shoulders(part: Part, figures: dict[str, Figure]) -> None:
    shoulder_name, length_name = f"{part.name}.shoulder length", f"{part.name}.length"
    length = figures[length_name]
    entering = {add.length for add in part.adds if add.joint != "half lap"}
    added = tuple(Term(f"{add.joint} at {add.end}", add.length) for add in part.adds)
    shoulder = part.shoulder_length or Fraction(0)
    if entering and length.terms:
        # The joints' own terms stand at the two ends of the chain; what is left is the distance
        # between the faces that the shoulders meet.
        inner = [term for term in length.terms if not _is_add(term, part)]
        figures[shoulder_name] = Figure(
            shoulder_name,
            shoulder,
            "worked out",
            "between the faces that its shoulders meet",
            tuple(inner) if sum((t.amount for t in inner), Fraction(0)) == shoulder else (),
            length.inputs,
            length.spans,
            assumed=length.assumed,
        )
        figures[length_name] = Figure(
            length_name,
            part.length,
            "B25",
            "shoulder length and what the joints add",
            (Term("between shoulders", shoulder), *added),
            (shoulder_name,),
            length.spans,
            "TRADE B25, common practice",
            length.assumed,
        )
        return
    figures[shoulder_name] = Figure(
        shoulder_name,
        shoulder,
        "B25",
        "the length less what the joints add",
        (Term("length", part.length), *(Term(term.label, -term.amount) for term in added)),
        (length_name,),
        length.spans,
        "TRADE B25, common practice",
        length.assumed,
    )


def _is_add(term: Term, part: Part) -> bool:
    return any(
        term.amount == add.length and term.label.startswith(f"{add.joint} ") for add in part.adds
    )


def _made_sizes(part: Part, figures: dict[str, Figure]) -> None:
    for dimension, value in zip(DIMENSIONS, (part.length, part.width, part.thickness), strict=True):
        name = f"{part.name}.{dimension}"
        figures[name] = Figure(
            name,
            value,
            "B26.2",
            "from the slot that its tongue enters and the movement of the top",
            source="TRADE B22 and B26.2, common practice",
        )


_ROLE_WORDS = {
    "lap": "the two depths of a lap add up to the thickness",
    "mortise": "the tenon's length and room for glue",
    "tenon cheek": "what the tenon leaves of the thickness",
    "tenon shoulder": "what the tenon leaves of the width",
    "housing": "as deep as the part enters",
    "groove": "as written, or as deep as the panel enters and its gap",
    "button slot": "takes the tongue of a button and lets it slide",
    "button tongue": "fits the slot in the rail and pulls the top down",
    "screw hole": "clearance for the shank of the screw",
    "pilot hole": "the screw's length less the thickness that it passes",
}


def _features(part: Part, figures: dict[str, Figure]) -> None:
    for feature in part.features:
        name = f"{part.name}.{feature.id}.depth"
        spans = (feature.span,) if feature.span else ()
        words = _ROLE_WORDS.get(feature.role, "as written")
        figures[name] = Figure(name, feature.depth, feature.role, words, spans=spans)
