"""Raw edges made straight where there is no jointer: on a sled, along a guide (A2.5, A2.6)."""

from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest
from tests.property.plan_oracle import faults
from tests.property.plan_oracle.documents import documents, shop_tables
from tests.unit.rehearsal.played import Played, played

from dryfit.operations.boards.straight_edges import straight_edges
from dryfit.operations.machine_limits import Piece
from dryfit.plan.operation import Operation
from dryfit.rehearsal.fault import Reason
from dryfit.shop import read_shop

SHELF = """piece Shelf
units mm
overall 900 wide, 150 deep, 25 high
timber ash
1 shelf, across, flat, 25 thick
{wood}
finish oil, 1 coat
"""
SAW_ALONE = """format = "dryfit-shop/1"
name = "Saw without a jointer and a band saw"
station."jointer" = false
station."band saw" = false
"""
SLED = """[accessory."straight-line sled"]
station = "table saw"
base = "18 mm"
longest = "1500 mm"
"""
TRACK_SAW = """[accessory."track saw"]
station = "bench"
base = "0 mm"
"""


def written(folder: Path, more: str) -> Path:
    """A shop file without jointer and band saw, with what it has besides."""
    path = folder / "shop.toml"
    path.write_text(SAW_ALONE + more, encoding="utf-8")
    return path


def edge_of(case: Played) -> Operation:
    """The deed that makes a raw edge straight."""
    rows = [op for step in case.plan.steps for op in step.operations]
    return next(op for op in rows if op.kind == "straight edge")


@pytest.mark.parametrize("wood", ["", "have 1 board of ash, 1400 x 210 x 34, rough"])
def test_on_a_sled_the_saw_makes_a_raw_edge_straight(tmp_path: Path, wood: str) -> None:
    file = written(tmp_path, SLED + TRACK_SAW)
    case = played(SHELF.format(wood=wood), file)
    assert case.faults() == ()
    edge = edge_of(case)
    assert edge.station == "table saw"
    stands = {setting.axis: setting.value for setting in edge.settings}
    assert stands["accessory"] == "straight-line sled"
    # The sled's floor, the board and 3 mm: 18 + 34 + 3, or what the shop takes for rough ash.
    height = stands["height"]
    assert isinstance(height, Fraction)
    if wood:
        assert float(height) == 55
    assert "on the straight-line sled" in edge.sentence
    documented, errors = documents(SHELF.format(wood=wood), file)
    assert documented is not None, errors
    assert faults(*documented, shop_tables(file)) == []


def test_bark_is_sawn_off_on_the_sled_where_there_is_no_band_saw(tmp_path: Path) -> None:
    wood = "have 1 slab of ash, 1400 x 240 x 34, rough, waney both edges"
    case = played(SHELF.format(wood=wood), written(tmp_path, SLED))
    assert case.faults() == ()
    rows = [op for step in case.plan.steps for op in step.operations if op.board_cuts]
    (bark,) = [op for op in rows if op.id.endswith("raw edge")]
    assert (bark.station, "on the straight-line sled" in bark.sentence) == ("table saw", True)
    # The sled is pushed, not the board: a stick for the end of a rip along the fence is no help.
    assert bark.cautions == ("saw-riving-knife",)
    # That edge is straight then, and needs no jointing before it runs along the fence.
    assert not any("straight edge" in op.id for step in case.plan.steps for op in step.operations)
    # Without it the fence is no help: the raw edge is sawn off by hand, along a line.
    other = tmp_path / "without"
    other.mkdir()
    by_hand = played(SHELF.format(wood=wood), written(other, ""))
    rows = [op for step in by_hand.plan.steps for op in step.operations if op.board_cuts]
    assert [op.station for op in rows if op.id.endswith("raw edge")] == ["bench"]


def test_its_minutes_by_hand(tmp_path: Path) -> None:
    shop, _ = read_shop(written(tmp_path, SLED), {})
    assert shop is not None
    piece = Piece(Fraction(1200), Fraction(160), Fraction(34))
    # 1.5 min each to clamp it, 0.5 a metre: two of 1.2 m are 3 + 1.2.
    assert straight_edges([piece], 2, shop).exact == 42
    # Longer than the sled it is planed by hand: 0.4 and 0.6 a metre at the jointer, six times that.
    long = replace(piece, length=Fraction(1600))
    assert straight_edges([long], 1, shop).station == "bench"
    assert straight_edges([long], 1, shop).exact == Fraction(136, 10) * shop.by_hand


def test_a_saw_on_a_guide_goes_before_the_plane(tmp_path: Path) -> None:
    edge = edge_of(played(SHELF.format(wood=""), written(tmp_path, TRACK_SAW)))
    assert edge.station == "bench"
    assert "with the track saw" in edge.sentence


def test_the_judge_wants_the_sled_and_the_blade_right_through(tmp_path: Path) -> None:
    wood = "have 1 board of ash, 1400 x 210 x 34, rough"
    case = played(SHELF.format(wood=wood), written(tmp_path, SLED))
    thicker = tuple(replace(board, thickness=board.thickness + 10) for board in case.plan.boards)
    assert Reason.CUT in replace(case, plan=replace(case.plan, boards=thicker)).reasons()
