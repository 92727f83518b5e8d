"""What a drawing cannot show by places alone: tapers, eased edges, arches and angles in words."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.booklet.text import Say, Text, listed
from dryfit.geometry.frame import SURFACES, WIDTH
from dryfit.joinery.feature import Feature
from dryfit.joinery.form import Form
from dryfit.joinery.sloping import sloping_end
from dryfit.kinds.roles import TAIL
from dryfit.placing.model import Part

_PINS = "Pins: they are marked from the tails that they go between."


def forms_told(part: Part, say: Say) -> tuple[Text, ...]:
    """Return a line for each form that the part has, what is alike told once."""
    told: dict[Text, None] = dict.fromkeys(_edges(part, say))
    for feature in part.features:
        if part.slopes_out is not None and feature.role == "mitre":
            told.update(dict.fromkeys(_compound(part, feature, say)))
            continue
        if feature.form is not None:
            words = tuple(_told(feature, say))
            told.update(dict.fromkeys(words))
        if feature.slopes and part.sloped is None:
            side = feature.surface
            line = f"Tenon holes lean: their middles are those on {side}, where they are bored."
            told[(line,)] = None
        if feature.flare is not None:
            tails = feature.role == TAIL
            line = "Tails: as they are on the end grain." if tails else _PINS
            told[(line,)] = None
    return tuple(told)


def _compound(part: Part, feature: Feature, say: Say) -> Iterator[Text]:
    assert part.slopes_out is not None
    end = sloping_end(part.slopes_out, part.width, part.thickness)
    yield (
        f"Compound mitre on {_surface(feature.surface)}: ",
        say.setting(end.lower),
        " back over the width, ",
        say.setting(end.inner),
        " through the thickness.",
    )


def _edges(part: Part, say: Say) -> Iterator[Text]:
    """Yield a line for each way in which edges are eased, with all the edges that are."""
    rows: dict[Text, dict[str, None]] = {}
    for feature in part.features:
        form = feature.form
        if form is None or form.kind not in {"chamfer", "profile", "round-over"}:
            continue
        sizes = dict(form.sizes)
        if "radius" in sizes:
            words: Text = ("Rounded, radius ", say.size(sizes["radius"]))
        else:
            size = (say.size(sizes["width"]), " \u00d7 ", say.size(sizes["depth"]))
            words = (f"{_name(form)} ", *size)
        rows.setdefault(words, {})[f"{feature.surface}/{form.toward}"] = None
    for words, edges in rows.items():
        yield (*words, f", on the {'edge' if len(edges) == 1 else 'edges'} {listed(edges)}.")


def _name(form: Form) -> str:
    words = form.profile or form.kind
    return f"{words[0].upper()}{words[1:]}"


def _told(feature: Feature, say: Say) -> Iterator[Text]:
    form = feature.form
    assert form is not None
    sizes = dict(form.sizes)
    where = f"on {_surface(feature.surface)}"
    match form.kind:
        case "taper":
            stretch = feature.along if form.toward == "R2" else feature.along[::-1]
            yield (
                f"Taper {where}: ",
                say.size(sizes["from"]),
                " at ",
                say.setting(stretch[0]),
                " from R, ",
                say.size(sizes["to"]),
                " at ",
                say.setting(stretch[1]),
                ".",
            )
        case "curve":
            span, rising = say.size(sizes["span"]), say.size(sizes["rise"])
            yield (f"Curve {where}: ", rising, " high in the middle over a span of ", span, ".")
        case "bevel" | "mitre":
            angle = say.angle(sizes.get("angle", Fraction(45)))
            yield (f"{form.kind.capitalize()} {where}, towards {form.toward}: ", angle, ".")
        case _:
            return


def _surface(surface: str) -> str:
    kind = {0: "end", WIDTH: "edge"}.get(SURFACES[surface][0], "face")
    return f"{kind} {surface}"
