"""The table of the families of joints holds every family that a line can name."""

from dryfit.kinds.joints import joint_kind, joint_kinds, kind_written
from dryfit.notes.reading.words_of_joints import JOINTS
from dryfit.placing.families import BY_JOINT

# `glue` names no family of its own: what it makes is told by how the parts meet.
_NO_FAMILY = {"glue"}


def _named() -> set[str]:
    words = (
        kind
        for terminal, kinds in JOINTS
        if terminal in {"JOINT", "FASTENER"}
        for kind in kinds.values()
    )
    return {word.partition(",")[0] for word in words}


def test_every_joint_that_a_line_can_name_has_a_row() -> None:
    assert {word for word in _named() if kind_written(word) is None} == _NO_FAMILY
    assert set(BY_JOINT) - _NO_FAMILY <= {kind.written for kind in joint_kinds()}


def test_names_and_words_are_told_apart() -> None:
    names = [kind.name for kind in joint_kinds()]
    words = [kind.written for kind in joint_kinds() if kind.written is not None]
    assert len(set(names)) == len(names)
    assert len(set(words)) == len(words)
    assert joint_kind("mortise and tenon").written == "tenon"


def test_each_family_is_told_in_one_sentence() -> None:
    for kind in joint_kinds():
        head, colon, rest = kind.glossary.partition(": ")
        assert head[0].isupper(), kind.name
        assert colon, kind.name
        assert rest.endswith("."), kind.name
        assert ". " not in rest, kind.name
