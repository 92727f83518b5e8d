"""What each kind of cut with no mate needs on its line, and how that is written."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from dryfit.piece.declared import DeclaredFeature

BARE_ORDER: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "groove": ("width", "depth"),
        "rabbet": ("width", "depth"),
        "hole": ("diameter", "depth"),
        "taper": (),
        "chamfer": ("width",),
        "round-over": ("radius",),
        "profile": ("width", "depth"),
        "curve": ("depth",),
        "notch": ("width", "depth"),
        "slot": ("width", "length", "depth"),
        "bevel": ("angle",),
        "keys": ("thickness", "depth"),
    }
)
"""What the bare numbers of a line mean, in order (common speech of the trade)."""

EDGE_KINDS = frozenset({"rabbet", "chamfer", "round-over", "profile", "bevel"})
"""Kinds that are cut along edges where two faces meet, or over a whole edge or end."""

_WRITTEN = {
    "width": "`{6} wide`",
    "depth": "`{9} deep`",
    "length": "`{90} long`",
    "diameter": "`{5} dia`",
    "radius": "`{6} radius`",
    "thickness": "`{3} thick`",
    "angle": "`10 degrees`",
}
_SIZES = {
    "groove": ("width", "depth"),
    "rabbet": ("width", "depth"),
    "hole": ("diameter", "depth"),
    "taper": (),
    "chamfer": ("width", "depth", "angle"),
    "round-over": ("radius",),
    "profile": ("width", "depth"),
    "curve": ("depth",),
    "notch": ("width", "depth"),
    "slot": ("width", "length", "depth"),
    "bevel": ("angle",),
    "keys": ("thickness", "depth"),
}
WRITTEN: Mapping[str, Mapping[str, str]] = MappingProxyType(
    {kind: {size: _WRITTEN[size] for size in sizes} for kind, sizes in _SIZES.items()}
)
"""The sizes that each kind may have, each as it is written; figures for `Display.examples`."""

SAME_SIZE: Mapping[tuple[str, str], str] = MappingProxyType(
    {
        ("groove", "height"): "width",
        ("curve", "height"): "depth",
        ("notch", "length"): "width",
        ("notch", "height"): "depth",
        ("round-over", "width"): "radius",
        ("keys", "width"): "thickness",
    }
)
"""Other words for the same size, by kind and dimension."""

_NEEDED = {
    "groove": ("width", "depth"),
    "rabbet": ("width", "depth"),
    "hole": ("diameter",),
    "chamfer": ("width",),
    "round-over": ("radius",),
    "profile": ("width",),
    "curve": ("depth",),
    "notch": ("width", "depth"),
    "slot": ("width",),
    "bevel": ("angle",),
    "keys": ("thickness", "depth"),
}

_SURFACE = {
    "groove": "the face (`inside`, `outside`, `top` ...)",
    "rabbet": "the edge (`back inner edge`, `bottom inside edge` ...)",
    "hole": "the face (`inside`, `front`, `top` ...)",
    "taper": "the face or edge (`inside faces`, `top edge` ...)",
    "chamfer": "the edges (`all top edges`, `bottom end` ...)",
    "round-over": "the edges (`top edges`, `all edges` ...)",
    "profile": "the edges (`front and end top edges` ...)",
    "curve": "the edge (`bottom edge` ...)",
    "notch": "the edge (`bottom edge` ...)",
    "slot": "the face (`top`, `inside` ...)",
    "bevel": "the edge or end (`top edge`, `bottom end` ...)",
}

_EXAMPLES = {
    "groove": "groove in aprons: inside, {6} wide, {9} deep, {12} from top, through",
    "rabbet": "rabbet in stiles and rails: back inner edge, {10} wide, {12} deep",
    "hole": "hole in back: front, {35} dia, through, {50} from top, {200} from left",
    "taper": "taper in legs: inside faces, from {100} below the top to the bottom end, "
    "{40} to {25}",
    "chamfer": "chamfer on top: all top edges, {3} wide",
    "round-over": "round-over on seat: top edges, {6} radius",
    "profile": "profile on top: front and end top edges, ogee, {12} wide",
    "curve": "curve in apron: bottom edge, {30} deep, from {60} from left to {60} from right",
    "notch": "notch in back: bottom edge, {60} wide, {40} deep, at left",
    "slot": "slot in lid: top, {25} wide, {90} long, through, {30} from front",
    "bevel": "bevel in back: top edge, 10 degrees",
    "keys": "keys in frames: 2 a corner, {3.2} thick, {25} deep, after glue up frames",
}


def example(kind: str) -> str:
    """Return a whole line of that kind; its figures are in braces, mm, for `Display.examples`."""
    return _EXAMPLES[kind]


def missing(feature: DeclaredFeature) -> tuple[str, ...]:
    """Return what is not written and cannot be known, each with words that would say it.

    Figures are in braces, for `Display.examples`.
    """
    lacking = []
    if not feature.surfaces and feature.kind in _SURFACE:
        lacking.append(_SURFACE[feature.kind])
    lacking += [
        f"the {size} ({_WRITTEN[size]})"
        for size in _NEEDED.get(feature.kind, ())
        if not feature.says(size)
    ]
    return (*lacking, *_missing_place(feature), *_missing_rest(feature))


def _missing_place(feature: DeclaredFeature) -> list[str]:
    kind = feature.kind
    if kind in {"groove", "notch", "slot"} and not feature.places:
        said = "`at left`" if kind == "notch" else "`{12} from top`"
        return [f"the place ({said})"]
    if kind == "hole" and not feature.places and not feature.rows:
        return ["the place (`{50} from top, {200} from left`)"]
    extent = feature.extent
    if extent is not None and extent.kind == "stopped" and extent.start is None:
        return ["where it stops (`stopped {20} from left`)"]
    if kind == "taper" and (extent is None or extent.kind != "stretch"):
        return ["where it begins and ends (`from {100} below the top to the bottom end`)"]
    return []


def _missing_rest(feature: DeclaredFeature) -> list[str]:
    kind = feature.kind
    through = feature.extent is not None and feature.extent.kind == "through"
    if kind in {"hole", "slot"} and not feature.says("depth") and not through:
        return ["the depth (`{10} deep`, or `through`)"]
    if kind == "slot" and not feature.says("length") and not _says_length(feature):
        return ["the length (`{90} long`)"]
    if kind == "taper" and not feature.ranges:
        return ["what is left of the wood at both ends of it (`{40} to {25}`)"]
    if kind == "profile" and feature.profile is None:
        return ["the name of the moulding (`ogee`, `cove` ...)"]
    return []


def _says_length(feature: DeclaredFeature) -> bool:
    return feature.extent is not None and feature.extent.kind == "stretch"
