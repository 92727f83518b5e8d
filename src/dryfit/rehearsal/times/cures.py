"""Nothing is done with a glued thing before its glue is ready for that (TRADE C2.3, C2.4, H67)."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from dryfit.plan.operation import GlueUp
from dryfit.rehearsal.fault import Fault, Reason
from dryfit.rehearsal.goal import Goal
from dryfit.rehearsal.lipping import is_lipping
from dryfit.rehearsal.times.deeds import Deed, standing_for
from dryfit.rehearsal.times.glue_lags import OUT_OF_CLAMPS, glue_for, lag_before, lags_after
from dryfit.rehearsal.times.working_hours import Hours, moment_in_words, spoken
from dryfit.shop.shop import Shop

_DEEDS: Mapping[str, str] = {
    "out of clamps": "come out of the clamps",
    "next stage": "go into the next stage",
    "level": "be levelled or sanded",
    "machine": "be cut or planed across the glue line",
    "finish": "get a finish",
}


@dataclass(frozen=True, slots=True)
class _Glued:
    """A glue-up that is done: what it holds, when it was done, and how long it is left alone."""

    deed: Deed
    inside: frozenset[str]
    lags: Mapping[str, int]


def cures(deeds: tuple[Deed, ...], goal: Goal, hours: Hours, shop: Shop) -> Iterator[Fault]:
    """Yield what comes too soon after a glue-up, and glue-ups that print other waits."""
    glued: list[_Glued] = []
    for deed in deeds:
        for each in glued:
            if each.inside & deed.touched:
                yield from _too_soon(deed, each, hours)
        if deed.kind == "glue up":
            lags = lags_after(deed.operation, goal, shop)
            glued.append(_Glued(deed, _inside(deed, goal), lags))
            yield from _printed(deed, lags, goal, shop)


def _inside(deed: Deed, goal: Goal) -> frozenset[str]:
    """Return what is one thing from now on: members, or staves and the panel made of them.

    Of several copies of a part some may be lipped, and others not yet.
    """
    if is_lipping(deed.operation):
        return deed.touched
    return deed.touched | standing_for(deed.subject, goal)


def _too_soon(deed: Deed, glued: _Glued, hours: Hours) -> Iterator[Fault]:
    until = lag_before(deed.kind)
    lag = glued.lags.get(until, glued.lags[OUT_OF_CLAMPS])
    starts, ready = deed.step.starts.tenths, glued.deed.ends + lag
    if starts >= ready:
        return
    name = glued.deed.operation.id
    waited = max(0, starts - glued.deed.ends)
    yield Fault(
        Reason.WAIT,
        f"{deed.operation.id} begins {spoken(waited)} after {name}; the glue needs "
        f"{spoken(lag)} before the {glued.deed.subject} can {_DEEDS.get(until, until)}",
        f"not before {moment_in_words(ready, hours)}: {spoken(lag)} after "
        f"step {glued.deed.step.number}",
        deed.step.number,
        deed.operation.id,
    )


def _printed(deed: Deed, lags: Mapping[str, int], goal: Goal, shop: Shop) -> Iterator[Fault]:
    """Yield where the plan's own words about its glue differ from the shop's and the notes'."""
    said = deed.operation.glue_up
    if said is None:
        yield _wrong(deed, "says nothing of its glue", "glue, open time and waits of the glue-up")
        return
    glue = glue_for(deed.operation, goal, shop)
    if said.glue != glue.name:
        yield _wrong(deed, f"takes {said.glue}", f"{glue.name}, as notes and shop have it")
        return
    if (said.open_tenths, said.limit_tenths) != (glue.open, glue.close_within):
        yield _wrong(
            deed,
            f"allows {spoken(said.open_tenths)} open and {spoken(said.limit_tenths)} to close",
            f"{glue.name} allows {spoken(glue.open)} and {spoken(glue.close_within)}",
        )
    if said.closing_tenths > glue.close_within:
        yield _wrong(
            deed,
            f"takes {spoken(said.closing_tenths)} from the first glue to the last clamp",
            f"at most {spoken(glue.close_within)}, by {glue.name}",
        )
    yield from _printed_lags(deed, said, lags)


def _printed_lags(deed: Deed, said: GlueUp, lags: Mapping[str, int]) -> Iterator[Fault]:
    printed = {lag.until: lag.tenths for lag in said.lags}
    for until, lag in lags.items():
        if printed.get(until) != lag:
            tells = spoken(printed[until]) if until in printed else "nothing"
            yield _wrong(deed, f"tells {tells} for `{until}`", f"{spoken(lag)} for `{until}`")
    off = lags[OUT_OF_CLAMPS]
    if deed.operation.after_tenths != off:
        yield _wrong(
            deed,
            f"rests {spoken(deed.operation.after_tenths)} in the clamps",
            f"{spoken(off)} in the clamps",
        )


def _wrong(deed: Deed, message: str, needed: str) -> Fault:
    name = deed.operation.id
    return Fault(Reason.WAIT, f"{name} {message}", needed, deed.step.number, name)
