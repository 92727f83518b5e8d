import hashlib
from fractions import Fraction
from pathlib import Path

import pytest

from dryfit.diagnostics import Diagnostic, Severity
from dryfit.shop import Shop, ShopFileError, read_shop
from dryfit.shop.read import SHIPPED

NOBODY: dict[str, str] = {}


def _read(folder: Path, text: str) -> tuple[Shop | None, tuple[Diagnostic, ...]]:
    own = folder / "shop.toml"
    own.write_text(text, encoding="utf-8")
    return read_shop(own, NOBODY)


def _shop(folder: Path, text: str) -> Shop:
    shop, findings = _read(folder, text)
    assert findings == ()
    assert shop is not None
    return shop


def _only_finding(folder: Path, text: str) -> Diagnostic:
    shop, findings = _read(folder, text)
    assert shop is None
    (finding,) = findings
    assert finding.severity is Severity.ERROR
    return finding


def _place(finding: Diagnostic) -> tuple[int, int, str]:
    assert finding.span is not None
    return finding.span.line, finding.span.column, finding.span.text()


CONTRACT = """\
format = "dryfit-shop/1"
name = "One-room shop"
one_room = true                       # no dust while a finish is wet
workers = 1
hours = "08:00-16:00"
days_off = ["Saturday", "Sunday"]
walk = "1 min"
[station."table saw"]
count = 1
test_cut = "1.5 min"
limits = { depth = "79 mm", dado_depth = "45 mm", shortest_rip = "300 mm" }
[station."table saw".axis]            # order of this table = order of setting
cutter = { change = "3 min", unsets = ["height"], between = [{ from = "*", to = "dado", \
change = "8 min" }, { from = "dado", to = "*", change = "8 min" }] }
height = { change = "1 min" }
fence = { change = "1 min", repeats_within = "0.3 mm" }
stop = { change = "1.5 min" }
[cutter]                              # one line each
"combination blade" = { station = "table saw", width = "3.2 mm" }
"dado" = { station = "table saw", widths = "6 mm to 20 mm by 0.1 mm" }
[accessory]
"sled" = { station = "table saw", base = "12 mm", longest = "600 mm" }
[clamp]
"bar 1200" = { opens = "1200 mm", count = 6 }
[glue."white glue"]
open = "5 min"
close_within = "10 min"
lags = { "out of clamps" = "60 min", "next stage" = "60 min", "level" = "12 h", \
"machine" = "24 h", "finish" = "24 h" }
[finish."oil varnish"]
coats = 2
recoat = "24 h"
dust_free = "8 h"
[minutes]
"rough crosscut" = { each = "0.5 min" }
"""


def test_the_file_of_the_contract_changes_nothing_in_the_shipped_shop(tmp_path: Path) -> None:
    shipped, findings = read_shop(None, NOBODY)
    assert findings == ()
    assert shipped is not None
    own = _shop(tmp_path, CONTRACT)
    assert own.stations == shipped.stations
    assert own.cutters == shipped.cutters
    assert (own.glues, own.finishes, own.minutes) == (
        shipped.glues,
        shipped.finishes,
        shipped.minutes,
    )


def test_a_file_names_only_what_differs(tmp_path: Path) -> None:
    shop = _shop(
        tmp_path,
        'walk = "30 s"\nhours = "9:30-17:00"\n'
        '[station."table saw"]\nlimits.depth = "3 1/4 in"\n'
        '[station."table saw".axis.stop]\nchange = "0.7 min"\n'
        '[cutter]\ndado.width = "19 mm"\n'
        '"rip blade" = { station = "table saw", width = "1/8 in" }\n',
    )
    saw = shop.stations["table saw"]
    assert (shop.walk, shop.opens, shop.closes) == (5, 5700, 10200)
    assert saw.limits["depth"] == Fraction(13, 4) * Fraction(254, 10)
    assert saw.limits["dado_depth"] == 45
    assert saw.axis("stop").change == 7
    assert saw.axis("stop").repeats_within == Fraction(1, 10)
    dado = next(cutter for cutter in shop.cutters if cutter.name == "dado")
    assert [dado.narrowest, dado.widest, dado.step] == [19, 19, 0]
    assert dado.kind == "set"
    assert (shop.cutters[-1].widest, shop.cutters[-1].kind) == (Fraction(127, 40), "blade")


def test_false_removes_a_station_with_its_cutters_and_accessories(tmp_path: Path) -> None:
    shop = _shop(tmp_path, 'station."table saw" = false\ncutter."chisel 6" = false\n')
    assert "table saw" not in shop.stations
    names = {cutter.name for cutter in shop.cutters}
    assert not names & {"dado", "combination blade", "chisel 6"}
    assert "chisel 8" in names
    assert shop.accessories == ()


