"""What is bought to fix a standing piece to its wall, and how far a hard wax oil goes."""

import pytest
from tests.pieces.reading import changed, model_of

CASE = """piece Case
units mm
overall 600 wide, 300 deep, 800 high
timber pine
fixed to the masonry wall
2 sides, upright, facing side, 300 x 18, at left and right
2 shelves, flat, 300 x 18, into sides, housing 6, up 0 and 782
finish sides with hard wax oil, 2 coats, 12 h apart
finish shelves with oil varnish, 2 coats, 24 h apart
glue up case: sides, shelves
"""


@pytest.mark.parametrize(
    ("wall", "item"),
    [
        ("masonry wall", "screw with its plug"),
        ("stud wall", "wood screw"),
        ("wall", "fixing"),
    ],
)
def test_brackets_are_bought_and_what_holds_in_that_wall(wall: str, item: str) -> None:
    model = model_of(changed(CASE, ("masonry wall", wall)))
    rows = [(row.item, row.count) for row in model.hardware if row.purpose == "the wall"]
    assert rows == [("angle bracket", 2), (item, 2)]


def test_what_the_notes_buy_is_not_bought_twice() -> None:
    text = changed(CASE, ("glue up", "bought 1 strap, for sides\nglue up"))
    rows = [row.item for row in model_of(text).hardware if row.purpose == "the wall"]
    assert rows == ["screw with its plug"]


def test_hard_wax_oil_goes_twice_as_far_as_varnish() -> None:
    """20 and 10 m2 a litre in a coat, two coats, up to whole 50 ml."""
    model = model_of(CASE)
    areas = {coating.products[0].product: coating.area for coating in model.coatings}
    rows = {row.item: row.size for row in model.hardware}
    for name, covers in (("hard wax oil", 20), ("oil varnish", 10)):
        needed = -(-areas[name] * 2 // (50_000 * covers)) * 50
        assert rows[name] == f"about {needed} ml", name
