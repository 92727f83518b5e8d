"""The command line: arguments, exit codes, nothing else.

Exit status 0: done, warnings allowed; 1: errors in the notes or in the shop file; 2: wrong usage
or the machine (a file that cannot be read or written).
"""

from __future__ import annotations

import argparse
import json
import os
import sys
from collections.abc import Callable, Sequence
from pathlib import Path

from dryfit import __version__, workshop
from dryfit.diagnostics import Diagnostic, Findings, Source
from dryfit.diagnostics.as_json import Json, findings_json, severity_counts
from dryfit.diagnostics.render import full
from dryfit.notes import source_of
from dryfit.outputs import write_whole
from dryfit.progress import Progress
from dryfit.shop import ShopFileError
from dryfit.workshop import Checked

DONE, IN_THE_NOTES, MACHINE = 0, 1, 2


class MachineError(Exception):
    """Something outside the notes that stops us; its text is the one line to print."""


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command and return its exit status."""
    options = _parser().parse_args(arguments)
    try:
        return _run(options)
    except (MachineError, ShopFileError) as error:
        return _stop(str(error))
    except BrokenPipeError:
        # The reader of our output went away; nothing is left to say it to.
        sys.stdout = open(os.devnull, "w", encoding="utf-8")  # noqa: PTH123, SIM115
        return MACHINE
    except OSError as error:
        what = f"{error.filename}: " if error.filename else ""
        return _stop(f"{what}{error.strerror or error}")


def _stop(line: str) -> int:
    print(f"dryfit: {line}", file=sys.stderr)
    return MACHINE


def _run(options: argparse.Namespace) -> int:
    source = _read(options.notes)
    checked = workshop.check(source, options.shop, os.environ)
    command: Callable[[argparse.Namespace, Checked], int] = options.command
    return command(options, checked)


def _read(name: str) -> Source:
    if name == "-":
        data, shown = sys.stdin.buffer.read(), "-"
    else:
        data, shown = Path(name).read_bytes(), name
    source = source_of(shown, data)
    if isinstance(source, Diagnostic):
        raise MachineError(source.message)
    return source


def _check(options: argparse.Namespace, checked: Checked) -> int:
    if options.json:
        _print_json(
            {**_head("dryfit-check/1", checked), **severity_counts(checked.findings)}, checked
        )
    else:
        _tell(checked.findings)
        if not checked.failed:
            _tell_assumptions(checked)
        print(_summary(checked.findings), file=sys.stderr)
    return _status(checked.findings)


def _parts(options: argparse.Namespace, checked: Checked) -> int:
    from dryfit.placing.as_json import parts_csv, parts_document

    display = checked.declared.display
    if options.json:
        document = parts_document(
            checked.declared.piece,
            checked.source.name,
            checked.model,
            findings_json(checked.findings, display.shown),
            display.unit,
        )
        _write_json(document)
        return _status(checked.findings)
    _tell(checked.findings)
    if checked.model is not None:
        if options.csv:
            sys.stdout.write(parts_csv(checked.model))
        else:
            from dryfit.placing.as_text import parts_table

            sys.stdout.write(parts_table(checked.model))
    return _status(checked.findings)


def _steps(options: argparse.Namespace, checked: Checked) -> int:
    with Progress() as progress:
        plan, findings = workshop.plan(checked, progress)
    display = checked.declared.display
    if options.json:
        from dryfit.plan.as_json import steps_document

        document = steps_document(
            plan,
            piece=checked.declared.piece,
            notes=checked.source.name,
            display=display,
            findings=findings_json(findings, display.shown),
        )
        _write_json(document)
        return _status(findings)
    _tell(findings)
    if plan is not None:
        from dryfit.plan.as_text import steps_table

        sys.stdout.write(steps_table(plan, display))
    return _status(findings)


def _booklet(options: argparse.Namespace, checked: Checked) -> int:
    folder = Path(options.output)
    with Progress() as progress:
        plan, findings = workshop.plan(checked, progress)
        _tell(findings)
        if plan is None or checked.model is None or checked.shop is None:
            return IN_THE_NOTES
        from dryfit.booklet import render

        progress("drawing the pages")
        html = render(checked.model, plan, checked.shop, findings, options.paper)
        stem = "booklet" if options.notes == "-" else Path(options.notes).stem
        files = [(folder / f"{stem}.html", html.encode("utf-8"))]
        if options.pdf:
            files += _pdf(html, folder / f"{stem}.pdf", progress)
    folder.mkdir(parents=True, exist_ok=True)
    write_whole(files)
    for path, _ in files:
        print(path)
    return _status(findings)


def _pdf(html: str, path: Path, progress: Progress) -> list[tuple[Path, bytes]]:
    from dryfit.booklet.pdf import PdfUnavailable, write

    progress("printing the PDF")
    try:
        return [(path, write(html))]
    except PdfUnavailable as error:
        progress.clear()
        print(f"dryfit: {error}", file=sys.stderr)
        return []


def _head(name: str, checked: Checked) -> Json:
    return {"format": name, "piece": checked.declared.piece, "notes": checked.source.name}


def _print_json(head: Json, checked: Checked) -> None:
    shown = checked.declared.display.shown
    _write_json(head | {"findings": findings_json(checked.findings, shown)})


def _write_json(document: Json) -> None:
    sys.stdout.write(json.dumps(document, ensure_ascii=False, indent=2) + "\n")


def _tell(findings: Findings) -> None:
    if findings:
        print(full(findings) + "\n", file=sys.stderr)


def _tell_assumptions(checked: Checked) -> None:
    if checked.model is None or not checked.model.assumptions:
        return
    print("Taken for granted; if one is wrong, write its line with your own word or figure:")
    for assumption in checked.model.assumptions:
        line = f" (line {assumption.span.line})" if assumption.span else ""
        print(f"  - {assumption.text}{line}")
        if assumption.instead:
            print(f"      {assumption.instead}")


def _summary(findings: Findings) -> str:
    counts = severity_counts(findings)
    said = [
        f"{count} {name if count > 1 else name.removesuffix('s')}"  # one error, two errors
        for name, count in counts.items()
        if count
    ]
    return ", ".join(said) if said else "no problem found"


def _status(findings: Findings) -> int:
    return IN_THE_NOTES if severity_counts(findings)["errors"] else DONE


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="dryfit",
        description="Turn notes on a piece of furniture into an ordered build booklet.",
    )
    parser.add_argument("--version", action="version", version=f"dryfit {__version__}")
    commands = parser.add_subparsers(required=True, metavar="COMMAND")
    check = _command(commands, "check", _check, "look for mistakes, and list what is assumed")
    parts = _command(commands, "parts", _parts, "the cut list with every size")
    steps = _command(commands, "steps", _steps, "the order of work with every setting")
    booklet = _command(commands, "booklet", _booklet, "the booklet to print: HTML and PDF")
    for command in (check, parts, steps):
        command.add_argument("--json", action="store_true", help="one JSON document instead")
    parts.add_argument("--csv", action="store_true", help="comma-separated values instead")
    booklet.add_argument(
        "-o", "--output", metavar="DIR", default=".", help="folder for the files (default: here)"
    )
    booklet.add_argument(
        "--paper", choices=("a4", "letter"), default="a4", help="size of the pages (default: a4)"
    )
    booklet.add_argument("--no-pdf", dest="pdf", action="store_false", help="write the HTML only")
    return parser


def _command(
    commands: argparse._SubParsersAction[argparse.ArgumentParser],
    name: str,
    run: Callable[[argparse.Namespace, Checked], int],
    words: str,
) -> argparse.ArgumentParser:
    command = commands.add_parser(name, help=words, description=words[0].upper() + words[1:] + ".")
    command.add_argument("notes", metavar="NOTES", help="the notes, or - for standard input")
    command.add_argument("--shop", metavar="FILE", type=Path, help="a shop file of your own")
    command.set_defaults(command=run)
    return command
