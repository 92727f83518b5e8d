"""A clamp that presses on a taper is given a pad of its slope (TRADE H58)."""

import pytest
from tests.pieces.reading import changed, model_of, text_of
from tests.unit.operations.worked import listed, operation

RAIL = "2 low rails, front to back, on edge, 40 x 20, tenon 15 long 6 thick into legs, up 250\n"
LAMP = changed(
    text_of("lamp_table"),
    (
        "\nglue up 2 ends: 2 legs, 1 short apron",
        f"\n{RAIL}glue up 2 ends: 2 legs, 1 short apron, 1 low rail",
    ),
    ("taper in legs: inside faces", "taper in legs: {faces} faces"),
    ("115 below the top to", "{where} below the top to"),
)


@pytest.mark.parametrize(
    ("faces", "where", "padded"), [("outside", "115", True), ("outside", "400", False)]
)
def test_a_clamp_on_a_slope_gets_a_pad(faces: str, where: str, padded: bool) -> None:
    work, findings = listed(model_of(LAMP.format(faces=faces, where=where)))
    assert work is not None, findings
    glued = operation(work, "end 1 / glue up")
    told = [detail for detail in glued.details if "where the leg slopes" in str(detail[0])]
    assert bool(told) == padded
    assert not [each for each in operation(work, "base / glue up").details if "slopes" in str(each)]
