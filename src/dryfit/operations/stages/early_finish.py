"""Parts that a wish finishes before a glue-up: what comes later leaves their surfaces alone.

They are sanded all round before their coats, also where they will face inwards; sanding them once
more would take the finish off again (TRADE D6).
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from dryfit.operations.members import all_copies, assembly_named, parts_of
from dryfit.operations.words import listed
from dryfit.placing.model import Assembly, Coating, Model


def finished_before(assembly: Assembly, model: Model) -> frozenset[str]:
    """Return the copies that carry their finish when this assembly is glued."""
    return frozenset(
        name
        for coating in model.coatings
        if assembly.name in coating.glued_later
        for name in coating.copies
    )


def but_not(copies: Iterable[str], model: Model) -> str:
    """Return the clause that leaves finished copies out, or nothing where there are none."""
    parts = parts_of(tuple(copies), model)
    if not parts:
        return ""
    named = listed(part.name if len(part.copies) == 1 else part.written.lower() for part in parts)
    several = len(parts) > 1 or len(parts[0].copies) > 1
    return f", but not the {named}, which {'are' if several else 'is'} finished"


def left_out(subject: str, coated: tuple[str, ...], model: Model) -> str:
    """Return the clause for the parts of an assembly that are not in what is finished with it."""
    assembly = assembly_named(model, subject)
    if assembly is None:
        return ""
    others = {name: each for each in model.coatings for name in each.copies if not each.surfaces}
    left = [name for name in all_copies(assembly, model) if name not in coated]
    early = [name for name in left if name in others and others[name].before]
    return but_not(early, model) + _other(left, others, model)


def _other(left: Iterable[str], others: Mapping[str, Coating], model: Model) -> str:
    # What gets another finish, or none, while the rest of its assembly is coated.
    bare = parts_of(tuple(name for name in left if name not in others), model)
    later = tuple(name for name in left if name in others and not others[name].before)
    kept = [part.written.lower() for part in (*bare, *parts_of(later, model))]
    return f"; keep it off the {listed(kept)}" if kept else ""
