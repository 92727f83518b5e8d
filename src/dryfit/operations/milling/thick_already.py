"""Pieces of one part out of boards of several thicknesses: each is planed only where it must be.

What is used at the thickness that its planed board has is neither faced nor planed, and what loses
little until it is thin enough has no rest in between.
"""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import replace

from dryfit.operations.boards.out_of_boards import OutOfBoards
from dryfit.operations.words import listed
from dryfit.plan.operation import Operation


def for_those(row: Operation, out: OutOfBoards) -> Operation | None:
    """Return a deed on the pieces that it is needed for, None where it is for none."""
    if row.kind == "rough thickness":
        soon = [name for name, rest in out.rests.items() if not rest]
        return _without(row, {*out.kept, *soon}, "off which little comes")
    if row.kind in {"face", "thickness"}:
        return _without(row, out.kept, "which have that thickness already")
    return row


def _without(row: Operation, names: Collection[str], why: str) -> Operation | None:
    spared = [name for work in row.work for name in work.copies if name in names]
    if not spared:
        return row
    every = sum(len(work.copies) for work in row.work)
    rows = (
        replace(work, copies=tuple(name for name in work.copies if name not in names))
        for work in row.work
    )
    left = tuple(work for work in rows if work.copies)
    if not left:
        return None
    share = -(-row.tenths * (every - len(spared)) // every)
    told = (f"Without {listed(spared)}, {_of(spared, why)}",)
    return replace(row, work=left, tenths=share, details=(*row.details, told))


def _of(names: Collection[str], why: str) -> str:
    return why.replace("have", "has") if len(names) == 1 else why
