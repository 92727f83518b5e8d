"""Glue-ups: a glue that the shop does not have, and more hands than the shop has (TRADE C2)."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from dryfit.checks.finding import finding, listed
from dryfit.diagnostics import Diagnostic, Note, Severity
from dryfit.geometry.frame import LENGTH
from dryfit.placing.model import Assembly, Joint, Model
from dryfit.shop.glues import glue_named
from dryfit.shop.shop import Shop


def check_glue_ups(model: Model, shop: Shop) -> Iterator[Diagnostic]:
    """Yield, once for a line, what the shop lacks for a glue-up; helpers once for all.

    Findings: glue-unknown, helper-needed, weights-one-way.
    """
    stages = tuple({assembly.stage: assembly for assembly in model.assemblies}.values())
    for stage in stages:
        yield from _unknown(stage, shop)
        yield from _weights(model, stage)
    yield from _helpers(stages, shop)


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


def _weights(model: Model, stage: Assembly) -> Iterator[Diagnostic]:
    """K3: weights press down and no other way, whatever way the whole is laid."""
    joints = (model.joint(name) for name in stage.joints)
    if stage.pressed != "weights" or len({_shut_along(model, each) for each in joints}) < 2:
        return
    yield finding(
        "K3",
        "weights-one-way",
        Severity.WARNING,
        f"glue up {stage.stage}: weights press one way only, and its joints are shut along several",
        stage.span,
        figures={},
        remedy="leave `weights` out, so that it is clamped, or glue it up in two stages",
    )


def _shut_along(model: Model, joint: Joint) -> int:
    """Return the axis of the piece along which a joint is pushed shut."""
    guest, host = (model.copy(name).frame.axes[LENGTH][0] for name in (joint.guest, joint.host))
    if joint.kind == "half lap":
        return 3 - guest - host
    flat = [axis for axis in range(3) if joint.region.extent(axis) == 0]
    return flat[0] if flat else guest


def _helpers(stages: Sequence[Assembly], shop: Shop) -> Iterator[Diagnostic]:
    asking = [each for each in stages if each.people is not None and each.people > shop.workers]
    if not asking:
        return
    first, *others = asking
    most = max(each.people or 0 for each in asking)
    names = listed([each.stage for each in asking])
    which = f"glue up {names} takes" if not others else f"the glue-ups {names} take"
    yield finding(
        "C2",
        "helper-needed",
        Severity.NOTICE,
        f"{which} {most} people, and the shop file has {shop.workers}",
        first.span,
        figures={},
        notes=tuple(Note(f"{each.people} people for {each.stage}", each.span) for each in others),
        remedy="ask somebody for that hour, before the glue is opened",
    )
