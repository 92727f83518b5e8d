"""Glue-ups: clamps against the inventory, closing time, lags, and what comes before and after."""

from dataclasses import replace
from fractions import Fraction
from math import hypot

import pytest
from tests.unit.operations.worked import boot_bench, listed, operation, piece, rule, shipped_shop

from dryfit.diagnostics import Severity
from dryfit.operations import clamps, work_list
from dryfit.plan.operation import ClampRow, GlueUp
from dryfit.shop.shop import Clamp, Shop


def glue(name: str) -> GlueUp:
    found = operation(boot_bench(), f"{name} / glue up").glue_up
    assert found is not None
    return found


def test_an_end_frame_takes_four_c_clamps_and_two_bars() -> None:
    # TRADE I1, row 32; a bar opens 340 + 2 x 20 + 25 (C3.2).
    rows = glue("end frame 1").clamps
    assert [(row.length, row.count) for row in rows] == [(Fraction(50), 4), (Fraction(405), 2)]
    held = operation(boot_bench(), "end frame 1 / glue up").held
    assert [(row.resource, row.count, row.lag) for row in held] == [
        ("C-clamp", 4, 600),
        ("bar 1200", 2, 600),
    ]


def test_the_base_takes_a_bar_along_each_apron() -> None:
    assert [(row.length, row.count) for row in glue("base").clamps] == [(Fraction(1005), 2)]


def test_a_panel_takes_a_clamp_every_300_mm() -> None:
    assert [(row.length, row.count) for row in glue("top").clamps] == [(Fraction(431), 5)]


def test_the_staves_of_a_panel_are_laid_dry_by_its_name() -> None:
    dry = operation(boot_bench(), "top / dry fit")
    assert dry.sentence.startswith("Lay the staves of the top together dry")


@pytest.mark.parametrize(
    ("name", "tenths"),
    [
        # 3 joints of 1.12 m, 4 staves, 5 clamps; TRADE C2.2 has 6.3 for 1.06 m.
        ("top", 65),
        ("end frame 1", 64),  # 4 laps 2.0 + 4 parts 2.0 + 6 clamps 2.4
        ("base", 73),  # 4 tenons 3.0 + 2 ladders 2.0 + 2 aprons 1.5 + 2 clamps 0.8
    ],
)
def test_closing_time(name: str, tenths: int) -> None:
    assert glue(name).closing_tenths == tenths
    assert glue(name).limit_tenths == 100


def test_five_lags_of_different_length() -> None:
    assert {lag.until: lag.tenths for lag in glue("base").lags} == {
        "out of clamps": 600,
        "next stage": 600,
        "level": 7200,
        "machine": 14400,
        "finish": 14400,
    }


def test_a_cure_in_the_notes_keeps_the_clamps_on() -> None:
    model = piece(
        "boot_bench", ("end frames, aprons, cure 60 min", "end frames, aprons, cure 14 h")
    )
    work, _ = work_list(model, shipped_shop())
    assert work is not None
    base = operation(work, "base / glue up")
    assert base.held[0].lag == 8400
    assert base.glue_up is not None
    # Nothing is done on the frame while it is in clamps.
    assert min(lag.tenths for lag in base.glue_up.lags) == 8400


def test_the_diagonals_of_the_worked_example() -> None:
    # TRADE I1: 340 x 430 -> 548.2, 340 x 940 -> 999.6.
    assert glue("end frame 1").diagonals[0][1] == pytest.approx(hypot(340, 430))
    assert round(glue("base").diagonals[0][1], 1) == 999.6


def test_a_glue_up_is_never_split_by_the_night() -> None:
    rows = [op for op in boot_bench().operations if op.kind in {"glue up", "coat"}]
    assert rows
    assert not any(op.splittable for op in rows)


def test_too_short_clamps_are_an_error_with_a_way_out() -> None:
    shop = replace(
        shipped_shop(), clamps=(Clamp("C-clamp", Fraction(100), 4), Clamp("bar", Fraction(900), 6))
    )
    _, findings = work_list(piece(), shop)
    (short,) = [found for found in findings if found.code == "clamp-too-short"]
    assert '`pipe = { opens = "1100 mm", count = 4 }`' in short.hints[0].message
    assert short.severity is Severity.ERROR
    assert short.figures == {"needed": Fraction(1005), "longest": Fraction(900)}
    assert short.span is not None
    assert short.hints


