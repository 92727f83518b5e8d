"""The cut list: every part with its size, the sums that prove it, copies and joints."""

from __future__ import annotations

from dataclasses import dataclass

from dryfit.booklet.bench import CopyRow, copy_row
from dryfit.booklet.gaps import SIDES
from dryfit.booklet.labels import Labels
from dryfit.booklet.text import Amount, Mark, Say, Text, joined, listed
from dryfit.booklet.wording import WAY_WORDS, joints
from dryfit.diagnostics import Figure
from dryfit.geometry.frame import Frame
from dryfit.placing.lip import Lip
from dryfit.placing.model import Model, Part
from dryfit.placing.strips import core_of, strip_parts
from dryfit.placing.sum_shown import sum_pieces
from dryfit.shop.shop import Shop

RESTING = "rest"
"""Kind of a joint without wood or fastener of its own: nothing to cut, so nothing to list."""


@dataclass(frozen=True, slots=True)
class PartRow:
    """One line of the cut list.

    `sums` are the chains that prove the sizes, one a line; `remarks` whatever else must be known
    before the wood is bought or cut; `marks` tell on which side of the finished piece end, edge
    and face with a mark lie.
    """

    letter: str
    name: str
    count: int
    length: Text
    width: Text
    thickness: Text
    timber: str
    sums: tuple[Text, ...]
    remarks: Text
    copies: tuple[CopyRow, ...]
    marks: Text


def part_rows(model: Model, labels: Labels, say: Say, shop: Shop) -> tuple[PartRow, ...]:
    """Return the cut list in the order of the notes, the tool's own parts last.

    The strips that lip a part stand behind it; they have no letter, since they are gone in it.
    """
    ordered = sorted(model.parts, key=lambda part: part.made)
    return tuple(
        row
        for part in ordered
        for row in (
            _row(part, model, labels, say),
            *(_strip_row(strips, say, shop) for strips in strip_parts(part, shop.allowances)),
        )
    )


def _strip_row(strips: Part, say: Say, shop: Shop) -> PartRow:
    over, proud = (say.size(shop.allowances[name]) for name in ("lip_over", "lip_proud"))
    return PartRow(
        letter="",
        name=strips.written,
        count=len(strips.copies),
        length=(say.size(strips.length),),
        width=(say.size(strips.width),),
        thickness=(say.size(strips.thickness),),
        timber=strips.timber or "",
        sums=(),
        remarks=(
            "As glued on: ",
            over,
            " longer at either end than what it covers, ",
            proud,
            " wider at either face; trimmed flush",
        ),
        copies=(),
        marks=(),
    )


def thickness_of(part: Part, say: Say) -> Amount:
    """Return the thickness as printed: of a sheet to a tenth, as it is measured for its groove."""
    return say.setting(part.thickness) if part.stock == "sheet" else say.size(part.thickness)


def _row(part: Part, model: Model, labels: Labels, say: Say) -> PartRow:
    return PartRow(
        letter=labels.part(part.name),
        name=part.written,
        count=len(part.copies),
        length=_about(part, "length", say.size(part.cut_length)),
        width=_about(part, "width", say.size(part.width)),
        thickness=(thickness_of(part, say),),
        timber=part.timber or "",
        sums=_sums(part, model, say),
        remarks=_remarks(part, model, say),
        copies=tuple(copy_row(part, copy, labels) for copy in part.copies),
        marks=marks_in_piece(part, labels),
    )


def _about(part: Part, dimension: str, size: Amount) -> Text:
    return (size,) if part.untaken(dimension) is None else ("about ", size)


def marks_in_piece(part: Part, labels: Labels) -> Text:
    """Return ``R bottom, E left, F front``, copy by copy where they stand otherwise."""
    found: dict[Text, list[str]] = {}
    for copy in part.copies:
        found.setdefault(_lies(copy.frame), []).append(labels.copy(copy.name))
    if len(found) == 1:
        return next(iter(found))
    rows = [(f"{listed(names)}: ", *sides) for sides, names in found.items()]
    return joined(rows, "; ")


def _lies(frame: Frame) -> Text:
    rows = [
        (Mark(mark), f" {SIDES[axis][0 if sign > 0 else 1]}")
        for mark, (axis, sign) in zip(("R", "E", "F"), frame.axes, strict=True)
    ]
    return joined(rows, ", ")


