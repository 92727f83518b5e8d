"""What is said to be impossible is: bounds worked by hand, and dual-feasible functions in full."""

from dataclasses import replace

import pytest

from dryfit.cutting import Area, Board, Job, Part, Proof, Rules, lay_out
from dryfit.cutting.boxes import Boxes, Steps
from dryfit.cutting.clear import clear_rectangles
from dryfit.cutting.dual import duals
from dryfit.cutting.instance import compiled
from dryfit.cutting.proof import short_of

RULES = Rules(crosscut_kerf=3, rip_kerf=3)


def refused(job: Job) -> tuple[Proof, ...]:
    answer = lay_out(job)
    assert answer.verdict == "not enough"
    return answer.proofs


@pytest.mark.parametrize("whole", range(1, 41))
def test_values_never_add_up_to_more_than_the_whole(whole: int) -> None:
    """Every multiset of sizes that fits, by the richest of each sum (an unbounded knapsack)."""
    for dual in duals(whole, range(1, whole + 1)):
        richest = [0] * (whole + 1)
        for total in range(1, whole + 1):
            richest[total] = max(
                richest[total - 1],
                *(richest[total - size] + dual(size) for size in range(1, total + 1)),
            )
        assert richest[whole] <= dual(whole)
        assert all(dual(size) <= dual(size + 1) for size in range(whole))
        assert dual(0) == 0
        # So that it serves smaller boards too.
        pairs = ((one, other) for one in range(whole + 1) for other in range(whole + 1 - one))
        assert all(dual(one) + dual(other) <= dual(one + other) for one, other in pairs)


def test_smallest_rectangles_of_two_and_three() -> None:
    boxes = Boxes([[(30, 10)], [(20, 15)]], [(100, 100)], (3, 2), Steps(1000))
    assert boxes.of((0, 0)) == ((30, 22), (63, 10))
    assert boxes.of((0, 1)) == ((30, 27), (53, 15))
    # Two of 30 by 10 one above the other, and the third piece above or beside.
    assert boxes.of((0, 0, 1)) == ((30, 39), (53, 22), (86, 15))


def test_a_rectangle_beyond_the_largest_board_is_none() -> None:
    boxes = Boxes([[(30, 10), (10, 30)]], [(40, 40)], (3, 3), Steps(1000))
    assert boxes.of((0, 0)) == ((23, 30), (30, 23))
    assert boxes.of((0, 0, 0, 0)) == ()


def test_a_rectangle_lies_in_one_of_the_rooms() -> None:
    rooms = [(80, 12), (40, 30)]
    boxes = Boxes([[(30, 10)], [(20, 15)]], rooms, (3, 2), Steps(1000))
    assert boxes.of((0, 0)) == ((30, 22), (63, 10))
    assert boxes.of((0, 1)) == ((30, 27),)


@pytest.mark.parametrize(
    ("part", "proof"),
    [
        (Part("post", 90, 20, 30), Proof("part", ("post",), 30, 27, "thickness")),
        (Part("rail", 101, 20, 20), Proof("part", ("rail",), 101, 100, "length")),
        (Part("shelf", 90, 31, 20), Proof("part", ("shelf",), 31, 30, "width")),
        (Part("peg", 5, 5, 5, material="ash"), Proof("part", ("peg",), 0, 0, "material")),
    ],
)
def test_a_part_alone_is_too_large(part: Part, proof: Proof) -> None:
    boards = (Board("A", 100, 30, 27), Board("B", 80, 60, 27))
    other = Part("plug", 50, 20, 20)
    assert refused(Job((part, other), boards, RULES)) == (proof,)
    answer = lay_out(Job((part, other), boards, RULES))
    assert [lack.part for lack in answer.missing] == [part.id]
    assert [piece.part for layout in answer.layouts for piece in layout.pieces] == ["plug"]


def test_a_knot_makes_a_board_shorter() -> None:
    board = Board("A", 100, 30, 27, zones=(Area(60, 70, 0, 20),))
    # Beside the knot there are 10 less nothing: the whole length, but only 10 wide.
    assert refused(Job((Part("rail", 61, 11, 20),), (board,), RULES))[0] == Proof(
        "part", ("rail",), 11, 10, "width"
    )
    assert lay_out(Job((Part("rail", 100, 10, 20),), (board,), RULES)).verdict == "enough"


