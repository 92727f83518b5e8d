"""What a command tells of the time that it took."""

import pytest

from dryfit.progress import Progress, times_table


def test_every_stage_is_told_with_its_share_of_the_whole() -> None:
    begun = [("reading", 100.0), ("ordering 3 operations", 100.5), ("rehearsing 2 steps", 103.5)]
    assert times_table(begun, 104.0).splitlines() == [
        "    0.50 s  12 %  reading",
        "    3.00 s  75 %  ordering 3 operations",
        "    0.50 s  12 %  rehearsing 2 steps",
        "    4.00 s        in all",
    ]


def test_no_time_at_all_is_no_share_of_anything() -> None:
    assert times_table([("reading", 5.0)], 5.0).startswith("    0.00 s   0 %  reading\n")
    assert times_table([], 5.0) == ""


def test_times_are_told_when_they_are_wanted_and_nothing_failed(
    capsys: pytest.CaptureFixture[str],
) -> None:
    with Progress() as quiet:
        quiet("reading")
    assert capsys.readouterr().err == ""
    with pytest.raises(OSError, match="gone"):
        stopped()
    assert capsys.readouterr().err == ""
    with Progress(timed=True) as progress:
        progress("reading")
    assert capsys.readouterr().err.count("\n") == 2


def stopped() -> None:
    with Progress(timed=True) as progress:
        progress("reading")
        raise OSError("gone")
