"""Mitred frames and boxes worked by hand: point to point, corners shared out without a void."""

from fractions import Fraction
from itertools import product

import pytest
from tests.pieces.reading import changed, checked, codes, mm, model_of, text_of

from dryfit.geometry.box import Box
from dryfit.joinery.form import Region
from dryfit.placing.model import Model

FRAME = text_of("mitred_frame")
BOX = text_of("mitred_box")
FLAT = """piece Print frame
units mm
overall 500 wide, 400 deep, 20 high
timber oak
2 long bars, across, flat, 50 x 20, at front and back
2 short bars, front to back, flat, 50 x 20, at left and right
short bars crossing long bars: mitre
glue up frame: long bars, short bars
"""


MID = "1 mid bar, front to back, flat, 50 x 20\nmid bar crossing long bars: mitre"


@pytest.fixture(scope="module")
def frame() -> Model:
    return model_of(FRAME)


def corner(model: Model, number: int) -> tuple[Region, Region]:
    """What guest and host of a mitre take of their corner."""
    joint = model.joint(f"mitre {number}")
    found = []
    for name in (joint.guest, joint.host):
        copy = model.copy(name)
        regions = [
            region
            for feature in model.part_of(name).features
            if feature.role == "mitre"
            and copy.hand in feature.hands
            and (region := feature.region(copy.box, copy.frame)).box == joint.region
        ]
        assert len(regions) == 1
        found.append(regions[0])
    return found[0], found[1]


def test_long_point_to_long_point_is_the_outside(frame: Model) -> None:
    """TRADE B12: L = outside; short point = outside - 2 W tan 45."""
    assert frame.part("stile").length == 560
    assert frame.part("rail").length == 420
    assert frame.part("stile").shoulder_length == 560 - 2 * 48
    assert frame.part("rail").shoulder_length == 420 - 2 * 48


def test_each_end_is_cut_as_far_back_as_it_is_wide(frame: Model) -> None:
    cuts = {feature.id: feature for feature in frame.part("rail").features}
    assert cuts["mitre at R"].kind == cuts["mitre at R2"].kind == "mitre"
    assert cuts["mitre at R"].depth == 48
    assert cuts["mitre at R"].along == mm(0, 48)
    assert cuts["mitre at R"].form is not None
    # The groove runs along the inner edge, and so the mitre runs out there.
    assert cuts["mitre at R"].form.toward == cuts["groove for panel"].surface
    assert dict(cuts["mitre at R"].form.sizes) == {"angle": Fraction(45)}


@pytest.mark.parametrize("text", [FRAME, BOX, FLAT])
def test_of_every_place_in_a_corner_one_member_has_the_wood(text: str) -> None:
    model = model_of(text)
    assert sum(joint.kind == "mitre" for joint in model.joints) == 4
    for number in range(1, 5):
        one, two = corner(model, number)
        assert one.completes(two)
        box, steps = one.box, 8
        cells = product(range(steps), repeat=3)
        for cell in cells:
            low = [box.low[i] + box.extent(i) * cell[i] / steps for i in range(3)]
            high = [box.low[i] + box.extent(i) * (cell[i] + 1) / steps for i in range(3)]
            small = Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))
            taken = [region.takes(small) for region in (one, two)]
            if one.meets(small) and two.meets(small):
                # The slant itself runs through it: neither takes all of it.
                assert taken == [False, False]
            else:
                assert sum(taken) == 1


def test_a_board_on_edge_is_mitred_across_its_thickness() -> None:
    model = model_of(BOX)
    cuts = [each for each in model.part("long board").features if each.role == "mitre"]
    assert [(each.surface, each.depth) for each in cuts] == [
        ("R", Fraction(18)),
        ("R2", Fraction(18)),
    ]
    assert {each.form.toward for each in cuts if each.form} == {"B"}
    assert model.part("short board").shoulder_length == 300 - 2 * 18


@pytest.mark.parametrize("word", ["mitre", "miter", "mitred", "mitered", "mitre joint"])
def test_its_names_in_the_trade(word: str) -> None:
    model = model_of(changed(FLAT, ("bars: mitre", f"bars: {word}")))
    assert [joint.kind for joint in model.joints] == ["mitre"] * 4


@pytest.mark.parametrize(
    ("change", "words"),
    [
        (("back, flat, 50 x 20", "back, flat, 40 x 20"), "short bar is 40 and long bar 50"),
        (("back, flat, 50 x 20", "back, flat, 50 x 18"), "do not match"),
        (("glue up", f"{MID}\nglue up"), "runs on past"),
    ],
)
def test_what_does_not_close_is_refused(change: tuple[str, str], words: str) -> None:
    found = checked(changed(FLAT, change))
    told = [each for each in found.findings if each.code == "mitre-does-not-close"]
    assert len(told) == 1
    assert words in told[0].message
    assert told[0].hints


def test_wide_solid_members_are_warned_of() -> None:
    """TRADE G8: mitred wide solid frame members over 90 mm."""
    wide = changed(FLAT, ("50 x 20", "95 x 20"))
    assert codes(checked(wide)).count("mitre-wide") == 1
    assert "mitre-wide" not in codes(checked(changed(FLAT, ("50 x 20", "90 x 20"))))
    # Across the thickness nothing moves apart.
    assert "mitre-wide" not in codes(
        checked(changed(BOX, ("90 x 18", "100 x 18"), ("90 high", "100 high")))
    )


def test_a_mitre_takes_no_size_of_its_own() -> None:
    found = checked(changed(FLAT, ("bars: mitre", "bars: mitre 20 deep")))
    assert "joint-size-unused" in codes(found)
