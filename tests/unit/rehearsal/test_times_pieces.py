"""Every real plan keeps its hours, waits, clamps and sums."""

from pathlib import Path

import pytest
from tests.pieces.reading import FILES, changed, text_of
from tests.unit.rehearsal.damaged_times import SHOPS, built, built_from

SMALL = ("glued_board", "mirror", "panel_door", "shelf_box", "tee_laps", "tray")


@pytest.mark.parametrize("name", sorted(FILES))
def test_every_piece_keeps_its_times_in_the_shipped_shop(name: str) -> None:
    assert built(name).faults() == ()


@pytest.mark.parametrize("shop", SHOPS)
@pytest.mark.parametrize("name", SMALL)
def test_small_pieces_keep_their_times_in_every_shop(name: str, shop: str) -> None:
    assert built(name, shop).faults() == ()


def test_a_long_step_at_the_bench_says_no_wait_that_it_does_not_keep() -> None:
    assert built("step_stool", "hand_tools").faults() == ()


SEAT_FIRST = "finish seat before glue up base"
OIL = "finish hard wax oil, 2 coats, 8 h apart"
RAILS_FIRST = "finish short rails before glue up side frames"
UNKNOWN = "finish bear grease, 2 coats, 30 min apart"


def test_parts_are_dry_for_every_glue_up_that_takes_them() -> None:
    text = changed(text_of("step_stool"), (SEAT_FIRST, "finish legs before glue up base"))
    assert built_from(text).faults() == ()


def test_parts_are_dry_for_the_dry_fit_of_the_whole(tmp_path: Path) -> None:
    text = changed(text_of("step_stool"), (SEAT_FIRST, RAILS_FIRST), (OIL, UNKNOWN))
    shop = tmp_path / "shop.toml"
    shop.write_text('format = "dryfit-shop/1"\nname = "Two rooms"\none_room = false\n')
    assert built_from(text, shop).faults() == ()


def test_a_finish_unknown_to_the_shop_takes_up_dust() -> None:
    text = changed(text_of("step_stool"), (SEAT_FIRST, RAILS_FIRST), (OIL, UNKNOWN))
    assert "DUST" not in built_from(text).reasons()


def test_no_test_cut_is_made_while_a_coat_is_wet(tmp_path: Path) -> None:
    shop = tmp_path / "shop.toml"
    shop.write_text(
        'format = "dryfit-shop/1"\nname = "Never closed"\nhours = "00:00-24:00"\ndays_off = []\n'
    )
    assert built_from(text_of("step_stool"), shop).faults() == ()


def test_a_panel_is_not_flattened_in_its_clamps(tmp_path: Path) -> None:
    shop = tmp_path / "shop.toml"
    shop.write_text(
        'format = "dryfit-shop/1"\nname = "Cold"\n'
        '[glue."white glue".lags]\n"out of clamps" = "30 h"\n'
    )
    assert built_from(text_of("glued_board"), shop).faults() == ()
