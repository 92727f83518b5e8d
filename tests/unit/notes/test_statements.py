"""What each kind of line says, word for word."""

from fractions import Fraction

import pytest
from tests.unit.notes.nowhere import NOWHERE, number, part, said, size, without_places

from dryfit.diagnostics import Source
from dryfit.notes import parse
from dryfit.notes.tree import (
    Act,
    CoatWords,
    Extent,
    FeatureLine,
    FinishLine,
    GlueItem,
    GlueLine,
    HaveLine,
    Join,
    JointLine,
    JointSpec,
    NoteLine,
    Offset,
    Operation,
    OrderLine,
    OverallLine,
    OverallSize,
    PartSize,
    PieceLine,
    StageName,
    Surface,
    TimberLine,
    UnitsLine,
    ValueLine,
    ValueName,
)
from dryfit.quantities import TIME, Quantity

HOUR = number(1, Quantity(Fraction(60), TIME))


def test_title_and_note_are_free_text_up_to_the_remark() -> None:
    assert said("piece Boot bench, 4 legs  # for the hall") == PieceLine(
        "Boot bench, 4 legs", NOWHERE
    )
    assert said("note the top is left loose, x = 5") == NoteLine(
        "the top is left loose, x = 5", NOWHERE
    )


@pytest.mark.parametrize(
    ("text", "line"),
    [
        ("units mm", UnitsLine("mm", None, False, "length", NOWHERE)),
        ("UNITS: Inches", UnitsLine("in", None, False, "length", NOWHERE)),
        ("units mm, to nearest 1", UnitsLine("mm", Fraction(1), False, "length", NOWHERE)),
        ("units inches to 1/16", UnitsLine("in", Fraction(1, 16), False, "length", NOWHERE)),
        ('units inches to 1/16"', UnitsLine("in", Fraction(1, 16), False, "length", NOWHERE)),
        ("units cm to 1 mm", UnitsLine("cm", Fraction(1, 10), False, "length", NOWHERE)),
        ("units mm, decimal comma", UnitsLine("mm", None, True, "length", NOWHERE)),
        ("units m thickness first", UnitsLine("m", None, False, "thickness", NOWHERE)),
    ],
)
def test_units(text: str, line: UnitsLine) -> None:
    assert said(text) == line


@pytest.mark.parametrize(
    "text",
    [
        "420 wide, 300 deep, 240 high",
        "420 wide 300 deep 240 high",
        "420 wide x 300 deep x 240 high",
        "width 420, depth 300, height 240",
        "width = 420, depth = 300, height = 240",
    ],
)
def test_overall_by_name(text: str) -> None:
    notes, findings = parse(Source("a", f"overall {text}"))
    assert findings == ()
    assert without_places(notes.statements) == (
        OverallLine((size(420, "width"), size(300, "depth"), size(240, "height")), NOWHERE),
    )


def test_overall_in_a_row() -> None:
    notes, _ = parse(Source("a", "overall: 420 x 300 x 240"))
    assert without_places(notes.statements) == (
        OverallLine((size(420), size(300), size(240)), NOWHERE),
    )


@pytest.mark.parametrize("text", ["timber white oak", "wood White Oak", "timber: white-oak"])
def test_timber(text: str) -> None:
    assert said(text) == TimberLine("white oak", NOWHERE)


def test_stock_is_read_and_kept() -> None:
    text = "have 2 boards of ash, 1800 x 160 x 32, rough, cup 4"
    sizes = (size(1800), size(160), size(32))
    marks = (("cup", number(4)),)
    assert said(text) == HaveLine(2, "board", "ash", sizes, "rough", marks, text, NOWHERE)
    text = "have sheet of birch ply 1220 x 610 x 6"
    sizes = (size(1220), size(610), size(6))
    assert said(text) == HaveLine(None, "sheet", "birch ply", sizes, None, (), text, NOWHERE)


