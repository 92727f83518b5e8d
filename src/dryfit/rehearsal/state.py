"""What stands where while the plan is played: blanks, marks, what is glued, what has been tried."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction

from dryfit.geometry.box import Box
from dryfit.geometry.frame import SURFACES
from dryfit.rehearsal.at_machines.cutters import Toolbox
from dryfit.rehearsal.at_machines.standing import Standing
from dryfit.rehearsal.blank import Blank, Sizes
from dryfit.rehearsal.fault import Fault, Reason, Trouble
from dryfit.rehearsal.goal import Goal, Mark, WantedCopy, WantedLip, WantedPart, WantedStrip
from dryfit.rehearsal.horns import with_horns
from dryfit.rehearsal.members import members_of
from dryfit.rehearsal.sawing.boards import Boards
from dryfit.rehearsal.zones import Zone, open_zones
from dryfit.shop.shop import Shop


@dataclass(slots=True)
class Place:
    """Where in the plan something happens: the number of the step, the id of the operation."""

    step: int
    operation: str


@dataclass(frozen=True, slots=True)
class CutAt:
    """A cut for a joint: on which copy, at which height of which machine, and its how manieth.

    A height that is found again is not the height that never moved: `turn` tells them apart.
    `axis` of the piece is that along which the cut is as deep as the height says.
    """

    joint: str
    copy: str
    station: str
    height: Fraction
    axis: int
    turn: int
    step: int
    operation: str


@dataclass(slots=True)
class State:
    """The shop and the wood as the steps so far have left them."""

    goal: Goal
    shop: Shop
    tools: Toolbox
    standing: Standing
    copies: dict[str, WantedCopy]
    part_of: dict[str, WantedPart]
    zones: dict[str, tuple[Zone, ...]]
    members: dict[str, tuple[str, ...]]
    """The copies in each assembly, those of the assemblies inside it among them."""
    boards: Boards = field(default_factory=Boards)
    blanks: dict[str, Blank] = field(default_factory=dict)
    cut: set[tuple[str, str]] = field(default_factory=set)
    """Copies and marks that have been cut."""
    rough: set[tuple[str, str]] = field(default_factory=set)
    """Copies and marks that are sawn beside their line, and not brought to it yet."""
    strips: dict[str, WantedStrip] = field(default_factory=dict)
    """What lips are made of, by their names; used up when they are glued on."""
    bare: dict[str, tuple[WantedLip, ...]] = field(default_factory=dict)
    """The lips that copies still want."""
    proud: dict[str, set[str]] = field(default_factory=dict)
    """The surfaces of copies on which a lip is not trimmed yet."""
    glued: dict[str, str] = field(default_factory=dict)
    """The outermost assembly that a copy is glued into."""
    laid_out: set[str] = field(default_factory=set)
    """Copies on which their marks have been drawn."""
    set_for: list[CutAt] = field(default_factory=list)
    """By which setting of the cutter's height each joint was cut at a machine."""
    on_their_feet: set[str] = field(default_factory=set)
    """Leaning copies whose feet are sawn level."""
    tried: set[str] = field(default_factory=set)
    closed: set[str] = field(default_factory=set)
    """Assemblies and panels that had their dry fit, and those that are glued."""
    told: set[tuple[str, ...]] = field(default_factory=set)
    """Pairs of copies, and joints with whom and what is wrong there, so that each is told once."""
    faults: list[Fault] = field(default_factory=list)

    def tell(self, place: Place, trouble: Trouble, who: str) -> None:
        """Add a fault of a step, once for each message."""
        fault = Fault(
            trouble.reason, f"{who}: {trouble.message}", trouble.needed, place.step, place.operation
        )
        if fault not in self.faults:
            self.faults.append(fault)

    def stages_glued(self, name: str) -> set[str]:
        """Return the names and stages of all glue-ups so far that a copy is in."""
        return {
            word
            for assembly in self.goal.assemblies
            if assembly.name in self.closed and name in self.members[assembly.name]
            for word in (assembly.name, assembly.stage)
        }

    def part_named(self, name: str) -> WantedPart | None:
        """Return the part of that name, or None."""
        strips = (strip.part for strip in self.goal.strips)
        return next((part for part in (*self.goal.parts, *strips) if part.name == name), None)

    def final(self, name: str) -> Sizes | None:
        """Return the sizes that a copy is worked to, along its slope; or None for a stave.

        Without the lips that are still to come; of a strip the least that it can have.
        """
        copy = self.copies.get(name)
        if copy is None:
            return self.strips[name].sizes if name in self.strips else None
        sloped, sizes = self.part_of[name].sloped, sizes_of(copy)
        if self.bare.get(name):
            rows = list(sizes)
            for lip in self.bare[name]:
                rows[SURFACES[lip.surface][0]] -= lip.thickness
            return rows[0], rows[1], rows[2]
        return sizes if sloped is None else (sloped[0], sizes[1], sizes[2])

    def marks(self, name: str, ids: tuple[str, ...]) -> tuple[Mark, ...]:
        """Return the marks of those names that a copy carries."""
        part, copy = self.part_of.get(name), self.copies.get(name)
        if part is None or copy is None:
            return ()
        known = {mark.id: mark for mark in part.marks if copy.hand in mark.hands}
        return tuple(known[each] for each in ids if each in known)


def begin(goal: Goal, shop: Shop, tools: Toolbox, boards: Boards | None = None) -> State:
    """Return the state before the first step: parts with horns are wanted with them by then."""
    longer = with_horns(goal)
    return State(
        goal=goal,
        shop=shop,
        tools=tools,
        standing=Standing(shop),
        boards=boards or Boards(),
        copies={copy.name: copy for part in longer.parts for copy in part.copies},
        part_of={copy.name: part for part in longer.parts for copy in part.copies}
        | {strip.name: strip.part for strip in goal.strips},
        strips={strip.name: strip for strip in goal.strips},
        bare={copy.name: part.lips for part in goal.parts if part.lips for copy in part.copies},
        zones=open_zones(longer),
        members={each.name: members_of(goal, each.name) for each in goal.assemblies},
    )


def sizes_of(copy: WantedCopy) -> Sizes:
    """Return length, width and thickness of a placed copy."""
    along, across, deep = (copy.box.extent(copy.frame.axes[direction][0]) for direction in range(3))
    return along, across, deep


def cuts_in_piece(copy: WantedCopy, blank: Blank) -> tuple[Box, ...]:
    """Return what has been cut from a copy, where it is in the finished piece."""
    return tuple(copy.frame.to_piece(copy.box, ranges) for ranges in blank.cuts)


UNKNOWN = Trouble(Reason.COUNT, "it is no part of the piece", "a copy that the piece has")
