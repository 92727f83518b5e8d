"""How parts meet, as declared."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.diagnostics import Span
from dryfit.piece.declared.amounts import NOTHING_BEHIND, Behind, PlacedAmount
from dryfit.piece.declared.hosts import Host


@dataclass(frozen=True, slots=True)
class GluePatch:
    """Where glue goes in a joint, or what is there instead: see `notes.tree.GlueWords`."""

    kind: str
    amount: Fraction | None
    place: str | None
    span: Span


@dataclass(frozen=True, slots=True)
class Detail:
    """What is said of a joint beyond its sizes: see `notes.tree.JointDetail`; sizes in mm."""

    kind: str
    count: int | None
    sizes: tuple[tuple[str, Fraction], ...]
    place: str | None
    part: Host | None
    span: Span


@dataclass(frozen=True, slots=True)
class JointWords:
    """A joint as declared: kind, count, its sizes by dimension, and where it sits.

    `behind` holds what all its sums refer to; `head` is the place of its name and the sizes there.
    """

    kind: str
    count: int | None
    length: Fraction | None
    width: Fraction | None
    thickness: Fraction | None
    depth: Fraction | None
    place: PlacedAmount | None
    span: Span
    head: Span
    behind: Behind = NOTHING_BEHIND
    details: tuple[Detail, ...] = ()


@dataclass(frozen=True, slots=True)
class Contact:
    """``into legs``, ``onto rails``, ``crossing rails``...: how a part meets its hosts.

    `guest` is the part whose line or sentence it is; `own_line` tells a phrase of the part's own
    line from a separate joint line.  `edge`, `face` and the preposition are those of
    `notes.tree.Join`; `after` names the glue-up after which the joint is cut.  `inner`
    tells what stands inside an instance of a pattern, and holds within each of its copies.
    """

    guest: Host
    preposition: str
    hosts: tuple[Host, ...]
    joint: JointWords | None
    own_line: bool
    span: Span
    edge: str | None = None
    face: str | None = None
    glue: tuple[GluePatch, ...] = ()
    after: str | None = None
    inner: bool = False

    @property
    def in_rabbets(self) -> bool:
        """Whether a panel lies in rabbets round it: ``inside sides and top, rabbet 6``."""
        named = self.joint is not None and self.joint.kind == "rabbet"
        return named and self.preposition == "inside"


@dataclass(frozen=True, slots=True)
class Opening:
    """``bay = opening between posts and top rail and bottom rail``."""

    name: str
    written: str
    between: tuple[Host, ...]
    name_span: Span
    span: Span
