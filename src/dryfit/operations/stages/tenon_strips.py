"""Strips for loose tenons, milled of offcuts before the dry fit tries them (TRADE B4)."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from dryfit.joinery.loose_pieces import piece_sizes
from dryfit.joinery.loose_tenons import strip_for
from dryfit.operations.minutes import worked
from dryfit.operations.words import listed, spoken
from dryfit.placing.model import Joint, Model
from dryfit.plan.operation import Detail
from dryfit.shop.shop import Shop

Sizes = tuple[Fraction, Fraction, Fraction]


def strip_details(joints: Iterable[Joint], model: Model) -> tuple[Detail, ...]:
    """Return how much strip is milled for the loose tenons of a glue-up, a sentence a size."""
    return tuple(_said(sizes, own, model) for sizes, own in _alike(joints).items())


def strips_milled(joints: Iterable[Joint], shop: Shop) -> Fraction:
    """Return the tenths of a minute that the strips take, a batch a size (B26)."""
    return worked(shop, "tenon strip", each=len(_alike(joints)))


def _alike(joints: Iterable[Joint]) -> dict[Sizes, list[Joint]]:
    """Return the joints of each size of loose tenon, once for each tenon."""
    alike: dict[Sizes, list[Joint]] = {}
    for joint in joints:
        for piece in joint.loose_pieces if joint.kind == "loose tenon" else ():
            alike.setdefault(piece_sizes(piece, joint.region), []).append(joint)
    return alike


def _said(sizes: Sizes, joints: list[Joint], model: Model) -> Detail:
    length, width, thickness = sizes
    pairs = dict.fromkeys(
        f"{model.part_of(joint.guest).name} into {model.part_of(joint.host).name}"
        for joint in joints
    )
    return (
        f"Make {spoken(len(joints), 'loose tenon')} for {listed(pairs)}: mill ",
        strip_for(len(joints), length),
        " of strip from offcuts, the grain along it, ",
        width,
        " wide and ",
        thickness,
        " thick, until it slides in a mortise by hand; cut it into lengths of ",
        length,
        " and ease their ends",
    )
