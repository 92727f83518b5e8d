"""The same pieces in other shops: every plan is sound, or one finding says what is missing."""

from itertools import cycle
from pathlib import Path

import pytest
from tests.pieces.reading import FILES, changed, text_of
from tests.property.plan_oracle import faults
from tests.property.plan_oracle.documents import documents, shop_tables
from tests.property.plan_oracle.reading import Json, rows_of

SHOPS = {path.stem: path for path in sorted((Path(__file__).parents[1] / "shops").glob("*.toml"))}


def steps_in(shop: str, text: str) -> Json:
    """The steps document of notes that can be built in a shop."""
    found, errors = documents(text, SHOPS[shop])
    assert found is not None, errors
    return found[0]


def stations(steps: Json, deed: str) -> set[str]:
    """The stations at which a deed is done."""
    return {row.step["station"] for row in rows_of(steps) if row.deed == deed}


IN_TURN = list(zip(sorted(FILES), cycle(SHOPS)))
"""A shop for each piece, so that every shop has its share of a normal run."""
REST = [(name, shop) for name in sorted(FILES) for shop in SHOPS if (name, shop) not in IN_TURN]


@pytest.mark.parametrize(("name", "shop"), IN_TURN)
def test_every_piece_can_be_built_in_one_of_the_shops(name: str, shop: str) -> None:
    can_be_built(name, shop)


@pytest.mark.slow
@pytest.mark.parametrize(("name", "shop"), REST)
def test_every_piece_can_be_built_in_every_shop(name: str, shop: str) -> None:
    can_be_built(name, shop)


def can_be_built(name: str, shop: str) -> None:
    """The plan of a piece in a shop is sound by the oracle."""
    found, errors = documents(text_of(name), SHOPS[shop])
    assert found is not None, errors
    assert faults(*found, shop_tables(SHOPS[shop])) == []


def test_without_a_dado_set_laps_are_cut_in_passes_of_the_blade() -> None:
    """45 wide with 3.2 a pass and 0.2 of overlap: 1 + ceil(41.8 / 3.0) = 15 (TRADE 0.6, I1)."""
    steps = steps_in("no_dado", text_of("boot_bench"))
    (row, *_) = (row for row in rows_of(steps) if row.work["operation"] == "post / end lap")
    assert row.step["settings"]["cutter"] == "combination blade"
    assert len(row.work["passes"]) == 15


def test_without_a_mortiser_mortises_are_drilled_and_squared() -> None:
    steps = steps_in("no_mortiser", text_of("boot_bench"))
    assert stations(steps, "mortise for apron") == {"drill press"}


def test_without_a_table_saw_the_mitre_saw_cuts_to_length() -> None:
    steps = steps_in("no_table_saw", text_of("boot_bench"))
    assert stations(steps, "length") <= {"mitre saw", "bench"}
    assert "table saw" not in {step["station"] for step in steps["steps"]}


def test_hand_planes_do_what_jointer_and_planer_do() -> None:
    steps = steps_in("hand_planes", text_of("step_stool"))
    assert stations(steps, "face") | stations(steps, "thickness") == {"bench"}


def test_with_hand_tools_alone_everything_happens_at_benches() -> None:
    steps = steps_in("hand_tools", text_of("boot_bench"))
    assert {step["station"] for step in steps["steps"]} == {"bench", "glue bench", "finish bench"}
    assert steps["totals"]["changeovers"] == 1  # the product at the finish bench


def test_a_wide_sled_takes_longer_stops() -> None:
    """Rails of 700 are off a sled of 600, and on one of 900 (TRADE H49; maker's rule: 600)."""
    text = changed(text_of("step_stool"), ("420 wide", "750 wide"))
    shipped, _ = documents(text)
    assert shipped is not None
    rail = "long rail / length"
    at_mitre_saw = [r for r in rows_of(shipped[0]) if r.work["operation"] == rail]
    on_sled = [r for r in rows_of(steps_in("wide_sled", text)) if r.work["operation"] == rail]
    assert {row.step["station"] for row in at_mitre_saw} == {"mitre saw"}
    assert {row.step["settings"]["accessory"] for row in on_sled} == {"sled"}


def test_in_an_inch_shop_the_dado_is_built_in_64ths() -> None:
    """13/16 in is the widest on its step, 20.6375 mm; the height keeps the sled of 1/2 in."""
    steps = steps_in("inch", text_of("boot_bench"))
    (row, *_) = (row for row in rows_of(steps) if row.work["operation"] == "post / end lap")
    assert row.step["settings"]["height"]["exact"] == "277/10 mm"
    assert row.step["settings"]["stop"]["far"]["exact"] == "45 mm"
