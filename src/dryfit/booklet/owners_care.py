"""A care note for whoever will own the piece (M21): by its wood, its finish and its joints.

All of it is common practice; the label on the can comes first.
"""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.placing.model import Model

_FINISHES = (
    ("varnish", "Varnish: wipe with a damp cloth, no scouring; it wants nothing else."),
    ("lacquer", "Lacquer: wipe with a damp cloth, no scouring; it wants nothing else."),
    ("shellac", "Shellac: no spirits, nothing hot or wet on it; dust with a dry cloth."),
    ("paint", "Paint: wipe with a damp cloth; keep what is left in the can for scratches."),
    ("oil", "Oil: wipe with a damp cloth, and oil it again, thinly, when it looks dry."),
    ("wax", "Wax: rub it with a soft cloth, and wax it again when water no longer beads."),
)
"""By a word in the name of a finish; the first that fits: a hard wax oil is an oil."""


def owners_care(model: Model) -> tuple[str, ...]:
    """Return the sentences of the note."""
    return tuple(dict.fromkeys(_sentences(model)))


def _sentences(model: Model) -> Iterator[str]:
    if any(part.stock == "solid" for part in model.parts):
        yield (
            "Solid wood swells and shrinks with the air: keep it off radiators and wet walls, and "
            "expect gaps to open in the heated months."
        )
    products = (each.product.lower() for coating in model.coatings for each in coating.products)
    for product in dict.fromkeys(products):
        yield from [says for word, says in _FINISHES if word in product][:1]
    if any(joint.fastened for joint in model.joints) or model.fittings:
        yield "Look at its screws and fittings after the first winter, and tighten what is loose."
    if model.outdoors is not None:
        yield "Outdoors look at it each spring: clean it, renew its finish, tighten what is loose."
    if model.place is not None and model.place.wall is not None:
        yield "Look once a year whether it is still fast on the wall."
