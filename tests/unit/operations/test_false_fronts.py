"""Fronts that are fixed on a drawer once it runs (TRADE K7, K8, C5.5)."""

from __future__ import annotations

from fractions import Fraction

from tests.pieces.reading import model_of, text_of
from tests.unit.rehearsal.played import played

FRONTED = text_of("fronted_drawer")


def test_the_front_is_the_opening_less_its_gaps_and_is_measured() -> None:
    # 420 - 2 x 18 - 2 x 2 = 380; 160 - 2 x 18 - 2 x 2 = 120.
    front = model_of(FRONTED).part("drawer front")
    assert (front.length, front.width) == (Fraction(380), Fraction(120))
    assert {measure.name for measure in front.measures} == {"bay width", "bay height"}


def test_its_screws_come_from_inside_the_drawer() -> None:
    model = model_of(FRONTED)
    assert {each.role for each in model.part("drawer front").features} == {"pilot hole"}
    end = model.part("drawer > tray end")
    assert {each.mate for each in end.features if each.role == "screw hole"} == {"drawer front"}


def test_it_goes_on_when_the_drawer_runs_on_shims_for_the_gap() -> None:
    play = played(FRONTED)
    assert not play.faults()
    rows = [row for step in play.plan.steps for row in step.operations]
    names = [row.id for row in rows]
    assert names.index("drawer / fit") < names.index("drawer front / fit")
    (fit,) = (row for row in rows if row.id == "drawer front / fit")
    said = " ".join(str(word) for detail in fit.details for word in detail)
    assert "from inside" in fit.sentence
    # TRADE K7: a craft stick is about 2 mm (common practice), which the shop file says.
    assert "1 craft stick" in said
