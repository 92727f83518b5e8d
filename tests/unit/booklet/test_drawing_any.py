"""Drawings of any sizes: they are made, stay within their width, and nothing collides."""

from dataclasses import replace
from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st
from tests.unit.booklet import drawn_steps as steps
from tests.unit.booklet.drawn_bench import bench, feature
from tests.unit.booklet.drawn_lines import outside, struck_out
from tests.unit.booklet.svg_reading import collisions, quantities

from dryfit.booklet.drawing import Svg, part_sheets, piece_drawing, setup_drawing
from dryfit.booklet.drawing.part_sheet import ALL
from dryfit.booklet.labels import label
from dryfit.geometry.box import Box
from dryfit.plan.operation import Work
from dryfit.plan.setting import Hold, Pass
from dryfit.quantities import Display

MODEL = bench()
SLAT = MODEL.part("slat")
NAMES = tuple(copy.name for copy in SLAT.copies)
DISPLAYS = st.sampled_from([Display(), Display.inches()])
WIDEST = 140.0
LENGTHS = st.integers(60, 2400)
WIDTHS = st.integers(12, 600)
THICKNESSES = st.integers(6, 120)


def sound(drawing: Svg | None) -> Svg:
    assert drawing is not None
    assert collisions(drawing) == []
    assert drawing.width_mm <= WIDEST
    return drawing


@st.composite
def trenches(draw: st.DrawFn) -> tuple[int, int, int, int, int, int, int]:
    """Length, width and thickness of a part, and a trench: from, to, deep, and the cutter."""
    length, width, thick = draw(LENGTHS), draw(WIDTHS), draw(THICKNESSES)
    begin = draw(st.integers(0, length - 30))
    wide = draw(st.integers(3, min(120, length - begin)))
    deep = draw(st.integers(1, thick - 1))
    cutter = draw(st.integers(2, min(20, wide)))
    return length, width, thick, begin, begin + wide, deep, cutter


@settings(max_examples=60, deadline=None)
@given(trenches(), st.sampled_from([0, 6, 12, 18]), DISPLAYS)
def test_any_trench_on_a_sled(
    trench: tuple[int, int, int, int, int, int, int], base: int, display: Display
) -> None:
    length, width, thick, begin, end, deep, cutter = trench
    cut = feature("trench", "cross slot", "housing", "B", (begin, end), (0, width), deep)
    part = replace(SLAT, length=Fraction(length), width=Fraction(width),
                   thickness=Fraction(thick), features=(cut,))  # fmt: skip
    model = replace(MODEL, parts=(part,))
    near = end - cutter
    spacer = Fraction(end - begin - cutter)
    passes = (Pass(), Pass(spacer=spacer)) if spacer else (Pass(),)
    values = (
        steps.ON_SLED,
        steps.mm("height", deep + base, above="table"),
        steps.mm("stop", near, end, to="near"),
    )
    work = Work("slat", NAMES, ("trench",), Hold("B", "E", "R"), passes)
    sled = replace(steps.SLED, base=Fraction(base))
    drawing = sound(setup_drawing(model, steps.step("table saw", values, work), (sled,), display))
    assert {str(deep + base), str(end)} <= set(quantities(drawing))
    own = replace(model, display=display)
    for sheet in part_sheets(part, own, label(own)):
        assert (collisions(sheet), outside(sheet), struck_out(sheet)) == ([], [], [])
        assert sheet.width_mm <= ALL + 20


@settings(max_examples=60, deadline=None)
@given(WIDTHS, THICKNESSES, st.integers(1, 8), st.booleans(), DISPLAYS)
def test_any_cut_along_a_fence(
    near: int, thick: int, kerf: int, through: bool, display: Display
) -> None:
    width = near + 40
    cut = feature("groove", "long slot", "groove", "B", (0, 500), (near, near + kerf), 3)
    part = replace(SLAT, length=Fraction(500), width=Fraction(width), thickness=Fraction(thick),
                   features=() if through else (cut,))  # fmt: skip
    model = replace(MODEL, parts=(part,))
    high = thick + 3 if through else 3
    values = (
        steps.ON_FENCE,
        steps.mm("height", high, above="table"),
        steps.mm("fence", near, near + kerf, to="near"),
    )
    work = Work("slat", NAMES, () if through else ("groove",), Hold("B", "E", None), ())
    step = steps.step("table saw", values, work)
    drawing = sound(setup_drawing(model, step, steps.ACCESSORIES, display))
    assert {str(high), str(near)} <= set(quantities(drawing))


@settings(max_examples=60, deadline=None)
@given(trenches(), st.sampled_from(["left", "right"]), DISPLAYS)
def test_any_mortise(
    trench: tuple[int, int, int, int, int, int, int], side: str, display: Display
) -> None:
    length, width, thick, begin, end, deep, cutter = trench
    across = width // 3, min(width, width // 3 + cutter)
    cut = feature("mortise", "mortise", "mortise", "F", (begin, end), across, deep)
    part = replace(SLAT, length=Fraction(length), width=Fraction(width),
                   thickness=Fraction(thick), features=(cut,))  # fmt: skip
    model = replace(MODEL, parts=(part,))
    values = (
        steps.mm("fence", across[0], across[1], to="near"),
        steps.mm("depth", deep),
        steps.mm("stop", begin, end, to="both", side=side),
    )
    work = Work("slat", NAMES, ("mortise",), Hold("B", "E", "R"), ())
    step = steps.step("mortiser", values, work)
    drawing = sound(setup_drawing(model, step, steps.ACCESSORIES, display))
    assert {str(deep), str(across[0])} <= set(quantities(drawing))


@settings(max_examples=25, deadline=None)
@given(st.lists(st.tuples(LENGTHS, WIDTHS, LENGTHS), min_size=1, max_size=6), DISPLAYS)
def test_any_piece_is_lettered_without_a_collision(
    sizes: list[tuple[int, int, int]], display: Display
) -> None:
    parts = []
    x = 0
    for (wide, deep, high), letter in zip(sizes, "CDGHJK", strict=False):
        box = Box((Fraction(x), Fraction(0), Fraction(0)),
                  (Fraction(x + wide), Fraction(deep), Fraction(high)))  # fmt: skip
        copy = replace(SLAT.copies[0], name=f"{letter} 1", box=box)
        parts.append(replace(SLAT, name=letter, copies=(copy,), features=()))
        x += wide + 5
    overall = (
        Fraction(x),
        Fraction(max(d for _, d, _ in sizes)),
        Fraction(max(h for *_, h in sizes)),
    )
    model = replace(MODEL, parts=tuple(parts), overall=overall)
    sound(piece_drawing(replace(model, display=display), {part.name: part.name for part in parts}))
