"""Who gets which finish, on which surfaces, and what stays bare."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.booklet.bench import Bench
from dryfit.booklet.wording import lag
from dryfit.piece.declared import Coats
from dryfit.placing.model import Model, Part


def finishes(bench: Bench) -> tuple[tuple[str, str], ...]:
    """Return who gets what: the coats in turn, and the parts and glue-ups that get them."""
    rows: dict[str, list[str]] = {}
    for coating in bench.model.coatings:
        words = ", then ".join(_product(bench, each) for each in coating.products)
        of = f"{coating.surfaces} of the " if coating.surfaces else ""
        bare = f" (not {' and '.join(coating.spared)})" if coating.spared else ""
        rows.setdefault(words, []).append(f"{of}{coating.subject}{bare}")
    return tuple((words, ", ".join(dict.fromkeys(names))) for words, names in rows.items())


def _product(bench: Bench, product: Coats) -> str:
    known = bench.shop.finishes.get(product.product)
    coats = product.coats or (known.coats if known else None)
    apart = product.apart * 10 if product.apart else (known.recoat if known else None)
    words = [product.product]
    if coats:
        words.append(f"{coats} coats" if coats > 1 else "1 coat")
    if apart and coats and coats > 1:
        words.append(f"{lag(apart)} apart")
    return ", ".join(words)


def left_bare(model: Model) -> str:
    """Return what gets no finish at all, then what gets none but on the surfaces named; or none."""
    return ", ".join(dict.fromkeys(_bare(model))) if model.coatings else ""


def _bare(model: Model) -> Iterator[str]:
    surfaces: dict[str, list[str]] = {}
    for coating in model.coatings:
        for copy in coating.copies:
            surfaces.setdefault(copy, []).append(coating.surfaces)
    partly: list[str] = []
    for part in model.parts:
        bare = [copy.name for copy in part.copies if copy.name not in surfaces]
        if bare:
            yield part.written if len(bare) == len(part.copies) else ", ".join(bare)
        partly += _all_but(part, surfaces)
    yield from partly


def _all_but(part: Part, surfaces: dict[str, list[str]]) -> Iterator[str]:
    coated = [surfaces[copy.name] for copy in part.copies if copy.name in surfaces]
    named = [words for each in coated if "" not in each for words in each]
    if named:
        yield f"{part.written} but for {' and '.join(dict.fromkeys(named))}"
