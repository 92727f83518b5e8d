"""The parts drawn: two views, hands as a pair, all counted from R, E and F; families together."""

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.unit.booklet.drawn_bench import bench, feature
from tests.unit.booklet.drawn_lines import outside, struck_out
from tests.unit.booklet.svg_reading import SVG, collisions, lettering, quantities, root_of

from dryfit.booklet.drawing.marking_out import families, marking_out
from dryfit.booklet.drawing.part_sheet import along_places, part_sheets
from dryfit.booklet.drawing.part_views import part_view
from dryfit.booklet.drawing.running import spread
from dryfit.booklet.labels import label
from dryfit.joinery.form import Form

MODEL = bench()
LABELS = label(MODEL)
POST = MODEL.part("post")
SLAT = MODEL.part("slat")


def test_left_and_right_posts_are_one_sheet_and_counted_once() -> None:
    (sheet,) = part_sheets(POST, MODEL, LABELS)
    assert (collisions(sheet), outside(sheet), struck_out(sheet)) == ([], [], [])
    words = [line.words for line in lettering(sheet)]
    assert words.count("A") == words.count("B") == 2
    # Each figure once: the lap and the housing along, the mortise across, all depths from F.
    found = quantities(sheet)
    for mm in ("335", "375", "13", "21", "430", "45", "30"):
        assert found.count(mm) == 1, mm


@pytest.mark.parametrize("side", ["F", "E"])
def test_hands_are_mirror_images_in_both_views(side: str) -> None:
    one, other = (next(copy for copy in POST.copies if copy.hand == hand) for hand in POST.hands())
    first, second = part_view(POST, one, side), part_view(POST, other, side)  # type: ignore[arg-type]
    assert first.marked_above is not second.marked_above
    for lines, others in ((first.seen, second.seen), (first.hidden, second.hidden)):
        turned = {
            tuple(sorted((round(x, 3), round(second.height - y, 3)) for x, y in line))
            for line in others
        }
        assert turned == {
            tuple(sorted((round(x, 3), round(y, 3)) for x, y in line)) for line in lines
        }


def test_what_is_cut_into_the_back_is_dashed_on_the_face() -> None:
    cut = feature("groove", "long slot", "groove", "B", (100, 300), (10, 16), 5)
    part = replace(SLAT, features=(cut,))
    view = part_view(part, part.copies[0], "F")
    across = {round(y, 3) for line in view.hidden for _, y in line}
    marked = {10.0, 16.0} if view.marked_above else {view.height - 10, view.height - 16}
    assert across == marked
    # The outline alone is seen.
    assert len(view.seen) == 4
    (sheet,) = part_sheets(part, MODEL, LABELS)
    assert any(path.get("stroke-dasharray") for path in root_of(sheet).iter(f"{SVG}path"))


def test_forms_are_told_with_their_sizes() -> None:
    sizes = (("from", Fraction(40)), ("to", Fraction(25)))
    taper = replace(
        feature("taper", "taper", "taper", "E2", (300, 940), (0, 18), 15),
        form=Form("taper", sizes, "R2"),
    )
    chamfers = [
        replace(
            feature(f"chamfer {edge}", "profile", "chamfer", "F", (0, 940), (0, 3), 3),
            form=Form("chamfer", (("width", Fraction(3)), ("depth", Fraction(3))), edge),
        )
        for edge in ("E", "E2")
    ]
    part = replace(SLAT, features=(taper, *chamfers))
    (sheet,) = part_sheets(part, MODEL, LABELS)
    words = "".join(line.words for line in lettering(sheet))  # as it is broken into lines
    assert "Taper on edge E2: 40 at 300 from R, 25 at 940." in words
    assert "Chamfer 3 \u00d7 3, on the edges F/E and F/E2." in words


def test_parts_of_one_length_that_share_lines_are_laid_together() -> None:
    found = families(MODEL.parts)
    assert [[part.name for part, _ in family.rows] for family in found] == [["post"], ["end rail"]]
    sheet = marking_out(found[0], MODEL, LABELS)
    assert (collisions(sheet), outside(sheet), struck_out(sheet)) == ([], [], [])
    words = {line.words for line in lettering(sheet)}
    assert {"C1 A", "C2 B", "R"} <= words
    figures = [float(Fraction(mm)) for mm in quantities(sheet)]
    assert figures == [float(at) for at in (*along_places(POST), POST.length)]


def test_figures_are_spread_in_order_and_no_wider_than_needed() -> None:
    places = spread([0, 1, 2, 50], [10, 10, 10, 10], (-20, 60))
    assert places == pytest.approx([-9, 1, 11, 50])
    assert spread([58, 59], [10, 10], (0, 60)) == pytest.approx([45, 55])
