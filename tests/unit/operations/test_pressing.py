"""Glue-ups as the notes say them: which glue, what presses, how many people."""

import pytest
from tests.unit.operations.worked import operation, piece, shipped_shop

from dryfit.operations import work_list
from dryfit.plan.operation import GlueUp, Operation, WorkList
from dryfit.shop.glues import glue_named

BASE = "end frames, aprons, cure 60 min"


def planned(words: str) -> WorkList:
    work, findings = work_list(
        piece("boot_bench", (BASE, f"end frames, aprons{words}")), shipped_shop()
    )
    assert work is not None, findings
    return work


def base(words: str) -> tuple[Operation, GlueUp]:
    glued = operation(planned(words), "base / glue up")
    assert glued.glue_up is not None
    return glued, glued.glue_up


def said(glued: Operation) -> str:
    return " ".join(str(word) for detail in glued.details for word in detail)


def test_the_named_glue_gives_the_clock_and_the_waits() -> None:
    _, glue_up = base(", with polyurethane")
    assert glue_up.glue == "polyurethane glue"
    assert glue_up.limit_tenths == 200
    assert {lag.until: lag.tenths for lag in glue_up.lags}["out of clamps"] == 2400


def test_a_cure_in_the_notes_wins_over_that_of_the_named_glue() -> None:
    _, glue_up = base(", with polyurethane, cure 6 h")
    assert {lag.until: lag.tenths for lag in glue_up.lags}["out of clamps"] == 3600


@pytest.mark.parametrize(
    ("how", "words"),
    [
        ("weights", "weights press the aprons down on the posts"),
        ("tape", "tape pulled tight across the joints of the aprons with the posts"),
        ("pins", "pins through the aprons into the posts"),
    ],
)
def test_what_presses_in_place_of_clamps_is_told_and_no_clamp_is_held(how: str, words: str) -> None:
    glued, glue_up = base(f", {how}")
    assert glue_up.clamps == ()
    assert glued.held == ()
    assert words in said(glued)


def test_the_dry_fit_uses_what_the_glue_up_uses() -> None:
    dry = operation(planned(", weights"), "base / dry fit")
    assert "weights laid as for the glue" in dry.sentence
    assert dry.check is not None
    assert "clamps" not in dry.check


def test_a_helper_is_told_at_the_step_and_halves_spreading_and_placing() -> None:
    # 4 tenons 3.0 + 2 frames 2.0 + 2 aprons 1.5 shared by two, + 2 clamps 0.8.
    glued, glue_up = base(", two people")
    assert "Takes two people" in said(glued)
    assert glue_up.closing_tenths == round((30 + 20 + 15) / 2 + 8 + 0.01)


@pytest.mark.parametrize(
    ("said_as", "name"),
    [
        ("polyurethane", "polyurethane glue"),
        ("PVA", "white glue"),
        ("hide glue", "liquid hide glue"),
        ("slow white", "slow white glue"),
        ("epoxy", "epoxy"),
    ],
)
def test_a_glue_is_known_by_what_tells_it_from_the_others(said_as: str, name: str) -> None:
    found = glue_named(shipped_shop(), said_as)
    assert found is not None
    assert found.name == name


@pytest.mark.parametrize("said_as", ["casein", "glue", "stick"])
def test_a_glue_that_the_shop_has_not_is_not_guessed(said_as: str) -> None:
    assert glue_named(shipped_shop(), said_as) is None
