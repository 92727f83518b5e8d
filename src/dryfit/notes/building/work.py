"""The builders of glue-ups, finishes and what stays bare."""

from __future__ import annotations

from dataclasses import replace

from lark import Token, Tree

from dryfit.diagnostics import Severity
from dryfit.notes.building.counts import checked_count
from dryfit.notes.building.cuts import surfaces
from dryfit.notes.building.draft import Draft, Node, ends, only, text_of, tokens, trees, union
from dryfit.notes.building.new_names import check_name, written_name
from dryfit.notes.building.references import reference, references
from dryfit.notes.building.sums import sum_in
from dryfit.notes.mistake import Mistake, Repair
from dryfit.notes.reading.near import nearest
from dryfit.notes.tree import (
    BareLine,
    CoatWords,
    FinishLine,
    GlueItem,
    GlueLine,
    Reference,
    Surface,
)

Parsed = Tree[Token]


def glue_line(tree: Parsed, draft: Draft) -> GlueLine:
    """Return the statement of ``glue up base: side frames, long rails, cure 2 h``."""
    name = tokens(tree.children, "PHRASE")[0]
    cure = only(trees(tree.children, "cure"), "how long it cures", draft)
    glue = only(trees(tree.children, "gluewith"), "with which glue", draft)
    pressed = only(tokens(tree.children, "PRESSED"), "what holds it together", draft)
    people = only(trees(tree.children, "people"), "how many people it takes", draft)
    check_name(name, draft)
    return GlueLine(
        checked_count(tree.children, draft) or 1,
        text_of(name),
        written_name(name, draft),
        draft.span(name),
        glue_items(tree, draft),
        sum_in(cure, draft) if cure else None,
        draft.line.whole(),
        glue=_glue(glue) if glue else None,
        pressed=text_of(pressed) if pressed and text_of(pressed) != "clamps" else None,
        people=checked_count(people.children, draft) if people else None,
    )


def glue_items(tree: Parsed, draft: Draft) -> tuple[GlueItem, ...]:
    """Return the parts of a list, each with how many of it: ``2 legs, 1 short rail``."""
    return tuple(
        GlueItem(
            checked_count(item.children, draft),
            reference(trees(item.children, "ref")[0], draft),
            draft.span(item),
        )
        for item in trees(tree.children, "item")
    )


def _glue(node: Parsed) -> str:
    name = text_of(tokens(node.children, "PHRASE")[0])
    return name.removesuffix(" glue") or name


def finish_line(tree: Parsed, draft: Draft) -> FinishLine:
    """Return the statement of ``finish inside of boxes with shellac, 2 coats``."""
    said = trees(tree.children, "subjects")
    parts, where = _subjects(said[0], draft) if said else ((), ())
    if not said:
        _check_product(tokens(tree.children, "PHRASE")[0], draft)
    products = tuple(_product(nodes, draft) for nodes in _by_product(tree))
    if len(products) == 1:
        products = (replace(products[0], span=draft.line.whole()),)
    return FinishLine(parts, where, products, draft.line.whole())


def _check_product(word: Token, draft: Draft) -> None:
    """Ask when a part is named in the product: "finish seat oil", "finish legs wth paint"."""
    name = text_of(word)
    part = next(
        (part for part in sorted(draft.vocabulary.parts) if f" {part} " in f" {name} "), None
    )
    if part is None:
        return
    draft.mistakes.append(
        Mistake(
            "finish-of-part",
            f"is `{part}` what is finished? the line reads as a finish called `{name}`",
            draft.span(word),
            (_say_with(name, part, word, draft),),
            Severity.QUESTION,
        )
    )


def _say_with(name: str, part: str, word: Token, draft: Draft) -> Repair:
    """Return the repair that puts with behind the part, or instead of what is nearly with."""
    words = draft.line.words
    first = next(i for i, each in enumerate(words) if each.start == ends(word)[0])
    inside = words[first : first + len(name.split(" "))]
    mistyped = next((each for each in inside if nearest(each.text, ("with", "in"))), None)
    if mistyped is None:
        mistyped = next((each for each in inside if each.text == "in"), None)
    advice = f"say so: `finish {part} with ...`"
    if mistyped:
        return Repair(
            advice, draft.line.span(mistyped.start, mistyped.end), "with", stands_alone=True
        )
    before = name[: f"{name} ".index(f"{part} ")].count(" ")
    end = inside[before + part.count(" ")].end
    return Repair(advice, draft.line.span(end, end), " with", stands_alone=True)


def bare_line(tree: Parsed, draft: Draft) -> BareLine:
    """Return the statement of ``no finish on runners`` and of ``mask cleat seats``."""
    parts, where = _subjects(trees(tree.children, "subjects")[0], draft)
    return BareLine(text_of(tokens(tree.children, "BARE")[0]), parts, where, draft.line.whole())


def _subjects(node: Parsed, draft: Draft) -> tuple[tuple[Reference, ...], tuple[Surface, ...]]:
    said = trees(node.children, "surfaces")
    where = surfaces(said[0], draft) if said else ()
    seats = tokens(node.children, "SEATS")
    if seats:
        # Where other parts sit on these.
        where = (Surface((), "seat", every=False, span=draft.span(seats[0])),)
    named = (references(refs, draft) for refs in trees(node.children, "refs"))
    return tuple(part for parts in named for part in parts), where


def _by_product(tree: Parsed) -> list[list[Node]]:
    """Return the nodes of each product: its name, and what is said of it."""
    products: list[list[Node]] = []
    for node in tree.children:
        if isinstance(node, Token) and node.type == "PHRASE":
            products.append([node])
        elif products and isinstance(node, Tree):
            products[-1].append(node)
    return products


def _product(nodes: list[Node], draft: Draft) -> CoatWords:
    coats = only(trees(nodes, "coats"), "how many coats", draft)
    apart = only(trees(nodes, "apart"), "how long between coats", draft)
    return CoatWords(
        text_of(tokens(nodes, "PHRASE")[0]),
        checked_count(coats.children, draft) if coats else None,
        sum_in(apart, draft) if apart else None,
        union(draft.span(nodes[0]), draft.span(nodes[-1])),
    )
