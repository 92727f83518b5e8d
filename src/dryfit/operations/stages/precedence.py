"""Rules between milling and joinery: what comes before what, and why (TRADE A3, B0.5)."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from dryfit.joinery.bridle import TRENCH
from dryfit.joinery.tongue_groove import GROOVE
from dryfit.kinds.roles import TONGUE
from dryfit.operations.cut import Cut
from dryfit.operations.cuts.cutting import Joinery
from dryfit.operations.deed_kinds import CORNER_CUTS
from dryfit.operations.milling.laying_out import WHY_MARK_FIRST
from dryfit.operations.shapes import KINDS as SHAPES
from dryfit.operations.shapes import WHY_EDGE_AFTER_SHAPE, shape_rules
from dryfit.operations.ways.cross_cuts import beside_haunch
from dryfit.operations.ways.edges import WHY_EDGES_LAST
from dryfit.placing.model import Part
from dryfit.plan.operation import Operation, Rule

WHY_FROM_END = "the cut is measured from the finished end"
WHY_GROOVE_LONG = "what breaks out where the groove leaves the wood is cut off with the ends"
WHY_GROOVE_TRUE = "the groove is measured from the finished edge"
WHY_SHOULDER_AFTER_CHEEK = "the edge shoulder is carried on from the line that the cheeks leave"
WHY_HAND_AFTER_MACHINE = "the shoulder cut by hand is pared to meet the sawn ones"
WHY_MORTISE_FIRST = "the chisel fixes the mortise, and the tenon is fitted to it"
WHY_OPEN_MORTISE_FIRST = "the saw fixes the slot in the end, and the tenon is fitted to it"
WHY_SQUARE_EDGES = "the lines of a compound mitre go round the square edges"
WHY_MITRE_LAST = "what is measured from the square ends is cut before they are mitred"
WHY_END_BEFORE_HAUNCH = "the passes beside the haunch run out where the end is cut deeper already"
WHY_PEG_AFTER_CHEEK = "the hole stands in the tenon, at a measured way from its shoulder"
WHY_TAILS_FIRST = "the pins are marked from the tails that they belong to"
WHY_GROOVE_FIRST = "the mortise is cut inside the finished groove"
WHY_TONGUE_FITTED = "the cutter fixes the groove, and the tongue is fitted to it"
WHY_GROOVE_BEFORE_CORNER = "its end is whole at the fence, and a tail or finger can cover it"
WHY_TURNS = "the first pass sets the edge of the groove that is measured"
WHY_FACE_DOWN_FIRST = (
    "the strip has to come free beyond the blade: sawn the other way round it would be trapped "
    "between blade and fence"
)


@dataclass(frozen=True, slots=True)
class Chains:
    """The operations of each part that its cuts wait for: last of the section, length, layout."""

    section: dict[str, str]
    length: dict[str, str]
    layout: dict[str, str]


def joinery_rules(parts: tuple[Part, ...], joinery: Joinery, chains: Chains) -> tuple[Rule, ...]:
    """Return the rules between cuts of a part, its milling, and the cuts of its mates."""
    rules: list[Rule] = []
    rows = tuple(zip(joinery.operations, joinery.cuts, strict=True))
    to_marks = {op.together for op, cuts in rows if op.together and cuts[0].needs_length}
    for operation, cuts in rows:
        if cuts[0].site.feature.after is None:
            rules += _own_chain(operation, cuts, chains, long=operation.together not in to_marks)
        rules += _mates_section(operation, cuts, chains)
    for part in parts:
        own = tuple(row for row in rows if row[0].part == part.name)
        haunches = _beside_haunches(own)
        rules += haunches
        rules += _shoulders(own, {(rule.before, rule.after) for rule in haunches})
        rules += _pegs(own)
        rules += _groove_before_mortise(own)
        rules += _groove_before_corner(own)
        rules += _turns(own)
        rules += _mitres_last(own)
        rules += _compound_before_bevels(own)
        rules += _groove_before_tongue(own)
        rules += shape_rules(own)
    rules += _edges_last(rows)
    rules += _mortise_before_tenon(rows)
    rules += _tails_before_pins(rows)
    return tuple(rules)


Row = tuple[Operation, tuple[Cut, ...]]


def _own_chain(
    operation: Operation, cuts: tuple[Cut, ...], chains: Chains, *, long: bool
) -> list[Rule]:
    """Return what a cut waits for; `long` where a groove is cut before its part has its length.

    It is not where others of its visit are measured from finished ends: parts of one length are
    cut to it together, and cannot be so before and after one and the same visit.
    """
    part = operation.part
    if cuts[0].needs_length:
        rules = []
        if part in chains.length:
            rules.append(Rule(chains.length[part], operation.id, WHY_FROM_END))
        if part in chains.layout:
            rules.append(Rule(chains.layout[part], operation.id, WHY_MARK_FIRST))
        return rules
    section = chains.section.get(part)
    rules = [Rule(section, operation.id, WHY_GROOVE_TRUE)] if section is not None else []
    if part in chains.length and long and chains.length[part] != chains.section[part]:
        rules.append(Rule(operation.id, chains.length[part], WHY_GROOVE_LONG))
    return rules


def _mates_section(operation: Operation, cuts: tuple[Cut, ...], chains: Chains) -> list[Rule]:
    """Return: a lap or housing waits for the true width and thickness of what goes into it."""
    trench = all(cut.site.feature.role == TRENCH for cut in cuts)
    if operation.kind not in {"lap", "housing", *CORNER_CUTS} and not trench:
        return []
    mates = sorted({cut.site.feature.mate for cut in cuts if cut.site.feature.mate is not None})
    return [
        Rule(
            chains.section[mate],
            operation.id,
            f"the cut is made to the true width and thickness of the {mate}",
        )
        for mate in mates
        if mate in chains.section and mate != operation.part
    ]


def _shoulders(own: tuple[Row, ...], ends_first: set[tuple[str, str]]) -> list[Rule]:
    """Return: cheeks before shoulders, and sawn shoulders before those that a chisel pares to meet.

    `ends_first` are pairs that stand the other way round: what is sawn there is another line.
    """
    cheeks = [operation for operation, _ in own if operation.kind == "tenon cheek"]
    shoulders = [operation for operation, _ in own if operation.kind == "tenon shoulder"]
    rules = [
        Rule(cheek.id, shoulder.id, WHY_SHOULDER_AFTER_CHEEK)
        for cheek in cheeks
        for shoulder in shoulders
    ]
    sawn = [shoulder for shoulder in shoulders if shoulder.station != "bench"]
    by_hand = [shoulder for shoulder in shoulders if shoulder.station == "bench"]
    rules += [
        Rule(machine.id, hand.id, WHY_HAND_AFTER_MACHINE)
        for machine in sawn
        for hand in by_hand
        if (hand.id, machine.id) not in ends_first
    ]
    return rules


def _beside_haunches(own: tuple[Row, ...]) -> list[Rule]:
    """Return: before a strip beside a haunch is cleared to the end, the end itself is cut."""
    ends = [
        (operation, {cut.site.feature.surface for cut in cuts})
        for operation, cuts in own
        if operation.kind == "tenon shoulder" and not any(beside_haunch(cut.site) for cut in cuts)
    ]
    return [
        Rule(end.id, operation.id, WHY_END_BEFORE_HAUNCH)
        for operation, cuts in own
        for end, surfaces in ends
        if any(_clears_past_haunch(cut) and cut.site.feature.surface in surfaces for cut in cuts)
    ]


def _clears_past_haunch(cut: Cut) -> bool:
    return beside_haunch(cut.site) and len(cut.passes) > 1 and cut.passes[1].between


def _pegs(own: tuple[Row, ...]) -> list[Rule]:
    holes = [
        operation
        for operation, cuts in own
        if any(cut.site.feature.role in {"peg hole", "peg slot"} for cut in cuts)
    ]
    cheeks = [operation for operation, _ in own if operation.kind == "tenon cheek"]
    return [Rule(cheek.id, hole.id, WHY_PEG_AFTER_CHEEK) for hole in holes for cheek in cheeks]


def _groove_before_mortise(own: tuple[Row, ...]) -> list[Rule]:
    return [
        Rule(groove.id, mortise.id, WHY_GROOVE_FIRST)
        for groove, groove_cuts in own
        for mortise, mortise_cuts in own
        if groove.kind == "groove"
        and mortise.kind == "mortise"
        and not _is_later(groove_cuts, mortise_cuts)
        and {cut.site.feature.surface for cut in groove_cuts}
        & {cut.site.feature.surface for cut in mortise_cuts}
    ]


def _groove_before_corner(own: tuple[Row, ...]) -> list[Rule]:
    return [
        Rule(groove.id, corner.id, WHY_GROOVE_BEFORE_CORNER)
        for groove, groove_cuts in own
        for corner, corner_cuts in own
        if groove.kind == "groove"
        and corner.kind in CORNER_CUTS
        and not _is_later(groove_cuts, corner_cuts)
    ]


def _is_later(cuts: Sequence[Cut], others: Sequence[Cut]) -> bool:
    """Return whether cuts wait for a glue-up that others do not wait for."""
    stage = cuts[0].site.feature.after
    return stage is not None and stage != others[0].site.feature.after


def _mitres_last(own: tuple[Row, ...]) -> list[Rule]:
    """Return: grooves and all other cuts before the ends lose their square corners (B26)."""
    mitres = [operation for operation, _ in own if operation.kind == "mitre"]
    return [
        Rule(other.id, mitre.id, WHY_MITRE_LAST)
        for other, cuts in own
        for mitre in mitres
        if other.kind not in {"mitre", *SHAPES} and cuts[0].site.feature.after is None
    ]


def _compound_before_bevels(own: tuple[Row, ...]) -> list[Rule]:
    """Return: the lines of a compound mitre are drawn round a board whose edges are square yet."""
    compound = [
        operation
        for operation, cuts in own
        if operation.kind == "mitre" and any(cut.site.feature.slopes for cut in cuts)
    ]
    return [
        Rule(mitre.id, other.id, WHY_SQUARE_EDGES)
        for other, _ in own
        for mitre in compound
        if other.kind == "bevel"
    ]


def _groove_before_tongue(own: tuple[Row, ...]) -> list[Rule]:
    """Return: boards that are tongued into one another are grooved first (B0.5, B10)."""
    by_role = {
        role: [row.id for row, cuts in own if any(cut.site.feature.role == role for cut in cuts)]
        for role in (GROOVE, TONGUE)
    }
    return [
        Rule(groove, tongue, WHY_TONGUE_FITTED)
        for groove in by_role[GROOVE]
        for tongue in by_role[TONGUE]
    ]


def _turns(own: tuple[Row, ...]) -> list[Rule]:
    """Return: the passes of one feature in their order."""
    first: dict[tuple[str, str], str] = {}
    rules: list[Rule] = []
    for operation, cuts in own:
        key = (cuts[0].what, cuts[0].site.feature.id)
        if cuts[0].turn == 1:
            first[key] = operation.id
        elif key in first:
            hold = cuts[0].hold
            on_edge = hold is not None and hold.down != cuts[0].site.feature.surface
            why = WHY_FACE_DOWN_FIRST if on_edge else WHY_TURNS
            rules.append(Rule(first[key], operation.id, why))
    return rules


def _tails_before_pins(rows: tuple[Row, ...]) -> list[Rule]:
    tails = [
        (operation, {cut.site.feature.mate for cut in cuts})
        for operation, cuts in rows
        if operation.kind == "tails"
    ]
    return [
        Rule(first.id, operation.id, WHY_TAILS_FIRST)
        for operation, cuts in rows
        if operation.kind == "pins"
        for first, mates in tails
        if operation.part in mates and first.part in {cut.site.feature.mate for cut in cuts}
    ]


def _edges_last(rows: tuple[Row, ...]) -> list[Rule]:
    """Return: edges are shaped when nothing else is cut in the part, or in the glued whole."""
    edges = [row for row in rows if row[0].kind == "profile"]
    return [
        Rule(other.id, edge.id, WHY_EDGE_AFTER_SHAPE if other.kind in SHAPES else WHY_EDGES_LAST)
        for edge, edge_cuts in edges
        for other, cuts in rows
        if other.kind != "profile"
        and cuts[0].site.feature.after == (after := edge_cuts[0].site.feature.after)
        and (after is not None or other.part == edge.part)
    ]


def _mortise_before_tenon(rows: tuple[Row, ...]) -> list[Rule]:
    mortises: dict[tuple[str, str], list[tuple[str, str]]] = {}
    for operation, cuts in rows:
        if operation.kind == "mortise":
            open_ended = any(cut.site.feature.role == "open mortise" for cut in cuts)
            why = WHY_OPEN_MORTISE_FIRST if open_ended else WHY_MORTISE_FIRST
            for mate in sorted({cut.site.feature.mate or "" for cut in cuts}):
                mortises.setdefault((operation.part, mate), []).append((operation.id, why))
    rules: list[Rule] = []
    for operation, cuts in rows:
        if operation.kind != "tenon cheek":
            continue
        for host in sorted({cut.site.feature.mate or "" for cut in cuts}):
            rules += [
                Rule(mortise, operation.id, why)
                for mortise, why in mortises.get((host, operation.part), [])
            ]
    return rules