@pytest.mark.parametrize(
    "text", ["overhang = 15", "let overhang = 15", "let overhang be 15", "Overhang is 15"]
)
def test_value(text: str) -> None:
    assert said(text) == ValueLine("overhang", NOWHERE, number(15), NOWHERE)


def test_sums_keep_their_order_and_are_not_worked_out() -> None:
    line = said("inner width = width - 2*leg.width", "leg")
    assert isinstance(line, ValueLine)
    twice = Operation("*", number(2), PartSize("leg", "width", NOWHERE), NOWHERE)
    assert line.amount == Operation("-", OverallSize("width", NOWHERE), twice, NOWHERE)
    line = said("inner width = (1 + 2) * 3 / 4")
    assert isinstance(line, ValueLine)
    total = Operation("+", number(1), number(2), NOWHERE)
    product = Operation("*", total, number(3), NOWHERE)
    assert line.amount == Operation("/", product, number(4), NOWHERE)


@pytest.mark.parametrize(
    "text",
    ["leg.width", "leg's width", "leg width", "width of leg", "the leg.width", "legs’ width"],
)
def test_a_part_s_size_has_many_spellings(text: str) -> None:
    line = said(f"inner width = {text}", "leg")
    assert isinstance(line, ValueLine)
    assert line.amount == PartSize("leg", "width", NOWHERE)


@pytest.mark.parametrize("text", ["width", "overall width", "overall.width", "the width"])
def test_the_whole_has_sizes(text: str) -> None:
    line = said(f"inner measure = {text}")
    assert isinstance(line, ValueLine)
    assert line.amount == OverallSize("width", NOWHERE)


def test_half_and_negative() -> None:
    line = said("inner measure = half of width + (-5)")
    assert isinstance(line, ValueLine)
    half = Operation("*", number(Fraction(1, 2)), OverallSize("width", NOWHERE), NOWHERE)
    negative = Operation("*", number(-1), number(5), NOWHERE)
    assert line.amount == Operation("+", half, negative, NOWHERE)


def test_a_hyphen_subtracts_where_no_such_name_is_declared() -> None:
    notes, findings = parse(Source("a", "overhang = 5\nothers = width-overhang"))
    assert findings == ()
    line = notes.statements[1]
    assert isinstance(line, ValueLine)
    amount = without_places(line.amount)
    assert amount == Operation(
        "-", OverallSize("width", NOWHERE), ValueName("overhang", NOWHERE), NOWHERE
    )


def test_a_joint_line_names_guests_hosts_and_joint() -> None:
    hosts = (part("top end rail"), part("bottom end rail"))
    lap = JointSpec("half lap", None, (), None, NOWHERE)
    line = JointLine((part("post"),), Join("crossing", hosts, lap, NOWHERE), False, NOWHERE)
    names = "post, top end rail, bottom end rail"
    assert said("posts crossing top end rails and bottom end rails: half lap", names) == line
    assert said("posts crossing top end rails and bottom end rails", names) == line


def test_buttons_are_counted_and_a_tenon_is_placed() -> None:
    buttons = JointSpec("buttons", 6, (), None, NOWHERE)
    assert said("top onto aprons: 6 buttons", "top, apron") == JointLine(
        (part("top"),), Join("onto", (part("apron"),), buttons, NOWHERE), False, NOWHERE
    )
    sizes = (size(25, "length"), size(8, "thickness"))
    place = Offset(number(5), "bottom", NOWHERE)
    tenon = JointSpec("tenon", None, sizes, place, NOWHERE)
    assert said(
        "long rail ends into legs: tenon 25 long, 8 thick, 5 from bottom", "leg, long rail"
    ) == JointLine(
        (part("long rail"),),
        Join("into", (part("leg"),), tenon, NOWHERE, "ends"),
        False,
        NOWHERE,
    )


