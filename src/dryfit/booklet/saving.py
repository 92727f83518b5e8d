"""What the order saves against the same work part by part: a few figures and a drawing."""

from __future__ import annotations

from dataclasses import dataclass

from dryfit.booklet.bench import Bench
from dryfit.booklet.drawing import Svg
from dryfit.booklet.drawing.changes import changes_drawing
from dryfit.booklet.wording import clock, roughly
from dryfit.plan.changes import changes_of
from dryfit.plan.plan import Moment
from dryfit.plan.totals_text import spending_in_words


@dataclass(frozen=True, slots=True)
class SavingView:
    """What it takes in this order and part by part, what more set-up is for, the drawing."""

    rows: tuple[tuple[str, str, str], ...]
    spending: str
    drawing: Svg


def saving_view(bench: Bench) -> SavingView | None:
    """Return what the order saves, or None where nothing is ever set."""
    drawing = changes_drawing(changes_of(bench.plan))
    if drawing is None:
        return None
    totals = bench.plan.totals
    other = totals.part_by_part
    rows = (
        ("changes of a setting", str(totals.changeovers), str(other.changeovers)),
        ("setting up, with walks and test cuts", roughly(totals.setup), roughly(other.setup)),
        ("work", roughly(totals.work), roughly(other.attended - other.setup)),
        ("waiting in work hours", _or_none(totals.waiting), _or_none(other.waiting)),
        ("done", _clock(bench.plan.done), _clock(other.done)),
    )
    return SavingView(rows, spending_in_words(bench.plan.favour), drawing)


def _or_none(tenths: int) -> str:
    return roughly(tenths) if tenths else "none"


def _clock(moment: Moment | None) -> str:
    return "" if moment is None else clock(moment)
