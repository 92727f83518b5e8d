"""The commands that work a piece out: check, parts, steps, booklet.

All is looked for before ``--strict`` weighs it, so that a run tells the same findings either way.
"""

from __future__ import annotations

import argparse
import json
import os
import shlex
import sys
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from dryfit import workshop
from dryfit.cli.interrupting import Search, undisturbed
from dryfit.cli.reading import STANDARD_INPUT, read_notes
from dryfit.cli.status import DONE, IN_THE_NOTES
from dryfit.cli.strictness import without_warnings
from dryfit.diagnostics import Findings, Severity, once, worst
from dryfit.diagnostics.as_json import Json, findings_json, severity_counts
from dryfit.diagnostics.render import full, short
from dryfit.outputs import write_whole
from dryfit.plan.favour import USUAL
from dryfit.progress import Progress
from dryfit.workshop import Checked

if TYPE_CHECKING:
    from dryfit.plan.plan import Plan
    from dryfit.stock.laid_out import LaidOut


def check(options: argparse.Namespace) -> int:
    """Look for mistakes, and list what is taken for granted."""
    with Progress(timed=options.verbose) as progress:
        if options.whole:
            checked, _ = laid_notes(options, progress)
        else:
            checked = checked_notes(options, progress)
        findings, plan = checked.findings, None
        if options.whole:
            plan, findings = _planned(options, checked, progress, USUAL, rehearsed=True)
    if options.json:
        head = _head("dryfit-check/1", checked) | severity_counts(findings)
        shown = checked.declared.display.plain.shown
        _write_json(head | {"findings": findings_json(findings, shown)})
        return status_of(findings)
    tell(findings)
    for kept in limits_kept(findings):
        print(short(kept), file=sys.stderr)
    if not checked.failed and checked.model is not None:
        from dryfit.cli.understood import understood

        sys.stdout.write(understood(checked.declared, checked.model))
    if options.whole:
        print(done_whole(plan, findings))
    print(_summary(findings) + _unlaid(options, checked), file=sys.stderr)
    return status_of(findings)


def _unlaid(options: argparse.Namespace, checked: Checked) -> str:
    """Return that `check` alone does not lay out the boards, where the notes tell of some."""
    declared = checked.declared
    if options.whole or checked.failed or not (declared.stock or declared.yard):
        return ""
    command = f"dryfit stock {shlex.quote(options.notes)}"
    return f"\nthe boards are not laid out here: `{command}` tells whether the wood is enough"


def parts(options: argparse.Namespace) -> int:
    """Print the cut list."""
    with Progress() as progress:
        checked, _ = laid_notes(options, progress)
        model = workshop.shopped(checked)
    from dryfit.placing.as_json import parts_csv, parts_document

    display = checked.declared.display
    if options.json:
        document = parts_document(
            checked.declared.piece,
            checked.source.name,
            model,
            findings_json(checked.findings, display.plain.shown),
            display.unit,
        )
        _write_json(document)
        return status_of(checked.findings)
    tell(checked.findings)
    if model is not None:
        if options.csv:
            sys.stdout.write(parts_csv(model))
        else:
            from dryfit.placing.as_text import parts_table

            sys.stdout.write(parts_table(model))
    return status_of(checked.findings)


def steps(options: argparse.Namespace) -> int:
    """Print the order of work."""
    if options.compare:
        from dryfit.cli.comparing import compare

        return compare(options)
    rehearsed = not options.unrehearsed
    with Progress(timed=options.verbose) as progress:
        checked, _ = laid_notes(options, progress)
        plan, findings = _planned(
            options, checked, progress, options.favour or USUAL, rehearsed=rehearsed
        )
    display = checked.declared.display
    if options.json:
        from dryfit.plan.as_json import steps_document

        document = steps_document(
            plan,
            piece=checked.declared.piece,
            notes=checked.source.name,
            display=display,
            findings=findings_json(findings, display.plain.shown),
            rehearsed=rehearsed and plan is not None,
        )
        _write_json(document)
        return status_of(findings)
    tell(findings)
    if plan is not None and options.move is not None:
        from dryfit.cli.moving import moved

        told, faults = moved(options.move, checked, plan, rehearsed=rehearsed)
        tell(faults)
        findings += faults
        sys.stdout.write(told)
    elif plan is not None and checked.model is not None:
        from dryfit.booklet.sides import sides_of
        from dryfit.plan.as_text import steps_table
        from dryfit.shop.taken_for_granted import moved_start

        plan = workshop.priced(checked, plan)
        sides = sides_of(plan, checked.model)
        day = moved_start(checked.shop) if checked.shop is not None else ""
        sys.stdout.write(steps_table(plan, sides, display, rehearsed=rehearsed, moved=day))
    return status_of(findings)


def why(options: argparse.Namespace) -> int:
    """Tell where figures come from, and why steps stand where they stand."""
    from dryfit.cli.values_told import values_told
    from dryfit.cli.why import answers, asked_steps, needs_order
    from dryfit.stock.telling.why_told import stock_told

    with Progress() as progress:
        checked, laid = laid_notes(options, progress)
        findings, plan, reasons = checked.findings, None, {}
        values = values_told(checked) if options.things else {}
        if options.things and checked.model is not None and checked.shop is not None:
            values = {**stock_told(laid, checked.model, checked.shop), **values}
        ordered = checked.model is not None and needs_order(options.things, checked.model, values)
        if ordered:
            favour = options.favour or USUAL
            plan, findings = _planned(options, checked, progress, favour, rehearsed=True)
        if plan is not None:
            reasons = workshop.reasons(checked, plan, asked_steps(options.things, plan.steps))
    tell(findings)
    if checked.model is None or (plan is None and ordered):
        return IN_THE_NOTES
    sys.stdout.write(answers(options.things, checked.model, plan, reasons, values))
    return status_of(findings)


