"""Why there is no order: the finding ``no-order`` (H81), at the line that can be changed."""

from __future__ import annotations

from dryfit.diagnostics import Diagnostic, Hint, Note, Severity, Span
from dryfit.operations.members import assembly_named
from dryfit.operations.minutes import in_minutes
from dryfit.operations.wishes import NOT_KEPT, WHY_WISHED, wished
from dryfit.order import Precedence, Unsolvable
from dryfit.placing.model import Model
from dryfit.plan.operation import Operation, WorkList
from dryfit.planning.chains import links_of
from dryfit.shop.shop import Shop


def no_order(reason: Unsolvable, model: Model, work: WorkList, shop: Shop) -> Diagnostic:
    """Return the finding: a wish and a visit that exclude one another, or too short a day."""
    long = next((each for each in work.operations if reason.names == (each.id,)), None)
    if reason.chain:
        return _kept_apart(reason.chain, model, work)
    if long is not None and not long.splittable and long.tenths > shop.closes - shop.opens:
        return _too_long(long, model, shop)
    return _found(f"no order keeps all rules: {reason}", None)


def _kept_apart(chain: tuple[Precedence, ...], model: Model, work: WorkList) -> Diagnostic:
    notes = tuple(Note(link.told()) for link in links_of(chain, work))
    own = tuple(rule for rule in work.rules if rule.reason != WHY_WISHED)
    spans = wished(model, work.operations, own).spans
    for edge in chain:
        span = spans.get((edge.before, edge.after))
        if span is not None and edge.reason == WHY_WISHED:
            message = f"{edge.before} cannot come before {edge.after}"
            return _found(message, span, notes, NOT_KEPT)
    return _found("no order keeps all rules", None, notes)


def _too_long(long: Operation, model: Model, shop: Shop) -> Diagnostic:
    assembly = assembly_named(model, long.part)
    spans = [part.spans[0] for part in model.parts if part.name == long.part and part.spans]
    remedy = "write longer `hours` into the shop file"
    if long.kind == "glue up":
        remedy += ", or glue it up in two stages"
    return _found(
        f"{long.id} cannot be broken off and takes {in_minutes(long.tenths)}; the shop is open "
        f"for {in_minutes(shop.closes - shop.opens)} a day",
        next(iter(spans), None) if assembly is None else assembly.span,
        remedy=remedy,
    )


def _found(
    message: str, span: Span | None, notes: tuple[Note, ...] = (), remedy: str = ""
) -> Diagnostic:
    hints = (Hint(remedy),) if remedy else ()
    return Diagnostic(
        "no-order", Severity.ERROR, message, span, rule="H81", notes=notes, hints=hints
    )
