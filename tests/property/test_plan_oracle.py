"""Plans judged by an oracle that knows nothing of how they are made, and damages that it finds."""

import copy
from collections.abc import Callable, Iterator
from functools import cache

import pytest
from hypothesis import Phase, given, settings
from hypothesis import strategies as st
from tests.pieces.reading import FILES, changed, text_of
from tests.property.plan_oracle import faults
from tests.property.plan_oracle.documents import documents, shop_tables
from tests.property.plan_oracle.reading import Json, length

UNSHRUNK = (Phase.explicit, Phase.reuse, Phase.generate)
"""A plan takes long enough that shrinking a failure would take minutes; any sizes show it."""


@cache
def planned(name: str) -> tuple[Json, Json]:
    """The steps and parts documents of a piece."""
    found, errors = documents(text_of(name))
    assert found is not None, errors
    return found


def judged(text: str) -> list[str]:
    """The faults of the plan for these notes; none where they cannot be built and say why."""
    found, errors = documents(text)
    if found is None:
        assert errors
        return []
    return faults(*found, shop_tables())


@pytest.mark.parametrize("name", sorted(FILES))
def test_every_piece_is_cut_right_and_in_order(name: str) -> None:
    assert faults(*planned(name), shop_tables()) == []


def sizes(low: int, high: int) -> st.SearchStrategy[str]:
    """Sizes in half millimetres, as the notes write them."""
    return st.integers(2 * low, 2 * high).map(lambda half: f"{half / 2:g}")


@settings(max_examples=12, phases=UNSHRUNK)
@given(sizes(700, 1400), sizes(320, 420), sizes(40, 55), sizes(38, 52), sizes(26, 34), sizes(8, 12))
def test_boot_benches_of_any_size_are_cut_right(
    wide: str, deep: str, post: str, rail: str, thick: str, back: str
) -> None:
    text = changed(
        text_of("boot_bench"),
        ("1000 wide, 360 deep", f"{wide} wide, {deep} deep"),
        ("facing side, 45 x 30", f"facing side, {post} x {thick}"),
        ("on edge, 45 x 30", f"on edge, {rail} x {thick}"),
        ("set back 6", f"set back {back}"),
    )
    assert judged(text) == []


@settings(max_examples=12, phases=UNSHRUNK)
@given(sizes(300, 700), sizes(250, 400), sizes(180, 400), sizes(36, 50), sizes(40, 60), sizes(2, 6))
def test_step_stools_of_any_size_are_cut_right(
    wide: str, deep: str, high: str, leg: str, rail: str, back: str
) -> None:
    text = changed(
        text_of("step_stool"),
        ("420 wide, 300 deep, 240 high", f"{wide} wide, {deep} deep, {high} high"),
        ("40 x 40", f"{leg} x {leg}"),
        ("55 x 20", f"{rail} x 20"),
        ("reveal = 2 ", f"reveal = {back} "),
    )
    assert judged(text) == []


def step_with(steps: Json, operation: str) -> Json:
    """The step in which an operation stands."""
    found: Json = next(
        step
        for step in steps["steps"]
        if any(row["operation"] == operation for row in step["work"])
    )
    return found


def rows_with(steps: Json, operation: str) -> Iterator[Json]:
    """The work rows of an operation."""
    for step in steps["steps"]:
        yield from (row for row in step["work"] if row["operation"] == operation)


LAPS, SLOTS = "post / end lap", "post / housing for bottom end rail"


def stop_moved(steps: Json) -> None:
    stop = step_with(steps, LAPS)["settings"]["stop"]
    stop["exact"], stop["far"]["exact"] = "26 mm", "46 mm"


def near_and_far_swapped(steps: Json) -> None:
    stop = step_with(steps, SLOTS)["settings"]["stop"]
    stop["exact"], stop["far"]["exact"] = stop["far"]["exact"], stop["exact"]


