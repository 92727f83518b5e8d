"""Why operations are kept in one visit is said of what they are."""

import pytest
from tests.pieces.reading import model_of_piece

from dryfit.operations import visit_words
from dryfit.operations.listing.work_list import work_list
from dryfit.shop.read import read_shop


@pytest.mark.parametrize(
    ("piece", "kind", "words"),
    [
        ("bridled_frame", "mortise", "slots of one depth are cut in one visit"),
        ("finger_box", "fingers", "fingers of one width are cut over one jig in one visit"),
        ("mitred_box", "mitre", "all mitres are sawn at one angle in one visit"),
        ("shelf_box", "housing", "housings of one depth are cut in one visit"),
    ],
)
def test_a_visit_is_named_for_what_is_cut_in_it(piece: str, kind: str, words: str) -> None:
    shop, _ = read_shop(None, {})
    assert shop is not None
    work, _ = work_list(model_of_piece(piece), shop)
    assert work is not None
    groups = {each.together for each in work.operations if each.kind == kind and each.together}
    assert groups
    for group in groups:
        assert visit_words(each for each in work.operations if each.together == group) == words
