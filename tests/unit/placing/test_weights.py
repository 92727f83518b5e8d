"""Weights of the cut solids, worked by hand."""

from fractions import Fraction

from tests.pieces.reading import changed, checked, errors, model_of

from dryfit.booklet.weight_words import weight_sentences
from dryfit.placing.weights import volume, weight_of, whole_weight
from dryfit.wood.weight import weight_words

CASE = """\
piece Case
units mm
overall 400 wide, 200 deep, 300 high
timber ash
2 sides, upright, facing side, 200 x 20, at left and right
1 top, flat, across, 200 x 20, into sides, housing 5, flush top
1 bottom, flat, across, 200 x 20, into sides, housing 5, flush bottom
glue up case: sides, top, bottom
"""


def test_a_case_weighs_what_its_cut_boards_come_to() -> None:
    model = model_of(CASE)
    # White ash 0.60 at 8 %: 648 kg/m3.  A side 300 x 200 x 20 less two housings 20 x 200 x 5, a
    # top 370 x 200 x 20.
    side, top = 300 * 200 * 20 - 2 * 20 * 200 * 5, 370 * 200 * 20
    assert [volume(part, part.copies[0]) for part in model.parts] == [side, top, top]
    expected = Fraction(2 * side + 2 * top) * 648 / 10**9
    assert whole_weight(model).kilograms == expected
    assert weight_of(model, ("case",)) == whole_weight(model)
    left = next(copy.name for copy in model.part("side").copies)
    assert weight_of(model, (left, left)).kilograms == Fraction(side) * 648 / 10**9
    # A case that stands on one glue-up has no loads to tell apart.
    assert weight_sentences(model) == (
        "The piece weighs about 3.5 kg; boards of one wood differ by a tenth and more.",
    )


def test_forms_and_round_holes_take_their_share() -> None:
    lines = "chamfer on top: front top edge, 4\nround-over on bottom: front bottom edge, 4\n"
    model = model_of(
        CASE + lines + "hole in top: top, 35 dia, through, 100 from front, 200 from left\n"
    )
    top, bottom = (model.part(name) for name in ("top", "bottom"))
    whole = Fraction(370 * 200 * 20)
    chamfered = whole - volume(top, top.copies[0])
    rounded = whole - volume(bottom, bottom.copies[0])
    run = 370
    assert abs(float(rounded) - run * 16 * (1 - 3.14159265 / 4)) < 0.01
    assert abs(float(chamfered) - (run * 8 + 3.14159265 * 17.5**2 * 20)) < 0.1


def test_what_no_table_weighs_is_said_and_not_guessed() -> None:
    model = model_of(changed(CASE, ("timber ash", "timber teak")))
    assert whole_weight(model).kilograms == 0
    assert whole_weight(model).unknown == ("side", "top", "bottom")
    assert weight_sentences(model) == (
        "Not weighed, since nothing tells their weight: side, top and bottom.",
    )


def test_weights_are_shown_no_finer_than_they_are_known() -> None:
    shown = [weight_words(Fraction(grams, 1000), "mm") for grams in (100, 2592, 19_800, 20_400)]
    assert shown == ["0.5 kg", "2.5 kg", "20 kg", "20 kg"]
    assert weight_words(Fraction("2.592"), "in") == "6 lb"


def test_bought_things_weigh_what_their_lines_say() -> None:
    lines = (
        "bought 2 lamps, weighs 3 kg each\nbought 1 tray, for top, weighing 4 lb\nbought 2 feet\n"
    )
    model = model_of(CASE + lines)
    made = weight_of(model, ("case",)).kilograms
    whole = whole_weight(model)
    # 1 lb = 0.45359237 kg (international agreement of 1959).
    assert whole.kilograms == made + 6 + 4 * Fraction("0.45359237")
    assert whole.unknown == ("feet",)


def test_only_what_is_bought_weighs_what_is_written() -> None:
    text = changed(CASE, ("2 sides, upright", "2 sides, weighs 3 kg, upright"))
    assert [each.code for each in errors(checked(text))] == ["not-bought"]
    nothing = CASE + "bought 2 lamps, weighs 0 kg\n"
    assert [each.code for each in errors(checked(nothing))] == ["no-weight"]
