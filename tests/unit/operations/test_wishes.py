"""Wishes of the notes: obeyed, or refused with the chain of reasons."""

from tests.pieces.reading import model_of
from tests.unit.operations.worked import listed, piece, rule, shipped_shop

from dryfit.diagnostics import Severity
from dryfit.operations import work_list
from dryfit.operations.listing.circles import shortest_circle
from dryfit.plan.operation import Rule

DRAWER = """\
piece Key cabinet
overall 420 wide, 240 deep, 380 high
timber cherry
2 sides, upright, facing side, height x depth x 18, at left and right
1 top, across, flat, depth x 18, into sides, housing 6, flush top
1 bottom, across, flat, depth x 18, into sides, housing 6, flush bottom
1 shelf, across, flat, depth - 20 x 16, into sides, housing 6, up 120, 0 from front
drawer bay = opening between sides and bottom and shelf
1 drawer, as dovetailed drawer, in drawer bay, gap 1 across, 200 deep, 98 high, \
0 from front, 0 above the bottom of drawer bay
glue up case: sides, top, bottom, shelf, cure 3 h
"""
OFFERED = "cut drawer's drawer front before glue up case"
WISH = ("glue up 2 end frames", "{}\nglue up 2 end frames")


def wishing(line: str) -> tuple[str, str]:
    return WISH[0], WISH[1].format(line)


def test_a_wish_between_parts_puts_the_last_cut_before_the_first() -> None:
    work, findings = listed(piece("boot_bench", wishing("aprons before slats")))
    assert findings == ()
    wished = [row for row in work.rules if row.reason == "the notes wish it so"]
    assert {row.after for row in wished} == {"slat / rough length"}
    assert "apron / tenon shoulders / upper" in {row.before for row in wished}
    assert all(row.before.startswith("apron / ") for row in wished)


def test_a_wish_that_rules_forbid_is_refused_with_every_reason() -> None:
    model = piece("boot_bench", wishing("glue up base before posts"))
    work, findings = work_list(model, shipped_shop())
    assert work is None
    (circle,) = findings
    assert (circle.code, circle.rule, circle.severity) == ("order-circle", "H81", Severity.ERROR)
    assert circle.span is not None
    assert circle.span.text().startswith("glue up base before posts")
    assert any("the notes wish it so" in note.message for note in circle.notes)
    assert len(circle.notes) >= 3
    assert circle.hints[0].message.startswith("take this wish out")


def test_finishing_before_a_glue_up_keeps_the_wait_of_the_coat() -> None:
    work, _ = listed(piece("step_stool"))
    # hard wax oil, 8 h apart
    assert rule(work, "seat / coat 2", "base / glue up").lag == 4800
    assert rule(work, "seat / coat 1", "seat / coat 2").lag == 4800


def test_a_shortest_circle_is_found_and_none_where_there_is_none() -> None:
    rows = [("a", "b"), ("b", "c"), ("c", "d"), ("d", "a"), ("c", "b")]
    rules = tuple(Rule(before, after, "because") for before, after in rows)
    assert {(row.before, row.after) for row in shortest_circle(rules)} == {("b", "c"), ("c", "b")}
    assert shortest_circle(rules[:3]) == ()


def test_a_wish_for_what_is_not_done_says_which_deed_and_what_is_done() -> None:
    # Posts go into the end frames, and are sanded as part of them; the bench stays bare here.
    lines = "sand posts before glue up base\nfinish aprons before cut slats"
    bare = ("finish oil varnish", "# finish oil varnish")
    _, findings = listed(piece("boot_bench", wishing(lines), bare))
    sanded, coated = (each for each in findings if each.code == "wish-without-work")
    assert sanded.message == "this wish changes nothing: `sand post` is not done in this plan"
    assert sanded.hints[0].message.endswith("write `sand end frame`")
    assert "`finish apron`" in coated.message
    assert coated.hints[0].message.startswith("add a line with the finish")


def test_a_wish_to_cut_what_a_pattern_makes_is_told_to_name_a_part_of_it() -> None:
    """The line that is offered is one that the notes take, and that orders something."""
    for wish, warned in (("cut drawer before glue up case", True), (OFFERED, False)):
        _, findings = work_list(model_of(f"{DRAWER}{wish}\n"), shipped_shop())
        told = [each for each in findings if each.code == "wish-without-work"]
        assert bool(told) == warned
        assert all(OFFERED.partition(" before")[0] in each.hints[0].message for each in told)