def booklet(options: argparse.Namespace) -> int:
    """Write the booklet."""
    folder = Path(options.output)
    rehearsed = not options.unrehearsed
    with Progress(timed=options.verbose) as progress:
        checked, laid = laid_notes(options, progress)
        plan, findings = _planned(
            options, checked, progress, options.favour or USUAL, rehearsed=rehearsed
        )
        tell(findings)
        if plan is None or checked.model is None or checked.shop is None:
            return IN_THE_NOTES
        progress("drawing the pages")
        from dryfit.booklet import booklet_view, drawing_files, page

        view = booklet_view(
            checked.model,
            workshop.priced(checked, plan),
            checked.shop,
            findings,
            rehearsed=rehearsed,
            reasons=workshop.reasons(checked, plan, plan.steps),
            laid=laid,
        )
        html = page(view, options.paper)
        stem = "booklet" if options.notes == STANDARD_INPUT else Path(options.notes).stem
        files = [(folder / f"{stem}.html", html.encode("utf-8"))]
        if options.pdf:
            files += _pdf(html, folder / f"{stem}.pdf", progress)
        if options.drawings is not None:
            beside = Path(options.drawings)
            files += [(beside / name, data) for name, data in drawing_files(view)]
    for each in dict.fromkeys(path.parent for path, _ in files):
        each.mkdir(parents=True, exist_ok=True)
    with undisturbed():
        write_whole(files)
    for path, _ in files:
        print(path)
    return status_of(findings)


def _pdf(html: str, path: Path, progress: Progress) -> list[tuple[Path, bytes]]:
    progress("printing the PDF")
    from dryfit.booklet.pdf import PdfUnavailable, write

    try:
        return [(path, write(html))]
    except PdfUnavailable as error:
        progress.clear()
        print(f"dryfit: {error}", file=sys.stderr)
        return []


def _head(name: str, checked: Checked) -> Json:
    return {"format": name, "piece": checked.declared.piece, "notes": checked.source.name}


def _write_json(document: Json) -> None:
    sys.stdout.write(json.dumps(document, ensure_ascii=False, indent=2) + "\n")


def tell(findings: Findings) -> None:
    """Print findings in full on standard error."""
    # A limit that is kept asks for nothing: `check` says it on one line, the booklet on its page.
    kept = limits_kept(findings)
    told = tuple(each for each in findings if each not in kept)
    if told:
        print(full(told) + "\n", file=sys.stderr)


def limits_kept(findings: Findings) -> Findings:
    """Return the notices of limits that are kept, with their margins."""
    return tuple(each for each in findings if each.code == "limit-kept")


def done_whole(plan: Plan | None, findings: Findings) -> str:
    """Return what ``--whole`` did, and what came of it."""
    if plan is not None:
        return f"planned and rehearsed: {_many(len(plan.steps), 'step')}, no fault"
    faults = sum(each.code == "rehearsal-failed" for each in findings)
    if faults:
        return f"planned and rehearsed: {_many(faults, 'fault')}"
    return "no plan while there are errors"


def _many(count: int, thing: str) -> str:
    return f"{count} {thing}{'' if count == 1 else 's'}"


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


def status_of(findings: Findings) -> int:
    """Return the exit status for findings."""
    return IN_THE_NOTES if severity_counts(findings)["errors"] else DONE


def checked_notes(options: argparse.Namespace, progress: Progress) -> Checked:
    """Return the notes of the command, read and checked."""
    progress("reading the notes and placing the parts")
    start = getattr(options, "start", None)
    checked = workshop.check(read_notes(options.notes), options.shop, os.environ, start=start)
    if options.strict:
        return replace(checked, findings=without_warnings(checked.findings))
    return checked


def laid_notes(options: argparse.Namespace, progress: Progress) -> tuple[Checked, LaidOut | None]:
    """Return the notes of the command, read and checked, and the boards that are laid out."""
    checked = checked_notes(options, progress)
    progress("laying out the boards")
    checked, laid, found = workshop.laid_out(checked)
    if options.strict:
        found = without_warnings(found)
    return replace(checked, findings=once(checked.findings + found)), laid


def _planned(
    options: argparse.Namespace,
    checked: Checked,
    progress: Progress,
    favour: str,
    *,
    rehearsed: bool,
) -> tuple[Plan | None, Findings]:
    plans, findings = planned(options, checked, progress, (favour,), rehearsed=rehearsed)
    return (plans[0] if plans else None), findings


def planned(
    options: argparse.Namespace,
    checked: Checked,
    progress: Progress,
    favours: Sequence[str],
    *,
    rehearsed: bool,
) -> tuple[tuple[Plan, ...], Findings]:
    """Return a plan for each favour, none where one of them fails; ``--strict`` has weighed all."""
    search = Search(progress)
    with search.listening():
        plans, findings = workshop.plan_each(checked, progress, favours, search)
    for plan in plans if rehearsed else ():
        passed, faults = workshop.rehearse(checked, plan, progress)
        findings += faults
        if passed is None:
            plans = ()
    if not options.strict:
        return plans, findings
    strict = without_warnings(findings)
    return (() if worst(strict) is Severity.ERROR else plans), strict