def test_a_file_that_names_every_axis_gives_their_order(tmp_path: Path) -> None:
    text = '[station."band saw".axis]\nfence.change = "1 min"\ncutter.change = "5 min"\n'
    assert [axis.name for axis in _shop(tmp_path, text).stations["band saw"].axes] == [
        "fence",
        "cutter",
    ]
    partly = '[station."band saw".axis]\nfence.change = "1 min"\n'
    assert [axis.name for axis in _shop(tmp_path, partly).stations["band saw"].axes] == [
        "cutter",
        "fence",
    ]


@pytest.mark.parametrize(
    ("line", "place", "code", "words", "hint"),
    [
        ("wokers = 2", (2, 1, "wokers"), "shop-unknown-key", "`wokers`", "`workers`"),
        ("walk = 1", (2, 8, "1"), "shop-no-unit", "unit is missing", '"1.5 min"'),
        ('walk = "1"', (2, 8, '"1"'), "shop-wrong-value", "unit is missing", '"1.5 min"'),
        ('walk = "1 mm"', (2, 8, '"1 mm"'), "shop-wrong-value", "a length where a time", "time"),
        ('walk = "1 min 3 mm"', (2, 8, '"1 min 3 mm"'), "shop-wrong-value", "added", "a time"),
        ('walk = "1 parsec"', (2, 8, '"1 parsec"'), "shop-wrong-value", "`parsec`", "a time"),
        ('walk = "-1 min"', (2, 8, '"-1 min"'), "shop-wrong-value", "less than nothing", "a time"),
        ('walk = "1/0 min"', (2, 8, '"1/0 min"'), "shop-wrong-value", "by 0", "a time"),
        ('walk = "0.25 min"', (2, 8, '"0.25 min"'), "shop-wrong-value", "tenth", "round"),
        ("walk = { a = 1 }", (2, 8, "{ a = 1 }"), "shop-wrong-value", "a time belongs", "quotes"),
        ('format = "x/2"', (2, 10, '"x/2"'), "shop-wrong-format", "version", "dryfit-shop/1"),
        ("one_room = 1", (2, 12, "1"), "shop-wrong-value", "true or false", "without quotes"),
        ("workers = 0", (2, 11, "0"), "shop-wrong-value", "whole number", "1 is the least"),
        ('workers = "2"', (2, 11, '"2"'), "shop-wrong-value", "whole number", "quotes"),
        ('hours = "8-16"', (2, 9, '"8-16"'), "shop-wrong-value", "hours", "08:00-16:00"),
        ('hours = "16:00-08:00"', (2, 9, '"16:00-08:00"'), "shop-wrong-value", "end", "08:00"),
        ('days_off = ["Sun"]', (2, 12, '["Sun"]'), "shop-wrong-value", "`Sun`", "Saturday"),
        ('start = "May"', (2, 9, '"May"'), "shop-wrong-value", "no day", "2026-12-05"),
        ('start = "2026-02-30"', (2, 9, '"2026-02-30"'), "shop-wrong-value", "no 2026", "2026"),
        ('default_glue = "PVA"', (2, 16, '"PVA"'), "shop-unknown-name", "`PVA`", "white glue"),
        (
            "station.tablesaw = false",
            (2, 9, "tablesaw"),
            "shop-unknown-name",
            "tablesaw",
            "table saw",
        ),
        ("cutter.dadoo = false", (2, 8, "dadoo"), "shop-unknown-name", "`dadoo`", "`dado`"),
        ("station.bench = false", (2, 9, "bench"), "shop-wrong-value", "bench", "take this line"),
        (
            'station.planer.axis.depth = { change = "1 min" }',
            (2, 21, "depth"),
            "shop-unknown-name",
            "no axis",
            "thickness",
        ),
        (
            'station.planer.limits.longest = "1 m"',
            (2, 23, "longest"),
            "shop-unknown-name",
            "no limit",
            "shortest",
        ),
        (
            'station."table saw".axis.fence.unsets = ["hight"]',
            (2, 41, '["hight"]'),
            "shop-unknown-name",
            "`hight`",
            "`height`",
        ),
        (
            'station."table saw".axis.cutter.between = [{ from = "*", to = "dado" }]',
            (2, 43, '[{ from = "*", to = "dado" }]'),
            "shop-wrong-value",
            "costs between cutters",
            "from",
        ),
        (
            (
                'station."table saw".axis.cutter.between = '
                '[{ from = "dadoo", to = "*", change = "9 min" }]'
            ),
            (2, 43, '[{ from = "dadoo", to = "*", change = "9 min" }]'),
            "shop-unknown-name",
            "`dadoo`",
            "`dado`",
        ),
        (
            'cutter."thin" = { station = "table saww", width = "2.4 mm" }',
            (2, 29, '"table saww"'),
            "shop-unknown-name",
            "`table saww`",
            "`table saw`",
        ),
        (
            'cutter."thin" = { station = "table saw" }',
            (2, 8, '"thin"'),
            "shop-incomplete",
            "lacks `width` or `widths`",
            "all",
        ),
        (
            'cutter."thin" = { station = "table saw", width = "2,4 mm" }',
            (2, 50, '"2,4 mm"'),
            "shop-wrong-value",
            "decimal point",
            "a length",
        ),
        (
            'glue.quick = { open = "1 min", close_within = "2 min", lags = { finish = "1 h" } }',
            (2, 6, "quick"),
            "shop-incomplete",
            "lacks `out of clamps`, `next stage`, `level`, `machine`",
            "all",
        ),
        ('minutes.sand.per_acre = "1 h"', (2, 14, "per_acre"), "shop-unknown-name", "rate", "each"),
        (
            'minutes.sandd.each = "1 h"',
            (2, 9, "sandd"),
            "shop-unknown-name",
            "kind of work",
            "sand",
        ),
        ('allowance.snip = "1 mm"', (2, 11, "snip"), "shop-unknown-name", "allowance", "snipe"),
        ("cutter = 3", (2, 10, "3"), "shop-wrong-value", "a table", "[cutter]"),
        ("walk", (2, 5, ""), "shop-broken", "not TOML", "quotes"),
        ('walk = "1 min', (2, 14, ""), "shop-broken", "not TOML", "quotes"),
    ],
)
def test_a_mistake_is_one_finding_at_its_place(
    tmp_path: Path, line: str, place: tuple[int, int, str], code: str, words: str, hint: str
) -> None:
    finding = _only_finding(tmp_path, f"# mine\n{line}\n")
    assert (finding.code, _place(finding)) == (code, place)
    assert words in finding.message
    assert hint in finding.hints[0].message


