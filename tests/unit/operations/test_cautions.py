"""Which cautions go with an operation: rags of what dries by taking up oxygen (TRADE D5, H71)."""

from dataclasses import replace

import pytest
from tests.unit.operations.worked import boot_bench

from dryfit.operations.ways.cautions import caution_keys
from dryfit.plan.setting import Setting


@pytest.mark.parametrize(
    ("product", "warned"),
    [
        ("oil varnish", True),
        ("hard wax oil", True),
        ("brushed varnish", True),
        ("oil-based paint", True),
        ("water-based varnish", False),
        ("shellac", False),
        ("wax", False),
    ],
)
def test_rags_with_drying_oil_catch_fire(product: str, warned: bool) -> None:
    coat = next(each for each in boot_bench().operations if each.kind == "coat")
    told = caution_keys(replace(coat, settings=(Setting("finish", product),), cautions=()))
    assert ("oily-rags" in told) == warned
