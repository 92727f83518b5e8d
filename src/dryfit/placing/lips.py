"""Edges of sheets that are lipped or banded: which they are, how thick, of what wood.

What a line leaves out is taken for granted and listed: a lipping 6 mm thick (common practice: it
takes a small round and hides the ply), of the wood of the piece; banding as thick as the shop says.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity, Span
from dryfit.geometry.frame import Frame
from dryfit.piece.declared import PLACE_SIDE, DeclaredPart, LipWords
from dryfit.piece.sheet_words import is_sheet
from dryfit.placing.lines import with_words
from dryfit.placing.lip import CoveredEdge, Lip, seen_from
from dryfit.placing.site import SIDE_WORDS, Site
from dryfit.quantities.units import INCH

THICKEST_BANDING = Fraction(3)
"""In mm; what is thicker is not bent round or ironed on, and is sawn of solid wood (common
practice).  As thin may a strip be ripped (TRADE A6)."""
_THICKEST_INCHES = INCH / 8
_USUAL = Fraction(6)
_USUAL_INCHES = INCH / 4
_ORDER = ("E", "E2", "R", "R2")


def lips_of(frame: Frame, covered: Sequence[CoveredEdge]) -> tuple[Lip, ...]:
    """Return the lips of a part by the marks of one of its copies, edges first."""
    return tuple(sorted(seen_from(frame, covered), key=lambda lip: _ORDER.index(lip.surface)))


def covered_edges(site: Site, part: DeclaredPart) -> Iterator[CoveredEdge]:
    """Yield the edges of a sheet that its line has covered, each once.

    Findings: lip-on-face, said-twice, lip-thickness, lip-too-thick, lip-timber-missing.
    """
    seen: dict[tuple[int, int], CoveredEdge] = {}
    for lip in part.lips:
        thick, timber = _thickness(site, lip), _timber(site, part, lip)
        _list(site, part, lip, (thick, timber))
        limit = site.declared.display.either(THICKEST_BANDING, _THICKEST_INCHES)
        if thick > limit if lip.banded else thick < THICKEST_BANDING:
            _unlike(site, part, lip, thick)
        for place, span in lip.places:
            for axis, side in _sides(site, part, place, span):
                edge = CoveredEdge(axis, side, thick, timber, lip.banded, lip.span)
                if (axis, side) in seen:
                    where = SIDE_WORDS[axis, side]
                    message = f"said twice: what covers the {where} edge of the {part.name}"
                    _tell(site, "said-twice", message, span, "name each edge once")
                    continue
                seen[axis, side] = edge
                yield edge
    _too_thick(site, part, tuple(seen.values()))


def _sides(site: Site, part: DeclaredPart, place: str, span: Span) -> Iterator[tuple[int, int]]:
    length, width, thickness = part.axes
    axes = {"ends": (length,), "long edge": (width,), "all": (width, length)}.get(place)
    if axes is not None:
        yield from ((axis, side) for axis in axes for side in (-1, 1))
        return
    axis, side = PLACE_SIDE[place]
    if axis != thickness:
        yield axis, side
        return
    edges = [SIDE_WORDS[at, way] for at in (width, length) for way in (-1, 1)]
    _tell(
        site,
        "lip-on-face",
        f"the {place} of the {part.name} is a face of it, and edges are covered",
        span,
        f"its edges are {', '.join(edges[:-1])} and {edges[-1]}; or write `all round`",
    )


def _thickness(site: Site, lip: LipWords) -> Fraction:
    show = site.declared.display
    said = site.amount(lip.thickness) if lip.thickness is not None else None
    if said is not None:
        return said
    if lip.banded:
        return show.rounded(site.shop.allowances["banding"], fitted=True)
    return show.either(_USUAL, _USUAL_INCHES)


def _timber(site: Site, part: DeclaredPart, lip: LipWords) -> str | None:
    if lip.timber is not None or lip.banded:
        return lip.timber
    main = site.declared.timber
    if main is not None and not is_sheet(main):
        return main
    others = {
        each.timber
        for each in site.parts()
        if each.stock == "solid" and each.bought is None and each.timber is not None
    }
    if len(others) == 1:
        return others.pop()
    _tell(
        site,
        "lip-timber-missing",
        f"of which wood is the lipping of the {part.name}?",
        lip.span,
        f"name it: `{_said(site, lip, (_thickness(site, lip), 'oak'))}`",
    )
    return None


def _list(
    site: Site, part: DeclaredPart, lip: LipWords, is_so: tuple[Fraction, str | None]
) -> None:
    """List how thick a lipping is and of what wood, as far as its line does not say so."""
    thick, timber = is_so
    if lip.thickness is not None and (lip.timber is not None or lip.banded):
        return
    what = "edge banding" if lip.banded else "lipping"
    size = site.declared.display.with_unit(thick, fitted=lip.banded)
    said = ([f"{size} thick"] if lip.thickness is None else []) + (
        [f"of {timber}"] if lip.timber is None and timber is not None else []
    )
    if said:
        site.assume_line(
            f"the {what} of the {part.written} is {' and '.join(said)}",
            lip.span,
            with_words(lip.span, _said(site, lip, is_so)),
        )


def _said(site: Site, lip: LipWords, is_so: tuple[Fraction, str | None]) -> str:
    """Return the words that say outright how an edge is covered."""
    thick, timber = is_so
    places = [place for place, _ in lip.places]
    named = ["long edges" if place == "long edge" else place for place in places]
    where = "all round" if "all" in places else f"at {' and '.join(named)}"
    of = f" of {timber}" if timber else ""
    size = site.declared.display.shown(thick, fitted=lip.banded)
    return f"{'edge banded' if lip.banded else 'lipped'} {size} thick{of} {where}"


def _unlike(site: Site, part: DeclaredPart, lip: LipWords, thick: Fraction) -> None:
    show = site.declared.display
    most = show.with_unit(show.either(THICKEST_BANDING, _THICKEST_INCHES))
    size = show.with_unit(thick, fitted=True)
    if lip.banded:
        message = f"banding comes up to {most} thick; that of the {part.written} is {size}"
        hint = "what is thicker is a lipping, sawn of solid wood: `lipped` in place of the word"
    else:
        message = f"a lipping is sawn no thinner than {most}; that of the {part.written} is {size}"
        hint = "make it thicker, or buy it: `edge banded` in place of the word"
    _tell(site, "lip-thickness", message, lip.span, hint)


def _too_thick(site: Site, part: DeclaredPart, covered: Sequence[CoveredEdge]) -> None:
    show = site.declared.display
    for axis in dict.fromkeys(edge.axis for edge in covered):
        own = [edge for edge in covered if edge.axis == axis]
        size = site.positions.extent(site.seats(part.name)[0].name, axis)
        both = sum((edge.thickness for edge in own), Fraction(0))
        if size is not None and 2 * both > size:
            _tell(
                site,
                "lip-too-thick",
                f"of {show.with_unit(size)} of the {part.name} {show.with_unit(both)} would be "
                "lipping, more than is left of the sheet",
                own[0].span,
                "make the lipping thinner, or the part of solid wood",
            )


def _tell(site: Site, code: str, message: str, span: Span, hint: str) -> None:
    site.tell_once(Diagnostic(code, Severity.ERROR, message, span, hints=(Hint(hint),)))
