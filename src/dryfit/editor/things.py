"""A few lines about a thing of the piece: a part, a glue-up, an opening, an instance, a pattern."""

from __future__ import annotations

from dryfit.notes.tree import Parameter, PatternBlock
from dryfit.piece.declared import PIECE_DIMENSIONS, inner_name
from dryfit.placing.as_text import sums_behind
from dryfit.placing.model import Assembly, Model, Part
from dryfit.placing.sum_shown import sum_shown


def about_thing(name: str, model: Model) -> str | None:
    """Return what the piece knows about what bears the name, or None."""
    part = next((known for known in model.parts if known.name == name), None)
    if part is not None:
        return "\n".join(_about_a_part(part, model))
    inside = [known for known in model.parts if known.name.startswith(inner_name(name, ""))]
    if inside:
        return "\n".join(_sizes(known, model) for known in inside)
    built = [known for known in model.assemblies if known.stage == name]
    return _about_a_glue_up(built, model) if built else _about_a_space(name, model)


def about_pattern(block: PatternBlock, parameter: str | None) -> str:
    """Return what can be set of a pattern, or only the one parameter that is named."""
    if parameter is not None:
        return "\n".join(_setting(each) for each in block.parameters if each.name == parameter)
    settings = (_setting(each) for each in block.parameters)
    return "\n".join((f"pattern {block.written}", *settings))


def _setting(parameter: Parameter) -> str:
    if parameter.default is None:
        return f"{parameter.name}: to be said"
    usual = f"{parameter.name} = {parameter.default.span.text()}"
    if parameter.least is None or parameter.most is None:
        return usual
    return f"{usual}, {parameter.least.span.text()} to {parameter.most.span.text()}"


def _about_a_part(part: Part, model: Model) -> list[str]:
    lines = [_sizes(part, model)]
    sums = sums_behind(part, model)
    if part.shoulder_length is not None and not any(line.startswith("shoulder") for line in sums):
        lines.append(f"shoulder length {model.display.shown(part.shoulder_length)}")
    lines += sums
    hands = part.hands()
    if len(hands) > 1:
        lines.append("in two hands, " + " and ".join(hands))
    return lines


def _about_a_glue_up(built: list[Assembly], model: Model) -> str:
    first = built[0]
    sizes = " x ".join(model.display.shown(first.box.extent(axis)) for axis in range(3))
    count = f"{len(built)} glue-ups" if len(built) > 1 else "1 glue-up"
    return f"{count}: {', '.join(first.of)}\n{sizes} outside (width x depth x height)"


def _about_a_space(name: str, model: Model) -> str | None:
    """Return the sizes of an opening, or of what else has sizes without being a part."""
    lines = []
    for dimension in PIECE_DIMENSIONS:
        figure = model.figures.get(f"{name}.{dimension}")
        if figure is not None:
            behind = sum_shown(figure, model.display) if figure.terms else ""
            lines.append(f"{dimension} {behind or model.display.with_unit(figure.value)}")
    return "\n".join(lines) or None


def _sizes(part: Part, model: Model) -> str:
    show = model.display.shown
    length, width = (
        f"{'~' if part.untaken(word) else ''}{show(size)}"
        for word, size in (("length", part.length), ("width", part.width))
    )
    sizes = f"{length} x {width} x {show(part.thickness)}"
    timber = f", {part.timber}" if part.timber else ""
    unit = ", mm" if model.display.unit == "mm" else ""
    return f"{len(part.copies)} {part.written}: {sizes}{timber}{unit}"
