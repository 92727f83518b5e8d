"""Figures of clamping, sanding and hand work: read from the shop file, and used by the plan."""

from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest
from tests.pieces.reading import checked as checked_notes
from tests.pieces.reading import model_of, text_of, without_boards
from tests.unit.operations.worked import listed, operation, piece, shipped_shop

from dryfit.diagnostics import Diagnostic, Source
from dryfit.operations import work_list
from dryfit.placing.model import Model
from dryfit.plan.operation import WorkList
from dryfit.shop import Shop, read_shop
from dryfit.stock.resting import resting
from dryfit.workshop import check, laid_out


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
        # Common practice: strips on a sheet's edge over a batten, thin ones with tape.
        "lip_spacing": 200,
        "lip_taped": 6,
    }
    assert shop.sanding.grits == ("120", "180")
    assert shop.sanding.inside == Fraction(1, 2)
    assert shop.by_hand == 6
    # A3.7: 1 to 3 days on stickers, here in tenths of a minute.
    assert (shop.rests.planed, shop.rests.straight) == (14400, 14400)
    # A8.3: 1 to 7 days for leaves.
    assert shop.rests.resawn == 14400


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
        ("[rest]\nplaned = 24", "shop-no-unit"),
        ('[rest]\nplaned = "none"', "shop-wrong-value"),
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


def bench_in(shop: Shop) -> tuple[Model, WorkList]:
    """The boot bench out of its boards, 27 and 34 thick, in a shop."""
    checked = replace(checked_notes(text_of("boot_bench")), shop=shop)
    checked, laid, _ = laid_out(checked)
    assert checked.model is not None
    assert laid is not None
    work, findings = work_list(checked.model, shop, {}, laid)
    assert work is not None, findings
    return checked.model, work


@pytest.mark.parametrize(("rest", "tenths"), [("24 h", 14400), ("90 min", 900), ("0 h", 0)])
def test_wood_that_loses_much_rests_as_long_as_the_shop_says(
    tmp_path: Path, rest: str, tenths: int
) -> None:
    """TRADE A3.7, 1 to 3 days: slats of 18 out of 27 lose a third, posts of 30 out of 34 little."""
    model, work = bench_in(shop_of(tmp_path, f'[rest]\nplaned = "{rest}"'))
    assert resting(model, shop_of(tmp_path, f'[rest]\nplaned = "{rest}"')).much
    close = [each for each in work.operations if each.kind == "rough thickness"]
    assert {each.after_tenths for each in close} == ({tenths} if tenths else set())
    assert all(f"for {rest}," in str(each.details) for each in close)
    subjects = {each.id.partition(" / ")[0] for each in close}
    assert ("slat" in subjects, "post" in subjects) == (bool(tenths), False)
    assert operation(work, "slat / thickness")


def test_that_wood_rests_is_told_with_the_line_that_says_otherwise(tmp_path: Path) -> None:
    text = text_of("boot_bench")
    own = tmp_path / "shop.toml"
    own.write_text('format = "dryfit-shop/1"\n[rest]\nplaned = "0 h"\n', encoding="utf-8")
    told = [
        assumption.instead
        for assumption in model_of(text).assumptions
        if "on stickers" in assumption.text
    ]
    assert told == ['in the shop file under [rest]: planed = "24 h"  # "0 h" for no rest']
    for notes, shop in ((without_boards(text), None), (text, own)):
        checked = check(Source("notes.dryfit", notes), shop, {})
        assert checked.model is not None
        assert not [row for row in checked.model.assumptions if "on stickers" in row.text]
