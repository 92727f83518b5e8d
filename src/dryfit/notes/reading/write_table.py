"""``python -m dryfit.notes.reading.write_table``: write the grammar's parse table beside it."""

from __future__ import annotations

from dryfit.notes.reading.table import GRAMMAR, TABLE, worked_out, written
from dryfit.resources import root


def main() -> None:
    """Work out the table of the grammar, and write it whole."""
    folder = root("grammar")
    grammar = (folder / GRAMMAR).read_text(encoding="utf-8")
    (folder / TABLE).write_text(written(grammar, worked_out(grammar)), encoding="utf-8")


if __name__ == "__main__":
    main()
