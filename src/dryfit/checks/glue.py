"""Glue-ups: a glue that the shop does not have, and more hands than the shop has (TRADE C2)."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.checks.finding import finding
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.placing.model import Assembly, Model
from dryfit.shop.glues import glue_named
from dryfit.shop.shop import Shop


def check_glue_ups(model: Model, shop: Shop) -> Iterator[Diagnostic]:
    """Yield, once for a line, what the shop lacks for a glue-up.

    Findings: glue-unknown, helper-needed.
    """
    for stage in {assembly.stage: assembly for assembly in model.assemblies}.values():
        yield from _unknown(stage, shop)
        yield from _helpers(stage, shop)


def _unknown(stage: Assembly, shop: Shop) -> Iterator[Diagnostic]:
    if stage.glue is None or glue_named(shop, stage.glue) is not None:
        return
    yield finding(
        "C2",
        "glue-unknown",
        Severity.ERROR,
        f"glue up {stage.stage}: the shop has no glue called `{stage.glue}`, so its times are "
        "not known",
        stage.span,
        figures={},
        remedy=f"write one of {', '.join(shop.glues)}; or add yours to the shop file",
    )


def _helpers(stage: Assembly, shop: Shop) -> Iterator[Diagnostic]:
    if stage.people is None or stage.people <= shop.workers:
        return
    yield finding(
        "C2",
        "helper-needed",
        Severity.NOTICE,
        f"glue up {stage.stage} takes {stage.people} people, and the shop file has {shop.workers}",
        stage.span,
        figures={},
        remedy="ask somebody for that hour, before the glue is opened",
    )
