"""What belongs together on a part's line: a joint and its preposition, a tenon and its place.

"tenon 20 long 6 thick into legs", "into legs, tenon 20" and "tenon 20, 5 from bottom, into legs"
all say one thing; the line is one list of phrases, and here they are put together.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from dryfit.diagnostics import Hint
from dryfit.kinds.joints import is_beside, is_fastener, kind_written
from dryfit.notes.building.draft import Draft, union
from dryfit.notes.building.joint_words import (
    AfterStage,
    Said,
    counted_together,
    with_said,
    with_sizes,
)
from dryfit.notes.mistake import Repair
from dryfit.notes.tree import (
    From,
    GlueWords,
    Join,
    JointDetail,
    JointSpec,
    PartClause,
    Sizes,
)

_RUNNING = ("runs in", "runs under")
_LAID = ("on face", "against", "onto", "under")

Phrase = PartClause | Said


def combined(phrases: Sequence[Phrase], draft: Draft) -> tuple[PartClause, ...]:
    """Return the clauses with every joint and every place at what it belongs to."""
    one = _with_joint_sizes(_with_counts(phrases))
    return _with_joints(_with_said(one, draft), draft)


def _with_counts(phrases: Sequence[Phrase]) -> list[Phrase]:
    """Put the number of tenons to the tenon that it is said of just before."""
    done: list[Phrase] = []
    for phrase in phrases:
        before = done[-1] if done else None
        if isinstance(before, JointSpec) and isinstance(phrase, JointSpec):
            one = counted_together(before, phrase)
            if one is not None:
                done[-1] = one
                continue
        done.append(phrase)
    return done


def with_glue_only(join: Join, words: Sequence[Said], draft: Draft) -> Join:
    """Return how parts meet with where the glue goes; anything else needs the joint's name."""
    for word in words:
        if isinstance(word, GlueWords):
            join = replace(join, glue=(*join.glue, word))
        else:
            _needs_a_joint(word, draft)
    return join


def _with_joint_sizes(phrases: Sequence[Phrase]) -> list[Phrase]:
    """Put sizes and a tenon's place behind a comma to the joint or detail that they follow."""
    done: list[Phrase] = []
    for index, phrase in enumerate(phrases):
        before = done[-1] if done else None
        if isinstance(before, JointSpec):
            if isinstance(phrase, From) and _is_place_on_part(before, phrase):
                span = union(before.span, phrase.span)
                done[-1] = replace(before, place=phrase.offset, span=span)
                continue
            if isinstance(phrase, Sizes) and _is_of_joint(phrases, index):
                span = union(before.span, phrase.span)
                done[-1] = replace(before, sizes=before.sizes + phrase.sizes, span=span)
                continue
        sized = isinstance(phrase, Sizes) and _is_of_joint(phrases, index)
        if isinstance(before, JointDetail) and isinstance(phrase, Sizes) and sized:
            done[-1] = with_sizes(before, phrase.sizes, phrase.span)
            continue
        done.append(phrase)
    return done


def _is_place_on_part(spec: JointSpec, clause: From) -> bool:
    return spec.kind == "tenon" and clause.offset.place in ("top", "bottom")


def _is_of_joint(clauses: Sequence[Phrase], index: int) -> bool:
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


def _with_said(phrases: Sequence[Phrase], draft: Draft) -> list[PartClause]:
    """Put what is said of a joint to the joint: the one before it, or else the next.

    Where glue goes is said also of parts that meet without a joint's name.
    """
    done: list[PartClause] = []
    waiting: list[Said] = []
    for phrase in phrases:
        if not isinstance(phrase, JointDetail | GlueWords | AfterStage):
            if isinstance(phrase, JointSpec) and waiting:
                done.append(with_said(phrase, waiting))
                waiting = []
            else:
                done.append(phrase)
            continue
        at = _joint_before(done, phrase)
        if at is None:
            waiting.append(phrase)
            continue
        joint = done[at]
        if isinstance(joint, Join):
            done[at] = _said_of_join(joint, phrase, draft)
        elif isinstance(joint, JointSpec):
            done[at] = with_said(joint, (phrase,))
    for phrase in waiting:
        _needs_a_joint(phrase, draft)
    return done


def _joint_before(done: Sequence[PartClause], said: Said) -> int | None:
    joins = Join if isinstance(said, GlueWords) else ()
    for at in range(len(done) - 1, -1, -1):
        if isinstance(done[at], JointSpec) or (joins and isinstance(done[at], joins)):
            return at
        other = done[at]
        if isinstance(other, Join) and other.preposition == "crossing":
            return at
    return None


def _said_of_join(join: Join, said: Said, draft: Draft) -> Join:
    if isinstance(said, GlueWords) and join.spec is None:
        return with_glue_only(join, (said,), draft)
    # What crosses is lapped, also when the lap is not named.
    spec = join.spec or JointSpec("half lap", None, (), None, join.span)
    return replace(join, spec=with_said(spec, (said,)))


def _needs_a_joint(said: Said, draft: Draft) -> None:
    if isinstance(said, AfterStage):
        draft.error(
            "after-without-joint",
            f"`{said.span.text()}`: what is cut then? no joint is named",
            said.span,
            Hint("of the part itself say `cut after ...`; a wish has a line of its own"),
        )
        return
    draft.error(
        "detail-without-joint",
        f"`{said.span.text()}`: of which joint? none is named",
        said.span,
        Hint("name the joint in front of it, such as `tenon {20} into legs`"),
    )


