"""What ``check`` says of sound notes: how sums were read, what each part is, what is assumed."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.piece.declared import INSIDE, Declared
from dryfit.piece.readings import readings
from dryfit.placing.lip_words import lip_remarks
from dryfit.placing.model import Model, Part

_RUNS = {"upright": "upright", "across": "from side to side"}


def understood(declared: Declared, model: Model) -> str:
    """Return the sums as read, the sizes of all parts, and the assumptions with their lines."""
    return "\n".join((*_sums(declared, model), *_sizes(model), *_assumptions(model))) + "\n"


def _sums(declared: Declared, model: Model) -> Iterator[str]:
    figures = model.figures
    found = readings(declared, lambda name: figures[name].value if name in figures else None)
    if found:
        yield "Sums as they are read:"
    for text, span in found:
        yield f"  - {text} (line {span.told().line})"


def _sizes(model: Model) -> Iterator[str]:
    yield "Parts, the length along the grain:"
    for part in model.parts:
        yield f"  - {len(part.copies)} {_name(part)}: {_size(part, model)}"


def _name(part: Part) -> str:
    # What stands inside a pattern is told with the name of the instance.
    return part.name if INSIDE in part.name else part.written


def _size(part: Part, model: Model) -> str:
    shown = model.display.shown
    lies = _RUNS.get(part.run, part.run)
    length, width = shown(part.cut_length), shown(part.width)
    thickness = shown(part.thickness, fitted=part.stock == "sheet")
    horns = f", horns of {shown(part.horns)} at both ends" if part.horns else ""
    lips = "".join(f", {words}" for words in lip_remarks(part, model.display))
    return f"{length} long ({lies}{horns}), {width} wide, {thickness} thick{lips}"


def _assumptions(model: Model) -> Iterator[str]:
    if model.assumptions:
        yield "Taken for granted; if one is wrong, write its line with your own word or figure:"
    for assumption in model.assumptions:
        line = f" (line {assumption.span.told().line})" if assumption.span else ""
        yield f"  - {assumption.text}{line}"
        if assumption.instead:
            yield f"      {assumption.instead}"
