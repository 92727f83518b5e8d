"""What the arguments refuse, so that nothing that was asked for is left out in silence."""

from __future__ import annotations

import pytest
from tests.pieces.reading import FILES

from dryfit.cli import main


def test_a_cut_list_is_json_or_csv_but_not_both(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as refused:
        main(["parts", "--csv", "--json", str(FILES["step_stool"])])
    assert refused.value.code == 2
    told = capsys.readouterr()
    assert told.out == ""
    assert "not allowed with" in told.err


@pytest.mark.parametrize(
    ("day", "words"),
    [
        ("2026-12-05", "day 1 (Mon 7 Dec) at 08:00"),
        ("Thursday", "day 1 (Thu) at 08:00"),
        ("thursday", "day 1 (Thu) at 08:00"),
    ],
)
def test_the_start_gives_the_days_their_names(
    capsys: pytest.CaptureFixture[str], day: str, words: str
) -> None:
    """5 December 2026 is a Saturday, and the shop works from Monday to Friday."""
    assert main(["steps", str(FILES["step_stool"]), "--start", day]) == 0
    told = capsys.readouterr().out
    moved = "day 1 is Monday 7 December 2026, the first working day from the start on"
    lines = told.splitlines()
    assert words in lines[2 if day == "2026-12-05" else 0]
    assert (lines[0] == moved) is (day == "2026-12-05")
    assert ("\ndone on " in told, " 2026, day " in told) == (True, day[0].isdigit())


@pytest.mark.parametrize("day", ["2026-02-30", "5 December", "May", "1026-12-05", ""])
def test_a_start_that_is_no_day_is_refused(capsys: pytest.CaptureFixture[str], day: str) -> None:
    with pytest.raises(SystemExit) as refused:
        main(["steps", str(FILES["step_stool"]), "--start", day])
    assert refused.value.code == 2
    assert "2026-12-05" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--favor", "soonest"), "did you mean --favour?"),
        (("--move", "button", "/", "make", "before", "33"), "put in quotes"),
        (("--move", "2", "before", "1", "--move", "4", "before", "3"), "only one --move"),
    ],
)
def test_what_is_left_over_is_told_with_its_remedy(
    words: tuple[str, ...], said: str, capsys: pytest.CaptureFixture[str]
) -> None:
    with pytest.raises(SystemExit) as refused:
        main(["steps", str(FILES["step_stool"]), *words])
    assert refused.value.code == 2
    assert said in capsys.readouterr().err
