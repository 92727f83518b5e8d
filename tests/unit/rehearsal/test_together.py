"""What keeps parts from coming together is told once, not at each of their meetings."""

from collections import Counter

from tests.pieces.reading import text_of
from tests.unit.rehearsal.played import played

POCKET = "no pocket leads a screw from it into left stile"


def test_a_missing_pocket_is_told_once() -> None:
    # The dry fit, the glue-up and the finished piece all lack it.
    faults = played(text_of("pocket_frame")).without("pocket").faults()
    told = Counter(fault.message for fault in faults if POCKET in fault.message)
    assert sorted(told.values()) == [1, 1]


def test_missing_holes_for_dowels_are_told_of_both_parts() -> None:
    faults = played(text_of("dowelled_rack")).without("dowel holes").faults()
    told = Counter(fault.message for fault in faults if "find no hole in it" in fault.message)
    assert set(told.values()) == {1}
    assert {message.split(":")[0] for message in told} >= {"left side", "top"}
