"""Figures of clamping, sanding and hand work: read from the shop file, and used by the plan."""

from fractions import Fraction
from pathlib import Path

import pytest
from tests.unit.operations.worked import listed, operation, piece, shipped_shop

from dryfit.diagnostics import Diagnostic
from dryfit.shop import Shop, read_shop


def read(folder: Path, text: str) -> tuple[Shop | None, tuple[Diagnostic, ...]]:
    """A shop file laid over the shipped one."""
    own = folder / "shop.toml"
    own.write_text(f'format = "dryfit-shop/1"\n{text}\n', encoding="utf-8")
    return read_shop(own, {})


def shop_of(folder: Path, text: str) -> Shop:
    """The shop of a file without fault."""
    shop, findings = read(folder, text)
    assert shop is not None, findings
    return shop


def test_the_shipped_figures_are_those_of_the_trade() -> None:
    """TRADE C3.2: caul 20, play 25; A9.4: 200-300 apart, 40-50 from the end; D1: 120, 180."""
    shop = shipped_shop()
    assert dict(shop.clamping) == {
        "caul": 20,
        "screw_play": 25,
        "pad": 10,
        "panel_spacing": 300,
        "panel_end": 50,
    }
    assert shop.sanding.grits == ("120", "180")
    assert shop.sanding.inside == Fraction(1, 2)
    assert shop.by_hand == 6


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ('[clamping]\ncauls = "20 mm"', "shop-unknown-name"),
        ("[clamping]\ncaul = 20", "shop-no-unit"),
        ('[sanding]\ngrits = ["180", "120"]', "shop-wrong-value"),
        ("[sanding]\ngrits = []", "shop-wrong-value"),
        ('[sanding]\ninside = "half"', "shop-wrong-value"),
        ('[sanding]\ninside = "101 %"', "shop-wrong-value"),
        ("[by_hand]\ntimes = 0", "shop-wrong-value"),
        ("[by_hand]\nslower = 6", "shop-unknown-key"),
    ],
)
def test_a_wrong_figure_is_one_finding(tmp_path: Path, text: str, code: str) -> None:
    shop, findings = read(tmp_path, text)
    assert shop is None
    assert [(each.code, each.span is not None) for each in findings] == [(code, True)]


def test_thicker_cauls_want_longer_clamps(tmp_path: Path) -> None:
    """The base is 940 long: 940 + 2 x 20 + 25 = 1005 and 940 + 2 x 30 + 25 = 1025 (TRADE C3.2)."""
    own = shop_of(tmp_path, '[clamping]\ncaul = "30 mm"')
    needed = []
    for shop in (shipped_shop(), own):
        glue = operation(listed(piece(), shop)[0], "base / glue up").glue_up
        assert glue is not None
        needed.append([row.length for row in glue.clamps])
    assert needed == [[1005], [1025]]


def test_every_grit_of_the_shop_is_sanded(tmp_path: Path) -> None:
    work, _ = listed(piece(), shop_of(tmp_path, '[sanding]\ngrits = ["100", "150", "180"]'))
    deeds = [op.id for op in work.operations if op.id.startswith("top / sand")]
    assert deeds == ["top / sand 100", "top / sand 150", "top / sand 180"]


def test_a_slower_hand_takes_longer(tmp_path: Path) -> None:
    text = "station.jointer = false\n[by_hand]\ntimes = {}"
    quick = listed(piece(), shop_of(tmp_path, text.format(6)))[0]
    slow = listed(piece(), shop_of(tmp_path, text.format(12)))[0]
    edges = [operation(work, "post / edge").tenths for work in (quick, slow)]
    assert edges[1] - 2 * edges[0] in {-1, 0, 1}  # each rounded to a tenth of a minute
