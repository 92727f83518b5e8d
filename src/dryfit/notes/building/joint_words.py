"""A joint with all that is said of it: sizes, details, where glue goes, when it is cut."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from lark import Token, Tree

from dryfit.diagnostics import Span
from dryfit.notes.building.counts import checked_count
from dryfit.notes.building.draft import Draft, ends, text_of, tokens, trees, union
from dryfit.notes.building.references import reference, stage
from dryfit.notes.building.sums import size_word, sum_in, sums_in
from dryfit.notes.mistake import Repair
from dryfit.notes.tree import (
    GlueWords,
    JointDetail,
    JointSpec,
    Number,
    SizeWord,
    StageName,
)

Parsed = Tree[Token]


@dataclass(frozen=True, slots=True)
class AfterStage:
    """``after glue up faces`` behind a joint."""

    stage: StageName
    span: Span


Said = JointDetail | GlueWords | AfterStage

_COUNTED_BARE = ("wedges", "keys")


def joint_spec(node: Parsed, draft: Draft) -> JointSpec:
    """Return the joint named by kind, with its count and sizes; adjectives become details."""
    word = tokens(node.children, "JOINT", "FASTENER")[0]
    kind, *adjectives = text_of(word).split(", ")
    sizes = tuple(size_word(dim, draft) for dim in trees(node.children, "dim"))
    count = checked_count(node.children, draft)
    if count and word.type == "JOINT":
        _check_count(count, word, node, draft)
    if "2" in adjectives:
        count, adjectives = count or 2, [each for each in adjectives if each != "2"]
    place = draft.span(word)
    details = tuple(_detail(adjective, None, (), None, place) for adjective in adjectives)
    whole = draft.span(node)
    return JointSpec(kind, count, sizes, None, whole, details=details, head=whole)


def said(node: Parsed, draft: Draft) -> list[Said]:
    """Return what the phrase says of a joint."""
    return BUILDERS[node.data](node, draft)


def with_said(spec: JointSpec, words: Sequence[Said]) -> JointSpec:
    """Return the joint with what is said of it."""
    for word in words:
        span = union(spec.span, word.span)
        if isinstance(word, JointDetail):
            spec = replace(spec, details=(*spec.details, word), span=span)
        elif isinstance(word, GlueWords):
            spec = replace(spec, glue=(*spec.glue, word), span=span)
        else:
            spec = replace(spec, after=word.stage, span=span)
    return spec


def counted_together(first: JointSpec, second: JointSpec) -> JointSpec | None:
    """Return one joint of ``tenon 20 long, 2 tenons``, which are not two; None where they are.

    The number may stand without a comma: ``tenon 20 long 2 tenons``.
    """
    if (first.kind, second.kind) != ("tenon", "tenon"):
        return None
    count, sizes = second.count or first.count, first.sizes
    if first.count is None and second.count is None and _ends_in_a_count(sizes):
        amount = sizes[-1].amount
        assert isinstance(amount, Number)
        count, sizes = int(amount.value), sizes[:-1]
    elif (first.count is None) == (second.count is None):
        return None
    return replace(
        first,
        count=count,
        sizes=sizes + second.sizes,
        details=first.details + second.details,
        span=union(first.span, second.span),
        head=first.head and second.head and union(first.head, second.head),
    )


def with_sizes(detail: JointDetail, sizes: tuple[SizeWord, ...], span: Span) -> JointDetail:
    """Return the detail with sizes that stand behind a comma: ``keys 2 a corner, 25 deep``."""
    return replace(detail, sizes=detail.sizes + sizes, span=union(detail.span, span))


def _details(node: Parsed, draft: Draft) -> list[Said]:
    nodes = node.children
    if tokens(nodes, "THROUGH"):
        return [_detail("through", None, (), None, draft.span(node))]
    if tokens(nodes, "_PROUD"):
        amount = sum_in(node, draft)
        proud = (SizeWord(amount, None, amount.span),)
        return [_detail("proud", None, proud, None, draft.span(node))]
    kind = text_of(tokens(nodes, "DETAIL")[0])
    sizes = tuple(size_word(dim, draft) for dim in trees(nodes, "dim"))
    each = tokens(nodes, "EACH")
    count = checked_count(nodes, draft)
    if count is None and kind in _COUNTED_BARE and sizes and _is_count(sizes[0]):
        amount = sizes[0].amount
        assert isinstance(amount, Number)
        count, sizes = int(amount.value), sizes[1:]
    place = text_of(each[0]) if each else None
    return [_detail(kind, count, sizes, place, draft.span(node))]


def _detail(
    kind: str, count: int | None, sizes: tuple[SizeWord, ...], place: str | None, span: Span
) -> JointDetail:
    if kind == "drawbore":
        kind, place = "pegs", "drawbore"
    if kind.startswith("pockets "):
        kind, _, place = kind.partition(" ")
    return JointDetail(kind, count, sizes, place, None, span)


def _is_count(size: SizeWord) -> bool:
    amount = size.amount
    bare = isinstance(amount, Number) and amount.quantity is None and size.dimension is None
    return bare and isinstance(amount, Number) and amount.value.denominator == 1


def _ends_in_a_count(sizes: Sequence[SizeWord]) -> bool:
    """Return whether a bare number stands behind a size that says what it is: `20 long 2`."""
    return len(sizes) > 1 and sizes[-2].dimension is not None and _is_count(sizes[-1])


def _shoulders(node: Parsed, draft: Draft) -> list[Said]:
    """Return a detail for each side of ``shoulders 5 below 65 above``."""
    found: list[Said] = []
    for amount in sums_in(node, draft):
        after = next(
            (word for word in tokens(node.children, *_SIDES) if _follows(word, amount.span, draft)),
            None,
        )
        place = None if after is None else _SIDES.get(after.type) or text_of(after)
        sizes = (SizeWord(amount, None, amount.span),)
        found.append(JointDetail("shoulder", None, sizes, place, None, draft.span(node)))
    return found


def _follows(word: Token, amount: Span, draft: Draft) -> bool:
    start, end = draft.line.offsets(amount)[1], ends(word)[0]
    return start <= end and not draft.line.text[start:end].strip()


def _offset(node: Parsed, draft: Draft) -> list[Said]:
    amount = sum_in(node, draft)
    place = tokens(node.children, "PLACE")
    return [
        JointDetail(
            "offset",
            None,
            (SizeWord(amount, None, amount.span),),
            text_of(place[0]) if place else None,
            None,
            draft.span(node),
        )
    ]


def _shows(node: Parsed, draft: Draft) -> list[Said]:
    part = reference(trees(node.children, "ref")[0], draft)
    kind = text_of(tokens(node.children, "SHOWS")[0])
    return [JointDetail(kind, None, (), None, part, draft.span(node))]


def _glue(node: Parsed, draft: Draft) -> list[Said]:
    kind, _, place = text_of(tokens(node.children, "GLUEWORDS")[0]).partition(" ")
    if kind == "one":
        kind, place = "one edge", ""
    amounts = sums_in(node, draft)
    return [GlueWords(kind, amounts[0] if amounts else None, place or None, draft.span(node))]


def _spaced(node: Parsed, draft: Draft) -> list[Said]:
    amount = sum_in(node, draft)
    size = SizeWord(amount, None, amount.span)
    return [JointDetail("apart", None, (size,), None, None, draft.span(node))]


def _stopping(node: Parsed, draft: Draft) -> list[Said]:
    """Return ``stopped``, or ``stopped 40 from bottom``, of a groove."""
    places = tokens(node.children, "PLACE")
    sizes: tuple[SizeWord, ...] = ()
    if places:
        amount = sum_in(node, draft)
        sizes = (SizeWord(amount, None, amount.span),)
    place = text_of(places[0]) if places else None
    return [JointDetail("stopped", None, sizes, place, None, draft.span(node))]


def _after(node: Parsed, draft: Draft) -> list[Said]:
    named = stage(trees(node.children, "stage")[0], draft)
    return [AfterStage(named, draft.span(node))]


def _check_count(count: int, word: Token, node: Parsed, draft: Draft) -> None:
    """Check that a number before a joint is a count: "2 tenons", but hardly "20 tenon"."""
    start, end = ends(word)
    written = draft.line.text[start:end]
    if count == 1 or written.lower().endswith("s"):
        return
    number = tokens(node.children, "INT")[0]
    first, last = ends(number)
    figure = draft.line.text[first:last]
    place = draft.line.span(first, end)
    draft.error(
        "count-or-size",
        f"is {figure} how many there are of it, or a size?",
        draft.span(number),
        Repair("if it is a size, write it behind", place, f"{written} {figure}"),
        Repair("if it is a count", place, f"{figure} {written}s"),
    )


_SIDES: dict[str, str | None] = {"_BELOW": "below", "_ABOVE": "above", "DIRECTION": None}
BUILDERS: dict[str, Callable[[Parsed, Draft], list[Said]]] = {
    "detail": _details,
    "shoulder": _shoulders,
    "offset": _offset,
    "shows": _shows,
    "gluewords": _glue,
    "spaced": _spaced,
    "stopping": _stopping,
    "afterstage": _after,
}
"""What may be said of a joint beside its sizes, by the name of its parse tree."""
