"""The two examples as work lists of the shipped shop, made once."""

from dataclasses import replace
from fractions import Fraction
from functools import cache

from tests.pieces.reading import changed, model_of, text_of

from dryfit.diagnostics import Findings
from dryfit.operations import work_list
from dryfit.placing.model import Model
from dryfit.plan.operation import Detail, Operation, Rule, WorkList
from dryfit.plan.setting import Setting
from dryfit.shop.read import read_shop
from dryfit.shop.shop import Shop


@cache
def shipped_shop() -> Shop:
    """The default shop."""
    shop, findings = read_shop(None, {})
    assert shop is not None, findings
    return shop


def shop_without(*names: str) -> Shop:
    """The default shop with stations, cutters or accessories of these names removed."""
    shop = shipped_shop()
    gone = set(names)
    return replace(
        shop,
        stations={name: station for name, station in shop.stations.items() if name not in gone},
        cutters=tuple(c for c in shop.cutters if c.name not in gone and c.station not in gone),
        accessories=tuple(a for a in shop.accessories if a.name not in gone),
    )


@cache
def piece(name: str = "boot_bench", *changes: tuple[str, str]) -> Model:
    """An example's model, with words of its notes replaced."""
    return model_of(changed(text_of(name), *changes))


def listed(model: Model, shop: Shop | None = None) -> tuple[WorkList, Findings]:
    """The work list of a model."""
    work, findings = work_list(model, shop or shipped_shop())
    assert work is not None, findings
    return work, findings


@cache
def boot_bench() -> WorkList:
    """The work list of the boot bench."""
    return listed(piece())[0]


def operation(work: WorkList, name: str) -> Operation:
    """The operation of that id."""
    return next(each for each in work.operations if each.id == name)


def setting(each: Operation, axis: str) -> Setting:
    """The operation's setting of an axis."""
    return next(row for row in each.settings if row.axis == axis)


def lengths_of(detail: Detail) -> tuple[Fraction, ...]:
    """The lengths that a clause of an operation names, in order."""
    return tuple(piece for piece in detail if isinstance(piece, Fraction))


def said(detail: Detail) -> str:
    """A clause of an operation in words, its lengths in mm."""
    return "".join(piece if isinstance(piece, str) else f"{float(piece):g} mm" for piece in detail)


def rule(work: WorkList, before: str, after: str) -> Rule:
    """The rule between two operations."""
    return next(row for row in work.rules if (row.before, row.after) == (before, after))
