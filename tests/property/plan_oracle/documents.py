"""The two documents of a piece as the commands print them, and the shop file as it is read."""

import copy
import json
import tomllib
from functools import cache
from pathlib import Path
from typing import Any, cast

from tests.pieces.planning import planned
from tests.property.plan_oracle.reading import Json

import dryfit
from dryfit import workshop
from dryfit.diagnostics import Diagnostic, Findings, Severity
from dryfit.diagnostics.as_json import findings_json
from dryfit.placing.as_json import parts_document
from dryfit.plan.as_json import steps_document
from dryfit.plan.plan import Plan
from dryfit.workshop import Checked

SHIPPED = Path(dryfit.__file__).parent / "shop" / "default.toml"
Found = tuple[Diagnostic, ...]


def documents(text: str, shop: Path | None = None) -> tuple[tuple[Json, Json] | None, Found]:
    """The steps and the parts document, or None, and the errors: unplanned or badly rehearsed."""
    checked, plan, findings = planned(text, shop)
    if plan is not None:
        plan, refused = workshop.rehearse(checked, plan, lambda _: None)
        findings = (*findings, *refused)
    errors = tuple(each for each in findings if each.severity is Severity.ERROR)
    if plan is None:
        return None, errors
    return printed_of(checked, plan, findings), errors


def printed_of(checked: Checked, plan: Plan, findings: Findings) -> tuple[Json, Json]:
    """The steps and the parts document of a plan that was made."""
    assert checked.model is not None
    piece, name = checked.declared.piece, checked.source.name
    steps = steps_document(
        plan,
        piece=piece,
        notes=name,
        display=checked.declared.display,
        findings=findings_json(findings, checked.declared.display.shown),
    )
    unit = checked.declared.display.unit
    parts = parts_document(piece, name, checked.model, [], unit)
    return _printed(steps), _printed(parts)


def _printed(document: dict[str, object]) -> Json:
    return cast("Json", json.loads(json.dumps(document)))


def shop_tables(shop: Path | None = None) -> Json:
    """The shipped shop file with one of our own laid over it, as plain tables."""
    return copy.deepcopy(_read_tables(shop))


@cache
def _read_tables(shop: Path | None) -> Json:
    tables = tomllib.loads(SHIPPED.read_text(encoding="utf-8"))
    if shop is not None:
        _lay_over(tables, tomllib.loads(shop.read_text(encoding="utf-8")))
    return tables


def _lay_over(below: dict[str, Any], above: dict[str, Any]) -> None:
    for key, value in above.items():
        if value is False and isinstance(below.get(key), dict):
            del below[key]
        elif isinstance(value, dict) and isinstance(below.get(key), dict):
            _lay_over(below[key], value)
        else:
            below[key] = value