def test_faces_and_kerfs_add_up() -> None:
    # Four of 50 by 20 from 100 by 40 would do without a saw. With it they take 4 * 53 * 23.
    job = Job((Part("slat", 50, 20, 5, 4),), (Board("A", 100, 40, 5),), RULES)
    assert refused(job) == (Proof("area", ("slat",), 4 * 53 * 23, 103 * 43),)
    assert lay_out(replace(job, rules=Rules(0, 0))).verdict == "enough"


def test_thick_parts_cannot_lie_on_thin_boards() -> None:
    parts = (Part("leg", 90, 20, 30, 2), Part("slat", 90, 20, 5, 1))
    boards = (Board("thick", 100, 22, 30), Board("thin", 100, 900, 10))
    proof = refused(Job(parts, boards, RULES))[0]
    assert (proof.bound, proof.parts) == ("area", ("leg",))


def test_three_halves_do_not_come_out_of_two() -> None:
    # By area three of 60 by 60 are less than two boards of 100 by 100.
    parts = (Part("panel", 60, 60, 5, 3),)
    proof = refused(Job(parts, (Board("A", 100, 100, 5, count=2),), RULES))[0]
    assert (proof.bound, proof.parts) == ("boards", ("panel",))
    assert proof.steps > 0
    assert lay_out(Job(parts, (Board("A", 100, 100, 5, count=3),), RULES)).verdict == "enough"


def test_a_zone_right_across_parts_a_board() -> None:
    board = Board("A", 200, 20, 5, zones=(Area(95, 105, 0, 20),))
    job = Job((Part("long", 60, 20, 5, 3),), (board,), Rules(0, 0))
    assert refused(job)[0].bound in ("area", "boards")
    assert lay_out(replace(job, parts=(Part("long", 60, 20, 5, 2),))).verdict == "enough"


@pytest.mark.parametrize(("plug", "verdict"), [(20, "enough"), (21, "not enough")])
def test_where_a_knot_lies_counts(plug: int, verdict: str) -> None:
    # Both panels lie at the ends, for the knot is 40 from each; 20 are left between them.
    board = Board("A", 100, 30, 5, zones=(Area(40, 60, 10, 20),))
    parts = (Part("panel", 40, 30, 5, 2), Part("plug", plug, 10, 5))
    answer = lay_out(Job(parts, (board,), Rules(0, 0)))
    assert answer.verdict == verdict
    assert [proof.bound for proof in answer.proofs] == ["boards"] * (verdict == "not enough")


def test_a_proof_gives_up_after_its_steps() -> None:
    parts = tuple(Part(f"part {n}", 50 + n, 20 + n, 5) for n in range(8))
    instance = compiled(Job(parts, (Board("A", 160, 80, 5), Board("B", 150, 55, 5)), RULES))
    assert short_of(instance, Steps(10)) is None


def test_a_group_goes_with_its_hopeless_member() -> None:
    parts = (
        Part("long", 200, 20, 5, group="pair", rule="same board"),
        Part("short", 20, 20, 5, group="pair", rule="same board"),
        Part("other", 30, 20, 5),
    )
    answer = lay_out(Job(parts, (Board("A", 100, 40, 5),), RULES))
    assert answer.verdict == "not enough"
    assert [lack.part for lack in answer.missing] == ["long", "short"]


def test_clear_rectangles_round_a_knot() -> None:
    found = clear_rectangles(Area(0, 100, 0, 30), (Area(40, 50, 10, 20),))
    largest = {(0, 40, 0, 30), (50, 100, 0, 30), (0, 100, 0, 10), (0, 100, 20, 30)}
    assert largest <= {(one.start, one.end, one.low, one.high) for one in found}


def test_a_run_is_as_long_as_its_blanks_and_kerfs() -> None:
    run = Part("front", 30, 20, 5, 3, group="fronts", rule="in sequence")
    assert refused(Job((run,), (Board("A", 95, 40, 5),), RULES)) == (
        Proof("part", ("front",), 96, 95, "length"),
    )
    assert lay_out(Job((run,), (Board("A", 96, 40, 5),), RULES)).verdict == "enough"


def test_two_runs_on_one_board_too_few() -> None:
    runs = tuple(
        Part(name, 30, 40, 5, 2, group=name, rule="in sequence") for name in ("upper", "lower")
    )
    assert refused(Job(runs, (Board("A", 70, 70, 5, count=1),), RULES))[0].parts == (
        "upper",
        "lower",
    )
    assert lay_out(Job(runs, (Board("A", 70, 70, 5, count=2),), RULES)).verdict == "enough"
