"""Ids of cuts: words of the notes, and no more qualifiers than needed (CONTRACTS)."""

from dataclasses import replace

from tests.unit.operations.worked import boot_bench, listed, piece


def names(part: str) -> set[str]:
    kinds = {"lap", "mortise", "groove", "tenon cheek", "tenon shoulder", "hole"}
    return {op.id for op in boot_bench().operations if op.part == part and op.kind in kinds}


def test_cuts_of_the_boot_bench() -> None:
    assert names("post") == {
        "post / end lap",
        "post / housing for bottom end rail",
        "post / mortise for apron / hand A",
        "post / mortise for apron / hand B",
    }
    assert names("apron") == {
        "apron / groove / 1",
        "apron / groove / 2",
        "apron / tenon cheeks",
        "apron / tenon shoulders / lower",
        "apron / tenon shoulders / upper",
    }


def test_an_id_survives_a_changed_number() -> None:
    work, _ = listed(piece("boot_bench", ("up 80", "up 95"), ("6 wide, 9 deep", "5 wide, 8 deep")))
    assert [op.id for op in work.operations] == [op.id for op in boot_bench().operations]


def test_end_laps_of_two_lengths_are_told_apart_by_their_ends() -> None:
    model = piece()
    rail = model.part("top end rail")
    features = tuple(
        replace(feature, along=(feature.along[0], feature.along[1] - 5))
        if feature.id == "end lap at R"
        else feature
        for feature in rail.features
    )
    parts = tuple(
        replace(part, features=features) if part is rail else part for part in model.parts
    )
    work, _ = listed(replace(model, parts=parts))
    laps = {op.id for op in work.operations if op.part == "top end rail" and op.kind == "lap"}
    assert laps == {"top end rail / end lap / at R", "top end rail / end lap / at R2"}
