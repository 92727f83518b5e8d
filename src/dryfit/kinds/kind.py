"""What a row of the table of joint families says."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True)
class JointKind:
    """A family of joints.

    `name` is the kind that joints of the placed piece carry, `written` the kind that a line of the
    notes names (None: no line names it so), `one` and `many` what the booklet calls them.  `sizes`
    are the dimensions that its line takes, bare numbers in this order; `same` are other words for
    them.  `counted` families take a number at one place, `rowed` ones are loose pieces in a row.
    `details` are the kinds of detail that a line may add.  `glued` families are glued unless the
    notes say otherwise; in those that `enter`, part of the guest stands in the host.  `lapped` ones
    lie in one another; of these the `corner` joints are fingers or tails that reach through each
    other.  In a `mitred` one two members share out a corner.  `spread` is the row of minutes that
    spreading its glue takes, `glue_noun` what is counted where glue goes (one, several), if not the
    name.  A `fastener` holds what lies on something; one that `lets_move` holds a solid top that
    still shrinks and swells.  `hardware` families hold by fittings in holes, recesses and slots,
    without glue; in a `panelled` one lies the edge of a panel.  Joints `beside` join the copies of
    one part with one another, and name no host.  `glossary` is one sentence for the maker,
    `example` a line of notes that makes it in the stool of `dryfit help language`.
    """

    name: str
    one: str
    many: str
    glossary: str
    example: str
    written: str | None = None
    sizes: tuple[str, ...] = ()
    same: Mapping[str, str] = field(default_factory=dict)
    counted: bool = False
    rowed: bool = False
    cut: bool = True
    details: frozenset[str] = frozenset()
    glued: bool = False
    enters: bool = False
    lapped: bool = False
    mitred: bool = False
    fastener: bool = False
    lets_move: bool = False
    hardware: bool = False
    panelled: bool = False
    beside: bool = False
    corner: bool = False
    spread: str = "spread housing"
    glue_noun: tuple[str, str] | None = None
