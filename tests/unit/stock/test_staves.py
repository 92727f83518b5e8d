"""Staves of glued panels: their number, and widths as the boards give them (TRADE A9.1, M11)."""

from dataclasses import replace
from fractions import Fraction

from tests.unit.operations.worked import operation, piece, rule, setting, shipped_shop

from dryfit.joinery.staves import Staves
from dryfit.operations import work_list
from dryfit.placing.model import Model
from dryfit.stock.blanks.needs import Needs, needs_of

MM = Fraction

FIXED = "glued from 4"


def bench(words: str, *boards: tuple[int, int, int]) -> Model:
    """The boot bench with a top glued as the words say; `boards` are (how many, length, width)."""
    model = piece("boot_bench", (FIXED, words))
    if not boards:
        return model
    stock = tuple(
        replace(model.stock[1], count=count, sizes=(Fraction(long), Fraction(wide), Fraction(27)))
        for count, long, wide in boards
    )
    return replace(model, stock=stock)


def mm(*sizes: int) -> tuple[Fraction, ...]:
    """Exact millimetres."""
    return tuple(Fraction(size) for size in sizes)


def staves(model: Model) -> Staves:
    """The staves of the top."""
    found = model.part("top").staves
    assert found is not None
    return found


def free(model: Model) -> Needs:
    """The way with staves as wide as their boards give."""
    ways = needs_of(model, shipped_shop())
    return next(way for way in ways if way.why.startswith("each stave"))


def test_as_few_staves_as_the_widest_of_the_shop_make() -> None:
    # TRADE A9.1: ceil((360 + 6) / 130) = 3, each 366 / 3 = 122.
    found = staves(bench("glued from boards"))
    assert found.count == 3
    assert not found.fixed
    assert found.width == 122
    said = [each for each in bench("glued from boards").assumptions if "glued from 3" in each.text]
    assert [each.instead for each in said] == ["1 top, flat, 20 thick, glued from 3 boards"]
    assert staves(bench(FIXED)) == Staves(4, Fraction(183, 2))


def test_more_staves_are_offered_where_the_number_is_open() -> None:
    ways = needs_of(bench("glued from boards"), shipped_shop())
    counts = {staves(way.model).count for way in ways if not staves(way.model).widths}
    assert counts == {3, 4, 5, 6}
    # 366 / 50 = 7.3: of a stave no more than three more, and none narrower than 50.
    fixed = needs_of(bench(FIXED), shipped_shop())
    assert {staves(way.model).count for way in fixed} == {4}


def test_each_stave_as_wide_as_its_board() -> None:
    # Boards 210 and 190 wide, 3 of it the rough edge: two staves of (207 - 3) / 2 - 5 = 97 and two
    # of (187 - 3) / 2 - 5 = 87; the wide ones give what is too much: 366 - 174 = 192.
    needs = free(bench(FIXED))
    assert staves(needs.model).widths == mm(96, 96, 87, 87)
    own = [each for each in needs.blanks if each.staves]
    assert [(each.names, float(each.to_width), float(each.width)) for each in own] == [
        (("top stave blank 1", "top stave blank 2"), 96, 101),
        (("top stave blank 3", "top stave blank 4"), 87, 92),
    ]
    assert [name for each in own for name in each.pieces] == [
        f"top stave {number}" for number in range(1, 5)
    ]


def test_the_choice_that_takes_the_least_of_the_boards() -> None:
    # 110 wide gives 107: one stave of 102; 150 gives 147: one of 130, the shop's widest, or two
    # of 67.  Four of 102 take 428 of their widths, and as 42 is too much a strip of that is left:
    # 386.  130 + 2 x 67 + 102 = 366 takes 401, three of 130 take 441.
    found = staves(free(bench("glued from boards", (9, 2500, 150), (9, 2500, 110))).model)
    assert found.widths == mm(102, 102, 102, 60)
    # Of three staves: 130 beside which 89 is left, cost 138, and one of 112 for 117, make 372 for
    # 393; three of 130 take 414.  6 too much is taken off the widest.
    found = staves(free(bench("glued from 3", (9, 2500, 230), (9, 2500, 120))).model)
    assert found.widths == mm(127, 127, 112)


def test_boards_as_they_come_are_used_whole_and_first_of_all() -> None:
    # M11: the shop's widest stave is a default.  187 - 5 and 207 - 5 make 384, 18 too much.
    model = bench("from boards as they come", (2, 2500, 190), (1, 2500, 210))
    first = needs_of(model, shipped_shop())[0]
    assert staves(first.model).widths == mm(184, 182)
    assert first.why == ""
    # With no boards told of there is nothing to go by.
    assert staves(needs_of(replace(model, stock=()), shipped_shop())[0].model).count == 3


def test_of_a_slab_staves_lie_between_its_edges_and_at_its_narrow_end() -> None:
    # 215 less 3 at each edge under bark and 5 of ripping is 204; 212 less 3 and 5 at one end, too.
    model = bench("from boards as they come", (2, 2500, 215))
    (line,) = model.stock
    bark = replace(line, waney=2)
    ends = ((MM(300), MM(212)), (MM(212), MM(300)))
    tapers = [replace(line, sizes=(MM(2500), here, MM(27)), other_width=n) for here, n in ends]
    for slab in (bark, *tapers):
        first = needs_of(replace(model, stock=(slab,)), shipped_shop())[0]
        assert staves(first.model).widths == mm(204, 162)


def test_boards_that_do_not_give_the_width_change_nothing() -> None:
    model = bench(FIXED, (1, 1200, 190))
    assert not any(staves(way.model).widths for way in needs_of(model, shipped_shop()))


def test_each_width_is_ripped_by_itself() -> None:
    needs = free(bench(FIXED))
    work, _ = work_list(needs.model, shipped_shop())
    assert work is not None
    first, second = (operation(work, f"top stave / width / {number}") for number in (1, 2))
    assert first.sentence == "Rip top stave 1 and top stave 2 to width"
    # One millimetre more than jointed: the second edge is jointed after the saw.
    assert [setting(row, "fence").value for row in (first, second)] == [97, 88]
    for row in (first, second):
        assert rule(work, "top stave / thickness", row.id)
        assert rule(work, row.id, "top stave / second edge")
    glued = next(each for each in work.operations if each.id == "top / glue up")
    assert glued.glue_up is not None
    assert len(glued.glue_up.parts) == 4
