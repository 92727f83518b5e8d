"""All families of joints: a row each in the module of its theme, and what rooms ask by name.

Proportions stand in `joinery`, the search for a family's joints in `placing/families`; here is what
the reader, the checks, the glue-ups and the booklet need to know of it (TRADE B, B25, B26).
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from dryfit.kinds.boards import BOARD_KINDS
from dryfit.kinds.butts import BUTT_KINDS
from dryfit.kinds.corners import CORNER_KINDS
from dryfit.kinds.fixings import FIXING_KINDS
from dryfit.kinds.kind import JointKind
from dryfit.kinds.members import MEMBER_KINDS
from dryfit.kinds.rests import REST_KINDS

JOINT_KINDS: tuple[JointKind, ...] = (
    *MEMBER_KINDS,
    *CORNER_KINDS,
    *BOARD_KINDS,
    *BUTT_KINDS,
    *FIXING_KINDS,
    *REST_KINDS,
)
"""In the order in which they are told."""

_BY_NAME = {kind.name: kind for kind in JOINT_KINDS}
_BY_WORD = {kind.written: kind for kind in JOINT_KINDS if kind.written is not None}


def joint_kind(name: str) -> JointKind:
    """Return the family of a joint of the placed piece."""
    return _BY_NAME[name]


def kind_written(word: str) -> JointKind | None:
    """Return the family that a line names by a word, or None for what is no family (`glue`)."""
    return _BY_WORD.get(word)


def is_lapped(name: str) -> bool:
    """Return whether parts lie in one another in joints of that name, as in a half lap."""
    kind = _BY_NAME.get(name)
    return kind is not None and kind.lapped


def is_clamped_over(name: str) -> bool:
    """Return whether a clamp stands over each such joint: laps, but no corner of fingers."""
    kind = _BY_NAME.get(name)
    return kind is not None and kind.lapped and not kind.corner


def overlaps_mate(name: str) -> bool:
    """Return whether each part runs to the far side of the other, as in laps and in mitres."""
    return is_lapped(name) or is_mitred(name)


RUNNERS = frozenset({"runner", "bottom runner"})
"""The kinds by which a drawer runs in its case."""


def is_mitred(name: str) -> bool:
    """Return whether two members share out a corner, as in a mitre; a line's word or a kind."""
    kind = _BY_NAME.get(name)
    return kind is not None and kind.mitred


def is_row_in_wood(word: str) -> bool:
    """Return whether a line that says so sets a row of loose pieces or screws into both parts."""
    kind = kind_written(word)
    return kind is not None and kind.rowed and not kind.hardware


def is_crossed(word: str) -> bool:
    """Return whether parts that a line joins so run past one another, whatever it says of ends.

    How far fingers and tails reach follows from the end that is said to go into the other.
    """
    kind = kind_written(word)
    return kind is not None and overlaps_mate(kind.name) and not kind.corner


def is_hardware(name: str) -> bool:
    """Return whether joints of that name hold by fittings without glue, as screws and hinges do."""
    kind = _BY_NAME.get(name)
    return kind is not None and kind.hardware


def is_panelled(name: str) -> bool:
    """Return whether the edge of a panel lies in joints of that name, as in a groove."""
    kind = _BY_NAME.get(name)
    return kind is not None and kind.panelled


def joint_kinds() -> Iterator[JointKind]:
    """Yield all families."""
    yield from JOINT_KINDS


def glossary_of(names: Iterable[str]) -> tuple[tuple[str, str], ...]:
    """Return the families of joints of these kinds, each once: its name, and what it is."""
    used = set(names)
    told = (kind.glossary.partition(": ") for kind in JOINT_KINDS if kind.name in used)
    return tuple((word, says[0].upper() + says[1:]) for word, _, says in told)


BESIDE = "beside"
"""The preposition between the copies of one part that are joined with one another."""


def is_beside(word: str) -> bool:
    """Return whether what a line names joins the copies of its own part with one another."""
    kind = kind_written(word)
    return kind is not None and kind.beside


def lets_move(name: str) -> bool:
    """Return whether joints of that name hold a solid top that still shrinks and swells."""
    kind = _BY_NAME.get(name)
    return kind is not None and kind.lets_move


def is_fastener(word: str) -> bool:
    """Return whether what a line names holds parts that lie on one another, as screws do."""
    kind = kind_written(word)
    return kind is not None and kind.fastener
