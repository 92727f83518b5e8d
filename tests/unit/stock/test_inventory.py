"""The shop's inventory beside the notes: what is read, and what is refused."""

from fractions import Fraction
from pathlib import Path

import pytest

from dryfit import workshop
from dryfit.diagnostics import Severity, Source
from dryfit.workshop import Checked

NOTES = """\
piece Shelf
overall 800 wide, 200 deep, 20 high
timber ash
have 1 board of ash, 1000 x 230 x 27, rough
1 shelf, across, flat, 200 x 20
"""


def checked(folder: Path, *lines: str, name: str = "shelf.dryfit") -> Checked:
    source = Source(str(folder / name), NOTES + "\n".join(lines) + "\n")
    return workshop.check(source, None, {"XDG_CONFIG_HOME": str(folder)})


def codes(found: Checked) -> list[str]:
    return [finding.code for finding in found.findings]


def test_boards_of_the_notes_come_before_those_of_the_inventory(tmp_path: Path) -> None:
    (tmp_path / "racks").mkdir()
    (tmp_path / "racks" / "offcuts.dryfit").write_text(
        "# the rack at the door\nunits in\nhave 1 offcut of ash, 24 x 4 x 1, rough\n"
        "buy boards of ash, 96 x 8 x 1, rough, 48 each\n"
    )
    found = checked(tmp_path, 'stock from "racks/offcuts.dryfit"')
    assert codes(found) == []
    assert found.model is not None
    assert [have.kind for have in found.model.stock] == ["board", "offcut"]
    # Its own unit holds in it: 4 in = 101.6 mm.
    assert found.model.stock[1].sizes[1] == Fraction("101.6")
    assert found.model.stock[1].span.source.name.endswith("offcuts.dryfit")
    assert [have.place for have in found.model.stock] == ["line 4", "line 3 of offcuts.dryfit"]
    assert len(found.model.yard) == 1


@pytest.mark.parametrize(
    "path", ["../offcuts.dryfit", "/etc/hosts", "C:\\wood.dryfit", "racks/../../x", "~/wood"]
)
def test_what_lies_elsewhere_is_not_read(tmp_path: Path, path: str) -> None:
    (tmp_path / "notes").mkdir()
    (tmp_path / "offcuts.dryfit").write_text("have 1 offcut of ash, 600 x 80 x 20\n")
    found = checked(tmp_path / "notes", f"stock from {path}")
    assert codes(found) == ["inventory-outside"]
    assert found.model is not None


def test_a_link_that_leads_out_is_not_followed(tmp_path: Path) -> None:
    (tmp_path / "notes").mkdir()
    (tmp_path / "offcuts.dryfit").write_text("have 1 offcut of ash, 600 x 80 x 20\n")
    (tmp_path / "notes" / "offcuts.dryfit").symlink_to(tmp_path / "offcuts.dryfit")
    assert codes(checked(tmp_path / "notes", "stock from offcuts.dryfit")) == ["inventory-outside"]


def test_a_file_that_is_not_there_is_told_and_the_plan_goes_on(tmp_path: Path) -> None:
    found = checked(tmp_path, "stock from offcuts.dryfit")
    assert codes(found) == ["inventory-missing"]
    assert not found.failed
    (tmp_path / "folder.dryfit").mkdir()
    assert codes(checked(tmp_path, "stock from folder.dryfit")) == ["inventory-missing"]


def test_what_is_no_wood_is_told_at_its_place_in_that_file(tmp_path: Path) -> None:
    (tmp_path / "offcuts.dryfit").write_text(
        "have 1 offcut of ash, 600 x 80 x 20\nfinish oil\nstock from offcuts.dryfit\n"
    )
    found = checked(tmp_path, "stock from offcuts.dryfit", "stock from offcuts.dryfit")
    assert sorted(codes(found)) == ["inventory-line", "inventory-line", "inventory-twice"]
    lines = [each for each in found.findings if each.code == "inventory-line"]
    places = [(each.span.source.name, each.span.line) for each in lines if each.span]
    assert places == [(str(tmp_path / "offcuts.dryfit"), line) for line in (2, 3)]
    assert all(each.severity is Severity.WARNING for each in found.findings)


def test_a_mistake_in_it_has_its_place_there(tmp_path: Path) -> None:
    (tmp_path / "offcuts.dryfit").write_text("# wood\nhave 1 bord of ash, 600 x 80 x 20\n")
    (finding,) = checked(tmp_path, "stock from offcuts.dryfit").findings
    assert finding.span is not None
    assert (finding.code, finding.span.line, finding.span.column) == ("unknown-stock", 2, 8)
    (tmp_path / "bytes.dryfit").write_bytes(b"\xff\xfe")
    assert codes(checked(tmp_path, "stock from bytes.dryfit")) == ["not-utf8"]


def test_notes_from_standard_input_look_in_the_working_folder(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "offcuts.dryfit").write_text("have 1 offcut of ash, 600 x 80 x 20\n")
    monkeypatch.chdir(tmp_path)
    found = workshop.check(Source("-", NOTES + "stock from offcuts.dryfit\n"), None, {})
    assert codes(found) == []
    assert found.model is not None
    assert len(found.model.stock) == 2
