"""One operation: one feature cut, treatment, glue-up, measurement or fitting."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from dryfit.plan.sawing import BoardCut, SawnBoard
from dryfit.plan.setting import Hold, Pass, Setting

Detail = tuple[str | Fraction, ...]
"""A clause of words and exact lengths in mm: ``("the body stands ", 5/2, " off the apron")``.

Lengths of a detail are set or cut, so they are shown as settings are, always with their unit.
"""


@dataclass(frozen=True, slots=True)
class Work:
    """Which copies get which features, and how they are held; one entry a way of holding.

    Work by hand that leans is led by `slopes`: toward which surface, by how many mm per mm.
    """

    part: str
    copies: tuple[str, ...]
    features: tuple[str, ...]
    hold: Hold | None
    passes: tuple[Pass, ...]
    slopes: tuple[tuple[str, Fraction], ...] = ()


@dataclass(frozen=True, slots=True)
class ClampRow:
    """Clamps of one kind in a glue-up: what opening is needed, how many, where."""

    length: Fraction
    count: int
    at: str


@dataclass(frozen=True, slots=True)
class Lag:
    """Waiting after an operation: ``out of clamps`` after 600 tenths of a minute."""

    until: str
    tenths: int


@dataclass(frozen=True, slots=True)
class GlueUp:
    """What a glue-up page needs; times in tenths of a minute."""

    stage: str
    parts: tuple[str, ...]
    open_tenths: int
    closing_tenths: int
    limit_tenths: int
    glue: str
    clamps: tuple[ClampRow, ...]
    lags: tuple[Lag, ...]
    diagonals: tuple[tuple[str, float], ...]


@dataclass(frozen=True, slots=True)
class MeasurePoint:
    """A number to take from the piece; `sets` are the operations that wait for it.

    `formula` says where it is taken: ``along the bottom end rails, where the slats will lie``.
    `taken` is the figure in mm once the notes give it.
    """

    name: str
    formula: str
    nominal: Fraction
    sets: tuple[str, ...]
    taken: Fraction | None = None


@dataclass(frozen=True, slots=True)
class Held:
    """A counted resource in use: from the start until `lag` tenths after the end."""

    resource: str
    count: int
    lag: int


@dataclass(frozen=True, slots=True)
class Operation:
    """A cut or treatment on all copies that are done alike, at one station.

    `id` is made of names (CONTRACTS).  `kind` names the deed for wording and minutes (rough
    length, rip, face, edge, thickness, width, length, lap, ..., dry fit, glue up, sand, coat,
    measure, fit).  `part` is the subject part in whose block part by part performs it.  `work`
    are the copies and holds; `tenths` attended minutes of work in tenths; `after_tenths` unattended
    minutes that follow.  `tests` test cuts are due when `trial`'s setting is new.  `sentence` says
    what to do, without figures of settings; `details` what must be known beside it; `check` what
    proves it; `cautions` are keys of the caution table.  `rough` is length, width and thickness of
    each blank that is cut from a board; `board_cuts` are the cuts of boards that it
    does, where the boards are laid out, and `cut_lines` tell them, each to be ticked.  `hands` is
    how many people it takes from start to end.
    `between_strips` is whether strips as thick as the work go through the planer beside it, so long
    that they are bitten in its place.
    """

    id: str
    kind: str
    station: str
    part: str
    settings: tuple[Setting, ...]
    work: tuple[Work, ...]
    tenths: int
    sentence: str
    after_tenths: int = 0
    tests: int = 0
    trial: str | None = None
    together: str | None = None
    splittable: bool = True
    held: tuple[Held, ...] = ()
    check: str | None = None
    cautions: tuple[str, ...] = ()
    glue_up: GlueUp | None = None
    measure: MeasurePoint | None = None
    details: tuple[Detail, ...] = ()
    rough: tuple[Fraction, Fraction, Fraction] | None = None
    hands: int = 1
    board_cuts: tuple[BoardCut, ...] = ()
    cut_lines: tuple[Detail, ...] = ()
    between_strips: bool = False


def glues_of(operations: Iterable[Operation]) -> dict[str, str]:
    """Return the glue of each glue-up, by the name of what is glued up: an assembly or a part."""
    return {each.part: each.glue_up.glue for each in operations if each.glue_up is not None}


@dataclass(frozen=True, slots=True)
class Rule:
    """`before` must precede `after` by at least `lag` tenths of a minute; why, in words."""

    before: str
    after: str
    reason: str
    lag: int = 0


@dataclass(frozen=True, slots=True)
class Takes:
    """Tenths of a minute of set-up and of work that no order of a work list saves."""

    setup: int
    work: int

    @property
    def hands_on(self) -> int:
        """Return both together."""
        return self.setup + self.work


@dataclass(frozen=True, slots=True)
class Alternative:
    """A complete way to make a mating group: all its operations, and the rule that chose it.

    `weigh` says that the rule alone cannot tell whether another way would take longer: planning
    weighs it with all settings that the ways share with other work.  `takes` is then what the
    whole piece takes with this way.
    """

    group: str
    method: str
    operations: tuple[str, ...]
    chosen: bool
    reason: str
    weigh: bool = False
    takes: Takes | None = None


def ways_of(alternatives: Iterable[Alternative]) -> dict[str, str]:
    """Return the way that is taken of each mating group."""
    return {row.group: row.method for row in alternatives if row.chosen}


@dataclass(frozen=True, slots=True)
class WorkList:
    """All operations of the piece with the rules between them, made one way each.

    `boards` are those that the operations' cuts part; `lacking` are copies and staves for which
    there is no wood yet.
    """

    operations: tuple[Operation, ...]
    rules: tuple[Rule, ...]
    alternatives: tuple[Alternative, ...]
    boards: tuple[SawnBoard, ...] = ()
    lacking: tuple[str, ...] = ()
