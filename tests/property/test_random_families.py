"""Every family of joints, and every shipped pattern, is drawn by some seed among the first few."""

import re
from functools import cache
from pathlib import Path

import pytest
from tests.generator import random_notes

from dryfit.kinds.joints import JOINT_KINDS

FIRST = 600
SHIPPED = Path(__file__).parents[2] / "src" / "dryfit" / "patterns" / "shipped"

SPELT = {
    "half lap": "half lap|halving joint|: lap",
    "bridle": "bridle",
    "mitre": "mitre",
    "box joint": "box joint|finger joint",
    "through dovetail": "[^d] dovetails",
    "half-blind dovetail": "half-blind dovetail",
    "mortise and tenon": "[^d] tenon",
    "round tenon": "round tenon",
    "housing": "housing|dado|trench",
    "rabbet": "(rabbet|rebate)[ 0-9]* into",
    "groove": "inside .*groove",
    "tongue and groove": "tongue and groove|tongued and grooved",
    "ship lap": "ship lap",
    "back rabbet": "inside .*(rabbet|rebate)",
    "slid panel": "inside .*, under",
    "dowels": "dowels|dowelled",
    "biscuits": "biscuits",
    "loose tenon": "loose tenon",
    "pocket screws": "pocket screws",
    "runner": "running in",
    "bottom runner": "running under",
    "screws": "screws",
    "buttons": "buttons",
    "clips": "clips",
    "figure-8 plates": "figure-8 plates",
    "slotted screws": "slotted screws",
    "hinges": " to .* side: .*hinges",
    "shelf pins": "onto sides: shelf pins",
    "glued butt": ": glue$|, glued$|, glued,",
    "rest": "onto [^:]*$",
}
"""How a family is written where the generator writes it."""


@cache
def lines() -> tuple[str, ...]:
    """All lines of the first seeds."""
    return tuple(line for seed in range(FIRST) for line in random_notes(seed).splitlines())


@pytest.mark.parametrize("family", [kind.name for kind in JOINT_KINDS])
def test_every_family_is_drawn(family: str) -> None:
    spelt = re.compile(SPELT[family])
    assert any(spelt.search(line) for line in lines())


@pytest.mark.parametrize("pattern", sorted(file.stem for file in SHIPPED.glob("*.dryfit")))
def test_every_shipped_pattern_is_drawn(pattern: str) -> None:
    used = f", as {pattern.replace('_', ' ')},"
    assert any(used in line for line in lines())
