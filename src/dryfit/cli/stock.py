"""`stock`: whether the wood is enough, what comes out of which board, and what is to be bought."""

from __future__ import annotations

import argparse
import json
import sys
from pathlib import Path

from dryfit.cli.interrupting import undisturbed
from dryfit.cli.on_notes import laid_notes, status_of, tell
from dryfit.cli.status import IN_THE_NOTES
from dryfit.diagnostics.as_json import findings_json
from dryfit.outputs import write_whole
from dryfit.progress import Progress
from dryfit.quantities import Display
from dryfit.stock.laid_out import LaidOut


def stock(options: argparse.Namespace) -> int:
    """Print the boards with their cuts, and write a drawing of each where asked to."""
    with Progress() as progress:
        checked, laid = laid_notes(options, progress)
    findings = checked.findings
    display, written = checked.declared.display, []
    if options.svg is not None and laid is not None:
        written = _drawn(laid, display, Path(options.svg))
    if options.json:
        from dryfit.stock.telling.as_json import stock_document

        document = stock_document(
            checked.declared.piece,
            checked.source.name,
            laid,
            findings_json(findings, display.plain.shown),
            display,
            checked.shop,
        )
        sys.stdout.write(json.dumps(document, ensure_ascii=False, indent=2) + "\n")
        return status_of(findings)
    tell(findings)
    if checked.failed or checked.shop is None or checked.model is None:
        return IN_THE_NOTES
    from dryfit.stock.telling.as_text import no_boards, stock_text

    text = no_boards(display) if laid is None else stock_text(laid, checked.model, checked.shop)
    sys.stdout.write(text)
    for path in written:
        print(path)
    return status_of(findings)


def _drawn(laid: LaidOut, display: Display, folder: Path) -> list[Path]:
    """Write a drawing of each board that is cut, all or none; return their paths."""
    from dryfit.booklet import board_files

    files = [(folder / name, data) for name, data in board_files(laid, display)]
    if files:
        folder.mkdir(parents=True, exist_ok=True)
        with undisturbed():
            write_whole(files)
    return [path for path, _ in files]
