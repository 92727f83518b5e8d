"""Tops on clips, figure-8 plates and slotted screws worked by hand (TRADE B22, B18)."""

from fractions import Fraction

import pytest
from tests.pieces.reading import changed, checked, codes, model_of, text_of
from tests.unit.rehearsal.played import played

from dryfit.joinery.top_fixings import kerf_sizes, plate_set, slot_length
from dryfit.placing.model import Model
from dryfit.quantities import Display

CLIPPED, PLATED, SLOTTED = (text_of(f"{kind}_top") for kind in ("clipped", "plated", "slotted"))
BUTTONED = text_of("buttoned_top")


def shapes(model: Model, part: str, role: str) -> list[tuple[str, tuple[float, ...]]]:
    """Surface, then along, across and depth of the features of one job."""
    return [
        (each.surface, tuple(float(x) for x in (*each.along, *each.across, each.depth)))
        for each in model.part(part).features
        if each.role == role
    ]


def cut_in(model: Model, part: str) -> list[tuple[object, ...]]:
    """All that is cut in a part: job, surface, along, across and depth of each."""
    features = model.part(part).features
    return [(each.role, each.surface, each.along, each.across, each.depth) for each in features]


def test_clips_stand_in_one_kerf_right_through() -> None:
    # TRADE B22: 3 wide, 10 deep, 11 to 13 from the top edge; the saw of the shop takes 3.2.
    model = model_of(CLIPPED)
    for part, long in (("long apron", 720), ("end apron", 330)):
        (kerf,) = shapes(model, part, "groove")
        assert kerf == ("B", (0, long, 12, 15.2, 10))
    clips = [each for each in model.hardware if "clip" in each.item]
    assert [(each.item, each.size, each.count) for each in clips] == [
        ("tabletop clip", "for a kerf 3.2 wide", 6),
        ("tabletop clip", "for a kerf 3.2 wide", 4),
    ]
    # 720 between the legs less 50 at either end, at most 300 apart: three on a long apron.
    assert sum(joint.kind == "clips" for joint in model.joints) == 10


def test_a_kerf_goes_no_deeper_than_half_of_a_thin_rail() -> None:
    metric = Display("mm", Fraction(1))
    assert kerf_sizes(Fraction(16), (), metric)[1] == 8
    assert kerf_sizes(Fraction(20), (Fraction(16, 5),), metric)[0] == Fraction(16, 5)


def test_a_groove_that_is_written_takes_the_clips() -> None:
    line = "groove in aprons: inside, 3 wide, 10 deep, 11 from top, through"
    lines = line.replace("aprons", "long aprons") + "\n" + line.replace("aprons", "end aprons")
    model = model_of(changed(CLIPPED, ("\n\nglue up 2", f"\n{lines}\n\nglue up 2")))
    assert len(shapes(model, "long apron", "groove")) == 1
    assert not any("saw kerf" in each.text for each in model.assumptions)


def test_a_groove_too_wide_for_clips_is_told() -> None:
    line = "groove in long aprons: inside, 8 wide, 10 deep, 11 from top, through"
    text = changed(CLIPPED, ("\n\nglue up 2", f"\n{line}\n\nglue up 2"))
    assert "top-fixing-does-not-fit" in codes(checked(text))


def test_plates_lie_in_recesses_open_to_the_inside() -> None:
    # 20 across, its middle 7 from the inner face: 3 of it are beyond, 17 in the edge of 20.
    model = model_of(PLATED)
    recesses = shapes(model, "long apron", "plate recess")
    assert [(depth, along[1] - along[0]) for _, (*along, _, _, depth) in recesses] == [
        (1.5, 20)
    ] * 3
    assert {round(far - near) for _, (_, _, near, far, _) in recesses} == {17}
    assert plate_set(Fraction(20)) == 7
    assert plate_set(Fraction(19)) == 6
    assert plate_set(Fraction(18)) is None
    screws = [each.count for each in model.hardware if each.item == "wood screw"]
    assert screws == [12, 8]


