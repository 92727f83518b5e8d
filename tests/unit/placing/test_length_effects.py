"""What each joint adds to a length: TRADE B25, common practice, one case a line of its table."""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.pieces.reading import changed, model_of, text_of

from dryfit.placing.model import Model


def model(name: str, *changes: tuple[str, str]) -> Model:
    return model_of(changed(text_of(name), *changes))


def adds(found: Model, part: str) -> list[tuple[str, Fraction]]:
    return [(add.joint, add.length) for add in found.part(part).adds]


@pytest.mark.parametrize(
    ("name", "part", "joint", "each"),
    [
        ("boot_bench", "top end rail", "half lap", 45),  # half lap: the mate's width
        ("tee_laps", "middle bar", "half lap", 60),  # T lap: the same
        ("boot_bench", "apron", "tenon", 20),  # blind tenon: its length
        ("shelf_box", "bottom", "housing", 6),  # housing: its depth
        ("panel_door", "panel", "groove", 8),  # groove: its depth less the gap, 9 - 1
    ],
)
def test_a_joint_adds_at_both_ends(name: str, part: str, joint: str, each: int) -> None:
    assert adds(model(name), part) == [(joint, Fraction(each))] * 2


def test_a_cross_lap_adds_nothing() -> None:
    assert adds(model("unequal_laps"), "slat") == []


def test_a_butt_adds_nothing() -> None:
    found = model("screwed_frame")
    assert adds(found, "end rail") == []
    assert found.part("end rail").length == 300 - 2 * 22


def test_cut_length_is_shoulder_length_and_what_is_added() -> None:
    for name in ("boot_bench", "step_stool", "panel_door", "shelf_box", "tray", "divided_box"):
        for part in model(name).parts:
            if part.shoulder_length is not None:
                total = part.shoulder_length + sum(add.length for add in part.adds)
                assert total == part.length


@pytest.mark.parametrize("tenon", [15, 18, 22])
def test_a_longer_tenon_lengthens_the_rail_and_leaves_the_shoulders(tenon: int) -> None:
    found = model("slatted_stand", ("tenon 25 long", f"tenon {tenon} long"))
    rail = found.part("end rail")
    assert (rail.shoulder_length, rail.length) == (Fraction(200), Fraction(200 + 2 * tenon))


def test_a_tenon_at_one_end_only_adds_there() -> None:
    found = model("upright_trestle", ("posts into beam: tenon 40 long 12 thick\n", ""),
                  ("600 x 90 x 40, down 0", "600 x 90 x 40, onto posts"),
                  ("\nglue up", "posts under beam: glue\n\nglue up"))  # fmt: skip
    assert adds(found, "post") == [("tenon", Fraction(30))]
    assert found.part("post").length == 700 - 60 - 90 + 30
