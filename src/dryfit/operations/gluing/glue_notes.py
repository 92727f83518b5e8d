"""What a glue-up says beside its clock: where the glue goes, what stays dry, what goes in as one.

A solid panel that is glued into its groove splits when it shrinks (TRADE B9, C4.4).
"""

from __future__ import annotations

from collections.abc import Iterable

from dryfit.diagnostics import Diagnostic, Hint, Note, Severity
from dryfit.kinds.joints import joint_kind, overlaps_mate
from dryfit.operations.board_deeds import boards_glued_in
from dryfit.operations.gluing.glue_patches import kept_dry, partly_glued, patch_words
from dryfit.operations.gluing.insertion import Insertion
from dryfit.operations.gluing.pocket_jig import driving_details
from dryfit.operations.gluing.screwed_first import screwed_first
from dryfit.operations.gluing.sloped_pads import sloped_pads
from dryfit.operations.members import closed_joints
from dryfit.operations.tenon_deeds import with_the_glue
from dryfit.operations.words import listed, spoken
from dryfit.placing.model import Assembly, Joint, Model, Part
from dryfit.plan.operation import Detail


def glue_details(assembly: Assembly, insertion: Insertion, model: Model) -> tuple[Detail, ...]:
    """Return the sentences of a glue-up, the order of units first, then glue, then what is dry."""
    joints = tuple(model.joint(name) for name in assembly.joints)
    unglued = dry_joints(assembly, model)
    besides = _besides_glue(joints, unglued)
    dry = tuple(joint for joint in unglued if joint not in besides)
    screws = tuple(joint for joint in dry if joint.kind == "screws")
    first = screwed_first(assembly, model)
    units = (_unit(unit, insertion.order) for unit in insertion.units)
    floating = tuple(joint for joint in dry if joint.kind == "groove" and not joint.dry)
    free = (
        *_floating(floating, model),
        *_screwed((each for each in screws if each not in first), model, assembly),
    )
    return (
        *((sentence,) for sentence in units),
        *_screwed_first((each for each in screws if each in first), model),
        *_glued((joint for joint in joints if not partly_glued(joint)), model),
        *_swelling(joints),
        *_beside_fingers(joints),
        *(sloped_pads(joints, model) if assembly.pressed is None else ()),
        *_weak_alone(joints, besides),
        *_mitred(joints, assembly.pressed),
        *(_sloping(joints, model) if assembly.pressed is None else ()),
        *_patched(tuple(joint for joint in joints if partly_glued(joint)), model),
        *_driven((*(joint for joint in joints if joint.kind == "screws"), *besides), model),
        *driving_details(joints, model, glued=True),
        *driving_details(dry, model, glued=False),
        *((sentence,) for sentence in free),
        *kept_dry((joint for joint in dry if joint.kind not in _TOLD_APART), model),
        *boards_glued_in((*joints, *dry), model),
        *with_the_glue((*joints, *dry), model),
    )


_TOLD_APART = frozenset({"pocket screws", "tongue and groove"})


def _besides_glue(joints: tuple[Joint, ...], unglued: tuple[Joint, ...]) -> tuple[Joint, ...]:
    """Return the screws between parts that are glued to one another, as in a rabbet joint."""
    glued = {(joint.guest, joint.host) for joint in joints if joint.kind == "rabbet"}
    return tuple(
        joint for joint in unglued if joint.kind == "screws" and (joint.guest, joint.host) in glued
    )


def _weak_alone(joints: tuple[Joint, ...], screws: tuple[Joint, ...]) -> tuple[Detail, ...]:
    """Return what holds rabbet joints besides glue (TRADE B8, common practice)."""
    rabbets = [joint for joint in joints if joint.kind == "rabbet"]
    if not rabbets:
        return ()
    screwed = {(joint.guest, joint.host) for joint in screws}
    bare = [joint for joint in rabbets if (joint.guest, joint.host) not in screwed]
    soak = "Glue holds little on end grain: brush it on the ends first, let it soak in, glue again"
    if not bare:
        return ((soak,),)
    which = "each rabbet" if len(bare) == len(rabbets) else "each rabbet that no screws hold"
    return ((f"{soak}, and when the clamps are on drive brads through the lip of {which}",),)


