"""What one family of operations adds to the work list."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import pairwise

from dryfit.diagnostics import Findings
from dryfit.plan.operation import Alternative, Operation, Rule


@dataclass(frozen=True, slots=True)
class Batch:
    """Operations in the order of the work, the rules between them, and what was found."""

    operations: tuple[Operation, ...] = ()
    rules: tuple[Rule, ...] = ()
    alternatives: tuple[Alternative, ...] = ()
    findings: Findings = ()


def joined(batches: Iterable[Batch]) -> Batch:
    """Return everything in the batches, in their order."""
    row = tuple(batches)
    return Batch(
        tuple(operation for batch in row for operation in batch.operations),
        tuple(rule for batch in row for rule in batch.rules),
        tuple(alternative for batch in row for alternative in batch.alternatives),
        tuple(finding for batch in row for finding in batch.findings),
    )


def chained(operations: Iterable[Operation], reasons: Iterable[str]) -> tuple[Rule, ...]:
    """Return the rules that put each operation after the one before it, with their reasons."""
    row = tuple(operations)
    pairs = pairwise(row)
    return tuple(
        Rule(before.id, after.id, reason)
        for (before, after), reason in zip(pairs, reasons, strict=True)
    )
