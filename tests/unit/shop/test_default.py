"""The shipped shop: whole, marked with its sources, and what the worked example relies on."""

import re
from fractions import Fraction

import pytest

from dryfit.shop import Shop, read_shop
from dryfit.shop.read import SHIPPED

MARK = re.compile(r"# (practice|memory|read)\b")
MARKED_TABLES = ("[station", "[glue", "[finish", "[allowance")


@pytest.fixture(scope="module")
def shop() -> Shop:
    shop, findings = read_shop(None, {})
    assert findings == ()
    assert shop is not None
    return shop


def test_limits_glues_finishes_and_allowances_each_name_their_source() -> None:
    # Axes, clamps, cutters and minutes have one mark for all of them at their head.
    table, unmarked = "", []
    for line in SHIPPED.read_text(encoding="utf-8").splitlines():
        if line.startswith("["):
            table = line
        value = re.match(r'[^#\s]\S*( \S+)* = ("(?!0 min)[\d/. ]+ \w+"|\d+)', line)
        listed = table.startswith(MARKED_TABLES) and not table.endswith(".axis]")
        if value and listed and not line.startswith("count = ") and not MARK.search(line):
            unmarked.append(line)
    assert unmarked == []


def test_stations_have_their_axes_in_the_order_of_setting(shop: Shop) -> None:
    axes = {name: [axis.name for axis in station.axes] for name, station in shop.stations.items()}
    assert axes == {
        "mitre saw": ["angle", "stop"],
        "band saw": ["cutter", "fence"],
        "jointer": ["depth", "fence"],
        "planer": ["thickness"],
        "table saw": ["cutter", "accessory", "tilt", "height", "fence", "stop", "jig"],
        "router table": ["cutter", "height", "fence", "stop"],
        "mortiser": ["cutter", "fence", "depth", "stop"],
        "drill press": ["cutter", "fence", "depth", "stop"],
        "sander": ["grit"],
        "bench": [],
        "glue bench": [],
        "finish bench": ["product"],
    }


def test_changing_blades_costs_three_minutes_and_the_dado_set_eight(shop: Shop) -> None:
    cutter = shop.stations["table saw"].axis("cutter")
    family = {"dado 20": "dado", "dado 12": "dado"}
    assert cutter.unsets == ("height",)
    assert cutter.cost(None, "combination blade", family) == 30
    assert cutter.cost("combination blade", "dado 20", family) == 80
    assert cutter.cost("dado 20", "combination blade", family) == 80
    assert cutter.cost("dado 20", "dado 12", family) == 80
    assert cutter.cost("dado 20", "dado 20", family) == 0


def test_minutes_of_the_boot_bench_come_out(shop: Shop) -> None:
    # Minutes worked out by hand for a bench of our own design, as sums of the rates.
    def minutes(kind: str, **amounts: Fraction | int) -> float:
        rates = shop.minutes[kind]
        return float(sum(rates[word] * amount for word, amount in amounts.items()) / 10)

    assert minutes("rough crosscut", each=11) == 5.5
    assert minutes("joint face", each=4, per_metre=Fraction(448, 100)) == pytest.approx(7.776)
    assert minutes("planer pass", each=15, per_metre=15 * Fraction(913, 1000)) == pytest.approx(
        7.239
    )
    assert minutes("mortise", each=2, per_plunge=14) == 4.5
    assert minutes("lap pass", each=36) == 9.0
    top = minutes("glue up", each=1, per_edge_joint=3, per_clamp=5, check=1, clean=1)
    frame = minutes("glue up", each=1, per_joint=4, per_clamp=6, check=1, clean=1)
    base = minutes("glue up base", each=1, per_joint=4, per_clamp=2, check=1, clean=1)
    assert (top, frame, base) == (18.75, 19.5, 17.5)


def test_two_frames_of_four_laps_cannot_be_clamped_at_once(shop: Shop) -> None:
    counts = {clamp.name: clamp.count for clamp in shop.clamps}
    assert counts["C-clamp"] < 2 * 4
    assert counts["bar 1200"] == 6


def test_the_dado_set_reaches_twenty_and_the_sled_lifts_by_twelve(shop: Shop) -> None:
    dado = next(cutter for cutter in shop.cutters if cutter.name == "dado")
    assert [dado.narrowest, dado.widest, dado.step] == [6, 20, Fraction(1, 10)]
    sled = shop.accessory("sled")
    assert sled is not None
    assert [sled.base, sled.longest] == [12, 600]


def test_lags_of_the_default_glue(shop: Shop) -> None:
    glue = shop.glues[shop.default_glue]
    assert (glue.open, glue.close_within) == (50, 100)
    assert dict(glue.lags) == {
        "out of clamps": 600,
        "next stage": 600,
        "level": 7200,
        "machine": 14400,
        "finish": 14400,
    }


def test_every_cutter_and_accessory_stands_at_a_station_and_kinds_follow(shop: Shop) -> None:
    assert {cutter.station for cutter in shop.cutters} <= shop.stations.keys()
    kinds = {cutter.name: cutter.kind for cutter in shop.cutters}
    assert kinds["combination blade"] == "blade"
    assert kinds["dado"] == "set"
    assert kinds["chisel 8"] == "chisel"
    assert kinds["straight bit 8"] == "bit"
    assert kinds["drill 3"] == "drill"
