"""TRADE B23: a lid's pins stand at its edge, else it turns into what is below."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.checks.finding import finding
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.geometry.box import Box
from dryfit.joinery.cut import bounded
from dryfit.placing.model import Joint, Model

_UP = 2
_SIDES = {(0, -1): "left", (0, 1): "right", (1, -1): "front", (1, 1): "back"}
_SLACK = Fraction(1)
"""What stands over the pin by no more goes past it, mm: half a barrel is thicker (a guess)."""


def check_hinge_pins(model: Model) -> Iterator[Diagnostic]:
    """Yield each lid that stands out behind the pins of its hinges, once for a lid.

    As the lid goes up, what is behind the pin goes down: on a post there it jams at once (error),
    and along the carrier the lid stands upright at most (warning).
    Findings: hinge-pin-inside.
    """
    told: set[str] = set()
    for joint in (each for each in model.joints if each.kind == "hinges"):
        lid = model.part_of(joint.guest).name
        # A leaf lies between the lid and what is below it: the region is level there.
        if joint.region.extent(_UP) == 0 and lid not in told:
            for each in _inside(model, joint):
                told.add(lid)
                yield each


def _inside(model: Model, joint: Joint) -> Iterator[Diagnostic]:
    lid, carrier = model.copy(joint.guest), model.copy(joint.host)
    own, other = lid.box, carrier.box
    row = max((0, 1), key=joint.region.extent)
    across = 1 - row
    side = _side(own, other, across)
    if not side:
        return
    pin = joint.region.high[across] if side > 0 else joint.region.low[across]
    by = own.high[across] - pin if side > 0 else pin - own.low[across]
    if by <= _SLACK:
        return
    below = sorted(_below(model, joint, (across, side), (pin, by)))
    where, display = _SIDES[across, side], model.display
    shown = display.with_unit(by, fitted=True)
    host, part = model.part_of(joint.host), model.part_of(joint.guest)
    stands = f"{part.name}: the pins of its hinges stand {shown} inside its {where} edge"
    flush = f"hinge the {part.name} to what is flush there"
    if below:
        yield finding(
            "B23",
            "hinge-pin-inside",
            Severity.ERROR,
            f"{stands}: opened, what is behind them turns down into the {below[0]}",
            joint.span,
            figures={"inside": by},
            remedy=f"set the {host.name} flush with the {below[0]} at the {where}, or {flush}",
        )
        return
    yield finding(
        "B23",
        "hinge-pin-inside",
        Severity.WARNING,
        f"{stands}: what is behind them meets the {host.name}, so that the {part.name} opens to "
        "upright at most and falls shut",
        joint.span,
        figures={"inside": by},
        remedy=f"end the {part.name} flush with the {host.name} at the {where}, or {flush}",
    )


def _side(lid: Box, carrier: Box, across: int) -> int:
    """Return the side at which the pins are: where the two are nearest to flush; 0 for neither."""
    low, high = (
        abs(lid.low[across] - carrier.low[across]),
        abs(lid.high[across] - carrier.high[across]),
    )
    return (low > high) - (low < high)


def _below(
    model: Model, joint: Joint, edge: tuple[int, int], behind: tuple[Fraction, Fraction]
) -> Iterator[str]:
    """Yield the parts that stand behind the pin, so near below the lid that it turns into them."""
    (across, side), (pin, by) = edge, behind
    lid = model.copy(joint.guest).box
    ends = (pin, pin + by) if side > 0 else (pin - by, pin)
    swept = bounded(bounded(lid, across, *ends), _UP, lid.low[_UP] - by, lid.low[_UP])
    for part in model.parts:
        for copy in part.copies:
            if copy.name != joint.guest and copy.box.overlap(swept) is not None:
                yield part.name
