"""Who gets which finish: parts before glue-ups before the rest; surfaces; what stays bare."""

from fractions import Fraction

from tests.pieces.reading import changed, checked, codes, errors, model_of, text_of

from dryfit.placing.model import Coating, Model

BENCH = text_of("boot_bench")
FINISH = "finish oil varnish, 2 coats, 24 h apart\n"
TOP = 1000 * 360
"""The broad face of the bench's top in mm2; its whole surface is twice that and its edges."""


def with_finish(*lines: str) -> Model:
    return model_of(changed(BENCH, (FINISH, "\n".join((*lines, "")))))


def coating(model: Model, subject: str, surfaces: str = "") -> Coating:
    found = [c for c in model.coatings if (c.subject, c.surfaces) == (subject, surfaces)]
    assert len(found) == 1, [(c.subject, c.surfaces) for c in model.coatings]
    return found[0]


def products(coated: Coating) -> list[str]:
    return [words.product for words in coated.products]


def test_what_no_line_names_gets_the_bare_finish_and_the_list_says_so() -> None:
    model = with_finish("finish base with milk paint, 2 coats, 2 h apart", FINISH.strip())
    assert products(coating(model, "base")) == ["milk paint"]
    assert products(coating(model, "top")) == ["oil varnish"]
    texts = [assumption.text for assumption in model.assumptions]
    assert "oil varnish goes on what no other line names: top, slat" in texts


def test_products_go_on_in_turn() -> None:
    line = "finish base with primer 1 coat then milk paint 2 coats, 2 h apart"
    base = coating(with_finish(line), "base")
    assert [(each.product, each.coats) for each in base.products] == [
        ("primer", 1),
        ("milk paint", 2),
    ]


def test_a_part_named_alone_is_not_coated_with_its_glue_up() -> None:
    model = with_finish(
        "finish base with milk paint, 2 coats, 2 h apart",
        "finish aprons with shellac, 2 coats, 1 h apart",
    )
    assert set(coating(model, "apron").copies) == {"front apron", "back apron"}
    assert not {"front apron", "back apron"} & set(coating(model, "base").copies)


def test_what_is_said_to_stay_bare_gets_nothing() -> None:
    model = with_finish(FINISH.strip(), "no finish on slats")
    assert [each.subject for each in model.coatings] == ["base", "top"]


def test_a_surface_with_its_own_finish_is_left_out_of_the_rest() -> None:
    model = with_finish(FINISH.strip(), "finish bottom of top with shellac, 1 coat, 1 h apart")
    under, rest = coating(model, "top", "the bottom"), coating(model, "top")
    assert under.area == TOP
    assert rest.area == TOP + 2 * 20 * (1000 + 360)
    assert rest.spared == ("the bottom",)


def test_masked_parts_are_told_with_the_coats() -> None:
    model = with_finish(FINISH.strip(), "mask top edge of aprons")
    assert coating(model, "base").spared == ("the top edge of the apron",)


def test_one_finish_for_all_needs_no_list() -> None:
    assert not any("goes on what" in each.text for each in model_of(BENCH).assumptions)


def test_two_finishes_for_one_thing_are_refused() -> None:
    found = checked(changed(BENCH, (FINISH, FINISH + "finish shellac, 2 coats, 1 h apart\n")))
    assert [each.code for each in errors(found)] == ["finish-twice"]
    line = "finish top with shellac, 2 coats, 1 h apart\n"
    assert "finish-twice" in codes(checked(changed(BENCH, (FINISH, FINISH + line + line))))


def test_the_area_of_all_coatings_is_that_of_all_parts() -> None:
    model = with_finish(FINISH.strip(), "finish bottom of top with shellac, 1 coat, 1 h apart")
    whole = sum(
        (
            2
            * (p.length * p.width + p.length * p.thickness + p.width * p.thickness)
            * len(p.copies)
            for p in model.parts
            if not p.made
        ),
        Fraction(0),
    )
    assert sum((each.area for each in model.coatings), Fraction(0)) == whole


def test_the_seats_of_legs_are_masked_on_what_sits_on_them() -> None:
    model = model_of(f"{text_of('step_stool')}mask leg seats\n")
    assert coating(model, "seat").spared == ("where the legs sit",)
    assert coating(model, "base").spared == ()


def test_a_tenon_that_floats_in_a_glued_frame_is_not_taped() -> None:
    case = coating(model_of(text_of("letter_case")), "case")
    assert case.spared == ("the top face of the runners",)


def test_what_a_pattern_has_once_is_named_as_several_when_it_is_used_twice() -> None:
    model = model_of(text_of("tray_chest"))
    assert model.part("tray > tray bottom").written == "tray bottoms"
    assert model.part("tray > tray side").written == "tray sides"
