"""Which glues and finishes last outdoors: the table, unless the shop file says otherwise."""

from pathlib import Path

from dryfit.shop.outdoors import lasting
from dryfit.shop.read import read_shop
from dryfit.shop.shop import Shop


def shop(folder: Path, text: str) -> Shop:
    file = folder / "shop.toml"
    file.write_text(text, encoding="utf-8")
    found, findings = read_shop(file, {})
    assert found is not None, findings
    assert findings == ()
    return found


def test_the_shipped_glues_and_finishes_are_all_in_the_table(tmp_path: Path) -> None:
    here = shop(tmp_path, 'format = "dryfit-shop/1"\n')
    assert {each.name for each in here.glues.values() if each.outdoors} == lasting("glue")
    assert {each.name for each in here.finishes.values() if each.outdoors} == lasting("finish")


def test_a_shop_file_overrules_the_table(tmp_path: Path) -> None:
    here = shop(
        tmp_path,
        'format = "dryfit-shop/1"\n[glue."white glue"]\noutdoors = true\n'
        "[finish.paint]\noutdoors = false\n",
    )
    assert here.glues["white glue"].outdoors
    assert not here.finishes["paint"].outdoors


def test_what_the_table_does_not_know_does_not_last(tmp_path: Path) -> None:
    here = shop(
        tmp_path,
        'format = "dryfit-shop/1"\n[finish.varnishing]\n'
        'coats = 2\nrecoat = "24 h"\ndust_free = "8 h"\n',
    )
    assert not here.finishes["varnishing"].outdoors
