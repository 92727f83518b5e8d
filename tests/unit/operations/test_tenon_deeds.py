"""Wedges, pegs, haunches and through tenons in the plan: every cut has a step, every deed words."""

from tests.pieces.reading import changed, model_of, model_of_piece
from tests.unit.operations.worked import listed, operation, shipped_shop
from tests.unit.placing.test_tenon_details import TABLE

from dryfit.operations import work_list
from dryfit.plan.operation import Operation, WorkList


def planned(tenon: str, more: str) -> WorkList:
    text = TABLE.format(tenon=tenon, more=more, wide=800)
    work, findings = work_list(model_of(text), shipped_shop())
    assert work is not None, findings
    return work


def said(row: Operation) -> str:
    return " ".join("".join(str(word) for word in detail) for detail in row.details)


def order(work: WorkList, before: str, after: str) -> bool:
    """Whether a rule puts one operation before the other."""
    return any((rule.before, rule.after) == (before, after) for rule in work.rules)


def test_wedges_are_sawn_for_at_the_dry_fit_and_driven_with_the_glue() -> None:
    work = planned("tenon 8 thick 40 wide", ", through, wedged 2")
    dry, glue = operation(work, "base / dry fit"), operation(work, "base / glue up")
    assert "Saw 2 kerfs across each tenon of apron, to 50 from its end" in said(dry)
    assert "Drive 8 wedges with glue into the tenons of apron" in said(glue)
    level = operation(work, "base / level")
    assert "Plane the tenons of apron level with leg" in said(level)
    assert level.tenths == 4 * 10  # 4 tenons at a minute each, however few sentences say it
    # 12 h after the glue-up (TRADE C2.4), and before the sander comes near.
    lags = {rule.before: rule.lag for rule in work.rules if rule.after == level.id}
    assert lags["base / glue up"] == 12 * 60 * 10
    assert order(work, level.id, "base / sand 120")


def test_what_stands_proud_is_not_planed_off() -> None:
    text = TABLE.format(tenon="tenon 8 thick 40 wide", more=", through, proud 6", wide=812)
    text = changed(text, ("at corners", "at corners, set in 6 across"))
    work, _ = work_list(model_of(text), shipped_shop())
    assert work is not None
    assert not [each for each in work.operations if each.kind == "level"]


def test_peg_holes_are_drilled_when_the_tenon_has_its_cheeks() -> None:
    work = planned("tenon 24 long 8 thick 40 wide", ", pegs 8, drawbored")
    holes = [each.id for each in work.operations if each.id.startswith("apron / peg holes")]
    assert holes
    assert all(order(work, "apron / tenon cheeks", hole) for hole in holes)
    assert any(each.id.startswith("leg / peg holes") for each in work.operations)
    assert "Drive 4 pegs through leg" in said(operation(work, "base / glue up"))
    assert "1 nearer to the shoulder" in said(operation(work, "base / dry fit"))


def test_the_haunch_has_its_own_shallow_mortise() -> None:
    work = planned("tenon 24 long 8 thick 40 wide", ", haunch 10 long")
    row = next(each for each in work.operations if each.id.startswith("leg / haunch for apron"))
    assert row.kind == "mortise"


def test_the_wood_between_two_tenons_is_taken_out_at_the_bench() -> None:
    work = planned("2 tenons 24 long 8 thick 25 wide", "")
    row = operation(work, "apron / tenon gaps")
    assert row.station == "bench"
    assert order(work, "apron / tenon cheeks", row.id)


def test_a_mortise_right_through_is_chopped_from_both_faces() -> None:
    through = planned("tenon 8 thick 40 wide", ", through")
    blind = planned("tenon 24 long 8 thick 40 wide", "")
    from_both = "meet it from the other face"
    assert from_both in said(operation(through, "leg / mortise for apron"))
    assert from_both not in said(operation(through, "leg / mortise for side rail"))
    assert from_both not in said(operation(blind, "leg / mortise for apron"))


def test_twin_tenons_are_counted_as_two_where_the_glue_goes() -> None:
    work, _ = listed(model_of_piece("trestle"))
    glue = operation(work, "trestle 1 / glue up")
    assert "Glue goes on 2 mortises and tenons of leg into foot" in said(glue)
