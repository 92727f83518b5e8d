"""A plan whose blanks come out of boards: laid out by hand, one board for each subject.

Each board has a raw end sawn off, is crosscut into sections, and each of these is ripped to the
width of one blank, which leaves a strip.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from tests.rehearsal_damage.wanted import part_of, sizes

from dryfit.plan.operation import Operation
from dryfit.plan.plan import Plan
from dryfit.plan.sawing import Becomes, BoardCut, SawnBoard
from dryfit.rehearsal.goal import Goal, WantedPart
from dryfit.shop import Shop

TRIM, STRIP = Fraction(25), Fraction(10)
KERFS = {"band saw": Fraction(3), "table saw": Fraction(16, 5), "bench": Fraction(1)}
ACROSS = Fraction(3)
MUCH = Fraction(3)
"""mm: what loses less is planed in one go."""


@dataclass(frozen=True, slots=True)
class Subject:
    """The rough pieces of a part, or its staves: what cuts and rips them, and what they become."""

    label: str
    crosscut: Operation
    rip: Operation
    blanks: tuple[tuple[str, ...], ...]
    timber: str | None


def boarded(plan: Plan, goal: Goal, shop: Shop) -> Plan:
    """The plan with boards that its blanks are sawn out of; one that has boards as it is."""
    if plan.boards:
        return plan
    subjects = tuple(_subjects(plan, goal, shop))
    cuts = {name: row for each in subjects for name, row in _cuts(each)}
    steps = tuple(
        replace(
            step,
            operations=tuple(
                replace(op, board_cuts=cuts[op.id]) if op.id in cuts else op
                for op in step.operations
            ),
        )
        for step in plan.steps
    )
    return replace(plan, steps=steps, boards=tuple(_board(each) for each in subjects))


def _subjects(plan: Plan, goal: Goal, shop: Shop) -> Iterator[Subject]:
    rows = {op.id: op for step in plan.steps for op in step.operations}
    for name, crosscut in rows.items():
        rip = rows.get(name.replace(" / rough length", " / rip"))
        part = part_of(goal, crosscut.part)
        if crosscut.kind != "rough length" or rip is None or part is None:
            continue
        # Leaves of one slab are resawn, which no board of one blank a leaf can be.
        if f"{part.name} / resaw" in rows or crosscut.rough is None:
            continue
        if _rests(part, crosscut.rough[2], shop):
            # Out of boards that are known it would be planed in two goes, with a rest between.
            continue
        copies = crosscut.work[0].copies
        long = sizes(part.copies[0])[0] + 2 * part.horns
        if part.sloped is not None:
            long = part.sloped[0]
        each = 1 if part.staves else _each(crosscut.rough[0], long, shop)
        count = -(-len(copies) // min(each, len(copies)))
        each = -(-len(copies) // count)
        blanks = tuple(copies[at : at + each] for at in range(0, len(copies), each))
        label = f"board {name.partition(' / ')[0]}"
        yield Subject(label, crosscut, rip, blanks, part.timber)


def _rests(part: WantedPart, thick: Fraction, shop: Shop) -> bool:
    """TRADE A3.7: a quarter of the thickness or more comes off, or it has to stay straight."""
    to = sizes(part.copies[0])[2] + (shop.allowances["panel_flattening"] if part.staves else 0)
    return thick - to > MUCH and (part.stays_straight or 4 * (thick - to) > thick)


def _each(rough: Fraction, long: Fraction, shop: Shop) -> int:
    blades = (c.widest for c in shop.cutters if c.kind == "blade" and c.station != "band saw")
    kerf = max(blades, default=Fraction(0))
    ends = 2 * shop.allowances["snipe"] if "planer" in shop.stations else Fraction(25)
    return max(1, int((rough - ends + kerf) / (long + kerf)))


def _board(of: Subject) -> SawnBoard:
    assert of.crosscut.rough is not None
    long, wide, thick = of.crosscut.rough
    return SawnBoard(
        label=of.label,
        timber=of.timber,
        length=2 * (TRIM + ACROSS) + len(of.blanks) * (long + ACROSS),
        width=wide + KERFS[of.rip.station] + STRIP,
        thickness=thick,
        rough=True,
    )


def _cuts(of: Subject) -> Sequence[tuple[str, tuple[BoardCut, ...]]]:
    assert of.crosscut.rough is not None
    long, wide, _ = of.crosscut.rough
    across = [BoardCut(of.label, 1, None, "", "crosscut", TRIM, ACROSS)]
    along = []
    count = len(of.blanks)
    for number, pieces in enumerate(of.blanks, start=1):
        section = BoardCut(of.label, 1 + number, number, "rest", "crosscut", long, ACROSS)
        across.append(section)
        subject = of.crosscut.id.partition(" / ")[0]
        becomes = Becomes(f"{subject} blank {number}", f"{subject} {number}", pieces)
        kerf = KERFS[of.rip.station]
        rip = BoardCut(
            of.label, 1 + count + number, section.number, "first", "rip", wide, kerf, becomes
        )
        along.append(rip)
    return (of.crosscut.id, tuple(across)), (of.rip.id, tuple(along))