def _sums(part: Part, model: Model, say: Say) -> tuple[Text, ...]:
    """Return the sum behind each size that was worked out, the length's reason if it has none."""
    lengths = (("Length", "length"), ("Between shoulders", "shoulder length"))
    sections = (("Width", "width"), ("Thickness", "thickness"))
    rows: list[Text] = []
    for name, size in (*lengths, *sections):
        figure = model.figures.get(f"{part.name}.{size}")
        if figure is not None and figure.terms:
            rows.append((f"{name}: ", *_chain(figure, say)))
        elif figure is not None and size == "length":
            rows.append((f"{name}: {figure.words}",))
        elif part.shoulder_length is not None and size == "shoulder length":
            rows.append((f"{name}: ", say.size(part.shoulder_length)))
    return tuple(rows)


def _chain(figure: Figure, say: Say) -> Text:
    """Return ``shoulder 880 + tenon 20 + tenon 20 = 920``, and what rounding leaves over."""
    if len(figure.terms) == 1 and figure.terms[0].amount == figure.value:
        return (f"{figure.terms[0].label} ", say.size(figure.value))
    terms, came_to = sum_pieces(figure, say.display.plain, times="×", minus="−")
    return tuple(
        each if isinstance(each, str) else say.setting(each[0]) if each[1] else say.size(each[0])
        for each in (*terms, *came_to)
    )


def _remarks(part: Part, model: Model, say: Say) -> Text:
    rows: list[Text] = []
    if part.staves is not None:
        glued = f"Glued from {part.staves.count} boards, "
        if part.staves.widths:
            wide = joined(((say.size(each),) for each in part.staves.widths), ", ", " and ")
            rows.append((glued, *wide, " wide when jointed, in the order of their numbers"))
        else:
            rows.append((f"{glued}each ", say.size(part.staves.width), " wide when jointed"))
    if part.lips:
        rows.append(_lipped(part, say))
    if part.horns:
        after = " when they are sawn off in the glued frame"
        horns = ("With horns of ", say.size(part.horns), " at both ends: ")
        rows.append((*horns, say.size(part.length), after))
    if part.sloped is not None:
        rows.append(
            (
                "Sawn along its slope, with what is sawn off level later; upright ",
                say.size(part.length),
            )
        )
    rows += ((f"{words[0].upper()}{words[1:]}",) for words in part.asked)
    if part.waney:
        rows.append(("As wide as told where it is narrowest, the bark off",))
    for each in part.measures:
        known = each.formula == each.name
        formula = () if known else (f"{each.dimension} = ", *say.detail(each.worked), ", ")
        rows.append(("Cut to fit: ", *formula, f"{each.name} measured after {each.stage}"))
    if part.made:
        rows.append(("Made from offcuts",))
    if part.run in WAY_WORDS:
        rows.append((f"Grain runs {WAY_WORDS[part.run]}",))
    own_joints = _joints(part, model)
    if own_joints:
        rows.append(own_joints)
    return joined(rows, " · ")


def _lipped(part: Part, say: Say) -> Text:
    """Return the core as the saw cuts it, and what comes on which of its edges."""
    core = core_of(part)
    alike: dict[tuple[object, ...], list[Lip]] = {}
    for lip in part.lips:
        alike.setdefault((lip.banded, lip.thickness, lip.timber), []).append(lip)
    on = (
        (
            *joined(((Mark(lip.surface),) for lip in lips), ", ", " and "),
            f" with {_strip_word(len(lips), banded=lips[0].banded)} ",
            say.size(lips[0].thickness),
            f" thick of {lips[0].timber}" if lips[0].timber else " thick",
        )
        for lips in alike.values()
    )
    sizes = (say.size(core.length), " × ", say.size(core.width))
    return ("Core for the saw ", *sizes, ", lipped at ", *joined(on, ", ", " and "))


def _strip_word(count: int, *, banded: bool) -> str:
    if banded:
        return "banding"
    return "strips" if count > 1 else "a strip"


def _joints(part: Part, model: Model) -> Text:
    """Return the joints of one part with how many there are over all copies."""
    own = {copy.name for copy in part.copies}
    counts: dict[tuple[str, str], int] = {}
    for joint in model.joints:
        for mine, other in ((joint.guest, joint.host), (joint.host, joint.guest)):
            if mine in own and joint.kind != RESTING:
                key = (joint.kind, model.part_of(other).written)
                counts[key] = counts.get(key, 0) + (joint.tenon.count if joint.tenon else 1)
    if not counts:
        return ()
    rows = [(f"{joints(kind, count)} with {mate}",) for (kind, mate), count in counts.items()]
    return ("Joints: ", *joined(rows, ", "))
