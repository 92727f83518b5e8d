"""The table of advance widths is that of the shipped font; run this file to write it anew."""

import json
from pathlib import Path

import pytest
from fontTools.ttLib import TTFont  # type: ignore[import-untyped]

from dryfit.booklet.drawing import lettering
from dryfit.booklet.drawing.lettering import text_width
from dryfit.resources import root

TABLE = Path(lettering.__file__).with_name("advance_widths.json")


def widths_of(weight: str) -> dict[str, int]:
    font = TTFont(root("templates") / "fonts" / f"Inter-{weight}.woff2")
    metrics = font["hmtx"]
    return {chr(code): metrics[glyph][0] for code, glyph in sorted(font.getBestCmap().items())}


def table() -> str:
    rows = {weight.lower(): widths_of(weight) for weight in ("Regular", "Bold")}
    lines = (
        f'"{weight}": {json.dumps(row, ensure_ascii=False, separators=(",", ":"))}'
        for weight, row in rows.items()
    )
    return "{\n" + ",\n".join(lines) + "\n}\n"


def test_the_table_is_the_fonts() -> None:
    assert TABLE.read_text(encoding="utf-8") == table()


@pytest.mark.parametrize("weight", ["Regular", "Bold"])
def test_em_and_height_of_capitals_are_the_fonts(weight: str) -> None:
    font = TTFont(root("templates") / "fonts" / f"Inter-{weight}.woff2")
    assert font["head"].unitsPerEm == lettering.UNITS_PER_EM
    assert font["OS/2"].sCapHeight / lettering.UNITS_PER_EM == lettering.CAP_HEIGHT


def test_width_grows_with_size_weight_and_length() -> None:
    assert text_width("17 3/4", 10) == pytest.approx(2 * text_width("17 3/4", 5))
    assert text_width("near side", 5, bold=True) > text_width("near side", 5)
    assert text_width("1" * 9, 5) == pytest.approx(9 * text_width("1", 5))


def test_a_character_that_the_font_lacks_takes_the_widest_room() -> None:
    assert text_width("Ω", 5) >= text_width("M", 5)


if __name__ == "__main__":
    TABLE.write_text(table(), encoding="utf-8")
