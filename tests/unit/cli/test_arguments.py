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
