"""What a shop file of the format dryfit-shop/1 may say, as data."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

from dryfit.shop import values


@dataclass(frozen=True, slots=True)
class Value:
    """A single value and its reader; `stored_as` where two spellings give one thing."""

    read: Callable[[object], object]
    stored_as: str | None = None


@dataclass(frozen=True, slots=True)
class Table:
    """A table with fixed keys, of which a whole entry must have `needed`."""

    keys: Mapping[str, Node] = field(default_factory=dict)
    needed: tuple[tuple[str, ...], ...] = ()


@dataclass(frozen=True, slots=True)
class Named:
    """A table of entries under names of the maker's or, when not `open`, of the shipped file.

    A `removable` entry may be `false` instead.  `what` is one entry in words.
    """

    what: str
    entry: Node
    open: bool = False
    removable: bool = False


Node = Value | Table | Named

_LENGTH = Value(values.length)
_TENTHS = Value(values.tenths)
_COUNT = Value(values.count)
_WORDS = Value(values.words)

_AXIS = Table(
    {
        "change": _TENTHS,
        "unsets": Value(values.names),
        "between": Value(values.between),
        "repeats_within": _LENGTH,
    }
)
_STATION = Table(
    {
        "count": _COUNT,
        "places": _COUNT,
        "test_cut": _TENTHS,
        "limits": Named("limit of this station", _LENGTH),
        "axis": Named("axis of this station", _AXIS),
    }
)
_CUTTER = Table(
    {
        "station": _WORDS,
        "kind": Value(values.cutter_kind),
        "width": Value(values.one_width, stored_as="widths"),
        "widths": Value(values.widths),
    },
    needed=(("station",), ("width", "widths")),
)
_ACCESSORY = Table(
    {"station": _WORDS, "base": _LENGTH, "longest": _LENGTH}, needed=(("station",), ("base",))
)
_CLAMP = Table(
    {"opens": Value(values.positive_length), "count": _COUNT}, needed=(("opens",), ("count",))
)
_GLUE = Table(
    {
        "open": _TENTHS,
        "close_within": _TENTHS,
        "lags": Table(
            {
                "out of clamps": _TENTHS,
                "next stage": _TENTHS,
                "level": _TENTHS,
                "machine": _TENTHS,
                "finish": _TENTHS,
            },
            needed=(("out of clamps",), ("next stage",), ("level",), ("machine",), ("finish",)),
        ),
        "outdoors": Value(values.truth),
    },
    needed=(("open",), ("close_within",), ("lags",)),
)
_FINISH = Table(
    {
        "coats": _COUNT,
        "recoat": _TENTHS,
        "dust_free": _TENTHS,
        "outdoors": Value(values.truth),
    },
    needed=(("coats",), ("recoat",), ("dust_free",)),
)

SHOP = Table(
    {
        "format": Value(values.file_format),
        "name": _WORDS,
        "one_room": Value(values.truth),
        "workers": _COUNT,
        "hours": Value(values.hours),
        "days_off": Value(values.days_off),
        "start": Value(values.first_day),
        "walk": _TENTHS,
        "default_glue": _WORDS,
        "station": Named("station", _STATION, removable=True),
        "cutter": Named("cutter", _CUTTER, open=True, removable=True),
        "accessory": Named("accessory", _ACCESSORY, open=True, removable=True),
        "clamp": Named("clamp", _CLAMP, open=True, removable=True),
        "glue": Named("glue", _GLUE, open=True, removable=True),
        "finish": Named("finish", _FINISH, open=True, removable=True),
        "minutes": Named("kind of work", Named("rate of this work", Value(values.rate))),
        "allowance": Named("allowance", _LENGTH),
        "shim": Named("shim", _LENGTH, open=True, removable=True),
        "clamping": Named("figure of clamping", _LENGTH),
        "sanding": Table({"grits": Value(values.grits), "inside": Value(values.share)}),
        "by_hand": Table({"times": _COUNT}),
        "rest": Table(dict.fromkeys(("planed", "straight", "unknown", "resawn"), _TENTHS)),
    }
)
