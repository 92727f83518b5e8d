"""A line that tells of wood reads back to the same wood: what is printed can be pasted."""

from dataclasses import replace
from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from dryfit.diagnostics import Source, Span
from dryfit.notes import parse
from dryfit.piece import declare
from dryfit.piece.declared import Avoid, Have, Price
from dryfit.quantities import Display
from dryfit.stock.telling.have_lines import have_line, money_words

NOWHERE = Span(Source("", ""), 1, 1, 1)
HEAD = "piece Shelf\nunits {}\noverall 800 mm wide, 200 mm deep, 20 mm high\ntimber ash\n"
PARTS = "1 shelf, across, flat, 200 mm x 20 mm\n"
MM, INCHES = Display(), Display.inches(Fraction(1, 16))
CM, METRES = Display.of_unit("cm"), Display.of_unit("m")
UNITS = ("piece", "metre", "foot", "square metre", "square foot", "cubic metre", "board foot")
STEP = {MM: Fraction(1, 2), INCHES: Fraction(254, 160)}
UNIT = {MM: "mm", CM: "cm", METRES: "m", INCHES: "in"}


def read_back(line: str, unit: str) -> Have:
    notes, in_notes = parse(Source("shelf", HEAD.format(unit) + PARTS + line + "\n"))
    assert in_notes == (), line
    declared, _ = declare(notes)
    (have,) = declared.stock or declared.yard
    return have


def same(have: Have) -> Have:
    zones = tuple(replace(zone, span=NOWHERE) for zone in have.avoid)
    return replace(have, text="", span=NOWHERE, avoid=zones)


@st.composite
def wood(draw: st.DrawFn, display: Display) -> Have:
    step = STEP.get(display, STEP[MM])

    def size(least: int, most: int) -> Fraction:
        return step * draw(st.integers(least, most))

    def reach(whole: Fraction) -> tuple[Fraction, Fraction]:
        start = draw(st.integers(0, whole // step - 1))
        return step * start, step * draw(st.integers(start + 1, int(whole // step)))

    long, wide, thick = size(400, 3000), size(60, 300), size(8, 60)
    kind = draw(st.sampled_from(["board", "offcut", "slab", "sheet", "strip"]))
    sheet = kind == "sheet"
    state = "" if sheet else draw(st.sampled_from(["rough", "hit", "planed"]))
    other = size(60, 300) if kind == "slab" and draw(st.booleans()) else None
    widest = max(wide, other or wide)
    zones = []
    for _ in range(draw(st.integers(0, 3))):
        along = reach(long) if draw(st.booleans()) else None
        across = reach(widest) if along is None or draw(st.booleans()) else None
        why = draw(st.sampled_from(["knot", "split", "sapwood", "avoid", "worm hole"]))
        zones.append(Avoid(along, across, why, NOWHERE))
    buy = draw(st.booleans())
    price = Price(
        Fraction(draw(st.integers(1, 999_999)), 100),
        draw(st.sampled_from(UNITS)),
        draw(st.sampled_from(["", "€", "£", "$", "CHF", "SEK", "kr"])),
    )
    cup, bow, twist = (Fraction(0) if sheet else size(0, 6) for _ in range(3))
    return Have(
        1 if buy else draw(st.integers(1, 20)),
        kind,
        draw(st.sampled_from(["birch ply", "mdf"] if sheet else ["ash", "white oak", None])),
        (long, wide, thick),
        state == "rough",
        "",
        NOWHERE,
        cup=cup,
        bow=bow,
        twist=twist,
        moisture=draw(st.none() | st.integers(10, 40).map(lambda half: Fraction(half, 2))),
        hit_and_miss=state == "hit",
        other_width=other,
        waney=0 if sheet else draw(st.integers(0, 2)),
        grain=draw(st.booleans()) if sheet else True,
        measured=thick if sheet and draw(st.booleans()) else None,
        avoid=tuple(zones),
        price=price if buy else None,
        at_most=draw(st.none() | st.integers(1, 9)) if buy else None,
        offcut=kind == "offcut" or (sheet and draw(st.booleans())),
    )


@given(st.sampled_from(list(UNIT)).flatmap(lambda each: st.tuples(st.just(each), wood(each))))
def test_a_line_reads_back_to_the_same_wood(drawn: tuple[Display, Have]) -> None:
    display, have = drawn
    assert same(read_back(have_line(have, display), UNIT[display])) == have


def test_in_notes_in_centimetres_a_line_says_that_it_is_in_mm() -> None:
    line = "have 1 offcut of ash, 550 x 160 x 34, rough, cup 2"
    told = "have (mm) 1 offcut of ash, 550 x 160 x 34, rough, cup 2"
    assert have_line(read_back(line, "mm"), CM) == told
    # 55 cm are 550 mm, and 0.2 cm are 2.
    written = read_back("have 1 offcut of ash, 55 x 16 x 3.4, rough, cup 0.2", "cm")
    assert written.sizes == read_back(told, "cm").sizes == read_back(line, "mm").sizes
    assert written.cup == read_back(told, "cm").cup


def test_lines_as_a_maker_writes_them() -> None:
    for line in (
        "have 1 offcut of ash, 550 x 160 x 34, rough",
        "have 2 boards of ash, 2400 x 160 x 34, rough, cup 4, bow 6, twist 3, moisture 12 %",
        "have 1 slab of elm, 2200 x 480 to 560 x 52, rough, waney both edges",
        "have 1 board of ash, 2400 x 160 x 34, planed, knot 300 to 380, 0 to 40 from the edge",
        "have 1 sheet of birch ply, 2440 x 1220 x 18, no grain, measures 17.6",
        "have 1 board of ash, 160 wide, 34 thick, rough",
        "buy boards of ash, 2400 x 180 x 27, rough, £9.50 per board foot, at most 3",
    ):
        assert have_line(read_back(line, "mm"), MM) == line


def test_money_has_cents_and_its_label() -> None:
    assert money_words(Fraction(48)) == "48.00"
    assert money_words(Fraction("9.5"), "£") == "£9.50"
    assert money_words(Fraction("0.375"), "SEK") == "0.375 SEK"
