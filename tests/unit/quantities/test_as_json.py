from fractions import Fraction

from dryfit.quantities import Display
from dryfit.quantities.as_json import length_json


def test_length_in_inches_is_exact_and_shown_as_a_maker_reads_it() -> None:
    assert length_json(Fraction(9017, 20), Display.inches()) == {
        "exact": "9017/20 mm",
        "mm": 450.85,
        "shown": '17 3/4"',
    }


def test_a_fitted_length_is_shown_to_the_finer_step() -> None:
    length = Fraction(1478, 100)
    assert length_json(length, Display(), fitted=True)["shown"] == "14.8"
    assert length_json(length, Display())["shown"] == "15"
