"""Which cautions an operation calls for, by the keys of the booklet's table."""

from __future__ import annotations

from dryfit.operations.boards.straight_edges import SLED
from dryfit.operations.shapes import BEVEL, TAPER
from dryfit.operations.through_cuts import RIP_FENCE
from dryfit.operations.ways.machines import TENON_JIG
from dryfit.plan.operation import Operation

BY_STATION = {
    "jointer": ("jointer-short",),
    "planer": ("thickness-planer",),
    "band saw": ("band-saw-guide",),
    "mitre saw": ("mitre-saw-short",),
    "router table": ("router-feed",),
    "mortiser": ("drill-clamp",),
    "drill press": ("drill-clamp",),
}
PARTING = frozenset({"rip", "width"})
BLIND = frozenset(
    {"lap", "housing", "groove", "tenon cheek", "tenon shoulder", "key slot", "fingers"}
)
DRYING = frozenset({"oil", "oils", "varnish", "tung", "linseed", "danish", "alkyd"})
"""Words in the name of a finish that dries by taking up oxygen, and so warms (TRADE D5, H71)."""
GLUES_FOR_GLOVES = ("epoxy", "polyurethane")


def caution_keys(operation: Operation) -> tuple[str, ...]:
    """Return the keys of the cautions that apply, in no more than a handful."""
    keys = [*BY_STATION.get(operation.station, ()), *operation.cautions]
    if operation.station == "table saw":
        keys += _at_table_saw(operation)
    if operation.kind == "sand":
        keys.append("dust")
    if operation.kind == "coat":
        keys.append("finish-air")
        if any(_dries_with_heat(str(setting.value)) for setting in operation.settings):
            keys.append("oily-rags")
    if operation.glue_up is not None and operation.glue_up.glue.startswith(GLUES_FOR_GLOVES):
        keys.append("glue-skin")
    return tuple(keys)


def _dries_with_heat(product: str) -> bool:
    """Return whether rags with a finish heat up by themselves: drying oils, and what holds them."""
    words = product.lower().replace("-", " ").split()
    return "water" not in words and bool(DRYING.intersection(words))


def _at_table_saw(operation: Operation) -> list[str]:
    if any(setting.value == TENON_JIG for setting in operation.settings):
        return ["tenon-jig"]
    if operation.kind in BLIND:
        return ["dado-riving-knife"]
    if operation.kind == TAPER or any(setting.value == SLED for setting in operation.settings):
        # The jig or the sled is pushed, not the work.
        return ["saw-riving-knife"]
    along = any(setting.value == RIP_FENCE for setting in operation.settings)
    if operation.kind in PARTING or (operation.kind == BEVEL and along):
        return ["saw-riving-knife", "saw-push-stick"]
    return ["saw-crosscut"]
