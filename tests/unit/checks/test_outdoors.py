"""What does not last outdoors, a line for each kind; glues and hands that the shop lacks."""

from tests.pieces.reading import changed, checked, model_of, text_of

from dryfit.diagnostics import Severity

BENCH = changed(text_of("boot_bench"), ("timber ash", "timber oak\noutdoors"))
NAMED = changed(
    BENCH,
    ("end frames, aprons, cure 60 min", "end frames, aprons, with polyurethane"),
    (
        "1 top end rail, 1 bottom end rail, cure 60 min",
        "1 top end rail, 1 bottom end rail, with epoxy",
    ),
)


def outdoor_findings(text: str) -> dict[str, str]:
    """The messages of what this module finds, by code."""
    return {
        each.code: each.message for each in checked(text).findings if each.code.endswith("outdoors")
    }


def screws(text: str) -> set[str]:
    """What kinds of screws the piece takes."""
    return {row.item for row in model_of(text).hardware if "screw" in row.item}


def test_each_kind_of_thing_is_told_once() -> None:
    found = outdoor_findings(BENCH)
    assert found["glue-not-for-outdoors"] == (
        "glue up end frame and base: white glue does not last outdoors"
    )
    assert "stains oak black" in found["screws-outdoors"]


def test_indoors_nothing_is_said() -> None:
    assert outdoor_findings(text_of("boot_bench")) == {}


def test_glues_that_last_are_no_finding() -> None:
    assert "glue-not-for-outdoors" not in outdoor_findings(NAMED)


def test_screws_are_bought_in_stainless_steel() -> None:
    assert screws(NAMED) == {"stainless wood screw"}
    assert screws(text_of("boot_bench")) == {"wood screw"}


def test_a_glue_that_the_shop_has_not_is_an_error_with_those_it_has() -> None:
    text = changed(text_of("boot_bench"), ("aprons, cure 60 min", "aprons, with casein"))
    found = next(each for each in checked(text).findings if each.code == "glue-unknown")
    assert found.severity is Severity.ERROR
    assert "polyurethane glue" in found.hints[0].message


def test_more_hands_than_the_shop_has_are_a_notice() -> None:
    text = changed(text_of("boot_bench"), ("aprons, cure 60 min", "aprons, two people"))
    found = [each for each in checked(text).findings if each.code == "helper-needed"]
    assert [each.severity for each in found] == [Severity.NOTICE]


def test_glue_is_bought_by_the_glue_up_that_takes_it() -> None:
    text = changed(text_of("boot_bench"), ("aprons, cure 60 min", "aprons, with epoxy"))
    glues = [row.item for row in model_of(text).hardware if row.purpose == "the glue-ups"]
    assert sorted(glues) == ["epoxy", "white glue"]


STAND = """piece Stand
overall 640 wide, 300 deep, 400 high
timber larch
outdoors
1 frame, as lapped frame, 640 wide, 300 deep, 26 high, bar 44, down 0
4 posts, upright, 40 x 40, under frame, at corners
2 side rails, front to back, on edge, 60 x 20, tenon 18 long 8 thick 30 wide into posts, up 200
2 long rails, across, on edge, 60 x 20, tenon 18 long 8 thick 30 wide into posts, up 100
posts under frame: screws
glue up stand: posts, side rails, long rails{glue}
"""


def test_a_frame_of_a_pattern_is_glued_like_the_rest() -> None:
    model = model_of(STAND.format(glue=", with epoxy"))
    assert {each.glue for each in model.assemblies} == {"epoxy"}
    assert any("takes epoxy" in each.text for each in model.assumptions)


def test_where_no_line_names_a_glue_a_pattern_outdoors_takes_one_that_lasts() -> None:
    model = model_of(STAND.format(glue=""))
    inside = {each.glue for each in model.assemblies if " > " in each.name}
    assert inside == {"polyurethane glue"}
    assert outdoor_findings(STAND.format(glue=""))["glue-not-for-outdoors"].startswith(
        "glue up stand: white glue"
    )
