"""Rules between operations: the illegal orders of TRADE I1, and a plain reason for each."""

import networkx as nx
import pytest
from tests.unit.operations.worked import boot_bench, listed, operation, piece, rule

JARGON = ("axis", "xslot", "endlap", "lslot", "dominance", "precedence", "operation", "token")


def comes_before(before: str, after: str) -> bool:
    graph: nx.DiGraph[str] = nx.DiGraph()
    graph.add_edges_from((row.before, row.after) for row in boot_bench().rules)
    return nx.has_path(graph, before, after)


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ("apron / tenon cheeks", "apron / tenon shoulders / upper"),  # 30 before 28
        ("post / length", "post / end lap"),  # 26 before 20 to 22
        ("bottom end rail / length", "bottom end rail / end lap"),
        ("apron / length", "apron / tenon cheeks"),
        ("base / glue up", "slat / length"),  # 40 before 37
        ("base / coat 2", "slat / fit"),  # 44 before 43
        ("top / flatten", "top / width"),  # 38 and 39 must follow 35
        ("post / mortise for apron / hand A", "apron / tenon cheeks"),
        ("apron / groove / 2", "apron / length"),
        ("top end rail / width", "post / end lap"),
        ("post / thickness", "bottom end rail / end lap"),
        ("post / lay out", "post / mortise for apron / hand B"),
        ("base / dry fit", "end frame 1 / glue up"),
        ("end frame 2 / sand inside 180", "end frame 2 / glue up"),
        ("end frame 1 / level", "base / glue up"),
        ("button / make", "top / fit"),
        ("apron / groove / 1", "button / make"),
        ("slat / fit", "top / fit"),
        ("slat / screw holes", "slat / coat 1"),
        ("bottom end rail / pilot holes", "end frame 1 / glue up"),
    ],
)
def test_what_has_to_come_before_what(before: str, after: str) -> None:
    assert comes_before(before, after)
    assert not comes_before(after, before)


@pytest.mark.parametrize(
    ("before", "after", "lag"),
    [
        ("base / glue up", "base length / measure", 600),  # out of clamps: 37 + 60
        ("end frame 1 / glue up", "base / glue up", 600),  # next stage
        ("end frame 1 / glue up", "end frame 1 / level", 7200),  # 34 + 720
        ("base / glue up", "base / sand 120", 7200),  # 37 + 720
        ("top / glue up", "top / flatten", 14400),  # 14 + 1440
        ("base / glue up", "base / coat 1", 14400),  # 37 + 1440
        ("base / coat 1", "base / coat 2", 14400),  # 42 + 1440
        ("base / coat 2", "slat / fit", 14400),  # 43 + 1440
    ],
)
def test_waits_are_different_for_different_ends(before: str, after: str, lag: int) -> None:
    assert rule(boot_bench(), before, after).lag == lag


def test_layout_comes_after_length_and_before_every_joint_cut() -> None:
    assert rule(boot_bench(), "post / length", "post / lay out").lag == 0
    for op in boot_bench().operations:
        if op.part == "post" and op.kind in {"lap", "mortise"}:
            assert rule(boot_bench(), "post / lay out", op.id)


def test_every_rule_says_why_in_words_of_the_bench() -> None:
    for row in boot_bench().rules:
        assert len(row.reason.split()) >= 4, row
        assert not any(word in row.reason.lower() for word in JARGON), row


def test_a_part_that_waits_for_a_measurement_is_grooved_before_it_is_cut_to_length() -> None:
    line = "groove in aprons: inside"
    both = f"groove in slats: outside, 4 wide, 4 deep, 8 from front, through\n{line}"
    work, _ = listed(piece("boot_bench", (line, both)))
    groove = next(op for op in work.operations if op.id.startswith("slat / groove"))
    assert rule(work, groove.id, "slat / length")
    assert rule(work, "slat / width", groove.id)


def test_ids_are_unique_and_hold_no_sizes() -> None:
    names = [op.id for op in boot_bench().operations]
    assert len(set(names)) == len(names)
    for op in boot_bench().operations:
        if op.kind not in {"sand", "coat"}:
            words = op.id.replace("end frame 1", "").replace("end frame 2", "").split()
            assert not any(len(word) > 1 and word.isdigit() for word in words), op.id


def test_the_same_text_gives_the_same_work_list() -> None:
    assert listed(piece())[0] == boot_bench()
    assert operation(boot_bench(), "post / width").cautions
