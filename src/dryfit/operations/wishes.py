"""Order wishes of the notes as rules: ``A before B``, for parts, glue-ups and deeds."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import networkx as nx

from dryfit.diagnostics import Diagnostic, Hint, Severity, Span
from dryfit.operations.deed_kinds import CUTS
from dryfit.operations.members import assembly_named
from dryfit.piece.declared import INSIDE
from dryfit.placing.model import Assembly, Model, Part
from dryfit.placing.wish import Wish, WishEnd
from dryfit.plan.operation import Operation, Rule, WorkList

WHY_WISHED = "the notes wish it so"
KINDS = {
    "finish": frozenset({"coat"}),
    "glue up": frozenset({"glue up"}),
    "cut": CUTS,
    "sand": frozenset({"sand"}),
}
NOT_KEPT = "take this wish out; the reasons say what the work itself puts first"
"""What helps against a wish that the work itself forbids."""


@dataclass(frozen=True, slots=True)
class Wished:
    """The rules of the wishes, the line that each comes from, and what could not be read."""

    rules: tuple[Rule, ...]
    spans: dict[tuple[str, str], Span]
    findings: tuple[Diagnostic, ...]


def wished(model: Model, operations: tuple[Operation, ...], rules: tuple[Rule, ...]) -> Wished:
    """Return the wishes as rules: the last operations of one before the first of the other.

    Findings: ``wish-without-work`` when one side of a wish names nothing that is done.
    """
    found: list[Rule] = []
    spans: dict[tuple[str, str], Span] = {}
    findings: list[Diagnostic] = []
    for wish in model.wishes:
        first = _named(wish.first, model, operations)
        then = _named(wish.then, model, operations)
        if not first or not then:
            findings.append(_without_work(wish, wish.first if not first else wish.then, model))
            continue
        own = _between(first, then, rules)
        found += own
        spans.update(((rule.before, rule.after), wish.span) for rule in own)
    return Wished(tuple(found), spans, tuple(findings))


def _without_work(wish: Wish, end: WishEnd, model: Model) -> Diagnostic:
    """Return the finding that one side of a wish is not done, with what may be done in its place.

    A part is sanded and coated as part of what it is glued into.
    """
    deed = " ".join(filter(None, (end.verb, end.subject)))
    wholes = [each.stage for each in model.assemblies if _holds(each, end.subject, model)]
    if end.verb == "finish" and not model.coatings:
        hint = "add a line with the finish, such as `finish oil varnish`"
    elif wholes and end.verb is not None:
        hint = f"what is glued up is done as a whole: write `{end.verb} {wholes[0]}`"
    else:
        hint = _what_is_named(end, model)
    return Diagnostic(
        "wish-without-work",
        Severity.WARNING,
        f"this wish changes nothing: `{deed}` is not done in this plan",
        wish.span,
        hints=(Hint(hint),),
    )


def _what_is_named(end: WishEnd, model: Model) -> str:
    """Return what a wish can name, by a part of this piece; of a pattern by one inside of it."""
    whole = (end.subject or "").partition(INSIDE)[0]
    own = [part for part in model.parts if part.name.startswith(f"{whole}{INSIDE}")]
    if end.verb == "cut" and own:
        inside = own[0].name.rpartition(INSIDE)[2]
        return f"what a pattern makes is cut part by part: write `cut {whole}'s {inside}`"
    parts = [part.written for part in model.parts if _can_be_named(part)]
    such = f", such as `cut {parts[0].lower()}`" if parts else ""
    return f"a wish cuts parts, glues up glue-ups, and sands and finishes both{such}"


def _holds(assembly: Assembly, subject: str | None, model: Model) -> bool:
    copies = {copy.name for part in model.parts if part.name == subject for copy in part.copies}
    return bool(copies & set(assembly.of))


def _named(end: WishEnd, model: Model, operations: tuple[Operation, ...]) -> tuple[str, ...]:
    subjects = _subjects(end.subject, model)
    kinds = KINDS.get(end.verb or "")
    if kinds is None:
        # A part alone means its cuts, a glue-up alone means its gluing (CONTRACTS).
        is_stage = any(assembly_named(model, name) is not None for name in subjects or ())
        kinds = KINDS["glue up"] if is_stage else CUTS
    return tuple(
        operation.id
        for operation in operations
        if operation.kind in kinds
        and not _on_boards(operation)
        and (subjects is None or _about(operation, subjects))
    )


def _on_boards(operation: Operation) -> bool:
    """Return whether a deed is done to boards before they are parted: for other parts as well.

    Which part comes off a board first is the layout's to say, and no wish orders it.
    """
    on_edge = operation.kind == "straight edge" and not operation.work
    return bool(operation.board_cuts) or on_edge


def _about(operation: Operation, subjects: frozenset[str]) -> bool:
    subject = operation.id.partition(" / ")[0]
    return subject in subjects or operation.part in subjects


def _subjects(name: str | None, model: Model) -> frozenset[str] | None:
    """Return the names that a subject stands for: a stage stands for each of its glue-ups."""
    if name is None:
        return None
    stages = {each.name for each in model.assemblies if name in {each.stage, each.name}}
    return frozenset(stages or {name})


def _edges(names: tuple[str, ...], rules: tuple[Rule, ...], *, last: bool) -> tuple[str, ...]:
    """Return the operations with no other of the group after them, or before them."""
    inside = set(names)
    covered = {
        rule.before if last else rule.after
        for rule in rules
        if rule.before in inside and rule.after in inside
    }
    return tuple(name for name in names if name not in covered)


def _between(
    first: tuple[str, ...], then: tuple[str, ...], rules: tuple[Rule, ...]
) -> tuple[Rule, ...]:
    """Return the rules of a wish: the last deeds of one end come before the first of the other."""
    return tuple(
        Rule(before, after, WHY_WISHED)
        for before in _edges(first, rules, last=True)
        for after in _edges(then, rules, last=False)
    )


def said_in_notes(
    model: Model, work: WorkList, first: Sequence[Operation], then: Sequence[Operation]
) -> tuple[str, tuple[Rule, ...]] | None:
    """Return a line of the notes that puts some operations before others, with all its rules.

    None where there is none: the notes order glue-ups, coats, sanding, and the cutting of parts.
    """
    ends = [_acts(first, model), _acts(then, model)]
    if not all(ends):
        return None
    rules = [
        rule
        for a in ends[0]
        for b in ends[1]
        for rule in _between(
            _named(a, model, work.operations), _named(b, model, work.operations), work.rules
        )
    ]
    graph: nx.DiGraph[str] = nx.DiGraph()
    graph.add_edges_from((rule.before, rule.after) for rule in (*work.rules, *rules))
    wanted = ((before.id, after.id) for before in first for after in then)
    if not all(before in graph and nx.has_path(graph, before, after) for before, after in wanted):
        return None
    left, right = (" and ".join(f"{act.verb} {act.subject}" for act in acts) for acts in ends)
    return f"{left} before {right}", tuple(rules)


def _can_be_named(part: Part) -> bool:
    """Return whether a part is declared in the notes themselves, by a line of its own."""
    return not part.made and INSIDE not in part.name


def _acts(operations: Sequence[Operation], model: Model) -> tuple[WishEnd, ...]:
    """Return the deeds as the notes name them, empty where they have no name for one."""
    acts: dict[WishEnd, None] = {}
    for operation in operations:
        verb = next((verb for verb, kinds in KINDS.items() if operation.kind in kinds), None)
        subject = operation.id.partition(" / ")[0]
        assembly = assembly_named(model, subject)
        if assembly is not None:
            subject = assembly.stage
        elif subject not in {part.name for part in model.parts if _can_be_named(part)}:
            return ()
        if verb is None:
            return ()
        acts[WishEnd(verb, subject)] = None
    return tuple(acts)
