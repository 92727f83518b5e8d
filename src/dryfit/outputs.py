"""Writing files whole or not at all."""

from __future__ import annotations

import os
import tempfile
from collections.abc import Sequence
from contextlib import suppress
from pathlib import Path


def write_whole(files: Sequence[tuple[Path, bytes]]) -> None:
    """Write all the files, or none of them and leave what was there.

    Every file is first written beside its target and flushed to the disk; only when all of them
    stand are they put in place.  Raises OSError when the machine does not let us.
    """
    ready: list[tuple[str, Path]] = []
    try:
        for path, data in files:
            ready.append((_written_beside(path, data), path))
        for temporary, path in ready:
            Path(temporary).replace(path)
    finally:
        for temporary, _ in ready:
            with suppress(FileNotFoundError):
                Path(temporary).unlink()


def _written_beside(path: Path, data: bytes) -> str:
    handle, name = tempfile.mkstemp(prefix=f".{path.name}.", dir=path.parent)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        # A temporary file is private; the booklet is as readable as any file the maker makes.
        mask = os.umask(0)
        os.umask(mask)
        Path(name).chmod(0o666 & ~mask)
    except OSError:
        Path(name).unlink()
        raise
    return name
