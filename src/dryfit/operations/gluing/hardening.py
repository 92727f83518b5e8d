"""Which glue has to be hard before a glued whole is sanded, planed, cut or finished (TRADE C2)."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from dryfit.operations.gluing.glue_up import lag_of
from dryfit.operations.members import all_inside
from dryfit.placing.model import Assembly, Model
from dryfit.plan.operation import Operation


def hard_first(
    assemblies: Iterable[Assembly], until: str, glue_ups: Mapping[str, Operation], model: Model
) -> Iterator[tuple[str, int]]:
    """Yield the glue-ups that are waited for, by their ids, and how long, in tenths of a minute.

    Of one inside another only where its glue takes longer: else the outer one's is hard last.
    `until` is the wait that counts, `glue_ups` are by assembly name.
    """
    lags = {each.name: lag_of(glue_ups[each.name], until) for each in assemblies}
    longest: dict[str, int] = {}
    for each in model.assemblies:
        if each.name in lags:
            for name in all_inside(each, model):
                longest[name] = max(longest.get(name, 0), lags[each.name])
    for name, lag in lags.items():
        if lag > longest.get(name, -1):
            yield glue_ups[name].id, lag


def with_all_inside(assembly: Assembly, model: Model) -> tuple[Assembly, ...]:
    """Return an assembly and all that are inside of it, however deep."""
    names = {assembly.name, *all_inside(assembly, model)}
    return tuple(each for each in model.assemblies if each.name in names)
