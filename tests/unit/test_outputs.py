import errno
import os
from pathlib import Path

import pytest

from dryfit.outputs import write_whole


def test_writes_all_files(tmp_path: Path) -> None:
    write_whole([(tmp_path / "a.html", b"new a"), (tmp_path / "a.pdf", b"new pdf")])
    assert (tmp_path / "a.html").read_bytes() == b"new a"
    assert (tmp_path / "a.pdf").read_bytes() == b"new pdf"
    assert sorted(path.name for path in tmp_path.iterdir()) == ["a.html", "a.pdf"]


def test_a_full_disk_leaves_the_old_files_whole(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    html, pdf = tmp_path / "a.html", tmp_path / "a.pdf"
    html.write_bytes(b"old a")
    pdf.write_bytes(b"old pdf")
    flushed: list[int] = []

    def full_at_the_second(handle: int) -> None:
        flushed.append(handle)
        if len(flushed) == 2:
            raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr(os, "fsync", full_at_the_second)
    with pytest.raises(OSError, match="No space left"):
        write_whole([(html, b"new a"), (pdf, b"new pdf")])
    assert html.read_bytes() == b"old a"
    assert pdf.read_bytes() == b"old pdf"
    assert sorted(path.name for path in tmp_path.iterdir()) == ["a.html", "a.pdf"]


def test_a_missing_folder_is_an_error_of_the_machine(tmp_path: Path) -> None:
    with pytest.raises(FileNotFoundError):
        write_whole([(tmp_path / "nowhere" / "a.html", b"a")])


def test_a_file_stays_as_readable_as_it_was(tmp_path: Path) -> None:
    private = tmp_path / "stool.dryfit"
    private.write_bytes(b"old")
    private.chmod(0o600)
    write_whole([(private, b"new"), (tmp_path / "new.html", b"a")])
    assert private.stat().st_mode & 0o777 == 0o600
    assert (tmp_path / "new.html").stat().st_mode & 0o600 == 0o600