def test_all_mistakes_of_a_file_are_found_in_one_run_in_the_order_of_lines(tmp_path: Path) -> None:
    text = 'walk = 1\nwokers = 2\n[cutter]\nthin = { station = "tabel saw", width = "2 min" }\n'
    shop, findings = _read(tmp_path, text)
    assert shop is None
    assert [finding.code for finding in findings] == [
        "shop-no-unit",
        "shop-unknown-key",
        "shop-wrong-value",
    ]
    assert findings == tuple(sorted(findings, key=Diagnostic.sort_key))


def test_brackets_without_end_are_a_finding(tmp_path: Path) -> None:
    assert _only_finding(tmp_path, f"a = {'[' * 5000}").code == "shop-broken"


def test_the_users_file_is_looked_for_as_the_xdg_specification_says(tmp_path: Path) -> None:
    def put(folder: Path, name: str) -> None:
        (folder / "dryfit").mkdir(parents=True)
        (folder / "dryfit" / "shop.toml").write_text(f'name = "{name}"\n', encoding="utf-8")

    def name(environment: dict[str, str]) -> str:
        shop, _ = read_shop(None, environment)
        assert shop is not None
        return shop.name

    home, config = tmp_path / "home", tmp_path / "config"
    assert name({"HOME": str(home)}) == "One-room shop"
    put(home / ".config", "Home")
    put(config, "Config")
    assert name({"HOME": str(home), "XDG_CONFIG_HOME": str(config)}) == "Config"
    assert name({"HOME": str(home)}) == "Home"
    assert name({"HOME": str(home), "XDG_CONFIG_HOME": "relative"}) == "Home"
    assert name({"XDG_CONFIG_HOME": ""}) == "One-room shop"
    own = tmp_path / "mine.toml"
    own.write_text('name = "Mine"\n', encoding="utf-8")
    shop, _ = read_shop(own, {"XDG_CONFIG_HOME": str(config)})
    assert shop is not None
    assert (shop.name, shop.files[-1]) == ("Mine", str(own))


def test_the_digest_is_of_the_bytes_of_both_files(tmp_path: Path) -> None:
    shipped = SHIPPED.read_bytes()
    alone, _ = read_shop(None, NOBODY)
    assert alone is not None
    assert alone.sha256 == hashlib.sha256(shipped).hexdigest()
    text = 'name = "Barn"\r\n'
    own = tmp_path / "shop.toml"
    own.write_bytes(text.encode())
    both, findings = read_shop(own, NOBODY)
    assert both is not None, findings
    assert both.sha256 == hashlib.sha256(shipped + text.encode()).hexdigest()


def test_a_file_that_cannot_be_read_is_one_line(tmp_path: Path) -> None:
    missing = tmp_path / "none.toml"
    with pytest.raises(ShopFileError, match="there is no shop file") as caught:
        read_shop(missing, NOBODY)
    assert str(missing) in str(caught.value)
    with pytest.raises(ShopFileError, match="cannot be read: is a directory"):
        read_shop(tmp_path, NOBODY)
    latin = tmp_path / "latin.toml"
    latin.write_bytes('walk = "1 min"\nname = "Schöner"\n'.encode("latin-1"))
    with pytest.raises(ShopFileError, match="is not UTF-8: line 2"):
        read_shop(latin, NOBODY)


def test_a_byte_order_mark_and_foreign_line_ends_do_no_harm(tmp_path: Path) -> None:
    own = tmp_path / "shop.toml"
    own.write_bytes(b'\xef\xbb\xbfname = "Barn"\r\nwalk = 1\r\n')
    _, (finding,) = read_shop(own, NOBODY)
    assert _place(finding) == (2, 8, "1")
