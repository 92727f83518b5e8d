"""The sizes of joints and of what is said of them, by dimension; what says nothing is reported."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity, Span
from dryfit.kinds.joints import kind_written
from dryfit.notes.tree import JointDetail, JointSpec, SizeWord
from dryfit.piece.sums import Sums

# What the bare numbers of a detail mean, in order: `pegs 3/8`, `haunch 10 long 6`.
_OF_DETAIL = {
    "haunch": ("length", "depth"),
    "tongue": ("length", "thickness"),
    "stopped": ("length",),
    "keys": ("thickness", "depth"),
    "pegs": ("diameter",),
    "proud": ("length",),
    "shoulder": ("length",),
    "offset": ("length",),
    "apart": ("length",),
}
# A peg is as thick as its hole; a shoulder is wide or deep by how the tenon is looked at.
_SAME = {
    "pegs": {"thickness": "diameter"},
    "haunch": {"width": "depth"},
    "shoulder": {"width": "length", "depth": "length"},
}
_DIMENSION = {"long": "length", "wide": "width", "thick": "thickness", "deep": "depth"}


def joint_sizes(spec: JointSpec, sums: Sums) -> dict[str, Fraction]:
    """Return the sizes of a joint in mm by dimension.

    Findings: joint-size-unused, also for a number of joints and for a place that a joint of its
    kind does not take.
    """
    kind = kind_written(spec.kind)
    what = spec.kind if kind and kind.cut and not kind.rowed else f"joint with {spec.kind}"
    takes = kind.sizes if kind else ()
    if spec.count is not None and spec.count > 1 and not (kind and kind.counted):
        _unused(f"{spec.count} at one place", what, takes, spec.span, sums)
    if spec.place is not None and spec.kind != "tenon":
        _unused(f"place of its own (`{spec.place.span.text()}`)", what, takes, spec.span, sums)
    return _by_dimension(spec.sizes, what, takes, kind.same if kind else {}, sums)


def check_said_once(details: Sequence[JointDetail], sums: Sums) -> None:
    """Report what is said of a joint twice with figures, such as `4 pegs, 6 pegs`: said-twice.

    Two shoulders without a place are those of both edges.
    """
    seen: set[tuple[str, str | None, str]] = set()
    for each in details:
        if each.kind == "shoulder" and each.place is None:
            continue
        place = each.place if each.kind == "shoulder" else None
        figures = [name for name, said in (("sizes", each.sizes), ("count", each.count)) if said]
        if any((each.kind, place, name) in seen for name in figures):
            _tell(
                Diagnostic(
                    "said-twice",
                    Severity.ERROR,
                    f"said twice: the {each.kind} of the joint",
                    each.span,
                    hints=(Hint("keep one of the two"),),
                ),
                sums,
            )
        seen.update((each.kind, place, name) for name in figures)


def detail_sizes(detail: JointDetail, sums: Sums) -> dict[str, Fraction]:
    """Return the sizes of a detail in mm by dimension.  Findings: joint-size-unused."""
    takes, same = _OF_DETAIL.get(detail.kind, ()), _SAME.get(detail.kind, {})
    return _by_dimension(detail.sizes, detail.kind, takes, same, sums)


def _by_dimension(
    words: Sequence[SizeWord],
    what: str,
    takes: Sequence[str],
    same: Mapping[str, str],
    sums: Sums,
) -> dict[str, Fraction]:
    found: dict[str, Fraction] = {}
    bare = iter(takes)
    for word in words:
        named = _DIMENSION.get(word.dimension or "", word.dimension)
        dimension = next(bare, None) if named is None else same.get(named, named)
        value = sums.size(word.amount)
        if dimension is None or dimension not in takes or dimension in found:
            _unused(f"`{word.span.text()}`", what, takes, word.span, sums)
        elif value is not None:
            found[dimension] = value
    return found


def _unused(said: str, what: str, takes: Sequence[str], span: Span, sums: Sums) -> None:
    listed = ", ".join(takes)
    hint = f"it takes, each once: {listed}" if takes else "its sizes are worked out"
    finding = Diagnostic(
        "joint-size-unused",
        Severity.ERROR,
        f"nothing is made of {said}: a {what} does not take it",
        span,
        hints=(Hint(f"{hint}; leave the rest out"),),
    )
    _tell(finding, sums)


def _tell(finding: Diagnostic, sums: Sums) -> None:
    # A joint's words count for each of the parts that its line names, and are told once.
    if finding not in sums.findings:
        sums.findings.append(finding)
