"""Jigs and templates are set up once for each setting (TRADE B26)."""

import pytest
from tests.pieces.reading import changed, model_of_piece, text_of
from tests.unit.rehearsal.played import played


@pytest.mark.parametrize(
    ("piece", "role", "set_up", "each"),
    # TRADE B26: 3 for the pocket jig and 0.7 a hole; 4 for the template of pins, whose holes take
    # 0.3; 4 for the dowel jig and 0.5 a hole.
    [
        ("pocket_frame", "pocket hole", 30, 7),
        ("pin_case", "pin hole", 40, 3),
        ("dowelled_rack", "dowel hole", 40, 5),
    ],
)
def test_a_jig_is_set_up_once(piece: str, role: str, set_up: int, each: int) -> None:
    model = model_of_piece(piece)
    holes = {
        part.name: {feature.id for feature in part.features if feature.role == role}
        for part in model.parts
    }
    count = total = 0
    for step in played(text_of(piece)).plan.steps:
        for operation in step.operations:
            own = [
                (work, feature)
                for work in operation.work
                for feature in work.features
                if feature in holes.get(work.part, ())
            ]
            # The drill press needs no jig.
            if own and operation.station == "bench":
                total += operation.tenths
                count += sum(len(work.copies) for work, _ in own)
    assert total == set_up + each * count


def test_a_jig_for_fingers_is_made_for_the_first_board_that_is_cut_over_it() -> None:
    # Sides so long stand on no saw and are sawn by hand; TRADE B26: 18 for the jig, 0.25 a socket.
    text = changed(text_of("finger_box"), ("200 deep", "1000 deep"))
    rows = [
        operation
        for step in played(text).plan.steps
        for operation in step.operations
        if operation.kind == "fingers"
    ]
    assert {(row.part, row.station) for row in rows} == {("side", "bench"), ("end", "table saw")}
    at_saw = [row for row in rows if row.station == "table saw"]
    sockets = sum(len(work.features) * len(work.copies) for row in at_saw for work in row.work)
    assert sum(row.tenths for row in at_saw) == 180 + 5 * sockets / 2
