"""Pockets for screws: what the maker sets the jig to, where it sits, and what proves it (B16)."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from dryfit.geometry.frame import LENGTH, SURFACES
from dryfit.joinery.feature import Feature
from dryfit.joinery.pocket_screws import penetration
from dryfit.kinds.roles import POCKET
from dryfit.operations.cut import Site
from dryfit.placing.model import Joint, Model
from dryfit.plan.operation import Detail

_HALF = Fraction(1, 2)
_WORDS = {"R": "end", "E": "edge", "F": "face", "B": "face"}


def pocket_details(site: Site) -> tuple[Detail, ...]:
    """Return where a pocket stands, and how the jig is set and proved for wood so thick."""
    feature = site.feature
    toward, sizes = _form(feature)
    at_end = SURFACES[toward][0] == LENGTH
    row, origin = (feature.across, "E") if at_end else (feature.along, "R")
    out = -(-penetration(sizes["screw"]) // _HALF) * _HALF
    out_at = f"out at {_WORDS[toward[0]]} {toward}"
    return (
        (
            "Set the jig and its stop collar by their scale for wood ",
            site.part.thickness,
            " thick. Bore an offcut as thick and drive a screw ",
            sizes["screw"],
            " long into it: its point comes out by about ",
            out,
            "; with more than that, bore less deep",
        ),
        (
            f"{feature.id}, in face {feature.surface}, {out_at}: middle ",
            (row[0] + row[1]) / 2,
            f" from {origin}",
        ),
    )


def driving_details(joints: Iterable[Joint], model: Model, *, glued: bool) -> tuple[Detail, ...]:
    """Return how the pocket screws of a glue-up are driven, a sentence for two parts."""
    pairs: dict[tuple[str, str], int] = {}
    for joint in joints:
        if joint.kind == "pocket screws":
            pair = (model.part_of(joint.guest).name, model.part_of(joint.host).name)
            pairs[pair] = pairs.get(pair, 0) + screws_in(joint, model)
    when = "while the glue is wet" if glued else "with no glue between"
    return tuple(
        (_driven(guest, host, "pocket screw" if many == 1 else f"{many} pocket screws", when),)
        for (guest, host), many in pairs.items()
    )


def _driven(guest: str, host: str, screws: str, when: str) -> str:
    return (
        f"Hold the faces of {guest} and {host} flush with a clamp over the joint, and drive "
        f"the {screws} {when}"
    )


def screws_in(joint: Joint, model: Model) -> int:
    """Return how many pocket screws a joint has: the pockets that open at its face."""
    return sum(
        feature.role == POCKET
        and copy.hand in feature.hands
        and feature.mate == model.part_of(mate).name
        and feature.box(copy.box, copy.frame).contact(model.copy(mate).box) is not None
        for name, mate in ((joint.guest, joint.host), (joint.host, joint.guest))
        for copy in (model.copy(name),)
        for feature in model.part_of(name).features
    )


def _form(feature: Feature) -> tuple[str, dict[str, Fraction]]:
    assert feature.form is not None
    assert feature.form.toward is not None
    return feature.form.toward, dict(feature.form.sizes)
