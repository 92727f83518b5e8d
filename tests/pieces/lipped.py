"""Pieces whose sheets are lipped: the lips that a line of the notes would give their parts."""

from dataclasses import replace
from fractions import Fraction
from functools import cache
from pathlib import Path

from tests.unit.rehearsal.played import Played

from dryfit import workshop
from dryfit.diagnostics import Findings, Source, Span
from dryfit.notes import source_of
from dryfit.placing.lip import Lip
from dryfit.placing.model import Model
from dryfit.plan.plan import Plan
from dryfit.rehearsing import goal_of
from dryfit.workshop import Checked

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


@cache
def played_with_lips(*lips: tuple[str, tuple[tuple[str, int, str | None], ...]]) -> Played:
    """The case planned in the shipped shop with lips on its parts."""
    return planned_with_lips(CASE, *lips)


def planned_with_lips(
    text: str, *lips: tuple[str, tuple[tuple[str, int, str | None], ...]], shop: Path | None = None
) -> Played:
    """Notes planned with lips on their parts: the plan, what it is for, and its shop."""
    found, plan, _ = lipped_piece(text, *lips, shop=shop)
    assert found.model is not None
    assert found.shop is not None
    return Played(plan, goal_of(found.model), found.shop)


def lipped_piece(
    text: str, *lips: tuple[str, tuple[tuple[str, int, str | None], ...]], shop: Path | None = None
) -> tuple[Checked, Plan, Findings]:
    """Notes checked and planned with lips on their parts, and all that was found."""
    source = source_of("notes.dryfit", text.encode())
    assert isinstance(source, Source)
    found = workshop.check(source, shop, {})
    assert found.model is not None
    found = replace(found, model=lipped(found.model, dict(lips)))
    plan, findings = workshop.plan(found, lambda _: None)
    assert plan is not None, [finding.message for finding in findings]
    return found, plan, findings
