"""Jobs with everything that a job can have; sizes in hundredths of a millimetre."""

from functools import cache

from dryfit.cutting import Answer, Area, Board, Job, Part, Rules, lay_out

RULES = Rules(
    crosscut_kerf=300,
    rip_kerf=200,
    end_trim=1_500,
    least_rip=25_000,
    keep_length=40_000,
    keep_width=6_000,
)

KNOT = Area(90_000, 98_000, 0, 9_000)

BENCH = Job(
    parts=(
        Part("leg", 45_000, 6_000, 3_000, quantity=4, material="ash"),
        Part("rail", 70_000, 5_000, 2_200, quantity=2, material="ash"),
        Part(
            "slat",
            30_000,
            4_000,
            2_200,
            quantity=3,
            material="ash",
            group="seat",
            rule="same board",
        ),
        Part("front", 20_000, 5_000, 2_200, 2, False, "ash", "fronts", "in sequence"),
        Part("plug", 5_000, 3_000, 2_200, quantity=2, turns=True, material="ash"),
    ),
    boards=(
        Board("A", 240_000, 16_000, 3_400, "ash", zones=(KNOT,), value=100),
        Board("B", 150_000, 14_000, 2_700, "ash", value=60, count=2),
        Board("C", 200_000, 20_000, 2_700, "oak", value=90),
    ),
    rules=RULES,
)
"""A knot, two thicknesses, a group from one board, a run, and short parts that turn."""


@cache
def bench_answer() -> Answer:
    """The bench laid out, once for all tests."""
    return lay_out(BENCH)
