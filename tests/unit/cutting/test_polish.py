"""Of layouts on the same boards, the one that is the least trouble at the saws."""

from dataclasses import replace

from dryfit.cutting import Board, Job, Part, Rules, lay_out

RULES = Rules(crosscut_kerf=300, rip_kerf=300)
THICK = Board("thick", 100_000, 10_000, 3_400, value=340)
THIN = Board("thin", 100_000, 10_000, 2_700, value=270)


def test_a_part_lies_on_the_board_that_suits_it_where_room_is_on_both() -> None:
    """Strips fit both boards; thick wood is left for what needs it."""
    post = Part("post", 100_000, 4_500, 3_000, quantity=2)
    slat = Part("slat", 100_000, 4_500, 2_000, quantity=2, losses=(("thick", 30),))
    layouts = lay_out(Job((slat, post), (THICK, THIN), RULES)).layouts
    assert {layout.board: {piece.part for piece in layout.pieces} for layout in layouts} == {
        "thick": {"post"},
        "thin": {"slat"},
    }


def test_cuts_that_cost_are_saved_where_the_boards_stay_the_same() -> None:
    """Narrow and wide strips, mixed or not: sorted, a section needs one setting of the fence."""
    wide = Part("wide", 48_000, 4_800, 1, quantity=2)
    narrow = Part("narrow", 48_000, 3_000, 1, quantity=3)
    board = Board("board", 100_000, 10_000, 1, value=100)
    free = Job((narrow, wide), (board,), RULES)
    dear = replace(free, rules=replace(RULES, crosscut_cost=5, rip_cost=5, fence_cost=20))
    answer = lay_out(dear)
    assert answer.verdict == "enough"
    sections = [cut for cut in answer.layouts[0].cuts if cut.saw == "rip"]
    assert len({cut.at for cut in sections}) == 2
    assert len(answer.layouts[0].cuts) <= len(lay_out(free).layouts[0].cuts)


def test_boards_are_never_changed_for_the_sake_of_less_trouble() -> None:
    """A cheaper board stays the one that is taken, however much of it is planed off."""
    offcut = Board("offcut", 100_000, 10_000, 1, value=10)
    slat = Part("slat", 100_000, 4_500, 1, losses=(("offcut", 1_000),))
    (layout,) = lay_out(Job((slat,), (THIN, offcut), RULES)).layouts
    assert layout.board == "offcut"
