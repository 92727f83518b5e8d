"""The commands that work a piece out: check, parts, steps, booklet.

All is looked for before ``--strict`` weighs it, so that a run tells the same findings either way.
"""

from __future__ import annotations

import argparse
import json
import os
import sys
from dataclasses import replace
from pathlib import Path

from dryfit import workshop
from dryfit.cli.reading import STANDARD_INPUT, read_notes
from dryfit.cli.status import DONE, IN_THE_NOTES
from dryfit.cli.strictness import without_warnings
from dryfit.diagnostics import Findings, Severity, worst
from dryfit.diagnostics.as_json import Json, findings_json, severity_counts
from dryfit.diagnostics.render import full, short
from dryfit.outputs import write_whole
from dryfit.plan.plan import Plan
from dryfit.progress import Progress
from dryfit.workshop import Checked


def check(options: argparse.Namespace) -> int:
    """Look for mistakes, and list what is taken for granted."""
    checked = _checked(options)
    if options.json:
        _print_json(
            {**_head("dryfit-check/1", checked), **severity_counts(checked.findings)}, checked
        )
    else:
        _tell(checked.findings)
        for kept in limits_kept(checked.findings):
            print(short(kept), file=sys.stderr)
        if not checked.failed and checked.model is not None:
            from dryfit.cli.understood import understood

            sys.stdout.write(understood(checked.declared, checked.model))
        print(_summary(checked.findings), file=sys.stderr)
    return _status(checked.findings)


def parts(options: argparse.Namespace) -> int:
    """Print the cut list."""
    checked = _checked(options)
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


def steps(options: argparse.Namespace) -> int:
    """Print the order of work."""
    checked = _checked(options)
    with Progress() as progress:
        plan, findings = _planned(options, checked, progress)
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


def booklet(options: argparse.Namespace) -> int:
    """Write the booklet."""
    checked = _checked(options)
    folder = Path(options.output)
    with Progress() as progress:
        plan, findings = _planned(options, checked, progress)
        _tell(findings)
        if plan is None or checked.model is None or checked.shop is None:
            return IN_THE_NOTES
        from dryfit.booklet import render

        progress("drawing the pages")
        html = render(checked.model, plan, checked.shop, findings, options.paper)
        stem = "booklet" if options.notes == STANDARD_INPUT else Path(options.notes).stem
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
    # A limit that is kept asks for nothing: `check` says it on one line, the booklet on its page.
    kept = limits_kept(findings)
    told = tuple(each for each in findings if each not in kept)
    if told:
        print(full(told) + "\n", file=sys.stderr)


def limits_kept(findings: Findings) -> Findings:
    """Return the notices of limits that are kept, with their margins."""
    return tuple(each for each in findings if each.code == "limit-kept")


def _summary(findings: Findings) -> str:
    counts = severity_counts(findings)
    said = [
        f"{count} {name if count > 1 else name.removesuffix('s')}"  # one error, two errors
        for name, count in counts.items()
        if count
    ]
    if not said:
        return "no problem found"
    return f"{', '.join(said)}; `dryfit explain CODE` says more about the code in brackets"


def _status(findings: Findings) -> int:
    return IN_THE_NOTES if severity_counts(findings)["errors"] else DONE


def _checked(options: argparse.Namespace) -> Checked:
    checked = workshop.check(read_notes(options.notes), options.shop, os.environ)
    if options.strict:
        return replace(checked, findings=without_warnings(checked.findings))
    return checked


def _planned(
    options: argparse.Namespace, checked: Checked, progress: Progress
) -> tuple[Plan | None, Findings]:
    plan, findings = workshop.plan(checked, progress)
    if not options.strict:
        return plan, findings
    strict = without_warnings(findings)
    return (None if worst(strict) is Severity.ERROR else plan), strict
