"""From the values of the shop files to the shop itself, with what only the whole can tell."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from dryfit.shop.layer import Layer, Tree, nearest
from dryfit.shop.outdoors import lasting
from dryfit.shop.shop import (
    Accessory,
    AxisChange,
    Clamp,
    Cutter,
    FinishProduct,
    Glue,
    Rests,
    Sanding,
    Shop,
    Station,
)

_KIND_AT = {"mortiser": "chisel", "drill press": "drill", "router table": "bit"}
_ALWAYS_THERE = ("bench", "glue bench", "finish bench")


def build(tree: Tree, layer: Layer, sha256: str, files: tuple[str, ...]) -> Shop:
    """Return the shop; reports at `layer` the names in it that lead nowhere."""
    stations = _stations(tree, layer)
    opens, closes = tree["hours"]
    days_off, holidays = tree["days_off"]
    return Shop(
        name=tree["name"],
        sha256=sha256,
        one_room=tree["one_room"],
        workers=tree["workers"],
        opens=opens,
        closes=closes,
        days_off=days_off,
        walk=tree["walk"],
        stations=MappingProxyType(stations),
        cutters=_cutters(tree, layer, stations),
        accessories=_accessories(tree, layer, stations),
        clamps=tuple(Clamp(name, **entry) for name, entry in tree["clamp"].items()),
        glues=_glues(tree),
        finishes=MappingProxyType(
            {
                name: FinishProduct(name, **{"outdoors": name in lasting("finish"), **entry})
                for name, entry in tree["finish"].items()
            }
        ),
        minutes=MappingProxyType(
            {kind: MappingProxyType(rates) for kind, rates in tree["minutes"].items()}
        ),
        allowances=MappingProxyType(tree["allowance"]),
        shims=MappingProxyType(tree["shim"]),
        clamping=MappingProxyType(tree["clamping"]),
        sanding=Sanding(**tree["sanding"]),
        by_hand=tree["by_hand"]["times"],
        rests=Rests(**tree["rest"]),
        default_glue=_default_glue(tree, layer),
        files=files,
        start=tree.get("start"),
        holidays=holidays,
    )


def _stations(tree: Tree, layer: Layer) -> dict[str, Station]:
    for name in _ALWAYS_THERE:
        if name not in tree["station"]:
            path = ("station", name)
            layer.report_key(
                "shop-wrong-value", f"no shop is without a {name}", path, "take this line out"
            )
    for name, entry in layer.tree.get("station", {}).items():
        _check_between(tree, layer, name, entry)
    return {name: _station(name, entry, layer) for name, entry in tree["station"].items()}


def _check_between(tree: Tree, layer: Layer, station: str, entry: object) -> None:
    """Report rows of the file's own that name no cutter or accessory: they would never hold."""
    axes = entry.get("axis", {}) if isinstance(entry, dict) else {}
    for axis in ("cutter", "accessory"):
        here = tuple(name for name, each in tree[axis].items() if each["station"] == station)
        for start, end, _ in axes.get(axis, {}).get("between", ()):
            for name in (start, end):
                if name not in ("*", *here):
                    layer.report_value(
                        "shop-unknown-name",
                        f"no {axis} of the {station} is called `{name}`",
                        ("station", station, "axis", axis, "between"),
                        nearest(name, here),
                    )


def _station(name: str, entry: Tree, layer: Layer) -> Station:
    axes = entry.get("axis", {})
    order = layer.tree.get("station", {}).get(name)
    # A file that names every axis of a station says in which order they are set.
    own = order.get("axis", {}) if isinstance(order, dict) else {}
    names = own if own.keys() == axes.keys() else axes
    return Station(
        name=name,
        count=entry["count"],
        test_cut=entry["test_cut"],
        axes=tuple(_axis(name, axis, axes, layer) for axis in names),
        limits=MappingProxyType(entry.get("limits", {})),
        places=entry.get("places"),
    )


def _axis(station: str, name: str, axes: Tree, layer: Layer) -> AxisChange:
    entry = axes[name]
    unsets = entry.get("unsets", ())
    for other in unsets:
        if other not in axes:
            layer.report_value(
                "shop-unknown-name",
                f"no axis of the {station} is called `{other}`",
                ("station", station, "axis", name, "unsets"),
                nearest(other, tuple(axes)),
            )
    return AxisChange(
        name=name,
        change=entry["change"],
        between=entry.get("between", ()),
        unsets=tuple(other for other in unsets if other in axes),
        repeats_within=entry.get("repeats_within"),
    )


def _cutters(tree: Tree, layer: Layer, stations: Mapping[str, Station]) -> tuple[Cutter, ...]:
    cutters = []
    for name, entry in tree["cutter"].items():
        station = entry["station"]
        if not _stands(layer, "cutter", name, station, stations):
            continue
        narrowest, widest, step = entry["widths"]
        kind = entry.get("kind") or ("set" if step else _KIND_AT.get(station, "blade"))
        cutters.append(Cutter(name, station, kind, narrowest, widest, step))
    return tuple(cutters)


def _accessories(
    tree: Tree, layer: Layer, stations: Mapping[str, Station]
) -> tuple[Accessory, ...]:
    return tuple(
        Accessory(name, entry["station"], entry["base"], entry.get("longest"))
        for name, entry in tree["accessory"].items()
        if _stands(layer, "accessory", name, entry["station"], stations)
    )


def _stands(
    layer: Layer, what: str, name: str, station: str, stations: Mapping[str, Station]
) -> bool:
    """Return whether the station is there; what belongs to a removed one goes with it."""
    if station in stations:
        return True
    if station not in layer.tree.get("station", {}):
        layer.report_value(
            "shop-unknown-name",
            f"no station is called `{station}`",
            (what, name, "station"),
            nearest(station, tuple(stations)),
        )
    return False


def _glues(tree: Tree) -> Mapping[str, Glue]:
    return MappingProxyType(
        {
            name: Glue(
                name,
                entry["open"],
                entry["close_within"],
                MappingProxyType(entry["lags"]),
                entry.get("outdoors", name in lasting("glue")),
            )
            for name, entry in tree["glue"].items()
        }
    )


def _default_glue(tree: Tree, layer: Layer) -> str:
    name = str(tree["default_glue"])
    if name not in tree["glue"]:
        layer.report_value(
            "shop-unknown-name",
            f"no glue is called `{name}`, which `default_glue` names",
            ("default_glue",) if "default_glue" in layer.tree else ("glue", name),
            nearest(name, tuple(tree["glue"])),
        )
    return name
