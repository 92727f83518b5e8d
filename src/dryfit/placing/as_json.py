"""The ``parts`` document of the data contract, and the cut list as comma-separated values."""

from __future__ import annotations

import csv
import io

from dryfit.geometry.box import AXIS_NAMES, Box
from dryfit.geometry.frame import LENGTH, THICKNESS, WIDTH
from dryfit.geometry.lean import Lean, angle_of, steepest
from dryfit.joinery.feature import Feature, Range
from dryfit.joinery.splay import Sloped
from dryfit.placing.model import Assembly, Copy, EndAdd, Joint, Model, Part
from dryfit.quantities import Display
from dryfit.quantities.as_json import angle_json, length_json
from dryfit.quantities.display import exact

FORMAT = "dryfit-parts/1"
Json = dict[str, object]

_CSV = (
    "name",
    "count",
    "timber",
    "length",
    "width",
    "thickness",
    "shoulder_length",
    "unit",
    "remarks",
)


def parts_document(
    piece: str, notes: str, model: Model | None, findings: list[Json], units: str
) -> Json:
    """Return the whole document; without a model everything worked out is null or empty."""
    head: Json = {"format": FORMAT, "piece": piece, "notes": notes, "units": units}
    if model is None:
        empty: Json = {
            "overall": None,
            "parts": [],
            "joints": [],
            "assemblies": [],
            "hardware": [],
            "assumptions": [],
        }
        return head | empty | {"findings": findings}
    show = model.display
    width, depth, height = (length_json(size, show) for size in model.overall)
    return head | {
        "overall": {"width": width, "depth": depth, "height": height},
        "parts": [_part(part, model) for part in model.parts],
        "joints": [_joint(joint, show) for joint in model.joints],
        "assemblies": [_assembly(assembly) for assembly in model.assemblies],
        "hardware": [
            {"item": each.item, "size": each.size, "count": each.count, "for": each.purpose}
            for each in model.hardware
        ],
        "assumptions": [
            {
                "text": each.text,
                "line": each.span.line if each.span else None,
            }
            for each in model.assumptions
        ],
        "findings": findings,
    }


def parts_csv(model: Model) -> str:
    """Return one line a part; lengths as the booklet prints them, the unit in its own column."""
    out = io.StringIO()
    rows = csv.writer(out, lineterminator="\n")
    rows.writerow(_CSV)
    for part in model.parts:
        sizes = (part.cut_length, part.width, part.thickness, part.shoulder_length)
        show = model.display.plain.shown
        shown = ["" if size is None else show(size).rstrip('"') for size in sizes]
        rows.writerow(
            [
                part.name,
                len(part.copies),
                part.timber or "",
                *shown,
                model.display.unit,
                _remarks(part, model.display),
            ]
        )
    return out.getvalue()


def _remarks(part: Part, display: Display) -> str:
    remarks = []
    if part.staves:
        remarks.append(f"glued from {part.staves.count}")
    if part.lips:
        from dryfit.placing.lip_words import lip_remarks

        remarks += lip_remarks(part, display)
    remarks += part.asked
    if part.horns:
        shown = display.shown(part.horns)
        remarks.append(f"horns of {shown} at both ends, {display.shown(part.length)} without them")
    if part.sloped:
        remarks.append(f"sawn along its slope, upright {display.shown(part.length)}")
    waiting = [each for each in part.measures if each.taken is None]
    remarks += [f"{each.dimension} waits for {each.name}" for each in waiting]
    if len(part.hands()) > 1:
        remarks.append(f"hands {' and '.join(part.hands())}")
    if part.made:
        remarks.append("from offcuts")
    return "; ".join(remarks)


def _part(part: Part, model: Model) -> Json:
    show = model.display
    shoulder = part.shoulder_length
    return {
        "name": part.name,
        "count": len(part.copies),
        "timber": part.timber,
        "stock": part.stock,
        "length": length_json(part.length, show) | _waits(part, "length"),
        "width": length_json(part.width, show) | _waits(part, "width"),
        "thickness": length_json(part.thickness, show),
        "shoulder_length": None if shoulder is None else length_json(shoulder, show),
        "adds": [_add(add, part, model) for add in part.adds],
        "made_of": _made_of(part, show),
        **({"horns": length_json(part.horns, show)} if part.horns else {}),
        **({"sloped": _sloped(part.sloped, show)} if part.sloped else {}),
        "measured": length_json(part.length, show)
        if part.measure and part.measure.taken is not None
        else None,
        "lines": [span.line for span in part.spans],
        "copies": [_copy(copy) for copy in part.copies],
        "features": [_feature(feature, show) for feature in part.features],
    }


