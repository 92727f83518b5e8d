"""Where a figure comes from, in words: its sum, the facts behind it, the lines that it rests on."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.diagnostics import Figure
from dryfit.notes.names import canonical
from dryfit.piece.sum_words import figure_words
from dryfit.placing.model import Model, Part
from dryfit.placing.sum_shown import sum_shown


def figures_told(name: str, model: Model) -> str | None:
    """Return what is known of the figures of a part or an opening, or of one figure, or None.

    A figure may be called ``post.length``, ``post length`` or ``length of post``; a part is told
    with all its sizes and the depths of its cuts.
    """
    asked = _plain(name)
    subjects = {_plain(figure.rpartition(".")[0].partition(".")[0]) for figure in model.figures}
    rows = {
        figure.name: figure
        for figure in model.figures.values()
        if asked in _names_of(figure) or (asked in subjects and _is_of(asked, figure))
    }
    part = next((each for each in model.parts if _plain(each.name) == asked), None)
    if not rows and part is None:
        return None
    whole = part is not None or asked in subjects
    head = [_head(part) if part is not None else asked] if whole else []
    return "\n".join((*head, *_told(rows, model, short=whole)))


def figure_names(model: Model) -> tuple[str, ...]:
    """Return what can be asked for: every part and opening, and every figure by its own name."""
    subjects = (name.partition(".")[0] for name in model.figures)
    parts = (part.name for part in model.parts)
    return tuple(dict.fromkeys((*parts, *subjects, *model.figures)))


def _plain(name: str) -> str:
    return canonical(name.replace(".", " . ")).replace(" . ", ".")


def _names_of(figure: Figure) -> tuple[str, ...]:
    subject, _, size = figure.name.rpartition(".")
    return tuple(map(_plain, (figure.name, f"{subject} {size}", _words(figure.name))))


def _is_of(subject: str, figure: Figure) -> bool:
    return _plain(figure.name.partition(".")[0]) == subject


def _head(part: Part) -> str:
    copies = "1 copy" if len(part.copies) == 1 else f"{len(part.copies)} copies"
    return f"{part.name}: {copies}"


def _told(rows: dict[str, Figure], model: Model, *, short: bool) -> Iterator[str]:
    """Yield a line or two for each figure; those that say the same are told together."""
    alike: dict[tuple[str, ...], list[str]] = {}
    for figure in rows.values():
        size = figure.name.partition(".")[2]
        label = size.replace(".", ", ") if short else _words(figure.name)
        alike.setdefault(tuple(_lines(figure, model)), []).append(label)
    for lines, labels in alike.items():
        several = f"{labels[0]} and {len(labels) - 1} more like it"
        name = labels[0] if len(labels) == 1 else several if "," in labels[0] else _all(labels)
        yield f"  {name} {lines[0]}"
        yield from (f"      {line}" for line in lines[1:])


def _all(labels: list[str]) -> str:
    return f"{', '.join(labels[:-1])} and {labels[-1]}"


def _words(figure: str) -> str:
    """Return the name of a figure as it is said: the overall width, the length of a part."""
    subject, _, size = figure.partition(".")
    if subject == "overall":
        return f"overall {size}"
    return figure_words(figure) if "." not in size else f"{size.replace('.', ', ')} of {subject}"


def _lines(figure: Figure, model: Model) -> Iterator[str]:
    display = model.display
    written = figure.rule == "written" and not figure.terms
    if figure.terms:
        yield sum_shown(figure, display)
    elif written:
        yield f"{display.shown(figure.value)}, as written in{_at(figure)}"
        return
    else:
        yield display.shown(figure.value)
    yield from dict.fromkeys(figure.words.split("; "))
    if figure.assumed:
        yield "taken for granted: `dryfit check` prints the line that says it otherwise"
    behind = [_words(name) for name in figure.inputs]
    if behind and not figure.terms:
        yield f"from {', '.join(behind)}"
    if figure.source:
        yield f"source: {figure.source}"
    if figure.spans:
        yield f"rests on{_at(figure)}"


def _at(figure: Figure) -> str:
    lines = sorted({span.told().line for span in figure.spans})
    if not lines:
        return ""
    return f" line{'s' if len(lines) > 1 else ''} {', '.join(map(str, lines))}"