def test_slots_are_as_long_as_the_top_moves_there() -> None:
    # Oak of the handbook's table moves 0.00369 of its width for each percent; the aprons' middles
    # are 172 from the middle of a top of 400, 4 % a year: 172 x 0.00369 x 4 = 2.54; with the screw
    # of 4 and 1 mm that is 7.54, up to the next half.
    model = model_of(SLOTTED)
    slots = shapes(model, "long apron", "screw slot")
    assert [round(far - near, 1) for _, (_, _, near, far, _) in slots] == [8] * 3
    # Across the grain of the top: the one in the middle is round, the others lie along the apron.
    assert len(shapes(model, "end apron", "screw hole")) == 1
    assert len(shapes(model, "end apron", "screw slot")) == 2
    # 80 high: a counterbore from below leaves 20 for the screw to pull on.
    assert {depth for _, (*_, depth) in shapes(model, "end apron", "counterbore")} == {60}
    assert [(e.size, e.count) for e in model.hardware if e.item == "wood screw"] == [
        ("4 x 35", 6),
        ("4 x 35", 6),
    ]


def test_a_slot_is_the_screw_the_movement_and_one() -> None:
    # TRADE B18, for a screw of 4: 4 + 1.2 + 1 = 6.2, up to the next half.
    assert slot_length(Fraction(6, 5)) == Fraction(13, 2)
    assert slot_length(Fraction(0)) == Fraction(9, 2)


@pytest.mark.parametrize("text", [CLIPPED, PLATED, SLOTTED], ids=("clips", "plates", "screws"))
def test_the_plan_passes_its_rehearsal_and_fits_the_top_last(text: str) -> None:
    plan = played(text)
    assert plan.said() == ""
    rows = [op for step in plan.plan.steps for op in step.operations]
    (fit,) = (op for op in rows if op.kind == "fit")
    assert "no glue, it has to move" in fit.sentence
    last_coat = max(at for at, op in enumerate(rows) if op.kind == "coat")
    assert rows.index(fit) > last_coat
    first_glue = min(at for at, op in enumerate(rows) if op.id.startswith("end 1 / glue"))
    bored = [op for op in rows if any(word in op.id for word in ("groove", "recess", "slot"))]
    assert bored
    assert all(rows.index(op) < first_glue for op in bored)


@pytest.mark.parametrize(
    ("text", "idle", "said"),
    [
        (CLIPPED, "long apron / groove", "no kerf for its clip"),
        (PLATED, "end apron / plate recess", "no recess for its plate"),
        (SLOTTED, "long apron / counterbore", "no hole leads its screw"),
        (SLOTTED, "long apron / screw slot", "no hole leads its screw"),
    ],
)
def test_a_rail_without_its_cut_holds_no_top(text: str, idle: str, said: str) -> None:
    assert said in played(text).idle(idle).said()


@pytest.mark.parametrize(
    ("text", "change"),
    [
        (CLIPPED, ("long aprons, across, on edge, 80 x 20", "long aprons, across, flat, 60 x 20")),
        (PLATED, ("on edge, 80 x 20, tenon 20 long 6", "on edge, 80 x 16, tenon 20 long 6")),
        (SLOTTED, ("on edge, 80 x 20, tenon 20 long 6", "on edge, 80 x 16, tenon 20 long 6")),
    ],
)
def test_what_finds_no_wood_is_told(text: str, change: tuple[str, str]) -> None:
    assert "top-fixing-does-not-fit" in codes(checked(changed(text, change)))


def test_a_top_that_moves_too_far_for_clips_is_told() -> None:
    text = changed(CLIPPED, ("400 deep", "900 deep"), ("glued from 4", "glued from 8"))
    assert "top-fixing-does-not-fit" in codes(checked(text))


