"""What a maker can read of a pattern before using it: its sketch, and what it can be told."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.notes.tree import Parameter, PatternBlock, Sum

_REMARK = "#"


def sketch_of(block: PatternBlock) -> tuple[str, ...]:
    """Return the remarks that stand before a pattern: what it is, and a sketch.

    Blank lines and a line of units may stand between them and the pattern.
    """
    lines = block.notes.source.text.split("\n")[: block.span.line - 1]
    while lines and _is_between(lines[-1]):
        lines.pop()
    remarks: list[str] = []
    while lines and lines[-1].startswith(_REMARK):
        remarks.append(lines.pop().removeprefix(_REMARK).removeprefix(" ").rstrip())
    return tuple(reversed(remarks))


def settings_of(block: PatternBlock) -> Iterator[str]:
    """Yield a line for each parameter: its name, what it is if nobody sets it, and its range."""
    for parameter in block.parameters:
        words = _setting(parameter)
        if words:
            yield f"{parameter.name}: {words}"


def _setting(parameter: Parameter) -> str:
    words = [] if parameter.default is None else [_typed(parameter.default)]
    if parameter.least is not None and parameter.most is not None:
        words.append(f"from {_typed(parameter.least)} to {_typed(parameter.most)}")
    return ", ".join(words)


def _is_between(line: str) -> bool:
    return not line.strip() or line.split(maxsplit=1)[0] == "units"


def _typed(amount: Sum) -> str:
    return amount.span.text()
