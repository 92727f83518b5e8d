"""Glue-ups of the notes: clamps, closing time, lags, and the minutes they take (TRADE C2, C3)."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from fractions import Fraction

from dryfit.diagnostics import Diagnostic
from dryfit.geometry.box import AXIS_NAMES
from dryfit.kinds.joints import is_clamped_over, joint_kind
from dryfit.operations import clamps
from dryfit.operations.gluing.feet import legs_last, splayed_in
from dryfit.operations.gluing.glue_notes import cannot_go_together, glue_details
from dryfit.operations.gluing.insertion import insertion_of
from dryfit.operations.gluing.open_time import glue_for, short_of_time
from dryfit.operations.gluing.pressing import pressing_details
from dryfit.operations.members import all_copies, assembly_named, loose_copies, parts_of
from dryfit.operations.minutes import tenths, worked
from dryfit.operations.words import counted, listed
from dryfit.placing.model import Assembly, Joint, Model
from dryfit.placing.pulled import is_face_glued, pulled, run_of
from dryfit.plan.operation import ClampRow, GlueUp, Held, Lag, Operation, Work
from dryfit.shop.glues import glue_named
from dryfit.shop.shop import Glue, Shop

MINUTE = 10
WAY = {"x": "from side to side", "y": "from front to back", "z": "from top to bottom"}


def glue_up(
    assembly: Assembly, model: Model, shop: Shop
) -> tuple[Operation, tuple[Diagnostic, ...]]:
    """Return the glue-up of an assembly.

    Its parts stand in an order in which each has a straight path to its place.
    Findings: ``clamp-too-short`` (H58), ``too-few-clamps`` (H59), ``glue-time-short`` (H60),
    ``cannot-go-together`` (H57).
    """
    joints = tuple(model.joint(name) for name in assembly.joints)
    insertion = insertion_of(assembly, model)
    insertion = replace(insertion, order=legs_last(insertion.order, model))
    shut = clamp_rows(assembly, joints, model, shop)
    rows = shut if assembly.pressed is None else ()
    held, found = clamps.taken(assembly.name, rows, assembly.span, shop)
    named = glue_named(shop, assembly.glue) if assembly.glue is not None else None
    people = _people(assembly, joints, shut, model, shop, named or glue_for(0, shop))
    closing = closing_tenths(assembly, joints, shut, model, shop, people)
    glue = named or glue_for(closing, shop)
    late = short_of_time(assembly.name, closing, glue, assembly.span, shop, named=named is not None)
    lags = lags_of(glue, assembly.cure)
    off = next(lag.tenths for lag in lags if lag.until == "out of clamps")
    operation = Operation(
        id=f"{assembly.name} / glue up",
        kind="glue up",
        station="glue bench",
        part=assembly.name,
        settings=(),
        work=(Work(assembly.name, assembly.of, (), None, ()),),
        tenths=_minutes(assembly, joints, shut, model, shop),
        sentence=f"Glue up the {assembly.name}: {listed(_entering(assembly, model))}",
        after_tenths=off,
        splittable=False,
        held=tuple(Held(name, count, off) for name, count in held),
        check=_check(assembly, model),
        details=(
            *pressing_details(assembly, joints, model, people),
            *glue_details(assembly, insertion, model),
        ),
        glue_up=GlueUp(
            stage=assembly.name,
            parts=insertion.order,
            open_tenths=glue.open,
            closing_tenths=closing,
            limit_tenths=glue.close_within,
            glue=glue.name,
            clamps=rows,
            lags=lags,
            # What is laid on under weights does not rack: the frame below it is rigid.
            diagonals=diagonals(assembly) if assembly.pressed != "weights" else (),
        ),
        hands=people,
    )
    return operation, (*found, *late, *cannot_go_together(assembly, insertion))


def _people(
    assembly: Assembly,
    joints: tuple[Joint, ...],
    rows: tuple[ClampRow, ...],
    model: Model,
    shop: Shop,
    usual: Glue,
) -> int:
    """Return how many people a glue-up takes: as many as the notes say.

    Else a second one, where the shop has one, if one alone cannot close it before the `usual` glue
    sets (TRADE C2.2).
    """
    if assembly.people is not None:
        return assembly.people
    alone = closing_tenths(assembly, joints, rows, model, shop, 1)
    return 2 if shop.workers > 1 and alone > usual.close_within else 1


def _check(assembly: Assembly, model: Model) -> str:
    if assembly.pressed == "weights":
        return "joints shut all round, nothing has slid, gaps equal"
    own = set(all_copies(assembly, model))
    floating = any(
        joint.tenon is not None and joint.tenon.floats and {joint.guest, joint.host} <= own
        for joint in model.joints
    )
    shut = "joints shut all round but where ends float" if floating else "joints shut all round"
    if splayed_in(assembly, model):
        return f"{shut}, opposite legs equally far from the edges at their feet"
    return f"{shut}, diagonals equal, no twist"


def lags_of(glue: Glue, cure: int | None = None) -> tuple[Lag, ...]:
    """Return the five waits after a glue-up; `cure` is the minutes in clamps that the notes set.

    They are different waits with different ends (TRADE J8); none is shorter than the clamps stay.
    """
    off = cure * MINUTE if cure is not None else glue.lags["out of clamps"]
    until_next = off if cure is not None else glue.lags["next stage"]
    rows = {**glue.lags, "out of clamps": off, "next stage": until_next}
    return tuple(Lag(until, max(off, lag)) for until, lag in rows.items())


def lag_of(operation: Operation, until: str) -> int:
    """Return one of the waits after a glue-up, in tenths of a minute."""
    assert operation.glue_up is not None
    return next(lag.tenths for lag in operation.glue_up.lags if lag.until == until)


def diagonals(assembly: Assembly) -> tuple[tuple[str, float], ...]:
    """Return the diagonal to compare, with what it lies across; rounded for print only."""
    if assembly.square is None:
        return ()
    first, second = assembly.square
    squared = float(first) ** 2 + float(second) ** 2
    return ((f"corner to corner of the {assembly.name}", squared**0.5),)


def clamp_rows(
    assembly: Assembly, joints: tuple[Joint, ...], model: Model, shop: Shop
) -> tuple[ClampRow, ...]:
    """Return a C-clamp over each lap, and a bar along each line that joints are pulled shut on.

    A line is a member that joints hold at its ends: a rail with two tenons takes one bar over the
    whole assembly (TRADE C3.1).
    """
    rows: list[ClampRow] = []
    laps = [joint for joint in joints if is_clamped_over(joint.kind)]
    if laps:
        thick = max(_lap_thickness(joint, model) for joint in laps)
        needed = clamps.pad_opening(thick, shop)
        which = "lap" if all(joint.kind == "half lap" for joint in laps) else "joint"
        rows.append(ClampRow(needed, len(laps), f"over each {which}, with pads"))
    faces = [joint for joint in joints if is_face_glued(joint, model)]
    if faces:
        thick = max(_both_thick(joint, model) for joint in faces)
        rows.append(ClampRow(clamps.pad_opening(thick, shop), len(faces), "over each glued face"))
    for axis, guests in sorted(_lines(joints, model).items()):
        row = ClampRow(
            clamps.opening(assembly.box.extent(axis), shop),
            len(guests),
            f"along {listed(_by_part(guests, model))}, {WAY[AXIS_NAMES[axis]]}",
        )
        rows.append(row)
    return tuple(rows)


def _lines(joints: tuple[Joint, ...], model: Model) -> dict[int, list[str]]:
    """Return, by axis of the piece, the members that are pulled into others along their length.

    Of a corner lap the member that lies level is pulled; both would be one bar too many.
    """
    lines: dict[int, list[str]] = {}
    for joint in joints:
        if joint.kind == "screws":
            continue
        for guest in pulled(joint, model):
            row = lines.setdefault(run_of(guest, model), [])
            if guest not in row:
                row.append(guest)
    return lines


def _by_part(copies: list[str], model: Model) -> list[str]:
    counted = Counter(model.part_of(name).name for name in copies)
    return [f"the {name}" if count == 1 else f"each {name}" for name, count in counted.items()]


def _both_thick(joint: Joint, model: Model) -> Fraction:
    """Return how thick two members are together where a face of one is glued on the other."""
    axis = next(each for each in range(3) if joint.region.extent(each) == 0)
    return sum(
        (model.copy(name).box.extent(axis) for name in (joint.guest, joint.host)), Fraction(0)
    )


def _lap_thickness(joint: Joint, model: Model) -> Fraction:
    # Where two members lap they lie in one another: together as thick as the thicker one.
    return max(model.part_of(joint.guest).thickness, model.part_of(joint.host).thickness)


def closing_tenths(
    assembly: Assembly,
    joints: tuple[Joint, ...],
    rows: tuple[ClampRow, ...],
    model: Model,
    shop: Shop,
    people: int,
) -> int:
    """Return spreading + placing + clamping, in tenths of a minute (TRADE C2.2).

    A helper halves the spreading and placing, a third can reach nothing more; clamps are closed in
    their order (common practice).
    `rows` are the places that are pressed, by clamps or by what takes their place.
    """
    total = Fraction(0)
    for joint in joints:
        pieces = max(1, len(joint.loose_pieces), joint.fingers)
        total += worked(shop, joint_kind(joint.kind).spread, each=pieces)
    tenoned = {joint.guest for joint in joints if joint.kind == "mortise and tenon"}
    corners = [joint for joint in joints if joint_kind(joint.kind).corner]
    tenoned |= {name for joint in corners for name in (joint.guest, joint.host)}
    for name in assembly.of:
        if assembly_named(model, name) is not None:
            rate = "place assembly"
        else:
            rate = "place tenoned part" if name in tenoned else "place part"
        total += worked(shop, rate, each=1)
    total /= min(people, 2)
    total += worked(shop, "close clamp", each=sum(row.count for row in rows))
    return tenths(total)


def _minutes(
    assembly: Assembly,
    joints: tuple[Joint, ...],
    rows: tuple[ClampRow, ...],
    model: Model,
    shop: Shop,
) -> int:
    stands = any(assembly_named(model, name) is not None for name in assembly.of)
    exact = worked(
        shop,
        "glue up base" if stands else "glue up",
        each=1,
        # A corner of fingers or tails takes as long as two other joints (F1).
        per_joint=len(joints) + sum(joint_kind(joint.kind).corner for joint in joints),
        per_clamp=sum(row.count for row in rows),
        check=1,
        clean=1,
    )
    if any(joint.kind == "mitre" for joint in joints):
        exact += worked(shop, "size end grain", each=1)
    return tenths(exact)


def _entering(assembly: Assembly, model: Model) -> list[str]:
    inner = [f"the {name}" for name in assembly.of if assembly_named(model, name) is not None]
    loose = loose_copies(assembly, model)
    for part in parts_of(loose, model):
        count = sum(copy.name in loose for copy in part.copies)
        inner.append(counted(part, count) if count > 1 else f"the {part.name}")
    return inner