def test_too_few_clamps_are_a_warning_and_the_plan_takes_what_there_is() -> None:
    shop = replace(shipped_shop(), clamps=(Clamp("bar", Fraction(1200), 3),))
    work, findings = work_list(piece(), shop)
    assert {found.code for found in findings} == {"too-few-clamps"}
    assert work is not None
    assert max(held.count for op in work.operations for held in op.held) == 3
    words = "5 clamps are needed across the staves, over and under in turn, 3 are there"
    assert findings[0].message == f"top: {words}"
    assert findings[0].hints[0].message.startswith("buy or borrow 2 more that open as far; or glue")


def test_clamps_that_open_too_little_are_counted_beside_those_that_are_needed() -> None:
    rows = (ClampRow(Fraction(800), 3, "along the rails"),)
    shop = replace(
        shipped_shop(), clamps=(Clamp("bar", Fraction(1200), 1), Clamp("C", Fraction(100), 4))
    )
    _, (few,) = clamps.taken("frame", rows, None, shop)
    assert few.message == "frame: 3 clamps are needed along the rails, 1 are there"
    assert "buy or borrow 2 more that open as far (the other 4 open too little)" in (
        few.hints[0].message
    )


def test_larger_clamps_stand_in_for_small_ones() -> None:
    rows = (ClampRow(Fraction(50), 6, "over each lap"),)
    held, found = clamps.taken("frame", rows, None, shipped_shop())
    assert held == (("C-clamp", 4), ("bar 1200", 2))
    assert found == ()


def quick_glue(close_within: int, **others: int) -> Shop:
    white = shipped_shop().glues["white glue"]
    glues = {"white glue": replace(white, close_within=close_within)}
    for name, limit in others.items():
        glues[name] = replace(white, name=name, close_within=limit)
    return replace(shipped_shop(), glues=glues)


def test_a_glue_up_that_takes_longer_than_every_glue_is_refused() -> None:
    _, findings = work_list(piece(), quick_glue(70))
    found = {f.message.partition(":")[0]: f for f in findings if f.code == "glue-time-short"}
    assert found["base"].severity is Severity.ERROR  # 7.3 of 7.0 min
    assert found["end frame 1"].severity is Severity.WARNING  # 6.4: more than nine tenths


def test_a_slower_glue_of_the_shop_is_taken_where_the_usual_one_is_too_quick() -> None:
    work, findings = work_list(piece(), quick_glue(70, slow=300, middling=150))
    assert work is not None
    late = {f.message.partition(":")[0]: f for f in findings if f.code == "glue-time-short"}
    # What the shop file settles is no warning; little time to spare is one.
    assert late["base"].severity is Severity.NOTICE
    assert '`default_glue = "middling"`' in late["base"].hints[0].message
    assert late["end frame 1"].severity is Severity.WARNING
    base = operation(work, "base / glue up").glue_up
    frame = operation(work, "end frame 1 / glue up").glue_up
    assert base is not None
    assert frame is not None
    assert (base.glue, base.limit_tenths) == ("middling", 150)
    assert frame.glue == "white glue"


def test_members_that_cross_need_no_bars_to_pull_them() -> None:
    work, _ = listed(piece("unequal_laps"))
    (board,) = [op.glue_up for op in work.operations if op.glue_up is not None]
    assert [(row.count, row.at) for row in board.clamps] == [(8, "over each lap, with pads")]


def test_dry_fit_and_sanding_inside_stand_before_every_glue_up() -> None:
    work = boot_bench()
    glued = [op for op in work.operations if op.kind == "glue up"]
    assert glued
    for op in glued:
        subject = op.id.partition(" / ")[0]
        before = {row.before for row in work.rules if row.after == op.id}
        assert f"{subject} / dry fit" in before


def test_a_shelf_is_sanded_before_it_is_fitted_into_its_housing() -> None:
    work, _ = listed(piece("housed_stretcher"))
    # TRADE B26, housing: sand the shelf before fitting, not after.
    assert rule(work, "base / sand inside 180", "base / dry fit")
    assert ("base / dry fit", "base / sand inside 120") not in {
        (row.before, row.after) for row in work.rules
    }
    # A lapped or tenoned frame is sanded after the fit.
    assert rule(boot_bench(), "base / dry fit", "base / sand inside 120")


def test_a_whole_is_tried_dry_before_the_glue_of_what_is_inside_of_what_it_takes_in() -> None:
    ledgers = (
        "2 ledgers, across, 15 x 15, on the outside of long rails, between legs, glued, "
        "20 below the top of long rails\n"
        "glue up stool: base, ledgers\nfinish hard"
    )
    work, _ = listed(piece("step_stool", ("finish hard", ledgers)))
    # Else the glue of a side frame could be soft when the stool is tried.
    assert rule(work, "stool / dry fit", "base / glue up")
    assert rule(work, "stool / dry fit", "side frame 1 / glue up")
