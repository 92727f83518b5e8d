"""How loads become one piece again: what lies, hangs, slides or is screwed on what."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.booklet.bench import Bench
from dryfit.booklet.text import Text
from dryfit.placing.loads import Load

_FAST = (
    ("buttons", "lay {it} on and hold {it} by {its} buttons"),
    ("clips", "lay {it} on and hold {it} by {its} clips"),
    ("screws", "screw {it} in place"),
    ("back rabbet", "screw {it} in place"),
    ("rest", "lay {it} in place"),
)
_LOOSE = (
    ("hinges", "hang {it} on {its} hinges"),
    ("shelf pins", "lay {it} on {its} pins"),
    ("runner", "slide {it} in"),
)


def put_together(loads: tuple[Load, ...], bench: Bench, *, loose: bool) -> Iterator[Text]:
    """Yield a sentence for each load but the first, by the joints in which it meets the others.

    What is `loose`, as doors and drawers are, goes in when the piece stands and is fixed.
    """
    for load in loads[1:]:
        words, goes_in_last = _how(load, bench)
        if goes_in_last is loose:
            several = load.count > 1
            name = f"{load.count} × {load.title}" if several else f"the {load.title}"
            it, its = ("them", "their") if several else ("it", "its")
            yield (f"Then {name}: {words.format(it=it, its=its)}.",)


def _how(load: Load, bench: Bench) -> tuple[str, bool]:
    own = set(load.copies)
    meeting = [j for j in bench.model.joints if (j.guest in own) is not (j.host in own)]
    fastened = next((joint.fastened for joint in meeting if joint.fastened is not None), None)
    if fastened is not None:
        return f"put {{it}} in place; the joint is {fastened}", False
    parts = {bench.model.part_of(name).name for name in own}
    kinds = {joint.kind for joint in meeting}
    kinds |= {
        fitting.kind
        for fitting in bench.model.fittings
        if fitting.part in parts and not parts.issuperset(fitting.onto)
    }
    for rows, loose in ((_LOOSE, True), (_FAST, False)):
        known = next((words for kind, words in rows if kind in kinds), None)
        if known is not None:
            return known, loose
    if any(bench.model.part_of(name).opening for name in own):
        return "put {it} into the opening and try the gaps", True
    return "put {it} in place", False
