"""Instances of patterns: places worked by hand, equal parts, findings on the maker's line."""

from fractions import Fraction
from itertools import pairwise

from tests.pieces.reading import changed, checked, codes, errors, mm, model_of

from dryfit.geometry.box import Box
from dryfit.operations import work_list

FRAMES = """\
piece Two frames
units mm
overall 600 wide, 400 deep, 600 high
timber ash
pattern flat frame with width, depth, height, bar = 50 mm, 30 mm to 90 mm
2 rails, across, flat, bar x height, at front and back
2 ends, front to back, flat, bar x height, at left and right
ends crossing rails: half lap
glue up ring: rails, ends
end
2 frames, as flat frame, 600 wide, 400 deep, 24 high, at top and bottom
4 legs, upright, 40 x 40, between frames, at corners, set in 5
legs onto frames: screws
"""
TABLE = """\
piece Table
units mm
overall 1000 wide, 500 deep, 720 high
timber ash
1 base, as apron base, 900 wide, 400 deep, set in 50, leg 50
1 top, flat, 20 thick, glued from 5
top onto base: screws
finish oil varnish, 2 coats, 24 h apart
"""


def box(low: tuple[int, int, int], high: tuple[int, int, int]) -> Box:
    return Box(mm(*low), mm(*high))  # type: ignore[arg-type]


def boxes(text: str) -> dict[str, Box]:
    return {copy.name: copy.box for part in model_of(text).parts for copy in part.copies}


def test_the_inside_takes_its_place_from_the_instance() -> None:
    found = boxes(TABLE)
    # The base stands 50 in from the piece; its height is what the top leaves: 720 - 20.
    assert found["base > front left post"] == box((50, 50, 0), (100, 100, 700))
    assert found["base > back right post"] == box((900, 400, 0), (950, 450, 700))
    # 900 wide less two posts of 50, and a tenon of half a post at either end, set back 2;
    # aprons are 2/5 of 50 thick.
    assert found["base > front long apron"] == box((75, 52, 630), (925, 72, 700))


def test_equal_parts_of_several_instances_are_one_part_and_one_operation() -> None:
    text = changed(FRAMES, ("4 legs, upright, 40 x 40, between frames, at corners, set in 5\n", ""))
    text = changed(text, ("legs onto frames: screws\n", ""), ("600 high", "48 high"))
    model = model_of(text)
    assert [(part.name, len(part.copies)) for part in model.parts] == [
        ("frame > rail", 4),
        ("frame > end", 4),
    ]
    shop = checked(text).shop
    assert shop is not None
    work, findings = work_list(model, shop)
    assert work is not None, findings
    laps = [op for op in work.operations if op.id == "frame > rail / end lap"]
    assert len(laps) == 1
    assert len({copy for row in laps[0].work for copy in row.copies}) == 4
    names = [assembly.name for assembly in model.assemblies]
    assert names == ["frame > ring 1", "frame > ring 2"]


def test_joints_inside_hold_within_one_copy_of_the_instance() -> None:
    model = model_of(
        changed(FRAMES, ("600 high", "48 high"), (FRAMES[FRAMES.index("4 legs") :], ""))
    )
    pairs = {(joint.guest.split(" > ")[0], joint.host.split(" > ")[0]) for joint in model.joints}
    assert pairs == {("top frame", "top frame"), ("bottom frame", "bottom frame")}


def test_a_part_inside_can_be_named_from_outside() -> None:
    text = changed(
        TABLE,
        (
            "finish",
            "groove in base's long aprons: inside, 6 wide, 8 deep, 12 from top, through\nfinish",
        ),
    )
    part = model_of(text).part("base > long apron")
    assert [feature.kind for feature in part.features if feature.role == "groove"] == ["long slot"]


def test_settings_are_worked_out_outside_and_defaults_inside() -> None:
    text = changed(TABLE, ("leg 50", "leg = half of overhang"), ("timber ash", "overhang = 100"))
    assert model_of(text).part("base > post").width == 50
    assert model_of(changed(TABLE, (", leg 50", ""))).part("base > post").width == 45


def test_a_finding_inside_points_at_the_line_that_uses_the_pattern() -> None:
    found = errors(checked(changed(TABLE, ("leg 50", "leg 30 mm, board 35 mm"))))
    assert found
    for finding in found:
        assert finding.span is not None
        assert finding.as_told().span is not None
        assert finding.span.told().line == 5


