"""How parts meet: prepositions, joints, their details, and where glue goes."""

from __future__ import annotations

from dataclasses import dataclass, field

from dryfit.diagnostics import Span
from dryfit.notes.tree.references import Offset, Reference, SizeWord, StageName
from dryfit.notes.tree.sums import Sum


@dataclass(frozen=True, slots=True)
class JointDetail:
    """What is said of a joint beyond its sizes.

    `kind`: haunch, through, wedges, pegs, proud, shoulder (``shoulder 5 below``), offset (``offset
    2 to front``), keys or shows (``rails show``: `part` keeps its face unbroken).  `place` is a
    place word, ``corner`` for keys, or None.
    """

    kind: str
    count: int | None
    sizes: tuple[SizeWord, ...]
    place: str | None
    part: Reference | None
    span: Span


@dataclass(frozen=True, slots=True)
class GlueWords:
    """Where glue goes, or what is there instead.

    `kind`: middle (``glue the middle 60``), place (``glue front 75``), one edge, edge (``glue the
    front edge``), dry, pinned (``pinned at the middle``), knock-down or bolted.
    """

    kind: str
    amount: Sum | None
    place: str | None
    span: Span


@dataclass(frozen=True, slots=True)
class JointSpec:
    """``tenon 20 long 8 thick 40 wide, 5 from bottom`` / ``6 buttons`` / ``half lap``.

    `kind` is one of: half lap, tenon, housing, groove, screws, buttons, glue (an edge or butt
    joint that is only glued).  `sizes` with dimension None are in the order of the trade word
    (the first bare number of a tenon is its length, of a housing or groove its depth).  `head` is
    the place of the joint's own word and the sizes behind it, where a further size can stand.
    """

    kind: str
    count: int | None
    sizes: tuple[SizeWord, ...]
    place: Offset | None
    span: Span
    details: tuple[JointDetail, ...] = ()
    glue: tuple[GlueWords, ...] = ()
    after: StageName | None = None
    head: Span | None = field(default=None, compare=False)


@dataclass(frozen=True, slots=True)
class Join:
    """``tenon 20 into legs``, ``onto bottom end rails``, ``on the back of stiles``.

    `preposition`: into, onto, under, between, inside, crossing, on face, against, in (an opening).
    `edge` is a word such as ``ends`` or ``back edge`` that was named as the entering side, or
    None.  `face` is the host's face of ``on face``: inside, outside, front, back, left, right;
    ``behind`` and ``in front of`` are its back and front.  `glue` is said without a joint's name
    (``slats onto rails: glue the middle 60``).  `fastened` are the screws that hold a rabbet joint
    besides, where a joint's own line names them.
    """

    preposition: str
    hosts: tuple[Reference, ...]
    spec: JointSpec | None
    span: Span
    edge: str | None = None
    face: str | None = None
    glue: tuple[GlueWords, ...] = ()
    fastened: JointSpec | None = None

    @property
    def rabbeted(self) -> bool:
        """Whether its joint is a rabbet, which screws may hold besides: ``rabbet 12, screws``."""
        return self.spec is not None and self.spec.kind == "rabbet"