def _with_joints(clauses: Sequence[PartClause], draft: Draft) -> tuple[PartClause, ...]:
    """Put every joint that stands alone to the preposition without one that it is written at."""
    done: list[PartClause | None] = list(clauses)
    for index, spec in enumerate(clauses):
        if not isinstance(spec, JointSpec) or is_beside(spec.kind):
            continue
        if _holds_a_rabbet(spec, clauses):
            continue
        if _is_glued_board(spec, clauses[:index]):
            draft.error(
                "detail-not-for-joint",
                "boards that are tongued into one another stay dry, so that each can move",
                spec.span,
                Hint("leave this out; for one glued board write `from 4 staves`"),
            )
            done[index] = None
            continue
        at = _written_at(clauses, index, draft, done)
        if at is None and _is_glued_anyway(spec, done[:index]):
            done[index] = None
            continue
        if at is None:
            at = _nearest(done, index, spec)
        if at is not None:
            host = done[at]
            assert isinstance(host, Join)
            _check_lap(spec, host, draft)
            whole = replace(spec, glue=host.glue + spec.glue)
            done[at] = replace(host, spec=whole, glue=(), span=union(host.span, spec.span))
            done[index] = None
    return tuple(clause for clause in done if clause is not None)


def _holds_a_rabbet(spec: JointSpec, clauses: Sequence[PartClause]) -> bool:
    """Return whether screws are said besides a rabbet joint: "screws, rabbet 12 into sides"."""
    rabbet = any(isinstance(each, JointSpec) and each.kind == "rabbet" for each in clauses)
    return spec.kind == "screws" and rabbet and sum(isinstance(each, Join) for each in clauses) < 2


def _is_glued_board(spec: JointSpec, before: Sequence[PartClause]) -> bool:
    """Return whether "glued" is said of boards: "tongue and groove, glued"."""
    last = before[-1] if before else None
    return spec.kind == "glue" and isinstance(last, JointSpec) and is_beside(last.kind)


def _is_glued_anyway(spec: JointSpec, before: Sequence[PartClause | None]) -> bool:
    """Return whether it says "glued" of the joint just before: "tenon 20 into legs, glued"."""
    last = next((clause for clause in reversed(before) if clause is not None), None)
    named = last.spec if isinstance(last, Join) else None
    plain = spec.kind == "glue" and not (spec.count or spec.sizes or spec.details or spec.glue)
    kind = kind_written(named.kind) if named is not None else None
    return plain and kind is not None and kind.glued


def _check_lap(spec: JointSpec, host: Join, draft: Draft) -> None:
    """Ask whether "against stiles, lap 20" says a joint or how far the part reaches over."""
    said = draft.line.text[slice(*draft.line.offsets(spec.span))]
    written = said.lower().split(" ")[0]
    if written != "lap" or host.preposition not in _LAID or not spec.sizes:
        return
    rest = said[len(written) :].strip()
    draft.error(
        "lap-or-lapping",
        f"`{said}`: is that a lap joint, or how far the part reaches over?",
        spec.span,
        Repair("if it reaches over", spec.span, f"lapping {rest}"),
        Repair("if it is a joint", spec.span, f"half lap {rest}"),
    )


def _written_at(
    clauses: Sequence[PartClause], index: int, draft: Draft, done: Sequence[PartClause | None]
) -> int | None:
    """Return the preposition beside a joint to which the sign between them ties it, or None.

    "behind front: housing 6, in front of rear" and "tenon 20 into legs" leave no choice; between
    two commas a joint is of the part named just before, as what is said behind a name is.
    """
    before = index - 1 if _is_open(done, index - 1) else None
    after = index + 1 if _is_open(done, index + 1) else None
    if after is not None and not _sign_between(clauses, index, draft):
        return after
    if before is None:
        return None
    sign = _sign_between(clauses, before, draft)
    if sign != ",":
        return before
    # Screws hold what lies on something; "between posts, screws, under seat" is about the seat.
    spec = clauses[index]
    fastened = isinstance(spec, JointSpec) and is_fastener(spec.kind)
    return before if after is not None and not fastened else None


def _is_open(done: Sequence[PartClause | None], at: int) -> bool:
    clause = done[at] if 0 <= at < len(done) else None
    return isinstance(clause, Join) and clause.spec is None and clause.preposition not in _RUNNING


def _sign_between(clauses: Sequence[PartClause], at: int, draft: Draft) -> str:
    """Return what stands between a phrase and the next: a comma, a colon, a word or nothing."""
    end = draft.line.offsets(clauses[at].span)[1]
    start = draft.line.offsets(clauses[at + 1].span)[0]
    return draft.line.text[end:start].strip().replace(";", ",")


def _nearest(clauses: Sequence[PartClause | None], index: int, spec: JointSpec) -> int | None:
    open_joins = {
        at: clause
        for at, clause in enumerate(clauses)
        if isinstance(clause, Join) and clause.spec is None and clause.preposition not in _RUNNING
    }
    if is_fastener(spec.kind):
        # Screws hold what lies on something; "between posts" only says where it is.
        laid = {at: join for at, join in open_joins.items() if join.preposition != "between"}
        open_joins = laid or open_joins
    if not open_joins:
        return None
    # The preposition that follows wins over the one before at the same distance.
    return min(open_joins, key=lambda at: (abs(at - index), at < index))
