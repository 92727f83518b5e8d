"""A worked-out size as the sum that a maker writes; figures worked by hand, pieces ours."""

from fractions import Fraction

from dryfit.diagnostics import Figure, Term
from dryfit.placing.sum_shown import sum_shown
from dryfit.quantities import Display

INCH = Fraction(127, 5)


def of(value: Fraction, *terms: Term) -> Figure:
    return Figure("board.width", value, "worked out", "", terms)


def share(often: Fraction, label: str, amount: Fraction, sign: int = 1) -> Term:
    return Term(f"{often} of {label}", sign * often * amount, often, label)


def test_shares_are_one_bracket_over_their_number() -> None:
    # 940 + 2 x 8 - 5 x 2.5 = 943.5, a sixth of it 157.25.
    sixth = Fraction(1, 6)
    figure = of(
        Fraction(943_500, 6_000),
        share(sixth, "overall width", Fraction(940)),
        share(2 * sixth, "rabbet", Fraction(8)),
        share(2 * sixth, "play", Fraction(0)),
        share(5 * sixth, "gap", Fraction(5, 2), -1),
    )
    assert sum_shown(figure, Display()) == (
        "157.5 = (overall width 940 + 2 x rabbet 8 - 5 x gap 2.5) / 6 = 157.3, rounded"
    )


def test_a_whole_sum_needs_no_bracket() -> None:
    figure = of(
        Fraction(90),
        Term("overall height", Fraction(100)),
        share(Fraction(2), "gap", Fraction(5), -1),
    )
    assert sum_shown(figure, Display()) == "90 = overall height 100 - 2 x gap 5"


def test_what_is_finer_than_the_step_is_shown_so_that_the_sum_adds_up() -> None:
    # 20 in less two gaps of 3/32 in are 19 13/16 in: nothing is rounding.
    gap = INCH * 3 / 32
    figure = of(
        INCH * (19 + Fraction(13, 16)),
        Term("overall width", INCH * 20),
        Term("gap at left", -gap),
        Term("gap at right", -gap),
    )
    display = Display.inches(Fraction(1, 16))
    assert sum_shown(figure, display) == (
        '19 13/16" = overall width 20" - gap at left 3/32" - gap at right 3/32"'
    )


def test_what_the_finest_step_leaves_over_is_told_as_rounding() -> None:
    # Twice 1/150 in, each printed as 0, come to 1/75 in, printed as 1/64.
    speck = INCH / 150
    figure = of(2 * speck, Term("one", speck), Term("other", speck))
    assert sum_shown(figure, Display.inches(Fraction(1, 16))) == (
        '0" = one 0" + other 0" = 1/64" (1/64" is rounding), rounded'
    )


def test_a_sum_of_one_term_is_that_term_as_the_list_shows_it() -> None:
    share_of_a_spread = Term("share of board in its spread", Fraction(1024, 10))
    figure = of(share_of_a_spread.amount, share_of_a_spread)
    assert sum_shown(figure, Display()) == "102.5 = share of board in its spread 102.5"


def test_terms_that_do_not_add_up_as_printed_say_what_is_rounding() -> None:
    # 338 + 2 x 5.25 = 348.5; printed to a tenth the grooves are 5.3.
    figure = of(
        Fraction(697, 2),
        Term("between shoulders", Fraction(338)),
        Term("groove at R", Fraction(21, 4)),
        Term("groove at R2", Fraction(21, 4)),
    )
    assert sum_shown(figure, Display()) == (
        "348.5 = between shoulders 338 + groove at R 5.3 + groove at R2 5.3 (0.1 is rounding)"
    )
