"""Boards tongued into one another, worked by hand: visible widths, tongues, grooves and gaps."""

from fractions import Fraction

import pytest
from tests.pieces.reading import changed, checked, codes, mm, model_of, text_of
from tests.unit.rehearsal.played import Played, played

from dryfit import workshop
from dryfit.booklet.bench import Bench
from dryfit.booklet.deeds import sentence
from dryfit.booklet.labels import label
from dryfit.booklet.text import Say
from dryfit.joinery.tongue_groove import board_width, row_of, usual_board_gap
from dryfit.placing.model import Model
from dryfit.quantities import Display
from dryfit.rehearsal.fault import Reason
from dryfit.wood import moving

WRITTEN = text_of("tongued_boards")
SAID = "tongue and groove 6 thick 8 long, gap 1"
BOARDS = changed(WRITTEN, (SAID, "tongue and groove"))
LINE = "600 long 18 thick, onto bearers, screws, tongue and groove"


@pytest.fixture(scope="module")
def boards() -> Model:
    return model_of(BOARDS)


def test_equal_boards_fill_the_row_with_their_tongues_hidden(boards: Model) -> None:
    # TRADE B10: the visible width is that of the board less its tongue.  Tongues of 8 with gaps of
    # 1 go 7 into the next board: 358 = 4 W - 3 x 7, so W = 379 / 4 = 94.75.
    part = boards.part("floor board")
    assert part.width == Fraction(379, 4)
    lows = [copy.box.low[1] for copy in part.copies]
    assert lows == [0, Fraction(351, 4), Fraction(351, 2), Fraction(1053, 4)]
    assert part.copies[-1].box.high[1] == 358


def test_a_tongue_of_a_third_stands_in_a_groove_half_a_millimetre_deeper(boards: Model) -> None:
    # 18 / 3 = 6, so rabbets of (18 - 6) / 2 in both faces, 8 wide; a groove 6 to 12 from F, 8.5
    # deep, all from end to end (TRADE B10).
    part = boards.part("floor board")
    made = {
        (each.role, each.surface, each.along, each.across, each.depth)
        for each in part.features
        if each.mate == "floor board"
    }
    along = mm(0, 600)
    assert made == {
        ("tongue", "F", along, mm(0, 8), Fraction(6)),
        ("tongue", "B", along, mm(0, 8), Fraction(6)),
        ("tongue groove", "E2", along, mm(6, 12), Fraction(17, 2)),
    }


def test_the_first_board_has_no_groove_and_the_last_no_tongue(boards: Model) -> None:
    part = boards.part("floor board")
    roles = [
        {each.role for each in part.features if copy.hand in each.hands and each.mate == part.name}
        for copy in part.copies
    ]
    both = {"tongue", "tongue groove"}
    assert roles == [{"tongue"}, both, both, {"tongue groove"}]


def test_the_joint_is_dry_and_keeps_room_to_swell(boards: Model) -> None:
    joints = [each for each in boards.joints if each.kind == "tongue and groove"]
    assert [each.glued for each in joints] == [False] * 3
    # Groove 8.5, engaged 7: 1.5 are left before the end of the tongue.
    assert {each.clearance for each in joints} == {Fraction(3, 2)}


def test_what_is_usual_is_listed_with_the_line_to_write(boards: Model) -> None:
    lines = [
        each.instead or ""
        for each in boards.assumptions
        if "floor boards" in each.text or "tongues" in each.text
    ]
    assert any("tongue and groove 6 thick 8 long" in line for line in lines)
    assert any("tongue and groove, gap 1" in line for line in lines)
    again = model_of(changed(BOARDS, (LINE, f"{LINE}, tongue 6 thick 8 long, gap 1")))
    assert again.part("floor board").width == boards.part("floor board").width


def test_a_gap_is_what_a_board_moves_between_the_seasons() -> None:
    # Wood Handbook, table 13-5 (read in TRADE G2): white oak moves 0.00365 tangentially for each
    # per cent; over 4 per cent a visible width of 90 moves 1.31, rounded up to 1.5.
    assert usual_board_gap(Fraction(90), moving("white oak"), Display("mm")) == Fraction(3, 2)


def test_widths_and_rows_are_each_others_inverse() -> None:
    for count in (2, 5, 9):
        width = board_width(Fraction(800), count, Fraction(7))
        assert row_of(width, count, Fraction(7)) == 800


def test_boards_of_a_width_that_do_not_fill_are_told_with_what_would() -> None:
    # 4 x 90 - 3 x 7 = 339 of 358; of 5 the last would be 19 + 7 = 26 wide.
    found = checked(changed(BOARDS, ("600 long 18 thick", "600 x 90 x 18")))
    (told,) = (each for each in found.findings if each.code == "boards-do-not-fill")
    assert "reach over 339, but there is 358" in told.message
    assert "ripped to 26" in told.message
    assert "4 floor boards 95 wide or 5 floor boards 77 wide" in str(told.hints[0])


@pytest.mark.parametrize("words", ["12 thick 8 long", "6 thick 40 long"])
def test_tongues_without_room_are_refused(words: str) -> None:
    found = checked(changed(BOARDS, (LINE, f"{LINE} {words}")))
    assert "tongue-does-not-fit" in codes(found)


def test_boards_of_a_written_width_that_fill_are_taken() -> None:
    found = checked(
        changed(BOARDS, (LINE, "600 x 94.75 x 18, onto bearers, screws, tongue and groove, gap 1"))
    )
    assert codes(found) == []


@pytest.fixture(scope="module")
def plan() -> Played:
    return played(BOARDS)


def test_the_plan_passes_its_rehearsal(plan: Played) -> None:
    assert plan.said() == ""


def test_boards_are_grooved_before_the_tongues_are_fitted(plan: Played) -> None:
    ids = [each.id for step in plan.plan.steps for each in step.operations]
    grooves = [at for at, name in enumerate(ids) if "/ groove for the tongue" in name]
    assert grooves
    assert max(grooves) < ids.index("floor board / tongue rabbets")


@pytest.mark.parametrize("left_out", ["groove for the tongue", "tongue rabbets"])
def test_a_tongue_or_groove_that_is_not_cut_is_found(plan: Played, left_out: str) -> None:
    assert plan.idle(left_out).reasons() & {Reason.FIT, Reason.CUT}


@pytest.mark.parametrize(
    ("change", "told"),
    [
        (("4 floor boards", "1 floor board"), "one floor board alone"),
        ((LINE, f"{LINE}, spread across"), "end to end"),
    ],
)
def test_boards_without_edges_to_tongue_are_told(change: tuple[str, str], told: str) -> None:
    found = checked(changed(BOARDS, change))
    assert any(
        each.code == "tongue-does-not-fit" and told in each.message for each in found.findings
    )


def test_tongued_boards_are_not_glued() -> None:
    assert "detail-not-for-joint" in codes(checked(changed(BOARDS, (LINE, f"{LINE}, glued"))))


def test_the_booklet_counts_the_boards_that_are_cut_and_those_that_there_are() -> None:
    found = checked(BOARDS)
    plan, _ = workshop.plan(found, lambda _: None)
    assert plan is not None
    assert found.model is not None
    assert found.shop is not None
    say = Say(found.model.display)
    bench = Bench(found.model, plan, found.shop, label(found.model), say)
    rows = [op for step in plan.steps for op in step.operations if "tongue" in op.id]
    assert {sentence(op, bench).whole() for op in rows} == {
        "Cut the groove for the tongue in 3 of the 4 floor boards",
        "Widen the groove for the tongue in 3 of the 4 floor boards",
        "Rout the tongue rabbets in 3 of the 4 floor boards",
    }
