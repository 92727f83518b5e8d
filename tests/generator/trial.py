"""One random piece tried: read, checked, planned, and judged by the oracle and the rehearsal.

`python -m tests.generator.trial FIRST LAST` prints what becomes of the pieces of many seeds.
"""

import json
import sys
from collections import Counter
from dataclasses import dataclass
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import cast

from tests.generator.pieces import random_notes
from tests.generator.shops import random_shop
from tests.property.plan_oracle import faults
from tests.property.plan_oracle.documents import shop_tables
from tests.property.plan_oracle.reading import Json

from dryfit import workshop
from dryfit.diagnostics import Diagnostic, Severity, Source
from dryfit.diagnostics.as_json import findings_json
from dryfit.notes import source_of
from dryfit.placing.as_json import parts_document
from dryfit.plan.as_json import steps_document
from dryfit.plan.plan import Plan
from dryfit.rehearsal.rehearse import rehearse
from dryfit.rehearsing import goal_of


@dataclass(frozen=True, slots=True)
class Outcome:
    """What became of a piece: planned or not, the codes of its errors, and what the judges say."""

    planned: bool
    errors: tuple[str, ...]
    oracle: tuple[str, ...] = ()
    rehearsal: tuple[str, ...] = ()


def tried(seed: int) -> Outcome:
    """Return what becomes of the piece of a seed in the shop of the same seed."""
    shop = random_shop(seed)
    if shop is None:
        return _in_shop(random_notes(seed), None)
    with TemporaryDirectory() as folder:
        file = Path(folder) / "shop.toml"
        file.write_text(shop, encoding="utf-8")
        return _in_shop(random_notes(seed), file)


def _in_shop(text: str, file: Path | None) -> Outcome:
    source = source_of("notes.dryfit", text.encode())
    assert isinstance(source, Source)
    checked = workshop.check(source, file, {})
    plan, findings = workshop.plan(checked, lambda _: None)
    errors = sorted({each.code for each in findings if each.severity is Severity.ERROR})
    if plan is None or checked.model is None or checked.shop is None:
        return Outcome(planned=False, errors=tuple(errors))
    played = rehearse(plan, goal_of(checked.model), checked.shop)
    return Outcome(
        planned=True,
        errors=tuple(errors),
        oracle=tuple(faults(*_documents(checked, plan, findings), shop_tables(file))),
        rehearsal=tuple(f"{each.reason} in step {each.step}: {each.message}" for each in played),
    )


def _documents(
    checked: workshop.Checked, plan: Plan, findings: tuple[Diagnostic, ...]
) -> tuple[Json, Json]:
    assert checked.model is not None
    display, title, name = checked.declared.display, checked.declared.piece, checked.source.name
    told = findings_json(findings, display.shown)
    steps = steps_document(plan, piece=title, notes=name, display=display, findings=told)
    parts = parts_document(title, name, checked.model, [], display.unit)
    return _printed(steps), _printed(parts)


def _printed(document: dict[str, object]) -> Json:
    return cast("Json", json.loads(json.dumps(document)))


def main() -> None:
    """Print, for the seeds from the first to before the last, what went other than planned."""
    first, last = (int(each) for each in sys.argv[1:3])
    refused: Counter[str] = Counter()
    planned = 0
    for seed in range(first, last):
        title = random_notes(seed).split("\n", maxsplit=1)[0].removeprefix("piece ")
        outcome = tried(seed)
        planned += outcome.planned
        refused.update(outcome.errors)
        said = [
            f"{len(told)} by the {judge}: {told[0]}"
            for judge, told in (("oracle", outcome.oracle), ("rehearsal", outcome.rehearsal))
            if told
        ]
        said += [f"refused: {', '.join(outcome.errors)}"] * (not outcome.planned)
        for words in said:
            sys.stdout.write(f"{seed} {title}: {words}\n")
    sys.stdout.write(f"{planned} of {last - first} planned; refused: {refused.most_common()}\n")


if __name__ == "__main__":
    main()
