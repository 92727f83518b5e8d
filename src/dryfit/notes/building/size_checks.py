"""Whether the sizes of a line can be one thing's: how many, which, and what parts them."""

from __future__ import annotations

import re
from collections.abc import Sequence

from lark import Token, Tree

from dryfit.diagnostics import Hint, Span
from dryfit.notes.building.draft import Draft, ends, trees
from dryfit.notes.mistake import Repair
from dryfit.notes.tree import OverallLine, Sizes, SizeWord

_MOST = 3
_QUARTERS = re.compile(r"(?:[4-9]|1[0-6])/4")
_OF_ROUNDS = ("diameter", "radius")
_OF_THE_WHOLE = ("width", "depth", "height")


def check_written(nodes: Sequence[Tree[Token]], draft: Draft) -> bool:
    """Return whether no measures stand side by side without an x; `nodes` are runs of sizes."""
    run: list[Tree[Token]] = []
    for node in (*nodes, None):
        if node is not None and run and _side_by_side(run[-1], node, draft):
            run.append(node)
            continue
        if len(run) > 1:
            start, end = ends(run[0])[0], ends(run[-1])[1]
            texts = [draft.line.text[slice(*ends(one))] for one in run]
            joined = " x ".join(texts)
            draft.error(
                "size-sign-missing",
                "measures stand side by side without an x",
                draft.line.span(start, end),
                Repair(f"write `{joined}`", draft.line.span(start, end), joined),
            )
            return False
        run = [node] if node is not None else []
    return True


def check_part_sizes(clauses: Sequence[Sizes], draft: Draft, *, round_too: bool = False) -> None:
    """Check the sizes of a part, one clause for each run of x; only a bought thing is round."""
    round_size = next((size for size in _all(clauses) if size.dimension in _OF_ROUNDS), None)
    if round_size and not round_too:
        draft.error(
            "round-part",
            f"a part has a length, a width and a thickness, but no {round_size.dimension}",
            round_size.span,
            Hint(
                "of a round part say the square blank that it is turned from, such as `{30} x {30}`"
            ),
        )
        return
    runs = [clause for clause in clauses if _bare(clause)]
    for clause in clauses:
        if len(clause.sizes) > _MOST:
            _too_many(clause, draft)
            return
        if len(clause.sizes) == 1 and _bare(clause):
            _lone(clause.sizes[0], draft)
            return
    if len(runs) > 1:
        _twice("the sizes of the part are", runs[1].sizes[0], draft)
        return
    _check_dimensions(_all(clauses), draft)
    if runs and len(runs[0].sizes) == _MOST:
        said = [size for size in _all(clauses) if size.dimension]
        if said:
            _twice(f"the {said[0].dimension} is", said[0], draft)
    elif runs:
        # Two in a row are width x thickness; of a bought thing whose thickness is said, its face.
        taken = {"width"} if round_too else {"width", "thickness"}
        for size in _all(clauses):
            if size.dimension in taken:
                draft.error(
                    "size-twice",
                    f"the {size.dimension} is given twice",
                    size.span,
                    Hint("two sizes in a row are width x thickness, three length too"),
                )
                return


def _all(clauses: Sequence[Sizes]) -> list[SizeWord]:
    return [size for clause in clauses for size in clause.sizes]


def check_stock_sizes(sizes: Sequence[SizeWord], draft: Draft, *, in_inches: bool) -> None:
    """Check the sizes of a board: three at most, none twice, and quarters of what."""
    if len(sizes) > _MOST:
        draft.error("too-many-sizes", "stock has at most three sizes", sizes[_MOST].span)
        return
    _check_dimensions(sizes, draft)
    for size in sizes if not in_inches else ():
        written = draft.line.text[slice(*draft.line.offsets(size.span))].strip()
        # Five quarters of an inch are 5/4 to the trade (*common practice*), and no millimetres.
        if _QUARTERS.fullmatch(written):
            draft.error(
                "unknown-unit",
                f"`{written}` is counted in quarters of an inch, and these sizes are not",
                size.span,
                Repair(f'write `{written}"`', size.span, f'{written}"'),
            )


def check_overall(line: OverallLine, draft: Draft) -> None:
    """Check that width, depth and height are all there, by name or as three in a row."""
    sizes = line.sizes
    said = [size.dimension for size in sizes]
    if len(sizes) > _MOST:
        draft.error("too-many-sizes", "a piece has three sizes overall", sizes[_MOST].span)
    elif said == [None, None, None]:
        return
    elif None in said or len(sizes) < _MOST:
        missing = [word for word in _OF_THE_WHOLE if word not in said]
        words = " and ".join(missing) if None not in said else "width, depth and height"
        draft.error(
            "overall-incomplete",
            f"the overall size must say {words}",
            line.span,
            Hint("for example `overall {420} wide, {300} deep, {240} high`"),
        )
    else:
        _check_whole(sizes, draft)


def _check_whole(sizes: Sequence[SizeWord], draft: Draft) -> None:
    for size in sizes:
        if size.dimension not in _OF_THE_WHOLE:
            draft.error(
                "not-a-dimension",
                f"a whole piece has a width, a depth and a height, but no {size.dimension}",
                size.span,
                Hint("write `wide` from left to right, `deep` from front to back, `high` upwards"),
            )
            return
    _check_dimensions(sizes, draft)


def _check_dimensions(sizes: Sequence[SizeWord], draft: Draft) -> None:
    seen: set[str] = set()
    for size in sizes:
        if size.dimension in seen:
            _twice(f"the {size.dimension} is", size, draft)
            return
        if size.dimension:
            seen.add(size.dimension)


def _side_by_side(first: Tree[Token], second: Tree[Token], draft: Draft) -> bool:
    """Return whether two bare measures meet: "340 60", and "40, 40" where each is alone."""
    between = draft.line.text[ends(first)[1] : ends(second)[0]].strip()
    dims = trees(first.children, "dim"), trees(second.children, "dim")
    bare = len(dims[0][-1].children) == len(dims[1][0].children) == 1
    alone = len(dims[0]) == len(dims[1]) == 1
    return bare and (not between or (between == "," and alone))


def _bare(clause: Sizes) -> bool:
    return all(size.dimension is None for size in clause.sizes)


def _twice(what: str, size: SizeWord, draft: Draft) -> None:
    draft.error(
        "size-twice",
        f"{what} given twice",
        size.span,
        Repair("take this one out", _with_comma(size, draft), ""),
    )


def _too_many(clause: Sizes, draft: Draft) -> None:
    fourth = clause.sizes[_MOST]
    third = clause.sizes[_MOST - 1].span
    draft.error(
        "too-many-sizes",
        "a part has at most three sizes",
        fourth.span,
        Repair(
            "take the fourth out",
            draft.line.span(draft.line.offsets(third)[1], draft.line.offsets(fourth.span)[1]),
            "",
        ),
    )


def _lone(size: SizeWord, draft: Draft) -> None:
    end = draft.line.offsets(size.span)[1]
    written = draft.line.text[slice(*draft.line.offsets(size.span))].strip()
    place = draft.line.span(end, end)
    draft.error(
        "lone-number",
        f"is {written} the length, the width or the thickness?",
        size.span,
        *(Repair(f"write `{written} {word}`", place, f" {word}") for word in _ADJECTIVES),
    )


def _with_comma(size: SizeWord, draft: Draft) -> Span:
    start, end = draft.line.offsets(size.span)
    before = draft.line.text[:start].rstrip(" ,")
    return draft.line.span(len(before), end)


_ADJECTIVES = ("thick", "wide", "long")