def dry_joints(assembly: Assembly, model: Model) -> tuple[Joint, ...]:
    """Return the joints that this glue-up closes and that get no glue."""
    return tuple(joint for joint in closed_joints(assembly, model) if not joint.glued)


def cannot_go_together(assembly: Assembly, insertion: Insertion) -> tuple[Diagnostic, ...]:
    """Return ``cannot-go-together`` (H57) when some members have no straight path."""
    if not insertion.stuck:
        return ()
    first, *others = insertion.stuck
    holders = listed(insertion.holders)
    return (
        Diagnostic(
            "cannot-go-together",
            Severity.ERROR,
            f"glue up {assembly.name}: {listed((first, *others))} hold one another, so that none "
            "of them can go in last",
            assembly.span,
            rule="H57",
            notes=(Note(f"whichever way {first} is pushed, it is stopped by {holders}"),),
            hints=(Hint(f"give {first} a joint that goes in from one side, or screw it on later"),),
        ),
    )


def _unit(unit: tuple[str, ...], order: tuple[str, ...]) -> str:
    row = sorted(unit, key=order.index)
    return f"Put {listed(f'the {name}' for name in row)} together first: they go on as one"


def _patched(joints: tuple[Joint, ...], model: Model) -> tuple[Detail, ...]:
    """Return, for joints that are glued in part, which part gets glue."""
    alike: dict[Detail, list[Joint]] = {}
    for joint in joints:
        alike.setdefault(patch_words(joint), []).append(joint)
    return tuple(
        (f"{_rows(own, model)}: only on ", *words, ". The rest stays dry and free to move")
        for words, own in alike.items()
    )


def _rows(joints: Iterable[Joint], model: Model) -> str:
    return " ".join(str(word) for detail in _glued(joints, model) for word in detail)


def _counted(kind: str, count: int) -> str:
    one, more = joint_kind(kind).glue_noun or (kind, None)
    return spoken(count, one, more)


def _glued(joints: Iterable[Joint], model: Model) -> tuple[Detail, ...]:
    counts: dict[tuple[str, str, str], int] = {}
    for joint in joints:
        key = (joint.kind, model.part_of(joint.guest).name, model.part_of(joint.host).name)
        # Twin tenons are two of each: so many mortises are on the mortiser's page.
        each = joint.tenon.count if joint.tenon else len(joint.loose_pieces) or 1
        counts[key] = counts.get(key, 0) + each
    if not counts:
        return ()
    rows = [
        f"{_counted(kind, count)} of {guest} {_meets(kind)} {host}"
        for (kind, guest, host), count in counts.items()
    ]
    return ((f"Glue goes on {listed(rows)}",),)


def _meets(kind: str) -> str:
    if lapped(kind):
        return "and"
    return "into" if joint_kind(kind).enters else "on"


def _beside_fingers(joints: Iterable[Joint]) -> tuple[Detail, ...]:
    """Return where pads stand at a corner of fingers or tails, whose tips may be proud (C3.1)."""
    if not any(joint_kind(joint.kind).corner for joint in joints):
        return ()
    pads = (
        "Set the pads just beside the fingers or tails, or notch a caul round them: tips that "
        "stand a hair proud keep a flat pad off the joint"
    )
    return ((pads,),)


def _swelling(joints: Iterable[Joint]) -> tuple[Detail, ...]:
    """Return what haste biscuits make (TRADE B6)."""
    if all(joint.kind != "biscuits" for joint in joints):
        return ()
    haste = (
        "A biscuit swells once glue wets it: put each joint together within 5 min of its glue, "
        "and plane nothing over it for 24 h"
    )
    return ((haste,),)


