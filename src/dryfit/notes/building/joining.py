"""What belongs together on a part's line: a joint and its preposition, a tenon and its place.

"tenon 20 long 6 thick into legs", "into legs, tenon 20" and "tenon 20, 5 from bottom, into legs"
all say one thing; the line is one list of phrases, and here they are put together.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from dryfit.notes.building.draft import union
from dryfit.notes.tree import (
    From,
    Join,
    JointSpec,
    PartClause,
    Sizes,
)

_FASTENERS = ("screws", "buttons")


def combined(clauses: Sequence[PartClause]) -> tuple[PartClause, ...]:
    """Return the clauses with every joint and every place at what it belongs to."""
    return _with_joints(_with_joint_sizes(clauses))


def _with_joint_sizes(clauses: Sequence[PartClause]) -> list[PartClause]:
    """Put sizes and a tenon's place behind a comma to the joint that they follow."""
    done: list[PartClause] = []
    for index, clause in enumerate(clauses):
        before = done[-1] if done else None
        if isinstance(before, JointSpec):
            if isinstance(clause, From) and _is_place_on_part(before, clause):
                span = union(before.span, clause.span)
                done[-1] = replace(before, place=clause.offset, span=span)
                continue
            if isinstance(clause, Sizes) and _is_of_joint(clauses, index):
                span = union(before.span, clause.span)
                done[-1] = replace(before, sizes=before.sizes + clause.sizes, span=span)
                continue
        done.append(clause)
    return done


def _is_place_on_part(spec: JointSpec, clause: From) -> bool:
    return spec.kind == "tenon" and clause.offset.place in ("top", "bottom")


def _is_of_joint(clauses: Sequence[PartClause], index: int) -> bool:
    """Return whether sizes behind a joint are the joint's and not the part's.

    They are when the preposition is still to come, or when the part has these sizes already.
    """
    sizes = clauses[index]
    assert isinstance(sizes, Sizes)
    if any(size.dimension is None for size in sizes.sizes):
        return False
    after = clauses[index + 1] if index + 1 < len(clauses) else None
    if isinstance(after, Join):
        return True
    others = [other for at, other in enumerate(clauses) if isinstance(other, Sizes) and at != index]
    stated = {size.dimension for other in others for size in other.sizes}
    if any(len(other.sizes) > 1 for other in others):
        stated |= {"width", "thickness"}
    return all(size.dimension in stated for size in sizes.sizes)


def _with_joints(clauses: list[PartClause]) -> tuple[PartClause, ...]:
    """Put every joint that stands alone to the nearest preposition without one."""
    done: list[PartClause | None] = list(clauses)
    for index, spec in enumerate(clauses):
        if not isinstance(spec, JointSpec):
            continue
        at = _nearest(done, index, spec)
        if at is not None:
            host = done[at]
            assert isinstance(host, Join)
            done[at] = replace(host, spec=spec, span=union(host.span, spec.span))
            done[index] = None
    return tuple(clause for clause in done if clause is not None)


def _nearest(clauses: Sequence[PartClause | None], index: int, spec: JointSpec) -> int | None:
    open_joins = {
        at: clause
        for at, clause in enumerate(clauses)
        if isinstance(clause, Join) and clause.spec is None
    }
    if spec.kind in _FASTENERS:
        # Screws hold what lies on something; "between posts" only says where it is.
        laid = {at: join for at, join in open_joins.items() if join.preposition != "between"}
        open_joins = laid or open_joins
    if not open_joins:
        return None
    # The preposition that follows wins over the one before at the same distance.
    return min(open_joins, key=lambda at: (abs(at - index), at < index))
