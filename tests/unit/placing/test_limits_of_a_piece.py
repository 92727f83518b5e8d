"""A piece of more than can be planned is refused with a finding, and is not worked out first."""

import pytest

from dryfit.diagnostics import Source
from dryfit.notes import parse
from dryfit.piece.declare import declare
from dryfit.piece.declared import Opening
from dryfit.piece.sums import LONGEST_CHAIN
from dryfit.placing import joints, openings, standstill
from dryfit.placing.features import everywhere
from dryfit.placing.place import place
from dryfit.placing.settling import MOST_INSTANCES, settled
from dryfit.placing.site import Site
from dryfit.shop import read_shop

HEAD = "piece Box\noverall 900 wide, 400 deep, 300 high\ntimber oak\n"
BOARD = "1 board, across, flat, 900 x 400 x 20, up 0\n"
SLAB = "1 slab, across, flat, 2 x 20 x 2, up 0\n"
ORDINALS = "abcdefghij"


def codes(text: str) -> set[str]:
    notes, in_notes = parse(Source("a.dryfit", text))
    declared, in_piece = declare(notes)
    shop, _ = read_shop(None, {})
    assert shop is not None
    _, in_place = place(declared, shop)
    return {finding.code for finding in (*in_notes, *in_piece, *in_place)}


def pattern(name: str, lines: str) -> str:
    return f"pattern {name} with width, depth, height\n{lines}end\n"


def using(name: str, count: int) -> str:
    """So many lines that make something by a pattern, each 20 wide."""
    return "".join(
        f"1 part {ORDINALS[i // 10]}{ORDINALS[i % 10]}, as {name}, 20 wide, 20 deep, 20 high, "
        f"{20 * i} from left, up 0\n"
        for i in range(count)
    )


def test_lines_inside_of_patterns_count_each_time() -> None:
    inner = pattern("tray", using("tile", 9)) + pattern("tile", SLAB)
    assert "too-many-parts" not in codes(HEAD + inner + using("tray", 1))
    assert "too-many-parts" not in codes(HEAD + inner + using("tray", MOST_INSTANCES // 10))
    assert "too-many-parts" in codes(HEAD + inner + using("tray", MOST_INSTANCES // 10 + 1))


def test_patterns_that_grow_beyond_all_measure_are_refused_at_once() -> None:
    levels = [
        pattern(f"level {a}", using(f"level {b}", 20)) for a, b in zip("abcd", "bcde", strict=True)
    ]
    bomb = HEAD + "".join(levels) + pattern("level e", SLAB) + using("level a", 20)
    assert codes(bomb) >= {"too-many-parts"}


def test_of_too_many_joints_one_is_told(monkeypatch: pytest.MonkeyPatch) -> None:
    lattice = (
        "piece Lattice\noverall 900 wide, 10 deep, 900 high\ntimber oak\n"
        "4 bars, across, on edge, 20 x 10, spread up and down, no gap at ends\n"
        "4 cross bars, upright, 20 x 10, spread left to right, no gap at ends\n"
        "bars crossing cross bars: half lap\n"
    )
    monkeypatch.setattr(joints, "MOST_JOINTS", 16)
    assert "too-many-joints" not in codes(lattice)
    monkeypatch.setattr(joints, "MOST_JOINTS", 15)
    assert "too-many-joints" in codes(lattice.replace("4 bars", "5 bars"))


def test_of_too_many_cuts_one_is_told(monkeypatch: pytest.MonkeyPatch) -> None:
    holes = "holes in board: top, 5 dia, 10 deep, rows 40 from front, 20 at 32 from 50\n"
    monkeypatch.setattr(everywhere, "MOST_CUTS", 20)
    assert "too-many-cuts" not in codes(HEAD + BOARD + holes)
    assert "too-many-cuts" in codes(HEAD + BOARD + holes + holes.replace("rows 40", "rows 80"))


@pytest.mark.parametrize("links", [LONGEST_CHAIN - 1, LONGEST_CHAIN + 1])
def test_a_long_chain_of_sums_is_no_circle(links: int) -> None:
    names = [f"step {ORDINALS[i // 10]}{ORDINALS[i % 10]}" for i in range(links)]
    chain = "".join(f"{name} = {names[i + 1]} + 1\n" for i, name in enumerate(names[:-1]))
    text = f"{HEAD}{chain}{names[-1]} = 1\n1 board, across, flat, {names[0]} x 20 x 20\n"
    assert ("sum-too-long" in codes(text)) == (links > LONGEST_CHAIN)
    assert "circle" not in codes(text)


def test_waiting_rules_are_looked_up_and_not_searched_for() -> None:
    compared = [0]

    class Rule:
        def __init__(self) -> None:
            self.told = False

        def __call__(self) -> bool:
            return True

        def __eq__(self, other: object) -> bool:
            compared[0] += 1
            return self is other

        def __hash__(self) -> int:
            return id(self)

    notes, _ = parse(Source("a.dryfit", HEAD + BOARD))
    declared, _ = declare(notes)
    shop, _ = read_shop(None, {})
    assert shop is not None

    site = settled(declared, shop)
    site.pending = [Rule() for _ in range(200)]
    standstill.settle(site)
    assert site.pending == []
    assert compared[0] < 400


def row_of_openings(count: int) -> str:
    """So many doors, each in a space between posts of which none is named."""
    named = [f"bay {ORDINALS[i // 10]}{ORDINALS[i % 10]}" for i in range(count)]
    spaces = "".join(f"{name} = opening between posts and board\n" for name in named)
    doors = "".join(f"1 door {name[4:]}, 18 thick, in {name}, gap 2\n" for name in named)
    posts = f"{count + 1} posts, upright, facing side, 300 x 5, spread left to right\n"
    return HEAD + BOARD + posts + spaces + doors


def test_openings_that_stay_unclear_are_asked_about_once(monkeypatch: pytest.MonkeyPatch) -> None:
    asked = [0]
    walls_on = openings.walls_on

    def counting(site: Site, opening: Opening, axis: int) -> openings.Walls | None:
        asked[0] += 1
        return walls_on(site, opening, axis)

    monkeypatch.setattr(openings, "walls_on", counting)
    assert "opening-unclear" in codes(row_of_openings(10))
    ten, asked[0] = asked[0], 0
    assert "opening-unclear" in codes(row_of_openings(20))
    assert asked[0] <= 2 * ten + 40
