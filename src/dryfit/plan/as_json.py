"""The ``steps`` document of the contract (CONTRACTS, steps), keys in its order."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from dryfit.plan.operation import GlueUp, Operation, Work
from dryfit.plan.plan import Moment, Plan, Step, StepMinutes, Totals
from dryfit.plan.setting import Hold, Pass, Setting
from dryfit.quantities import Display
from dryfit.quantities.as_json import angle_json, length_json

Json = dict[str, object]
FORMAT = "dryfit-steps/1"


def steps_document(
    plan: Plan | None,
    *,
    piece: str | None,
    notes: str,
    display: Display,
    findings: Sequence[object],
    edition: int = 1,
    rehearsed: bool = False,
) -> Json:
    """Return the document; without a plan everything that it would say is null or empty.

    `findings` are those of the check document, as they stand in it; `notes` is the file's name.
    """
    return {
        "format": FORMAT,
        "piece": piece,
        "notes": notes,
        "shop": {"name": plan.shop, "sha256": plan.shop_sha256} if plan else None,
        "edition": edition,
        "favour": plan.favour if plan else None,
        "cutters": [
            {"name": name, "width": _length(width, display)}
            for name, width in (plan.cutters if plan else ())
        ],
        "accessories": [
            {"name": name, "base": _length(base, display)}
            for name, base in (plan.accessories if plan else ())
        ],
        "measures": _measures(plan, display) if plan else [],
        "steps": [_step(step, display) for step in plan.steps] if plan else [],
        "totals": _totals(plan.totals) if plan else None,
        "rehearsed": rehearsed,
        "findings": list(findings),
    }


def _length(length: Fraction, display: Display) -> Json:
    return dict(length_json(length, display, fitted=True))


def _minutes(tenths: int) -> float:
    return tenths / 10


def _measures(plan: Plan, display: Display) -> list[Json]:
    return [
        {
            "name": operation.measure.name,
            "step": step.number,
            "formula": operation.measure.formula,
            "nominal": _length(operation.measure.nominal, display),
            "measured": None
            if operation.measure.taken is None
            else _length(operation.measure.taken, display),
            "sets": list(operation.measure.sets),
        }
        for step in plan.steps
        for operation in step.operations
        if operation.measure is not None
    ]


def _step(step: Step, display: Display) -> Json:
    checks = dict.fromkeys(op.check for op in step.operations if op.check is not None)
    cautions = dict.fromkeys(key for op in step.operations for key in op.cautions)
    document: Json = {
        "number": step.number,
        "visit": step.visit,
        "id": step.id,
        "station": step.station,
        "settings": {axis: _setting(setting, display) for axis, setting in step.settings},
        "changed": list(step.changed),
        "work": [row for op in step.operations for row in _work(op, display)],
        "minutes": _step_minutes(step.minutes),
        "tests": step.tests,
        "holds": {
            "clamps": [
                {"clamp": held.resource, "count": held.count}
                for op in step.operations
                for held in op.held
            ]
        },
        "starts": _moment(step.starts),
        "ends": _moment(step.ends),
        "waits_for": [
            {
                "step": wait.step,
                "operation": wait.operation,
                "reason": wait.reason,
                "lag_minutes": _minutes(wait.lag),
            }
            for wait in step.waits_for
        ],
        "check": "; ".join(checks) if checks else None,
        "cautions": list(cautions),
        "since_last_edition": None,
    }
    for operation in step.operations:
        if operation.glue_up is not None:
            document.update(_glue(operation.glue_up, display))
    return document


def _step_minutes(minutes: StepMinutes) -> Json:
    return {
        "walk": _minutes(minutes.walk),
        "changeover": _minutes(minutes.changeover),
        "tests": _minutes(minutes.tests),
        "work": _minutes(minutes.work),
        "after": _minutes(minutes.after),
    }


def _moment(moment: Moment) -> Json:
    return {"day": moment.day, "clock": moment.clock, "minute": _minutes(moment.tenths)}


def _setting(setting: Setting | None, display: Display) -> object:
    if setting is None or isinstance(setting.value, str):
        return None if setting is None else setting.value
    if setting.unit == "deg":
        return angle_json(setting.value)
    row = _length(setting.value, display)
    if setting.above is not None:
        row["above"] = setting.above
    if setting.to is not None:
        row["to"] = setting.to
        row["far"] = None if setting.far is None else _length(setting.far, display)
        row["from"] = setting.origin
    if setting.side is not None:
        row["side"] = setting.side
    if setting.measure is not None:
        row |= {"measure": setting.measure, "formula": setting.formula}
        if not setting.taken:
            row["nominal"] = True
    return row


def _work(operation: Operation, display: Display) -> list[Json]:
    rows = operation.work or (Work(operation.part, (), (), None, ()),)
    weights = [len(row.copies) * max(1, len(row.features)) for row in rows]
    shares = _shares(operation.tenths, weights)
    return [
        _work_row(operation, row, share, display) for row, share in zip(rows, shares, strict=True)
    ]


def _work_row(operation: Operation, row: Work, share: int, display: Display) -> Json:
    document: Json = {
        "operation": operation.id,
        "part": row.part,
        "copies": list(row.copies),
        "features": list(row.features),
        "hold": _hold(row.hold),
        "passes": [_pass(each, display) for each in row.passes],
        "minutes": _minutes(share),
    }
    if operation.glue_up is not None:
        document["stage"] = operation.glue_up.stage
        document["parts"] = list(operation.glue_up.parts)
    return document


def _shares(total: int, weights: Sequence[int]) -> list[int]:
    """Return whole tenths by weight that add up to the total; what is over goes to the first."""
    everything = sum(weights) or 1
    shares = [total * weight // everything for weight in weights]
    shares[0] += total - sum(shares)
    return shares


def _hold(hold: Hold | None) -> Json | None:
    if hold is None:
        return None
    return {"down": hold.down, "against_fence": hold.against_fence, "at_stop": hold.at_stop}


def _pass(each: Pass, display: Display) -> Json:
    if each.between:
        return {"between": True}
    row: Json = {"spacer": None if each.spacer is None else _length(each.spacer, display)}
    if each.moved is not None:
        row["moved"] = _length(each.moved, display)
    return row


def _glue(glue: GlueUp, display: Display) -> Json:
    return {
        "open_minutes": _minutes(glue.open_tenths),
        "closing_minutes": _minutes(glue.closing_tenths),
        "clamps": [
            {"length": _length(row.length, display), "count": row.count, "at": row.at}
            for row in glue.clamps
        ],
        "lags": [{"until": lag.until, "minutes": _minutes(lag.tenths)} for lag in glue.lags],
    }


def _totals(totals: Totals) -> Json:
    return {
        "changeovers": totals.changeovers,
        "changeover_minutes": _minutes(totals.changeover),
        "walk_minutes": _minutes(totals.walk),
        "test_minutes": _minutes(totals.tests),
        "setup_minutes": _minutes(totals.setup),
        "work_minutes": _minutes(totals.work),
        "attended_minutes": _minutes(totals.attended),
        "waiting_minutes": _minutes(totals.waiting),
        "elapsed_minutes": _minutes(totals.elapsed),
        "fewest_possible": {"changeover_minutes": _minutes(totals.fewest), "over": totals.over},
        "proven": totals.proven,
        "gap_percent": float(totals.gap_percent),
        "part_by_part": {
            "changeovers": totals.part_by_part.changeovers,
            "changeover_minutes": _minutes(totals.part_by_part.changeover),
            "setup_minutes": _minutes(totals.part_by_part.setup),
            "attended_minutes": _minutes(totals.part_by_part.attended),
        },
    }
