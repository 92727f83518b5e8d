"""The commands that tell about the program itself: help, explain."""

from __future__ import annotations

import argparse
import os
import sys
from pathlib import Path
from tempfile import TemporaryDirectory

from dryfit import workshop
from dryfit.cli.status import DONE, StoppedError
from dryfit.diagnostics import Diagnostic, Findings
from dryfit.diagnostics.explain import INVENTORY, Page, near_codes, page, page_text
from dryfit.diagnostics.render import full
from dryfit.notes import source_of


def help_on(options: argparse.Namespace) -> int:
    """Print the page on a subject, or the list of subjects."""
    from dryfit.guide.topics import TOPICS, topic, topics_text

    if options.topic is None:
        sys.stdout.write(topics_text())
        return DONE
    found = topic(options.topic)
    if found is None:
        names = ", ".join(known.name for known in TOPICS)
        raise StoppedError(f"there is no help on `{options.topic}`, but on {names}")
    sys.stdout.write(found.text())
    return DONE


def explain(options: argparse.Namespace) -> int:
    """Print the page on a code, or the list of codes."""
    from dryfit.guide.codes import codes_text

    if options.code is None:
        sys.stdout.write(codes_text())
        return DONE
    found = page(options.code)
    if found is None:
        near = near_codes(options.code)
        meant = f": did you mean {' or '.join(near)}?" if near else "; `dryfit explain` lists all"
        raise StoppedError(f"no finding has the code `{options.code}`{meant}")
    sys.stdout.write(page_text(found, _told_about(found)))
    return DONE


def _told_about(shown: Page) -> str:
    """Return what the page's command says about its example, nothing where it has none."""
    if shown.what_to_do is not None:
        return ""
    with TemporaryDirectory() as folder:
        shop_file = None
        if shown.shop is not None:
            shop_file = Path(folder) / "shop.toml"
            shop_file.write_text(shown.shop, encoding="utf-8")
        if shown.inventory is not None:
            (Path(folder) / INVENTORY).write_text(shown.inventory, encoding="utf-8")
        # The shop and the patterns of whoever asks have no part in the example.
        said = full(_found_in(shown, shop_file, Path(folder)))
        return said.replace(f"{folder}{os.sep}", "")


def _found_in(shown: Page, shop_file: Path | None, folder: Path) -> Findings:
    source = source_of("example.dryfit", shown.written_out(shown.example).encode(shown.encoding))
    if isinstance(source, Diagnostic):
        return (source,)
    environment = {"XDG_CONFIG_HOME": str(folder)}
    checked = workshop.check(source, shop_file, environment, folder=folder)
    if shown.command == "check" or checked.failed:
        return checked.findings
    if shown.command == "stock":
        return checked.findings + workshop.laid_out(checked)[2]
    return workshop.plan(checked, lambda _: None)[1]
