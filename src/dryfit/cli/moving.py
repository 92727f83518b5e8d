"""``steps --move``: what it would be to do one step before another."""

from __future__ import annotations

from collections.abc import Sequence

from dryfit import workshop
from dryfit.cli.status import StoppedError
from dryfit.cli.why import asked_steps
from dryfit.diagnostics import Findings
from dryfit.plan.as_text import UNREHEARSED
from dryfit.plan.move_text import forbidden_text, move_text, named
from dryfit.plan.plan import Plan, Step
from dryfit.plan.totals_text import ENDED_IN_WORDS, in_lines
from dryfit.workshop import Checked

SIDES = ("before", "after")


def moved(
    words: Sequence[str], checked: Checked, plan: Plan, *, rehearsed: bool
) -> tuple[str, Findings]:
    """Return what becomes of the plan with ``STEP before STEP``, or what forbids it.

    Where the plan was `rehearsed`, so is the other one: if it fails its faults are all that is
    told.

    Raises
    ------
    StoppedError
        the words name no two steps, or ask for what is so already.
    """
    one, side, other = words
    if side not in SIDES:
        raise StoppedError(f"--move STEP before STEP, or STEP after STEP; `{side}` is neither")
    ends = _step(one, plan), _step(other, plan)
    first, then = ends if side == "before" else ends[::-1]
    if first.number <= then.number:
        same = first.number == then.number
        already = "that is one step" if same else f"{named(first)} is done before {named(then)}"
        raise StoppedError(f"{already}{'' if same else ' already'}")
    wished = workshop.wished(checked, plan, first, then)
    if wished is None or wished.plan is None:
        return forbidden_text(first, then, wished.chain if wished else ()), ()
    if rehearsed:
        passed, faults = workshop.rehearse(checked, wished.plan, lambda _: None)
        if passed is None:
            return "", faults
    told = move_text(first, then, plan, wished.plan, wished.line, wished.with_line)
    ended = in_lines(ENDED_IN_WORDS) if wished.plan.ended_early else []
    mark = "" if rehearsed else f"{UNREHEARSED}\n\n"
    return mark + told + "".join(f"{line}\n" for line in ended), ()


def _step(thing: str, plan: Plan) -> Step:
    """Return the one step that is named by its number or by an operation."""
    found = asked_steps((thing,), plan.steps)
    if len(found) == 1:
        return found[0]
    if not found:
        raise StoppedError(f"no step is called `{thing}`; `dryfit steps` lists them")
    numbers = ", ".join(str(step.number) for step in found)
    raise StoppedError(f"`{thing}` is done in steps {numbers}: name one by its number")
