"""Splayed parts as declared: the slope each way, exact, and what is no slope of a leg."""

from __future__ import annotations

from fractions import Fraction
from math import radians, tan

from dryfit.diagnostics import Diagnostic, Hint, Severity, Span
from dryfit.notes.tree import PartsLine, Slope, Splayed
from dryfit.piece.declared import SplayWords
from dryfit.piece.orientation import Orientation
from dryfit.piece.sums import Sums

_STEP = 1_000_000
"""Over a height of half a metre a slope that is rounded so is right to 1/1000 mm."""
_STEEPEST = 30
_STEEPEST_RISE = Fraction(577, 1000)
"""The tangent of 30 degrees, a little less.  Beyond it a tenon across the seat's thickness comes
out too near to where the next one goes in, and the leg is more a strut (common practice)."""
_ZERO = Fraction(0)
_UP = 2


def declared_splay(line: PartsLine, lies: Orientation, sums: Sums) -> SplayWords | None:
    """Return how the copies of a part lean outwards, or None where its line does not say so.

    Findings: splay-too-steep, splay-not-upright, said-twice.
    """
    said = next((each for each in line.clauses if isinstance(each, Splayed)), None)
    if said is None:
        return None
    boards = lies.run != "upright" and lies.axes[1] == _UP
    if lies.run != "upright" and not boards:
        _tell(
            sums,
            "splay-not-upright",
            f"{line.name}: what lies flat cannot be splayed, only what stands upright or on edge",
            said.span,
            "write `upright` or `on edge` on its line, or leave `splayed` out",
        )
        return None
    by_way: dict[str | None, Fraction] = {}
    for slope in said.slopes:
        rise = _rise(slope)
        if rise is None or not 0 < rise <= _STEEPEST_RISE:
            _too_steep(line, slope, sums)
            return None
        if (
            slope.way in by_way
            or (by_way and None in {slope.way, *by_way})
            or _clash(slope, by_way)
        ):
            _tell(
                sums,
                "said-twice",
                "said twice: how far the parts are splayed",
                slope.span,
                "give each way once: `splayed 1 in 8 to the sides and 1 in 12 front and back`",
            )
            return None
        by_way[slope.way] = rise
    both = by_way.get("both", by_way.get(None, _ZERO))
    return SplayWords(
        by_way.get("sides", both),
        by_way.get("front and back", both),
        None in by_way,
        tuple(
            (slope.rise, rise)
            for slope in said.slopes
            if slope.run is None and (rise := _rise(slope)) is not None
        ),
        said.span,
        boards,
    )


def _clash(slope: Slope, by_way: dict[str | None, Fraction]) -> bool:
    return bool(by_way) and "both" in {slope.way, *by_way}


def _rise(slope: Slope) -> Fraction | None:
    """Return mm sideways per mm of height; of an angle rounded once, to a millionth."""
    if slope.run is not None:
        return slope.rise / slope.run if slope.run else None
    if not 0 < slope.rise <= _STEEPEST:
        return None
    return Fraction(round(tan(radians(float(slope.rise))) * _STEP), _STEP)


def _too_steep(line: PartsLine, slope: Slope, sums: Sums) -> None:
    _tell(
        sums,
        "splay-too-steep",
        f"{line.name}: `{slope.span.text()}` is no slope of a leg; it is more than plumb, and at "
        f"most {_STEEPEST} degrees off it",
        slope.span,
        "usual is `1 in 8`, which is about 7 degrees; the height comes second",
    )


def _tell(sums: Sums, code: str, message: str, span: Span, hint: str) -> None:
    finding = Diagnostic(code, Severity.ERROR, message, span, hints=(Hint(hint),))
    sums.findings.append(finding)
