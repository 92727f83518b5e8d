"""`dryfit help joints`: every family of joints, what it is, and a line of notes that makes it."""

from __future__ import annotations

from dryfit.guide.page import INDENT, filled, section
from dryfit.kinds.joints import joint_kinds
from dryfit.kinds.kind import JointKind

_INTRODUCTION = (
    "What each joint is, and below it a line that makes it in the stool of `dryfit help language`. "
    "Sizes that are not written are the usual ones, and the check lists which it took."
)


def joints_text() -> str:
    """Return the list of families as plain text, ending in a newline."""
    rows = (_row(kind) for kind in joint_kinds())
    return "\n\n".join(("The joints of the notes", filled(_INTRODUCTION), *rows)) + "\n"


def _row(kind: JointKind) -> str:
    return section(filled(kind.glossary), f"{INDENT}{kind.example}")
