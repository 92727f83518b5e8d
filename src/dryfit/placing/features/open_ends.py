"""Where a trench that runs right through would come out in sight (TRADE B9, H15)."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.geometry.box import Box
from dryfit.geometry.solid import Solid
from dryfit.placing.features.task import Task, box_of
from dryfit.placing.site import SIDE_WORDS

_HAIR = Fraction(1, 100)
_DOWN = (2, -1)


def runs_through(
    task: Task, layer: Box, section: Iterable[tuple[int, Fraction, Fraction]], along: int
) -> None:
    """List that a trench is taken to run right through, and tell where it would show.

    `layer` is the wood under the face, `section` its bounds across.  Findings: groove-comes-out.
    """
    task.assume(f"the {task.name} runs right through", "through")
    trench = box_of(layer, section)
    if not task.box.contains(trench):
        return
    ends = [side for side in (-1, 1) if _shows(task, trench, along, side)]
    if not ends:
        return
    sides = " and ".join(SIDE_WORDS[along, side] for side in ends)
    stop = f"stopped 10 from {SIDE_WORDS[along, ends[0]]}"
    finding = Diagnostic(
        "groove-comes-out",
        Severity.WARNING,
        f"{task.name}: right through it comes out in sight at the {sides}",
        task.feature.span,
        rule="B9",
        hints=(Hint(f"stop it, such as `{stop}`, or write `through` if it may show"),),
    )
    if finding not in task.site.findings:
        task.site.findings.append(finding)


def _shows(task: Task, trench: Box, along: int, side: int) -> bool:
    """Return whether the end of a trench is covered neither by another part nor by the floor.

    An end inside another part, such as a tenon's, is covered too.
    """
    at = trench.high[along] if side > 0 else trench.low[along]
    if (along, side) == _DOWN and at == 0:
        return False
    beyond = box_of(trench, [(along, min(at, at + side * _HAIR), max(at, at + side * _HAIR))])
    others = tuple(
        other.box
        for other in task.around.near(beyond)
        if other.name != task.copy.name and other.box.overlap(beyond)
    )
    return bool(Solid(beyond, others).cells())
