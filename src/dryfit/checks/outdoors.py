"""What does not last in rain and sun, once the notes say that the piece stands outdoors.

All of this is common practice (`shop/outdoors.csv`, or what the shop file says).
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from dryfit.checks.finding import finding
from dryfit.checks.regions import solid_parts
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.placing.model import Model
from dryfit.shop.glues import glue_named
from dryfit.shop.outdoors import lasting
from dryfit.shop.shop import Shop


def check_outdoors(model: Model, shop: Shop) -> Iterator[Diagnostic]:
    """Yield one finding for each kind of thing that does not last where the piece will stand.

    Findings: glue-not-for-outdoors, sheet-not-for-outdoors, finish-not-for-outdoors,
    screws-outdoors.
    """
    if model.outdoors is None:
        return
    yield from _glues(model, shop)
    yield from _sheets(model)
    yield from _finishes(model, shop)
    yield from _screws(model)


def _glues(model: Model, shop: Shop) -> Iterator[Diagnostic]:
    known = ((each, glue_named(shop, each.glue)) for each in model.assemblies)
    poor = [(each, glue) for each, glue in known if glue is not None and not glue.outdoors]
    if not poor:
        return
    names, stages = _listed(glue.name for _, glue in poor), _listed(each.stage for each, _ in poor)
    better = _one_of(f"`with {each.name}`" for each in shop.glues.values() if each.outdoors)
    yield finding(
        "C2",
        "glue-not-for-outdoors",
        Severity.WARNING,
        f"glue up {stages}: {names} does not last outdoors",
        poor[0][0].span,
        figures={},
        remedy=f"write {better} on the line"
        if better
        else "add a glue with `outdoors = true` to the shop file, and name it on the line",
    )


def _sheets(model: Model) -> Iterator[Diagnostic]:
    poor = [
        part
        for part in solid_parts(model)
        if part.stock == "sheet" and not lasting("sheet") & set((part.timber or "").lower().split())
    ]
    if not poor:
        return
    sheets = _listed(part.timber or "sheet" for part in poor)
    yield finding(
        "A5.5",
        "sheet-not-for-outdoors",
        Severity.WARNING,
        f"{_listed(part.name for part in poor)} of {sheets}: outdoors it swells at its edges and "
        "comes apart",
        poor[0].spans[0] if poor[0].spans else model.outdoors,
        figures={},
        remedy="use solid wood, or a sheet made for the weather, such as `marine plywood`",
    )


def _finishes(model: Model, shop: Shop) -> Iterator[Diagnostic]:
    products = {each.product: each for coating in model.coatings for each in coating.products}
    poor = [
        words
        for name, words in products.items()
        if name in shop.finishes and not shop.finishes[name].outdoors
    ]
    if not poor:
        return
    better = _one_of(f"`{each.name}`" for each in shop.finishes.values() if each.outdoors)
    yield finding(
        "D1",
        "finish-not-for-outdoors",
        Severity.WARNING,
        f"{_listed(words.product for words in poor)} does not last outdoors",
        poor[0].span,
        figures={},
        remedy=f"take {better}, or none at all on a wood that lasts bare"
        if better
        else "add a finish with `outdoors = true` to the shop file",
    )


def _screws(model: Model) -> Iterator[Diagnostic]:
    count = sum(row.count for row in model.hardware if "screw" in row.item)
    if not count:
        return
    timbers = dict.fromkeys((part.timber or "").lower() for part in model.parts)
    stained = [name for name in timbers if lasting("stained by steel") & set(name.split())]
    stains = f" and stains {_listed(stained)} black" if stained else ""
    yield finding(
        "D10",
        "screws-outdoors",
        Severity.NOTICE,
        f"plain steel rusts outdoors{stains}: the {count} screws are bought in stainless steel",
        model.outdoors,
        figures={},
        remedy="brass does as well, where the wood is not too hard for it",
    )


def _listed(names: Iterable[str]) -> str:
    row = list(dict.fromkeys(names))
    return " and ".join(filter(None, (", ".join(row[:-1]), row[-1])))


def _one_of(names: Iterable[str]) -> str:
    row = list(dict.fromkeys(names))
    return " or ".join(filter(None, (", ".join(row[:-1]), row[-1]))) if row else ""
