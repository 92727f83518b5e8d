"""Writing files whole or not at all."""

from __future__ import annotations

import os
import stat
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
        Path(name).chmod(_mode(path))
    except BaseException:  # an interrupt leaves nothing behind either
        Path(name).unlink()
        raise
    return name


def _mode(path: Path) -> int:
    """Return how readable the file is to be: as the one that stands there, or as any new one."""
    if path.exists():
        return stat.S_IMODE(path.stat().st_mode)
    mask = os.umask(0)
    os.umask(mask)
    return 0o666 & ~mask