def spacer_reversed(steps: Json) -> None:
    """As if the spacer moved the cut away from the stop: set at the other limit."""
    stop = step_with(steps, SLOTS)["settings"]["stop"]
    stop["exact"], stop["far"]["exact"] = "80 mm", "100 mm"


def changed_axis_forgotten(steps: Json) -> None:
    step_with(steps, SLOTS)["changed"].remove("stop")


def edge_of_one_hand_swapped(steps: Json) -> None:
    row = next(iter(rows_with(steps, LAPS)))
    row["hold"]["against_fence"] = {"E": "E2", "E2": "E"}[row["hold"]["against_fence"]]


def other_end_at_the_stop(steps: Json) -> None:
    next(iter(rows_with(steps, SLOTS)))["hold"]["at_stop"] = "R2"


def cure_skipped(steps: Json) -> None:
    glued = step_with(steps, "end frame 2 / glue up")
    base = step_with(steps, "base / glue up")
    base["starts"]["minute"] = glued["ends"]["minute"] + 30
    base["waits_for"] = []


def clamps_used_twice(steps: Json) -> None:
    first = step_with(steps, "end frame 1 / glue up")
    step_with(steps, "end frame 2 / glue up")["ends"] = first["ends"]


def sled_forgotten(steps: Json) -> None:
    for step in steps["steps"]:
        height = step["settings"].get("height")
        if height and height["exact"] == "27 mm":
            height["exact"] = "15 mm"


def pass_left_out(steps: Json) -> None:
    for row in rows_with(steps, SLOTS):
        del row["passes"][2]


def cut_twice(steps: Json) -> None:
    rows = step_with(steps, SLOTS)["work"]
    rows.append(copy.deepcopy(rows[0]))


def coat_before_sanding(steps: Json) -> None:
    coat, sand = step_with(steps, "top / coat 1"), step_with(steps, "top / sand 180")
    steps["steps"].remove(coat)
    steps["steps"].insert(steps["steps"].index(sand), coat)


def mortise_after_its_tenon(steps: Json) -> None:
    mortise = step_with(steps, "post / mortise for apron / hand B")
    cheeks = step_with(steps, "apron / tenon cheeks")
    steps["steps"].remove(mortise)
    steps["steps"].insert(steps["steps"].index(cheeks) + 1, mortise)


def total_wrong(steps: Json) -> None:
    steps["totals"]["changeovers"] += 1


DAMAGES: dict[Callable[[Json], None], str] = {
    stop_moved: "takes too much",
    near_and_far_swapped: "are not far",
    spacer_reversed: "takes too much",
    changed_axis_forgotten: "stop stands at",
    edge_of_one_hand_swapped: "cannot lie so",
    other_end_at_the_stop: "takes too much",
    cure_skipped: "comes too soon",
    clamps_used_twice: "are in use",
    sled_forgotten: "is left uncut",
    pass_left_out: "an island is left",
    cut_twice: "is cut twice",
    coat_before_sanding: "before sand 180",
    mortise_after_its_tenon: "a tenon is cut before its mortise",
    total_wrong: "changeovers is",
}


@pytest.mark.parametrize("damage", DAMAGES, ids=lambda damage: damage.__name__)
def test_the_oracle_finds_a_damage(damage: Callable[[Json], None]) -> None:
    steps, parts = copy.deepcopy(planned("boot_bench"))
    damage(steps)
    found = faults(steps, parts, shop_tables())
    assert any(DAMAGES[damage] in fault for fault in found), found


def without_features(operation: str) -> Callable[[Json], None]:
    """The damage that leaves the first cut of an operation out."""

    def damage(steps: Json) -> None:
        row = next(rows_with(steps, operation))
        row["features"] = row["features"][1:]

    return damage


def moved(axis: str, operation: str, by: int = 3) -> Callable[[Json], None]:
    """The damage that sets an axis beside its place, both faces of the cutter alike."""

    def damage(steps: Json) -> None:
        setting = step_with(steps, operation)["settings"][axis]
        for face in (setting, setting.get("far")):
            if face is not None:
                face["exact"] = f"{length(face) + by} mm"

    return damage