def _mitred(joints: Iterable[Joint], pressed: str | None) -> tuple[Detail, ...]:
    """Return how end grain is glued, and what a mitred frame is pressed with (TRADE B12)."""
    if all(joint.kind != "mitre" for joint in joints):
        return ()
    size = (
        "Mitres are end grain and drink the glue: brush all of them with a thin first coat, wait "
        "5 min, then the second coat and together"
    )
    press = (
        "Close all corners at once and evenly, bars both ways or a strap clamp round the whole: a "
        "mitre that is pressed along one member alone slides open"
    )
    return ((size,), (press,)) if pressed is None else ((size,),)


def _sloping(joints: Iterable[Joint], model: Model) -> tuple[Detail, ...]:
    """Return how sides are pressed that slope: bars slide up on them (common practice)."""
    if all(model.part_of(joint.guest).slopes_out is None for joint in joints):
        return ()
    wedges = (
        "The sides slope, and bars slide up on them: tape a wedge of the same slope under each "
        "jaw, or tape all corners outside, fold the sides up and draw a strap round them"
    )
    return ((wedges,), ("Compare the diagonals at the top edges, outside",))


def lapped(kind: str) -> bool:
    """Return whether two parts of such a joint lie in one another, neither going into the other."""
    return overlaps_mate(kind)


def _floating(joints: tuple[Joint, ...], model: Model) -> tuple[str, ...]:
    guests = dict.fromkeys(joint.guest for joint in joints)
    hosts: dict[tuple[str, tuple[str, ...]], list[str]] = {}
    for guest in guests:
        row = dict.fromkeys(
            model.part_of(joint.host).name for joint in joints if joint.guest == guest
        )
        hosts.setdefault((model.part_of(guest).name, tuple(row)), []).append(guest)
    return tuple(
        _floats(model.part(name), around, at_ends(copies[0], joints, model))
        for (name, around), copies in hosts.items()
    )


def _driven(joints: Iterable[Joint], model: Model) -> tuple[Detail, ...]:
    return tuple(
        (f"The screws between {guest} and {host} are driven while the glue is wet",)
        for guest, host in _pairs(joints, model)
    )


def _screwed_first(joints: Iterable[Joint], model: Model) -> tuple[Detail, ...]:
    return tuple(
        (f"Before the glue is opened, screw each {guest} to the {host}, dry",)
        for guest, host in _pairs(joints, model)
    )


def _screwed(joints: Iterable[Joint], model: Model, assembly: Assembly) -> tuple[str, ...]:
    tight = "once the clamps are tight" if assembly.pressed is None else "once all is shut"
    return tuple(
        f"No glue between {guest} and {host}: drive the screws {tight}"
        for guest, host in _pairs(joints, model)
    )


def _pairs(joints: Iterable[Joint], model: Model) -> tuple[tuple[str, str], ...]:
    pairs = ((model.part_of(joint.guest).name, model.part_of(joint.host).name) for joint in joints)
    return tuple(dict.fromkeys(pairs))


def at_ends(guest: str, joints: Iterable[Joint], model: Model) -> tuple[str, ...]:
    """Return the parts that hold a panel at the ends of its grain, the one above first."""
    axis = model.copy(guest).frame.axes[0][0]
    across = [
        joint
        for joint in joints
        if joint.guest == guest and model.copy(joint.host).frame.axes[0][0] != axis
    ]
    across.sort(key=lambda joint: joint.region.low[2], reverse=True)
    return tuple(dict.fromkeys(joint.host for joint in across))


def _floats(part: Part, around: tuple[str, ...], ends: tuple[str, ...]) -> str:
    grooves = f"grooves of {listed(around)}"
    if part.stock == "sheet":
        return f"No glue in the {grooves}: the {part.name} lies in them dry"
    text = f"No glue in the {grooves}: the {part.name} stays dry and free to move; centre it"
    if not ends:
        return text
    middle = listed(f"the {name}" for name in ends)
    return f"{text}. Only if it rattles, a dab of glue in the middle of {middle}"
