"""The boards on paper: drawings that read, cuts from the fresh end, what is missing and bought."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.unit.booklet import fixtures, planned
from tests.unit.booklet.drawn_lines import outside, struck_out
from tests.unit.booklet.svg_reading import SVG, collisions, lettering, quantities, root_of
from tests.unit.stock import bench_boards as bench

from dryfit import booklet
from dryfit.booklet.drawing.board import board_drawing, scale_of
from dryfit.booklet.text import plain
from dryfit.booklet.wood import WoodView
from dryfit.piece.declared import Avoid
from dryfit.plan.sawing import BoardCut
from dryfit.quantities import Display
from dryfit.stock.laid_out import BoardLayout, LaidOut

HOSTILE = '</text><script>alert(1)</script>{{ 7*7 }}"'


def view(laid: LaidOut) -> WoodView:
    made = booklet.booklet_view(
        fixtures.model(), planned.plan(), planned.shop(), fixtures.findings(), laid=laid
    )
    assert made.wood is not None
    return made.wood


def page(laid: LaidOut) -> str:
    return booklet.render(
        fixtures.model(), planned.plan(), planned.shop(), fixtures.findings(), laid=laid
    )


@pytest.mark.parametrize("layout", bench.LAYOUTS, ids=lambda layout: layout.board.label)
@pytest.mark.parametrize("display", [Display(), Display.inches()])
def test_every_board_is_whole_and_readable(layout: BoardLayout, display: Display) -> None:
    drawing = board_drawing(layout, display)
    assert collisions(drawing) == []
    assert outside(drawing) == []
    assert struck_out(drawing) == []
    words = [line.words for line in lettering(drawing)]
    assert {str(cut.number) for cut in layout.cuts} <= set(words)
    assert {each.blank.letter for each in layout.placed} <= set(words)
    # Nine points are 3.2 mm.
    assert min(line.size for line in lettering(drawing)) >= 3.2


def test_a_crosscut_has_a_disc_and_a_rip_a_square() -> None:
    drawing = board_drawing(bench.LAYOUTS[0], Display())
    discs = list(root_of(drawing).iter(f"{SVG}circle"))
    assert len(discs) == sum(cut.saw == "crosscut" for cut in bench.LAYOUTS[0].cuts) == 3
    assert quantities(drawing) == ["578.6", "160"]


def test_narrow_blanks_make_a_board_wider_than_it_is_long_on_paper() -> None:
    # 166 mm for 2400, and 7 mm for a blank of 50: 0.14 to 0.0692 is 2.02.
    assert round(scale_of(bench.LAYOUTS[0]).stretch, 2) == 2.02
    wide = replace(bench.LAYOUTS[0], placed=(), fallen=())
    assert scale_of(wide).stretch == 1


def test_leaves_of_one_place_are_counted_in_it() -> None:
    layout = bench.LAYOUTS[0]
    first = layout.placed[0]
    strip = replace(first, blank=replace(first.blank, leaves=2))
    drawing = board_drawing(replace(layout, placed=(strip, *layout.placed[1:])), Display())
    assert "a 2×" in [line.words for line in lettering(drawing)]


def test_words_of_the_notes_are_escaped() -> None:
    bad = Avoid((Fraction(300), Fraction(380)), None, HOSTILE, bench.A.line.span)
    board = replace(bench.A, line=replace(bench.A.line, timber=HOSTILE, avoid=(bad,)))
    layout = replace(bench.LAYOUTS[0], board=board)
    root_of(board_drawing(layout, Display(), (HOSTILE,)))
    html = page(replace(bench.ENOUGH, boards=(board,), layouts=(layout,)))
    assert "<script>" not in html
    assert "{{ 7*7 }}" in html


def test_the_cuts_count_from_the_fresh_end_of_the_piece_in_hand() -> None:
    board = view(bench.ENOUGH).boards[0]
    rows = [(row.number, plain(row.at), row.on, plain(row.gives)) for row in board.cuts[:4]]
    assert rows == [
        (1, "21.8", "Board A", "waste"),
        (2, "985", "Rest of 1", "985 × 160, for a, b, c"),
        (3, "50", "Piece from 2", "a: post blank 1"),
        (4, "50", "Rest of 3", "b: post blank 2"),
    ]
    assert plain(board.heading) == "Board A: ash, 2400 × 160 × 34, rough, cup 4"
    # TRADE A1.6: 29 whole, 32.6 ripped to 50.
    assert plain(board.thickness) == (
        "Planed flat it gives 29 mm whole, 32.6 mm ripped to 50 mm; it is ripped before it is "
        "planed, since the post takes 30.5 mm and whole it would be 29 mm."
    )


def test_boards_are_pulled_by_letter_with_what_to_look_for() -> None:
    rows = [
        (row.label, plain(row.sizes), plain(row.look), row.place) for row in view(bench.ENOUGH).pull
    ]
    assert rows[0] == ("A", "2400 × 160 × 34", "rough, cup 4", "line\u00a03")
    assert rows[2][2] == "rough, knot 2300 to 2380"
    assert view(bench.NOT_ENOUGH).pull[-1].place == "to buy"


def test_blanks_name_the_pieces_that_they_become() -> None:
    rows = {row.letter: row for row in view(bench.ENOUGH).blanks}
    # Boards are A to D: parts go on with G, and P is the post's letter nowhere.
    assert rows["a"].makes == "G1, G2 posts"
    assert rows["f"].makes == "a spare"
    assert (plain(rows["n"].sizes), rows["n"].board) == ("1120 × 96.5 × 27", "C")


def test_the_cover_says_that_wood_is_missing_and_what_to_buy() -> None:
    html = page(bench.NOT_ENOUGH)
    cover = html[html.index('id="cover"') : html.index('id="contents"')]
    assert "Not enough wood, for certain: 3 slats are missing." in cover
    assert "Buy first: 1 of ash" in cover
    assert "48.00 in all." in cover
    enough = page(bench.ENOUGH)
    assert "missing" not in enough[enough.index('id="cover"') : enough.index('id="contents"')]


def test_the_cover_says_of_which_parts_no_line_tells_the_wood() -> None:
    html = page(replace(bench.ENOUGH, unlisted=("back",)))
    cover = html[html.index('id="cover"') : html.index('id="contents"')]
    assert "Not laid out: no line tells of the wood for back." in cover


def test_blanks_that_lie_in_no_board_are_not_listed_as_if_they_did() -> None:
    assert all(row.board for row in view(bench.NOT_ENOUGH).blanks)
    assert plain(view(bench.NOT_ENOUGH).missing[0]).startswith("3 slats: no board")


def test_what_is_bought_has_its_volume() -> None:
    (row,) = view(bench.NOT_ENOUGH).buying.rows
    # 2400 x 180 x 27 is 0.011664 m3; 144 in3 are 0.002359737 m3, so 4.9 board feet.
    assert row.amount == "0.0117 m³, 4.9 board feet"
    assert (row.each, row.price) == ("48.00", "48.00")


def test_a_sheet_that_is_bought_has_its_area() -> None:
    (bought,) = bench.NOT_ENOUGH.buy
    sizes = (Fraction(2440), Fraction(1220), Fraction(18))
    sheet = replace(bought, line=replace(bought.line, kind="sheet", sizes=sizes))
    (row,) = view(replace(bench.NOT_ENOUGH, buy=(sheet,))).buying.rows
    # 2440 x 1220 is 2.9768 m2; 144 in2 are 0.09290304 m2, so 32.04 square feet.
    assert row.amount == "2.98 m², 32.0 square feet"


def test_without_boards_it_is_told_how_much_wood_to_have() -> None:
    made = booklet.booklet_view(fixtures.model(), planned.plan(), planned.shop(), ())
    assert made.wood is None
    assert [row.metric for row in made.supplies.boards]
    (finished,), (rough,) = made.supplies.wood, made.supplies.boards
    assert rough.amount > finished.amount * 3 / 2


def test_of_a_slab_that_tapers_the_far_edge_slopes() -> None:
    slab = replace(bench.D, line=replace(bench.D.line, kind="slab", other_width=Fraction(120)))
    drawing = board_drawing(replace(bench.LAYOUTS[3], board=slab), Display())
    scale = scale_of(bench.LAYOUTS[3])
    sloping = f"L{1200 * scale.along:.0f} {-120 * scale.across:.2f}"
    assert sloping in drawing.markup
    assert outside(drawing) == []


def test_a_step_has_a_box_for_each_cut_of_a_board() -> None:
    plan = planned.plan()
    first = plan.steps[0]
    told = (("Measure each from the freshly sawn end of the piece in hand",),)
    line = ("Cut A2: ", Fraction(985), " from the fresh end; off comes the wood for a, b and c")
    cut = BoardCut("A", 2, 1, "rest", "crosscut", Fraction(985), Fraction(3))
    sawing = replace(first.operations[0], details=told, board_cuts=(cut,), cut_lines=(line,))
    step = replace(first, operations=(sawing,))
    bench_of = replace(plan, steps=(step, *plan.steps[1:]))
    made = booklet.booklet_view(fixtures.model(), bench_of, planned.shop(), (), laid=bench.ENOUGH)
    (block,) = made.visits[0].steps[0].blocks
    assert [plain(line) for line in block.cuts] == [
        "Cut A2: 985 mm from the fresh end; off comes the wood for a, b and c."
    ]
    assert block.boards == (("A", "board A"),)
    html = booklet.page(made, "a4")
    assert '<li><span class="tick small"></span>Cut A2: ' in html
    assert '<a href="#board-a">board A</a>' in html
    assert 'id="board-a"' in html


def test_a_board_that_no_cut_parts_has_no_table_of_cuts() -> None:
    layouts = tuple(replace(layout, cuts=()) for layout in bench.ENOUGH.layouts)
    text = page(replace(bench.ENOUGH, layouts=layouts))
    assert "saw-cuts" not in text.partition("The boards, cut by cut")[2].partition("</section>")[0]
    # Nor need it have the size of its part: of a sheet its edges may still be trimmed.
    assert text.count("No cut parts it: its blank is all of it.") == len(layouts)


def test_a_slab_has_a_line_that_wanders_along_each_edge_under_bark() -> None:
    layout = bench.LAYOUTS[0]
    counts = []
    for waney in (0, 1, 2):
        line = replace(layout.board.line, waney=waney)
        drawing = board_drawing(replace(layout, board=replace(layout.board, line=line)), Display())
        assert collisions(drawing) == []
        paths = [path.get("d", "") for path in root_of(drawing).iter(f"{SVG}path")]
        counts.append(sum(path.count("M") == 1 and path.count("L") > 20 for path in paths))
    assert counts == [0, 1, 2]
