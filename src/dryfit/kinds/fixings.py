"""What holds, hangs and carries with hardware or by sliding (TRADE B17-B19, B21-B23)."""

from __future__ import annotations

from dryfit.kinds.kind import JointKind

FIXING_KINDS: tuple[JointKind, ...] = (
    JointKind(
        "runner",
        "runner in its groove",
        "runners in their grooves",
        "Runner: a strip of hard wood in a groove of the drawer's side, on which the drawer slides "
        "in and out.",
        example="2 runners, on the inside of legs, running in short rails",
    ),
    JointKind(
        "bottom runner",
        "runner below its drawer",
        "runners below their drawers",
        "Bottom runner: a rail on which the side of a drawer slides; a kicker above the side keeps "
        "the drawer from tipping when it is drawn out.",
        example="2 runners, between long rails, running under short rails",
    ),
    JointKind(
        "screws",
        "screwed place",
        "screwed places",
        "Screws: a hole as wide as the shank through one part, a thinner pilot in the other.",
        example="seat onto long rails: screws",
        written="screws",
        cut=False,
        fastener=True,
        hardware=True,
    ),
    JointKind(
        "buttons",
        "buttoned place",
        "buttoned places",
        "Button: a block screwed under a solid top whose tongue slides in a slot of the rail, so "
        "that the top is held down and can still move.",
        example="seat onto long rails: 6 buttons",
        written="buttons",
        counted=True,
        cut=False,
        fastener=True,
        lets_move=True,
        hardware=True,
    ),
    JointKind(
        "clips",
        "clipped place",
        "clipped places",
        "Clip: a bent piece of steel screwed under a solid top, whose lip stands in a saw kerf of "
        "the rail, so that the top is held down and can still move.",
        example="seat onto long rails: clips",
        written="clips",
        counted=True,
        cut=False,
        fastener=True,
        lets_move=True,
        hardware=True,
    ),
    JointKind(
        "figure-8 plates",
        "place with a figure-8 plate",
        "places with figure-8 plates",
        "Figure-8 plate: two discs of steel in one; one is let into the edge of the rail, the "
        "other screwed under a solid top, and it swings as the top moves.",
        example="seat onto long rails: figure-8 plates",
        written="figure-8 plates",
        counted=True,
        cut=False,
        fastener=True,
        lets_move=True,
        hardware=True,
    ),
    JointKind(
        "slotted screws",
        "screwed place with a slot",
        "screwed places with slots",
        "Slotted screw: a screw up through a rail into a solid top, in a slot across the grain of "
        "the top, so that it can move; at the middle of the top the hole is round.",
        example="seat onto long rails: slotted screws",
        written="slotted screws",
        counted=True,
        cut=False,
        fastener=True,
        lets_move=True,
        hardware=True,
    ),
    JointKind(
        "hinges",
        "hinged place",
        "hinged places",
        "Hinge: two leaves on a pin, one let into the edge of a door or lid and one into what "
        "carries it, so deep that the gap between them stays as it is drawn.",
        example="seat to left legs: 2 hinges",
        written="hinges",
        sizes=("length", "width", "thickness"),
        counted=True,
        rowed=True,
        hardware=True,
    ),
    JointKind(
        "shelf pins",
        "place on shelf pins",
        "places on shelf pins",
        "Shelf pins: rows of holes in two uprights, in which pins carry a loose shelf at the "
        "height that suits.",
        example="1 shelf, flat, 18 thick, between short rails, shelf pins, gap 1 at ends",
        written="shelf pins",
        sizes=("thickness", "depth"),
        same={"diameter": "thickness"},
        rowed=True,
        details=frozenset({"apart"}),
        hardware=True,
    ),
)
