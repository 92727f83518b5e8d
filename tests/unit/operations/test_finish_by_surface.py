"""Coats of several products and of single surfaces: their order, names and sentences."""

from tests.pieces.reading import changed, checked, model_of, model_of_piece, text_of
from tests.unit.operations.worked import listed

from dryfit.operations import work_list
from dryfit.plan.operation import WorkList

BENCH = text_of("boot_bench")
FINISH = "finish oil varnish, 2 coats, 24 h apart\n"


def work(*lines: str) -> WorkList:
    text = changed(BENCH, (FINISH, "\n".join((*lines, ""))))
    shop = checked(text).shop
    assert shop is not None
    made, findings = work_list(model_of(text), shop)
    assert made is not None, findings
    return made


def coats(made: WorkList, subject: str) -> list[tuple[str, str]]:
    return [
        (operation.id, str(operation.settings[0].value))
        for operation in made.operations
        if operation.kind == "coat" and operation.part == subject
    ]


def test_the_coats_of_a_sequence_are_counted_on_and_wait_for_one_another() -> None:
    made = work("finish base with primer 1 coat, 4 h apart then milk paint 2 coats, 2 h apart")
    ids = [name for name, _ in coats(made, "base")]
    assert ids == ["base / coat 1", "base / coat 2", "base / coat 3"]
    lags = {(rule.before, rule.after): rule.lag for rule in made.rules}
    assert lags["base / coat 1", "base / coat 2"] == 4 * 600
    assert lags["base / coat 2", "base / coat 3"] == 2 * 600


def test_a_surface_is_part_of_the_name_and_of_the_sentence() -> None:
    made = work(
        "finish bottom of top with shellac, 1 coat, 1 h apart", FINISH.strip(), "no finish on slats"
    )
    by_id = {operation.id: operation for operation in made.operations}
    assert "the bottom of the top" in by_id["top / coat 1 / bottom"].sentence
    assert by_id["top / coat 1"].sentence.endswith("on the top; tape off the bottom")
    assert not [each for each in by_id if each.startswith("slat / coat")]
    assert "slat / sand 180" in by_id


def test_every_coat_waits_for_the_last_sanding_of_what_it_covers() -> None:
    made = work("finish aprons with shellac, 2 coats, 1 h apart", FINISH.strip())
    before = {rule.before for rule in made.rules if rule.after == "apron / coat 1"}
    assert "apron / ease edges" in before
    glued = {rule.before for rule in made.rules if rule.after == "base / coat 1"}
    assert "base / glue up" in glued


def test_a_part_coated_apart_from_its_glue_up_is_kept_off() -> None:
    made = work(
        "finish base with milk paint, 2 coats, 2 h apart",
        "finish aprons with shellac, 2 coats, 1 h apart",
    )
    sentence = next(op.sentence for op in made.operations if op.id == "base / coat 1")
    assert sentence.endswith("; keep it off the aprons")


def test_what_is_taped_off_in_an_assembly_is_named_with_its_part() -> None:
    made, _ = listed(model_of_piece("wall_case"))
    sentence = next(op.sentence for op in made.operations if op.id == "case / coat 1")
    assert sentence.endswith("on the case; keep it off the back; tape off the inside of the sides")


def test_tenons_that_stay_dry_get_no_coat() -> None:
    made, _ = listed(model_of_piece("trestle"))
    by_id = {op.id: op.sentence for op in made.operations}
    assert by_id["beam / coat 1"].endswith("on the beam; tape off the tenons")
    assert by_id["trestle 1 / coat 1"].endswith("; tape off the mortises for the beam")