@pytest.mark.parametrize("kind", ["buttons", "clips", "figure-8 plates", "slotted screws"])
def test_what_stands_upright_under_a_top_is_said_to_take_none(kind: str) -> None:
    text = f"""piece Bench
units mm, to nearest 1
overall 800 wide, 300 deep, 420 high
timber oak
2 ends, upright, facing side, 280 x 24, at left and right, set in 60 across
1 rail, across, on edge, 90 x 24, tenon 14 long 8 thick into ends, flush top
1 seat, flat, 800 x 300 x 24
seat onto ends and rail: {kind}
glue up base: ends, rail
"""
    model = model_of(text)
    told = [each.text for each in model.assumptions if "run upright" in each.text]
    assert told == [f"the ends run upright and take no {kind}: they only carry the seat"]


def test_as_many_as_are_written_are_shared_out() -> None:
    model = model_of(changed(CLIPPED, (": clips", ": 8 clips")))
    assert sum(joint.kind == "clips" for joint in model.joints) == 8
    assert not any("clips hold the top" in each.text for each in model.assumptions)


@pytest.mark.parametrize(
    ("words", "kind"),
    [
        ("figure-8 plates", "figure-8 plates"),
        ("8 figure 8 plates", "figure-8 plates"),
        ("figure-eight plates", "figure-8 plates"),
        ("tabletop clips", "clips"),
        ("slotted screws", "slotted screws"),
    ],
)
def test_their_names_in_the_trade(words: str, kind: str) -> None:
    model = model_of(changed(CLIPPED, (": clips", f": {words}")))
    assert kind in {joint.kind for joint in model.joints}


def test_a_rail_under_a_top_takes_what_the_top_onto_it_takes() -> None:
    # The cut is in the part below, whichever of the two the line begins with.
    for text, hosts in ((BUTTONED, "long rails"), (CLIPPED, "long aprons and end aprons")):
        line = next(each for each in text.splitlines() if each.startswith("top onto " + hosts))
        kind = line.rpartition(": ")[2].removeprefix("6 ")
        model = model_of(changed(text, (line, f"top onto {hosts}: {kind}")))
        lines = "\n".join(f"{each} under top: {kind}" for each in hosts.split(" and "))
        turned = model_of(changed(text, (line, lines)))
        for part in model.parts:
            assert cut_in(turned, part.name) == cut_in(model, part.name)


def test_a_cleat_under_a_lid_takes_slotted_screws() -> None:
    text = """piece Box
overall 600 wide, 400 deep, 220 high
timber pine
2 ends, front to back, on edge, 200 x 18, at left and right, up 0, box joint 20 into sides
2 sides, across, on edge, 200 x 18, at front and back, up 0
1 lid, flat, 20 thick, glued from 4, onto ends
2 cleats, front to back, flat, 300 x 40 x 18, set in 60 across, 50 front to back, at left and right
cleats under lid: slotted screws
glue up box: ends, sides
"""
    model = model_of(text)
    assert {joint.guest for joint in model.joints if joint.kind == "slotted screws"} == {"lid"}
    # The hole at the middle of the lid is round (TRADE B22), and the lid itself is not cut.
    roles = [role for role, *_ in cut_in(model, "cleat")]
    assert sorted(map(str, roles)) == ["screw hole", "screw slot", "screw slot"]
    assert not model.part("lid").features


def test_a_top_of_several_parts_is_laid_on_once() -> None:
    # Board ends lie on the legs, the panel between them on plates: the whole top goes on in one.
    text = """piece Side table
overall 900 wide, 420 deep, 500 high
timber ash
4 legs, upright, 45 x 45, at corners, set in 30
2 aprons, across, 80 x 20, tenon 25 into legs, set back 2
2 end aprons, front to back, 80 x 20, tenon 25 into legs, set back 2
1 top, as plank top, 900 wide, 420 deep, 22 high, onto legs
top's panel onto end aprons: 4 figure-8 plates
glue up 2 sides: 2 legs, 1 end apron
glue up base: sides, aprons
"""
    assert played(text).faults() == ()
