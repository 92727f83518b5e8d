"""What is glued into what: copies and parts of each glue-up, and the glue-ups inside it."""

from __future__ import annotations

from collections.abc import Iterable

from dryfit.kinds.joints import is_lapped
from dryfit.operations.tenon_deeds import stands_out
from dryfit.placing.model import Assembly, Joint, Model, Part
from dryfit.plan.operation import Work


def assembly_named(model: Model, name: str) -> Assembly | None:
    """Return the assembly of that name, or None."""
    return next((each for each in model.assemblies if each.name == name), None)


def inner_assemblies(assembly: Assembly, model: Model) -> tuple[Assembly, ...]:
    """Return the assemblies that this one takes in, in its order."""
    found = (assembly_named(model, name) for name in assembly.of)
    return tuple(inner for inner in found if inner is not None)


def all_inside(assembly: Assembly, model: Model) -> tuple[str, ...]:
    """Return the names of all assemblies inside this one, however deep."""
    inner = inner_assemblies(assembly, model)
    return tuple(name for each in inner for name in (each.name, *all_inside(each, model)))


def waits_for_measure(assembly: Assembly, model: Model) -> bool:
    """Return whether a part of it is cut only to a measure taken from something glued."""
    parts = parts_of(all_copies(assembly, model), model)
    return any(part.measures for part in parts)


def dry_fit_first(assembly: Assembly, inner: Assembly, model: Model) -> bool:
    """Return whether a whole is tried dry before an assembly inside it is glued.

    It cannot be where a part waits for a measure, or a joint is cut only in the glued frame.
    """
    joined_late = any(
        feature.after in {inner.stage, inner.name} and feature.mate is not None
        for part in parts_of(all_copies(inner, model), model)
        for feature in part.features
    )
    return not joined_late and not waits_for_measure(assembly, model)


def loose_copies(assembly: Assembly, model: Model) -> tuple[str, ...]:
    """Return the copies that enter as loose parts."""
    return tuple(name for name in assembly.of if assembly_named(model, name) is None)


def all_copies(assembly: Assembly, model: Model) -> tuple[str, ...]:
    """Return every copy in the assembly, those of inner assemblies first."""
    inner = inner_assemblies(assembly, model)
    inside = (copy for each in inner for copy in all_copies(each, model))
    return (*inside, *loose_copies(assembly, model))


def parts_of(copies: tuple[str, ...], model: Model) -> tuple[Part, ...]:
    """Return the parts that the copies belong to, once each, in the order of the notes."""
    names = set(copies)
    return tuple(part for part in model.parts if any(copy.name in names for copy in part.copies))


def work_inside(assembly: Assembly, parts: Iterable[Part], model: Model) -> tuple[Work, ...]:
    """Return the work of a deed at the bench on the copies of parts that an assembly holds."""
    inside = set(all_copies(assembly, model))
    return tuple(
        Work(part.name, tuple(c.name for c in part.copies if c.name in inside), (), None, ())
        for part in parts
    )


def closed_joints(assembly: Assembly, model: Model) -> tuple[Joint, ...]:
    """Return the joints that a glue-up closes, those without glue among them."""
    copies = set(all_copies(assembly, model))
    earlier = [set(all_copies(inner, model)) for inner in inner_assemblies(assembly, model)]
    return tuple(
        joint
        for joint in model.joints
        if {joint.guest, joint.host} <= copies
        and not any({joint.guest, joint.host} <= inside for inside in earlier)
    )


def horned_parts(assembly: Assembly, model: Model) -> tuple[Part, ...]:
    """Return the parts that lose their horns after this glue-up: the first that takes them in."""
    return tuple(part for part in parts_of(loose_copies(assembly, model), model) if part.horns)


def levelled(model: Model) -> tuple[Assembly, ...]:
    """Return the assemblies with laps, horns or what stands out, that are planed level later."""
    return tuple(
        each
        for each in model.assemblies
        if any(is_lapped(model.joint(name).kind) for name in each.joints)
        or any(stands_out(joint) for joint in closed_joints(each, model))
        or horned_parts(each, model)
    )


def outermost(model: Model) -> tuple[Assembly, ...]:
    """Return the assemblies that no other takes in."""
    inner = {name for assembly in model.assemblies for name in assembly.of}
    return tuple(each for each in model.assemblies if each.name not in inner)


def glued_copies(model: Model) -> frozenset[str]:
    """Return every copy that some assembly takes in."""
    return frozenset(name for assembly in model.assemblies for name in all_copies(assembly, model))
