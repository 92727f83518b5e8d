"""Pieces whose sheets are lipped: the lips that a line of the notes would give their parts."""

from dataclasses import replace
from fractions import Fraction

from dryfit.diagnostics import Span
from dryfit.placing.lip import Lip
from dryfit.placing.model import Model

CASE = """
piece Lipped case
units mm
overall 600 wide, 300 deep, 500 high
timber birch plywood
2 sides, upright, facing side, 300 x 18, at left and right
1 top, flat, 300 x 18, into sides, housing 6, flush top
1 bottom, flat, 300 x 18, into sides, housing 6, flush bottom
1 shelf, flat, 292 x 18, into sides, housing 6, up 240
glue up case: sides, top, bottom, shelf
finish oil varnish
"""
"""Of plywood; every part shows its front edge, which is E or E2 as its line makes it lie."""


def lip(surface: str, thick: int, span: Span, timber: str | None = "birch") -> Lip:
    """A strip of so many mm, or banding where no timber is named."""
    return Lip(surface, Fraction(thick), timber, timber is None, span)


def lipped(model: Model, lips: dict[str, tuple[tuple[str, int, str | None], ...]]) -> Model:
    """The Model with lips on parts: by name their surfaces, thicknesses in mm and timbers."""
    parts = (
        replace(
            part,
            lips=tuple(
                lip(surface, thick, part.spans[0], timber)
                for surface, thick, timber in lips.get(part.name, ())
            ),
        )
        for part in model.parts
    )
    return replace(model, parts=tuple(parts))