def _sloped(leg: Sloped, show: Display) -> Json:
    """Return how a leaning part is sawn: along its slope; its other places are those upright."""
    figures = {"length": leg.length, "shoulder": leg.shoulder, "over": leg.over}
    return {name: length_json(figure, show, fitted=True) for name, figure in figures.items()}


def _waits(part: Part, dimension: str) -> Json:
    measure = part.untaken(dimension)
    if measure is None:
        return {}
    return {"nominal": True, "measure": measure.name, "formula": measure.formula}


def _add(add: EndAdd, part: Part, model: Model) -> Json:
    length = length_json(add.length, model.display)
    return {"end": add.end, "joint": _joint_at(add, part, model), "length": length}


def _joint_at(add: EndAdd, part: Part, model: Model) -> str:
    # The first instance whose region reaches to that end of the first copy; where a mistake lets
    # the part run on through its host none does, and the first of its kind stands for it.
    copy = part.copies[0]
    axis, sign = copy.frame.axes[LENGTH]
    low = (sign > 0) == (add.end == "R")
    end = copy.box.low[axis] if low else copy.box.high[axis]
    beyond = end + add.proud if low else end - add.proud
    own = [
        joint
        for joint in model.joints
        if copy.name in {joint.guest, joint.host} and add.joint in joint.kind
    ]
    reaching = (
        joint for joint in own if beyond in {joint.region.low[axis], joint.region.high[axis]}
    )
    return next(reaching, own[0]).id


def _made_of(part: Part, show: Display) -> Json | None:
    if part.staves is None:
        return None
    staves = part.staves
    widths = [length_json(width, show) for width in staves.widths]
    return {
        "staves": staves.count,
        "width": length_json(staves.width, show),
        **({"widths": widths} if widths else {}),
    }


def _copy(copy: Copy) -> Json:
    return {
        "name": copy.name,
        "hand": copy.hand,
        "box": _box(copy.box),
        "axes": {
            "length": copy.frame.word(LENGTH),
            "width": copy.frame.word(WIDTH),
            "thickness": copy.frame.word(THICKNESS),
        },
        **({} if copy.lean is None else {"lean": _lean(copy.lean)}),
    }


def _lean(lean: Lean) -> Json:
    """Return how far a copy leans to the right and to the back, mm a mm down, and from where."""
    across, back = lean.per_down
    return {"x": str(across), "y": str(back), "level": exact(lean.level)}


def _box(box: Box) -> Json:
    return {
        name: [exact(box.low[axis]), exact(box.high[axis])] for axis, name in enumerate(AXIS_NAMES)
    }


def _range(bounds: Range) -> list[str]:
    return [exact(bound) for bound in bounds]


def _feature(feature: Feature, show: Display) -> Json:
    # Of a cut that runs out slantwise the other surface tells which half of its box is gone.
    toward = feature.form.toward if feature.form is not None else None
    return {
        "id": feature.id,
        "kind": feature.kind,
        "joint": feature.joint,
        "surface": feature.surface,
        "hands": list(feature.hands),
        "along": _range(feature.along),
        "across": _range(feature.across),
        "depth": length_json(feature.depth, show, fitted=True),
        "angle": _angle(feature),
        "fit": feature.fit,
        **({} if toward is None else {"toward": toward}),
        **(
            {"slopes": {side: str(rise) for side, rise in feature.slopes}} if feature.slopes else {}
        ),
    }


def _angle(feature: Feature) -> Json | None:
    if feature.slopes:
        return {**angle_json(angle_of(steepest(rise for _, rise in feature.slopes)))}
    sizes = dict(feature.form.sizes) if feature.form else {}
    return {**angle_json(sizes["angle"])} if "angle" in sizes else None


def _joint(joint: Joint, show: Display) -> Json:
    return {
        "id": joint.id,
        "kind": joint.kind,
        "between": [joint.host, joint.guest],
        "clearance": length_json(joint.clearance, show, fitted=True),
        "region": _box(joint.region),
        "glue": [_box(patch) for patch in joint.patches],
        "line": joint.span.line,
    }


def _assembly(assembly: Assembly) -> Json:
    return {"name": assembly.name, "of": list(assembly.of), "line": assembly.span.line}