def test_copies_are_named_by_place_and_a_part_may_be_called_so() -> None:
    line = said("front left leg into top: tenon 10", "leg, top")
    assert isinstance(line, JointLine)
    assert line.guests == (part("leg", "front", "left"),)
    assert line.join.hosts == (part("top"),)
    line = said("top into top end rail: housing 6", "top, top end rail")
    assert isinstance(line, JointLine)
    assert (line.guests, line.join.hosts) == ((part("top"),), (part("top end rail"),))


def test_several_guests_and_hosts() -> None:
    line = said("seat and shelf onto legs, rails: screws, glued", "seat, shelf, leg, rail")
    assert isinstance(line, JointLine)
    assert line.guests == (part("seat"), part("shelf"))
    assert line.join.hosts == (part("leg"), part("rail"))
    assert line.glued


def test_a_feature_has_no_mate() -> None:
    text = "groove in aprons: inside, 6 wide, 9 deep, 12 from top, through, after glue up base"
    sizes = (size(6, "width"), size(9, "depth"))
    place, after = Offset(number(12), "top", NOWHERE), StageName("base", NOWHERE)
    assert said(text, "apron, base") == FeatureLine(
        kind="groove",
        parts=(part("apron"),),
        surfaces=(Surface(("inside",), None, every=False, span=NOWHERE),),
        sizes=sizes,
        ranges=(),
        places=(place,),
        extent=Extent("through", None, None, NOWHERE),
        rows=(),
        count=None,
        each=None,
        profile=None,
        after=after,
        span=NOWHERE,
    )


@pytest.mark.parametrize(
    "text",
    [
        "glue up 2 side frames: 2 legs, 1 short rail, cure 1 h",
        "glue up two side-frames: 2 x legs and one short rail cure 1 hour",
    ],
)
def test_a_glue_up_counts_what_goes_in(text: str) -> None:
    items = (GlueItem(2, part("leg"), NOWHERE), GlueItem(1, part("short rail"), NOWHERE))
    line = said(text, "leg, short rail")
    assert isinstance(line, GlueLine)
    assert (line.count, line.name, line.items, line.cure) == (2, "side frame", items, HOUR)
    assert line.written.lower().replace("-", " ") == "side frames"


def test_a_glue_up_of_assemblies_without_cure() -> None:
    line = said("glue up base: side frames, long rails", "side frame, long rail")
    assert isinstance(line, GlueLine)
    assert (line.count, line.cure) == (1, None)
    assert [item.count for item in line.items] == [None, None]


def test_finish() -> None:
    eight = number(8, Quantity(Fraction(480), TIME))
    assert said("finish hard wax oil, 2 coats, 8 h apart") == FinishLine(
        (), (), (CoatWords("hard wax oil", 2, eight, NOWHERE),), NOWHERE
    )
    shellac = CoatWords("shellac", None, None, NOWHERE)
    assert said("finish shellac") == FinishLine((), (), (shellac,), NOWHERE)


def act(verb: str | None, name: str | None) -> Act:
    return Act(verb, part(name) if name else None, NOWHERE)


@pytest.mark.parametrize(
    ("text", "first", "then"),
    [
        ("legs before rails", [act(None, "leg")], [act(None, "rail")]),
        ("rails after legs", [act(None, "leg")], [act(None, "rail")]),
        ("finish rails before glue up base", [act("finish", "rail")], [act("glue up", "base")]),
        ("finish rails before glue up", [act("finish", "rail")], [act("glue up", None)]),
        ("glue up base before finish rails", [act("glue up", "base")], [act("finish", "rail")]),
        (
            "cut legs and rails before glue up base",
            [act("cut", "leg"), act("cut", "rail")],
            [act("glue up", "base")],
        ),
        (
            "sand rails after legs, base",
            [act(None, "leg"), act(None, "base")],
            [act("sand", "rail")],
        ),
    ],
)
def test_wishes(text: str, first: list[Act], then: list[Act]) -> None:
    assert said(text, "leg, rail, base") == OrderLine(tuple(first), tuple(then), NOWHERE)
