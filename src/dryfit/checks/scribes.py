"""What is scribed on site (M18): there must be wood to cut away, and no joint in it."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.checks.finding import finding
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.geometry.box import Box
from dryfit.piece.declared.site import PlaceWords, Scribe
from dryfit.placing.model import Copy, Model, Part
from dryfit.placing.scribing import SCRIBED_ALONG, strip_along


def check_scribes(model: Model, place: PlaceWords) -> Iterator[Diagnostic]:
    """Yield what cannot be cut away: a part that would go whole, and a joint that would be hit.

    Findings: scribe-through, scribe-into-joint.
    """
    for scribe in place.scribes:
        axis = SCRIBED_ALONG[scribe.side]
        cut = strip_along(model, scribe.side, scribe.amount)
        reached = [
            (part, copy) for part in model.parts for copy in part.copies if copy.box.overlap(cut)
        ]
        thin = [pair for pair in reached if pair[1].box.extent(axis) <= scribe.amount]
        if thin:
            yield _through(model, scribe, thin, axis)
            continue
        joints = [joint for joint in model.joints if _in_reach(joint.region, cut, axis)]
        if joints:
            yield _into(model, scribe, joints[0].guest, joints[0].host)


def _in_reach(region: Box, cut: Box, axis: int) -> bool:
    # A joint is flat where faces only meet; it is hit where it lies in what is cut, not beside it.
    if not all(
        region.low[other] <= cut.high[other] and cut.low[other] <= region.high[other]
        for other in range(3)
    ):
        return False
    return region.low[axis] < cut.high[axis] and cut.low[axis] < region.high[axis]


def _through(model: Model, scribe: Scribe, thin: list[tuple[Part, Copy]], axis: int) -> Diagnostic:
    part, copy = thin[0]
    shown, size = model.display.with_unit, copy.box.extent(axis)
    return finding(
        "M18",
        "scribe-through",
        Severity.ERROR,
        f"{copy.name}: {shown(scribe.amount)} may be cut away at the {scribe.side}, and it is "
        f"{shown(size)} there: nothing would be left",
        scribe.span,
        figures={"scribe": scribe.amount, "size": size},
        remedy=f"let a strip stand there that is wider than {shown(scribe.amount)}, or leave less "
        f"than {shown(part.thickness)}",
    )


def _into(model: Model, scribe: Scribe, guest: str, host: str) -> Diagnostic:
    return finding(
        "M18",
        "scribe-into-joint",
        Severity.WARNING,
        f"the {model.display.with_unit(scribe.amount)} that may be cut away at the {scribe.side} "
        f"reach into the joint of {guest} and {host}",
        scribe.span,
        figures={"scribe": scribe.amount},
        remedy="leave less, or let a strip stand there that is in no joint of the case",
    )
