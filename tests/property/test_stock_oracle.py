"""Layouts of the pieces that name their wood, replayed by an oracle that knows the JSON alone."""

import json
from collections.abc import Iterator
from copy import deepcopy
from functools import cache
from pathlib import Path
from typing import cast

import pytest
from tests.pieces.reading import FILES
from tests.property.plan_oracle.boards import board_faults
from tests.property.plan_oracle.reading import Json

from dryfit import workshop
from dryfit.diagnostics import Source
from dryfit.notes import source_of
from dryfit.placing.as_json import parts_document
from dryfit.placing.model import Model, Part
from dryfit.placing.strips import FLUSH, core_of, strip_parts
from dryfit.stock.telling.as_json import stock_document

SHOPS = Path(__file__).parents[1] / "shops"
WITH_WOOD = sorted(
    name for name, path in FILES.items() if "\nhave " in path.read_text(encoding="utf-8")
)


@cache
def documents(name: str, shop: str | None = None) -> tuple[Json, Json]:
    """The stock and the parts document as the commands print them."""
    source = source_of(f"{name}.dryfit", FILES[name].read_bytes())
    assert isinstance(source, Source)
    path = None if shop is None else SHOPS / f"{shop}.toml"
    checked, laid, _ = workshop.laid_out(workshop.check(source, path, {}))
    display, piece = checked.declared.display, checked.declared.piece
    assert checked.model is not None
    stock = stock_document(piece, source.name, laid, [], display, checked.shop)
    parts = parts_document(piece, source.name, checked.model, [], display.unit)
    stock_read, parts_read = (cast("Json", json.loads(json.dumps(each))) for each in (stock, parts))
    return stock_read, parts_read | {"parts": list(_sawn(checked.model, parts_read["parts"]))}


def _sawn(model: Model, rows: list[Json]) -> Iterator[Json]:
    """The lines of the cut list, lipped sheets as their cores, with the strips for them."""
    by_name = {part.name: part for part in model.parts}
    for row in rows:
        part = by_name[row["name"]]
        yield row | _sizes(core_of(part)) if part.lips else row
        for strips in strip_parts(part, FLUSH):
            timber, copies = {"timber": strips.timber, "stock": "solid"}, [0] * len(strips.copies)
            yield {"name": strips.name, "made_of": None, "copies": copies} | timber | _sizes(strips)


def _sizes(part: Part) -> Json:
    return {"length": {"exact": f"{part.length} mm"}, "width": {"exact": f"{part.width} mm"}}


@pytest.mark.parametrize("name", WITH_WOOD)
def test_blanks_come_out_of_their_boards(name: str) -> None:
    stock, parts = documents(name)
    assert stock["layouts"]
    assert board_faults(stock, parts) == []


@pytest.mark.parametrize("shop", ["hand_tools", "small_machines"])
def test_they_do_in_other_shops(shop: str) -> None:
    assert board_faults(*documents("boot_bench", shop)) == []


def test_the_oracle_sees_what_is_wrong() -> None:
    stock, parts = documents("boot_bench")

    def wrong(change: str) -> str:
        spoilt = deepcopy(stock)
        layout = next(
            row
            for row in spoilt["layouts"]
            if any(each["blank"] == spoilt["blanks"][0]["name"] for each in row["pieces"])
        )
        board = next(row for row in spoilt["boards"] if row["id"] == layout["board"])
        one, other = layout["pieces"][:2]
        real = next(each["name"] for each in spoilt["blanks"] if each["makes"])
        if change == "place":
            one["along"], one["across"] = other["along"], other["across"]
        elif change == "kerf":
            layout["cuts"][1]["kerf"]["exact"] = "0 mm"
        elif change == "knot":
            board["avoid"] = [{"along": one["along"], "across": one["across"], "why": "knot"}]
        elif change == "timber":
            board["timber"] = "ebony"
        elif change == "waste":
            layout["leftovers"] = layout["leftovers"][1:]
        elif change == "copy":
            layout["pieces"] = [each for each in layout["pieces"] if each["blank"] != real]
        return "; ".join(board_faults(spoilt, parts))

    assert "lie in one place" in wrong("place")
    assert wrong("kerf")
    assert "holds a knot" in wrong("knot")
    assert "comes out of ebony" in wrong("timber")
    assert "what falls is not all" in wrong("waste")
    assert "come out of boards" in wrong("copy")
