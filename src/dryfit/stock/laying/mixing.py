"""Ways to make the parts, mixed: each part made in the way of its own that serves best.

One way for all parts, blanks cut short say, costs where it is not needed.  The layout library
searches for boards and for ways at once; afterwards whatever can be made as usual is.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from dryfit.cutting import Job, Layout, picked
from dryfit.shop.shop import Shop
from dryfit.stock.blanks.blank import Blank
from dryfit.stock.laid_out import StockBoard
from dryfit.stock.laying.job import Sizes, by_line, key, sizes_on, split_of
from dryfit.stock.laying.outcome import laid_out
from dryfit.stock.laying.ways import Made, Option, mixed


@dataclass(frozen=True, slots=True)
class Mixture:
    """A mixture of ways, with layouts of its blanks; `whole` where these are all."""

    way: Option
    known: tuple[Layout, ...]
    whole: bool


@dataclass(frozen=True, slots=True)
class _Variant:
    """One way to make a part, and how its blanks are sawn; `names` are those of the job."""

    made: Made
    sizes: tuple[Sizes, ...]
    names: tuple[str, ...]


def mixture_of(
    ways: Sequence[Option],
    boards: Sequence[StockBoard],
    shop: Shop,
    effort: int,
    *,
    cheapest: bool = False,
) -> Mixture | None:
    """Return the mixture that the boards hold the most of, the `cheapest` of them if they may cost.

    None where there is nothing to mix.
    """
    variants = _variants(ways, boards, shop)
    several = {part: each for part, each in variants.items() if len(each) > 1}
    if not several:
        return None
    job = _job([one for each in variants.values() for one in each], boards, shop)
    things = [[frozenset(one.names) for one in each] for each in several.values()]
    found = picked(job, things, effort, cheapest=cheapest)
    taken = {
        part: each[way].made for (part, each), way in zip(several.items(), found.ways, strict=True)
    }
    way = mixed([taken.get(made.name, made) for made in ways[0].made])
    whole = not found.lost and len(variants) == len(way.made)
    return Mixture(way, tuple(_named(layout) for layout in found.layouts), whole)


def as_usual(mixture: Mixture, usual: Option, boards: Sequence[StockBoard], shop: Shop) -> Mixture:
    """Return the mixture with every part made as usual that can be: a glance shows that it can."""
    for place, made in enumerate(usual.made):
        if mixture.way.made[place].why:
            other = mixed([*mixture.way.made[:place], made, *mixture.way.made[place + 1 :]])
            if laid_out(other.blanks, boards, shop, 0).verdict == "enough":
                mixture = Mixture(other, (), whole=True)
    return mixture


def _variants(
    ways: Sequence[Option], boards: Sequence[StockBoard], shop: Shop
) -> dict[str, list[_Variant]]:
    """Return how each part may be made out of these boards, the usual way first if it is one."""
    lines = by_line(boards)
    known: dict[Blank, Sizes] = {}
    found: dict[str, dict[tuple[Blank, ...], _Variant]] = {}
    number = 0
    for made in (made for way in ways for made in way.made):
        variants = found.setdefault(made.name, {})
        if made.blanks in variants:
            continue
        for blank in made.blanks:
            if blank not in known:
                known[blank] = sizes_on(blank, lines, shop, sparing=False)
        sizes = tuple(known[blank] for blank in made.blanks)
        if all(sizes):
            number += 1
            names = tuple(f"{number} {key(blank)}" for blank in made.blanks)
            variants[made.blanks] = _Variant(made, sizes, names)
    return {part: list(variants.values()) for part, variants in found.items() if variants}


def _job(variants: Sequence[_Variant], boards: Sequence[StockBoard], shop: Shop) -> Job:
    """Return the job of all blanks of all ways, under names of their own."""
    wanted = [
        (blank, sizes)
        for one in variants
        for blank, sizes in zip(one.made.blanks, one.sizes, strict=True)
    ]
    names = [name for one in variants for name in one.names]
    job = split_of(wanted, by_line(boards), shop).job
    parts = tuple(
        replace(part, id=name, group=part.group and f"{name.split(' ')[0]} {part.group}")
        for part, name in zip(job.parts, names, strict=True)
    )
    return replace(job, parts=parts)


def _named(layout: Layout) -> Layout:
    """Return the layout with its pieces under the names that their blanks have."""
    pieces = tuple(replace(piece, part=piece.part.split(" ", 1)[1]) for piece in layout.pieces)
    return replace(layout, pieces=pieces)