def leaning(operation: str, degrees: int) -> Callable[[Json], None]:
    """The damage that tilts the blade, or turns the saw, to another angle."""

    def damage(steps: Json) -> None:
        settings = step_with(steps, operation)["settings"]
        settings["angle" if settings.get("angle") else "tilt"]["exact"] = f"{degrees} deg"

    return damage


def without_passes(operation: str) -> Callable[[Json], None]:
    """The damage that makes no pass."""

    def damage(steps: Json) -> None:
        next(rows_with(steps, operation))["passes"] = []

    return damage


def before(operation: str, other: str) -> Callable[[Json], None]:
    """The damage that does one operation before another."""

    def damage(steps: Json) -> None:
        late, early = step_with(steps, operation), step_with(steps, other)
        rows = [row for row in late["work"] if row["operation"] == operation]
        late["work"] = [row for row in late["work"] if row["operation"] != operation]
        early["work"][0:0] = rows

    return damage


OF_FAMILIES: tuple[tuple[str, Callable[[Json], None], str], ...] = (
    ("mitred_frame", leaning("stile / mitre", 44), "is sawn at"),
    ("mitred_frame", moved("stop", "stile / mitre"), "from the stop"),
    ("mitred_frame", without_features("stile / mitre"), "is left uncut"),
    ("mitred_box", leaning("long board / mitre", 44), "is sawn at"),
    ("mitred_box", moved("height", "long board / mitre", -10), "does not rise through"),
    ("mitred_box", moved("stop", "long board / mitre"), "from the stop"),
    ("finger_box", moved("stop", "side / finger sockets"), "over the pin"),
    ("finger_box", moved("height", "end / finger sockets"), "takes too much"),
    ("finger_box", leaning("end / finger sockets", 5), "with the blade at"),
    ("finger_box", without_features("end / finger sockets"), "passes for"),
    ("dovetailed_chest", without_features("side / tails"), "is left uncut"),
    ("dovetailed_chest", without_features("wall / pins"), "is left uncut"),
    ("dovetailed_chest", before("wall / pins", "side / tails"), "that it is fitted to"),
    ("bridled_frame", moved("fence", "stile / open mortise for rail / 1"), "is left uncut"),
    ("bridled_frame", moved("height", "stile / open mortise for rail / 1"), "takes too much"),
    ("railed_bench", moved("stop", "leg / mortise for rail", -2), "takes too much"),
    ("stretchered_bench", moved("stop", "leg / tenon holes", -2), "is drilled at"),
    ("bridled_frame", leaning("stile / open mortise for rail / 1", 5), "with the blade at"),
    ("bridled_frame", without_passes("stile / open mortise for rail / 1"), "no pass is made"),
    (
        "bridled_frame",
        before("rail / tenon cheeks", "stile / open mortise for rail / 1"),
        "that it is fitted to",
    ),
    ("rabbeted_box", moved("stop", "side / rabbet for bottom"), "do not clear"),
    ("rabbeted_box", moved("height", "side / rabbet for bottom"), "takes too much"),
    ("rabbeted_box", without_features("side / rabbet for bottom"), "is left uncut"),
    ("clipped_top", moved("fence", "long apron / groove"), "takes too much"),
    ("clipped_top", moved("height", "long apron / groove"), "takes too much"),
    ("clipped_top", without_features("long apron / groove"), "is left uncut"),
)
"""Pieces by family, what is damaged in their plans, and what the oracle says of it."""


@pytest.mark.parametrize(("name", "damage", "told"), OF_FAMILIES)
def test_the_oracle_finds_a_damage_to_each_family(
    name: str, damage: Callable[[Json], None], told: str
) -> None:
    steps, parts = copy.deepcopy(planned(name))
    damage(steps)
    found = faults(steps, parts, shop_tables())
    assert any(told in fault for fault in found), found
