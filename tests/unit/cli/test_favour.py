"""The one knob of the order on the command line, and the three orders side by side."""

from __future__ import annotations

import json

import pytest
from tests.pieces.reading import FILES

from dryfit.cli import main

Told = pytest.CaptureFixture[str]
PIECE = str(FILES["tool_tote"])


def test_a_misspelt_favour_is_told_with_the_three_words(capsys: Told) -> None:
    with pytest.raises(SystemExit) as refused:
        main(["steps", "--favour", "setup", PIECE])
    assert refused.value.code == 2
    told = capsys.readouterr().err
    assert all(word in told for word in ("setups", "balanced", "soonest"))


def test_without_the_word_the_plan_is_balanced(capsys: Told) -> None:
    assert main(["steps", "--json", "--unrehearsed", PIECE]) == 0
    assert json.loads(capsys.readouterr().out)["favour"] == "balanced"


def test_compared_plans_have_the_figures_of_each_alone(capsys: Told) -> None:
    assert main(["steps", "--compare", PIECE]) == 0
    table = capsys.readouterr().out.splitlines()
    assert table[0].split() == ["favour", "setups", "balanced", "soonest", "part", "by", "part"]
    changes = next(line for line in table if line.startswith("  changes"))
    for at, favour in enumerate(("setups", "balanced", "soonest")):
        assert main(["steps", "--json", "--unrehearsed", "--favour", favour, PIECE]) == 0
        document = json.loads(capsys.readouterr().out)
        totals = document["totals"]
        assert document["favour"] == favour
        said = f"{totals['changeovers']}: {totals['changeover_minutes']:g} min"
        assert changes[20 + 15 * at :].startswith(said)


@pytest.mark.parametrize(
    ("options", "said"),
    [
        (["--json"], "use --json with --favour, once for each"),
        (["--favour", "soonest"], "leave --favour out"),
        (["--move", "2", "before", "1"], "leave --move out"),
    ],
)
def test_what_asks_for_one_plan_alone_is_refused(
    options: list[str], said: str, capsys: Told
) -> None:
    assert main(["steps", "--compare", *options, PIECE]) == 2
    told = capsys.readouterr()
    assert told.out == ""
    assert said in told.err
