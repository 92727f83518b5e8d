"""The shopping list: bought things, screws by joint, glue and finish by area."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from math import ceil

from dryfit.placing.model import Assembly, Bought, Coating, Hardware, Joint, Model, Part
from dryfit.placing.strips import covers
from dryfit.shop.glues import glue_named, usual_glue
from dryfit.shop.shop import Shop

GLUE_SPREAD = Fraction(180)
"""Grams of wood glue on a square metre of joint: 150 to 200 one side, common practice."""
FINISH_COVERS = Fraction(10)
"""Square metres that a litre covers in one coat: 8 to 12 on planed wood, common practice."""
_COVERS = {"hard wax oil": Fraction(20)}
"""What goes further than that: it is put on as thin as it can be rubbed out (from memory, 20 to 24
as its makers print)."""
_SQUARE_METRE = 1_000_000
_USUAL_COATS = 2
_NO_SIZE = "no size written"
_FOR_GLUE = "the glue-ups"
_FOR_ALL = "the piece"
# What is sold by weight and by volume, with the step up to which an amount is rounded: grams and
# millilitres, or ounces and US fluid ounces where the notes are in inches.
_WEIGHTS = {"mm": ("g", Fraction(1), 10), "in": ("oz", Fraction(28_349_523, 1_000_000), 1)}
_VOLUMES = {"mm": ("ml", Fraction(1), 50), "in": ("fl oz", Fraction(29_573_530, 1_000_000), 1)}


@dataclass(frozen=True, slots=True)
class Glued:
    """What takes glue: joints, the glue-ups that close them (each with its own), and staves.

    `chosen` is the glue that the work was planned with, by glue-up or glued panel; where nothing
    was chosen it is that of the notes, else the shop's usual one.
    """

    joints: Sequence[Joint]
    assemblies: Sequence[Assembly]
    parts: Sequence[Part]
    outdoors: bool
    chosen: Mapping[str, str]


def shopping_list(
    bought: Iterable[Bought],
    screws: Iterable[Hardware],
    glued: Glued,
    coatings: Sequence[Coating],
    shop: Shop,
    unit: str,
) -> tuple[Hardware, ...]:
    """Return what is bought: things in the order of the notes, then screws, glue and finishes.

    Amounts are rounded up, and are for buying, not for use; `unit` of the notes is mm or in.
    """
    return (
        *(_thing(each) for each in bought),
        *screws,
        *_glue(glued, shop, unit),
        *_finishes(coatings, shop, unit),
    )


def with_chosen_glues(model: Model, chosen: Mapping[str, str], shop: Shop) -> Model:
    """Return the model with those glues on its shopping list that the work is planned with.

    Only the planned work knows how long a glue-up takes to close, and so whether the usual glue
    leaves time for it.  `chosen` is the glue by the name of the glue-up or of the glued panel.
    """
    outdoors = model.outdoors is not None
    glued = Glued(model.joints, model.assemblies, model.parts, outdoors, chosen)
    rows = list(model.hardware)
    at = [number for number, row in enumerate(rows) if row.purpose == _FOR_GLUE]
    if not at:
        return model
    rows[at[0] : at[-1] + 1] = _glue(glued, shop, model.display.unit)
    return replace(model, hardware=tuple(rows))


def _thing(bought: Bought) -> Hardware:
    when = "" if bought.order is None else f"order {bought.order}"
    purpose = "; ".join(filter(None, (bought.purpose, when))) or _FOR_ALL
    return Hardware(bought.name, bought.size or _NO_SIZE, bought.count, purpose)


def _glue(glued: Glued, shop: Shop, unit: str) -> Iterator[Hardware]:
    named = {
        joint: glued.chosen.get(each.name, each.glue)
        for each in glued.assemblies
        for joint in each.joints
    }
    areas: dict[str, Fraction] = {}
    for part in glued.parts:
        if part.staves is not None:
            usual = usual_glue(shop, outdoors=glued.outdoors)
            name = glued.chosen.get(part.name, usual.name)
            areas[name] = areas.get(name, Fraction(0)) + _between_staves(part)
        if any(not lip.banded for lip in part.lips):
            usual = usual_glue(shop, outdoors=glued.outdoors)
            name = glued.chosen.get(part.name, usual.name)
            areas[name] = areas.get(name, Fraction(0)) + _under_lips(part)
    for joint in glued.joints:
        glue = glue_named(shop, named.get(joint.id))
        if joint.glued and glue is not None:
            areas[glue.name] = areas.get(glue.name, Fraction(0)) + joint.area
    for name, area in areas.items():
        grams = area / _SQUARE_METRE * GLUE_SPREAD
        if grams:
            yield Hardware(name, _about(grams, *_WEIGHTS[unit]), 1, _FOR_GLUE)


def _between_staves(part: Part) -> Fraction:
    """Return the area of the glue lines between the staves of all copies, in mm2."""
    lines = part.staves.count - 1 if part.staves is not None else 0
    return lines * part.length * part.thickness * len(part.copies)


def _under_lips(part: Part) -> Fraction:
    """Return the area of the glue lines under the lips of all copies, in mm2."""
    own = sum((covers(part, lip) for lip in part.lips if not lip.banded), Fraction(0))
    return own * part.thickness * len(part.copies)


def _finishes(coatings: Sequence[Coating], shop: Shop, unit: str) -> Iterator[Hardware]:
    needs: dict[str, Fraction] = {}
    for_whom: dict[str, list[str]] = {}
    for coating in coatings:
        for words in coating.products:
            known = shop.finishes.get(words.product)
            coats = words.coats or (known.coats if known else _USUAL_COATS)
            needs[words.product] = needs.get(words.product, Fraction(0)) + coating.area * coats
            for_whom.setdefault(words.product, []).append(coating.subject)
    for product, area in needs.items():
        covers = _COVERS.get(product, FINISH_COVERS)
        millilitres = area / _SQUARE_METRE / covers * 1000
        subjects = ", ".join(dict.fromkeys(for_whom[product]))
        yield Hardware(product, _about(millilitres, *_VOLUMES[unit]), 1, subjects)


def _about(amount: Fraction, unit: str, size: Fraction, step: int) -> str:
    return f"about {ceil(amount / size / step) * step} {unit}"
