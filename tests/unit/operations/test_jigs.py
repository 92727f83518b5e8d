"""Jigs and templates are set up once for each setting (TRADE B26)."""

import pytest
from tests.pieces.reading import model_of, text_of
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
    model = model_of(text_of(piece))
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
