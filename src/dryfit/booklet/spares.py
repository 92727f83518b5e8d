"""Wood that is no part: test pieces for settings and joints, one spare blank (TRADE A3.4, H55)."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from fractions import Fraction

from dryfit.booklet.bench import Bench
from dryfit.booklet.text import Text, joined, listed
from dryfit.plan.operation import Operation
from dryfit.stock.laid_out import LaidOut

_WITH_THE_PARTS = "They go through the planer with the parts; joints are tried on them."
_WHY = "It has the most cuts, and one that is made later has another thickness."


def spare_wood(bench: Bench, laid: LaidOut | None = None) -> tuple[Text, ...]:
    """Return what wood is made ready besides the parts, a sentence each; none without joints.

    What is `laid` out on the boards is named by its letters.
    """
    blanks = () if laid is None else laid.blanks
    there = () if laid is None else laid.placed
    extra: dict[str, tuple[str, ...]] = {"test piece": (), "spare": (), "if you like": ()}
    for each in blanks:
        if each.what in extra and each.name in there:
            what = "if you like" if each.if_room and each.what == "spare" else each.what
            extra[what] += (each.letter,)
    tested = {each.part for each in blanks if each.what == "test piece" and each.name in there}
    return tuple(_sentences(bench, extra, tested))


def _sentences(
    bench: Bench, extra: Mapping[str, tuple[str, ...]], tested: Collection[str]
) -> Iterator[Text]:
    parts = bench.model.parts
    cut = [part for part in parts if part.features and not part.made and part.staves is None]
    if not cut:
        return
    operations = [each for step in bench.plan.steps for each in step.operations]
    there = {bench.model.part(name).thickness for name in tested}
    planed = [each for each in _planed(operations) if each not in there]
    thick = joined(((bench.say.setting(each),) for each in planed), ", ", " and ")
    if extra["test piece"]:
        yield (f"Test pieces: {_blanks(extra['test piece'])}. {_WITH_THE_PARTS}",)
        if planed:
            long = bench.say.size_with_unit(bench.shop.allowances["test_piece"])
            yield "For what else is planed, ", *thick, ": a strip each, at least ", long, " long."
    elif planed:
        long = bench.say.size_with_unit(bench.shop.allowances["test_piece"])
        yield (
            "Test pieces: a strip of each thickness that is planed, ",
            *thick,
            ", at least ",
            long,
            f" long. {_WITH_THE_PARTS}",
        )
    blanks = {each.part: each.rough for each in operations if each.rough is not None}
    hardest = max(cut, key=lambda part: len(part.features))
    rough = blanks.get(hardest.name)
    if extra["if you like"]:
        spare = f"To spare, if you like: {_blanks(extra['if you like'])}, milled with the others."
        yield (f"{spare} {_WHY}",)
    if extra["spare"]:
        yield (f"Spare, milled with the others: {_blanks(extra['spare'])}.",)
    elif rough is not None and not extra["if you like"]:
        yield (
            f"A spare: one more blank of the {hardest.name}, ",
            *bench.rough(rough),
            f", milled with the others. {_WHY}",
        )


def _blanks(letters: tuple[str, ...]) -> str:
    return f"{'blank' if len(letters) == 1 else 'blanks'} {listed(letters)}"


def _planed(operations: list[Operation]) -> list[Fraction]:
    """Return the thicknesses that the planer is set to, the greatest first."""
    found = {
        setting.value
        for each in operations
        if each.station == "planer" and each.kind not in {"rough thickness", "strip thickness"}
        for setting in each.settings
        if setting.axis == "thickness" and isinstance(setting.value, Fraction)
    }
    return sorted(found, reverse=True)
