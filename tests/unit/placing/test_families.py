"""One module for each family of joints, loaded when the notes name it."""

import subprocess
import sys
from pathlib import Path

import dryfit.placing.families as room
from dryfit.placing.families import (
    BY_JOINT,
    BY_PREPOSITION,
    DROPPED_IN,
    ITS_SCREWS,
    finder_of,
)

FAMILIES = {*BY_JOINT.values(), *BY_PREPOSITION.values(), DROPPED_IN, ITS_SCREWS}


def test_every_family_has_a_module_and_every_module_a_family() -> None:
    modules = {path.stem for path in Path(room.__path__[0]).glob("*.py")}
    assert modules - {"__init__", "finding"} == FAMILIES
    assert all(callable(finder_of(family)) for family in FAMILIES)


def test_a_family_that_is_not_named_is_not_loaded() -> None:
    program = (
        "import sys\n"
        "from tests.pieces.reading import checked, text_of\n"
        "checked(text_of('unequal_laps'))\n"
        "print(*(name for name in sys.modules if '.families.' in name))\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", program], check=True, capture_output=True, text=True
    )
    assert set(done.stdout.split()) == {
        "dryfit.placing.families.finding",
        "dryfit.placing.families.half_lap",
    }
