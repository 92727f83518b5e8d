"""The strips of lipped sheets, worked by hand after TRADE A10: core width = W - n * t."""

from dataclasses import replace
from fractions import Fraction

from tests.pieces.lipped import CASE, lipped
from tests.pieces.reading import mm, model_of

from dryfit.placing.model import Part
from dryfit.placing.strips import core_of, strip_parts

OVER, PROUD = Fraction(10), Fraction(1)
ALLOWANCES = {"lip_over": OVER, "lip_proud": PROUD}
BOTH = (("R", 6, "birch"), ("R2", 6, "birch"), ("E", 8, "birch"), ("E2", 8, "birch"))


def _shelf(*lips: tuple[str, int, str | None]) -> Part:
    model = lipped(model_of(CASE), {"shelf": lips})
    return next(part for part in model.parts if part.name == "shelf")


def _sizes(part: Part) -> tuple[Fraction, ...]:
    return part.length, part.width, part.thickness


def test_a_lip_at_the_front_takes_its_thickness_off_the_core() -> None:
    # The shelf is 600 - 2 x (18 - 6) = 576 long and 292 wide; its strip 8 thick runs past both
    # ends by 10 and stands proud of both faces by 1.
    shelf = _shelf(("E2", 8, "birch"))
    assert _sizes(core_of(shelf)) == mm(576, 284, 18)
    (strip,) = strip_parts(shelf, ALLOWANCES)
    assert (strip.name, strip.timber, strip.stock) == ("shelf lip", "birch", "solid")
    assert _sizes(strip) == mm(596, 20, 8)
    assert [copy.name for copy in strip.copies] == ["shelf lip at E2"]


def test_the_strips_of_the_edges_cover_those_of_the_ends() -> None:
    shelf = _shelf(*BOTH)
    assert _sizes(core_of(shelf)) == mm(576 - 12, 292 - 16, 18)
    ends, edges = strip_parts(shelf, ALLOWANCES)
    assert (ends.name, _sizes(ends)) == ("shelf end lip", mm(276 + 20, 20, 6))
    assert (edges.name, _sizes(edges)) == ("shelf edge lip", mm(576 + 20, 20, 8))
    assert [copy.name for copy in edges.copies] == ["shelf lip at E", "shelf lip at E2"]


def test_unlike_edges_have_strips_of_their_own() -> None:
    strips = strip_parts(_shelf(("E", 3, "birch"), ("E2", 8, "birch")), ALLOWANCES)
    assert [strip.name for strip in strips] == ["shelf lip at E", "shelf lip at E2"]


def test_a_spare_has_strips_of_its_own() -> None:
    shelf = replace(_shelf(("E", 8, "birch"), ("E2", 8, "birch")), spare=2)
    (strips,) = strip_parts(shelf, ALLOWANCES)
    assert (len(strips.copies), strips.spare) == (2, 4)


def test_banding_has_no_strips_and_counts_with_the_size() -> None:
    shelf = _shelf(("E2", 1, None))
    assert strip_parts(shelf, ALLOWANCES) == ()
    assert core_of(shelf).width == 291
    plain = _shelf()
    assert core_of(plain) is plain