def test_wrong_settings_are_told() -> None:
    assert errors(checked(changed(TABLE, ("leg 50", "keel 50"))))
    assert "parameter-unknown" in codes(checked(changed(TABLE, ("leg 50", "900 long"))))
    assert "parameter-out-of-range" in codes(checked(changed(TABLE, ("leg 50", "leg 500"))))


def test_an_instance_fills_an_opening() -> None:
    text = """\
piece Shelf with a box
units mm
overall 500 wide, 200 deep, 300 high
timber ash
2 sides, upright, facing side, 200 x 20, at left and right
1 top, flat, 200 x 20, into sides, housing 5, flush top
1 bottom, flat, 200 x 20, into sides, housing 5, flush bottom
bay = opening between sides and top and bottom
pattern tray with width, depth, height, board = 10 mm
2 tray sides, front to back, on edge, height x board, at left and right, up 0
2 tray ends, across, on edge, height x board, between tray sides, at front and back, up 0
tray ends into tray sides: glue
glue up box: tray sides, tray ends
end
glue up case: sides, top, bottom
1 tray, as tray, in bay, gap 2 across, 200 deep, 80 high, up 20
"""
    found = boxes(text)
    # The bay is 460 wide; 2 are left at either side.
    assert found["tray > left tray side"] == box((22, 0, 20), (32, 200, 100))
    assert found["tray > right tray side"] == box((468, 0, 20), (478, 200, 100))
    assert found["tray > front tray end"].extent(0) == Fraction(436)


def test_patterns_too_deep_are_refused() -> None:
    blocks = []
    for outer, inner in pairwise(("a", "b", "c", "d", "e", "f", "g", "")):
        line = f"1 core, as nest {inner}, width wide, depth deep, height high"
        line = line if inner else "1 core, flat, height thick"
        blocks.append(f"pattern nest {outer} with width, depth, height\n{line}\nend\n")
    text = "piece Nest\nunits mm\noverall 100 wide, 100 deep, 20 high\n" + "".join(blocks)
    text += "1 nest, as nest a, 100 wide, 100 deep, 20 high\n"
    assert "patterns-too-deep" in codes(checked(text))


LOOSE = (
    FRAMES.replace("600 high", "48 high")
    .replace("4 legs, upright, 40 x 40, between frames, at corners, set in 5\n", "")
    .replace("legs onto frames: screws\n", "")
)


def inside(line: str) -> str:
    ring = "glue up ring: rails, ends\n"
    return changed(LOOSE, (ring, f"{ring}{line}\n"))


def test_a_finish_inside_is_that_of_each_instance() -> None:
    coatings = model_of(inside("finish oil varnish, 2 coats, 24 h apart")).coatings
    assert [coating.subject for coating in coatings] == ["frame > ring 1", "frame > ring 2"]


def test_what_is_bought_inside_is_bought_for_each_instance() -> None:
    bought = model_of(inside("bought 4 feet, 20 dia, for rails")).bought
    assert [(thing.written, thing.count, thing.purpose) for thing in bought] == [
        ("feet", 8, "rails")
    ]


def test_a_limit_inside_is_that_of_the_instance_and_of_its_parts() -> None:
    assert "limit-kept" in codes(checked(inside("at most 24 high, the shelf")))
    assert "limit-broken" in codes(checked(inside("at most 23 high, the shelf")))
    assert "limit-broken" in codes(checked(inside("ends at most 390 long, the saw")))


def test_a_limit_of_an_instance_is_kept_by_the_copy_that_goes_farthest() -> None:
    assert "limit-kept" in codes(checked(f"{LOOSE}frame top at most 48\n"))
    assert "limit-broken" in codes(checked(f"{LOOSE}frame top at most 47\n"))
    assert "limit-broken" in codes(checked(f"{LOOSE}frame top at least 25\n"))


def test_a_pattern_whose_first_line_cannot_be_read_is_not_missed_too() -> None:
    text = changed(LOOSE, ("bar = 50 mm, 30 mm to 90 mm", "bar = 50 mm, 2 * 15 mm to 90 mm"))
    assert codes(checked(text)) == ["range-of-what"]
