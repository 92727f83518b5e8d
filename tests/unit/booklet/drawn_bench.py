"""A boot bench (1000 x 360 x 450), placed by hand: what the drawings are tested on."""

from fractions import Fraction

from dryfit.diagnostics import Source, Span
from dryfit.geometry.box import Box
from dryfit.geometry.frame import Frame
from dryfit.joinery.feature import Feature
from dryfit.placing.model import Assembly, Copy, Joint, Model, Part
from dryfit.quantities import Display

SOURCE = Source("bench.dryfit", "piece Boot bench\n")
SPAN = Span(SOURCE, 1, 1, 6)
ZERO = Fraction(0)


def box(*sides: int | str) -> Box:
    """A box from x, x, y, y, z, z."""
    x, x2, y, y2, z, z2 = (Fraction(side) for side in sides)
    return Box((x, y, z), (x2, y2, z2))


def feature(  # noqa: PLR0917 - a row of a table
    name: str,
    kind: str,
    role: str,
    surface: str,
    along: tuple[int, int],
    across: tuple[int, int],
    depth: int,
    mate: str | None = None,
    hands: tuple[str, ...] = ("A",),
) -> Feature:
    """A feature in whole millimetres."""
    return Feature(
        name,
        kind,
        role,
        surface,
        (Fraction(along[0]), Fraction(along[1])),
        (Fraction(across[0]), Fraction(across[1])),
        Fraction(depth),
        None,
        mate=mate,
        hands=hands,
    )


def part(
    name: str,
    sizes: tuple[int, int, int],
    copies: tuple[Copy, ...],
    features: tuple[Feature, ...],
    run: str,
) -> Part:
    """A part of ash without adds."""
    length, width, thickness = (Fraction(size) for size in sizes)
    return Part(
        name,
        f"{name}s",
        "ash",
        "solid",
        length,
        width,
        thickness,
        None,
        (),
        None,
        (),
        copies,
        features,
        (SPAN,),
        run,
    )


BOTH = ("A", "B")


def posts() -> Part:
    """Four posts: laps and housings on the inner face, mortises for the aprons on it too."""
    copies = tuple(
        Copy(
            f"{depth} {side} post",
            (depth, side),
            None,
            "A" if (depth == "front") == (side == "left") else "B",
            box(x, x + 30, y, y + 45, 0, 430),
            Frame(((2, 1), (1, 1 if depth == "front" else -1), (0, 1 if side == "left" else -1))),
        )
        for side, x in (("left", 30), ("right", 940))
        for depth, y in (("front", 10), ("back", 305))
    )
    features = (
        feature("end lap for top end rail", "end lap", "lap", "B", (385, 430), (0, 45), 15,
                "top end rail", BOTH),
        feature("cross slot for bottom end rail", "cross slot", "housing", "B", (80, 125), (0, 45),
                15, "bottom end rail", BOTH),
        feature("mortise for apron", "mortise", "mortise", "B", (335, 375), (13, 21), 21, "apron",
                BOTH),
    )  # fmt: skip
    return part("post", (430, 45, 30), copies, features, "upright")


def end_rails() -> Part:
    """Four end rails, one part: a lap on the outer face at each end."""
    copies = tuple(
        Copy(
            f"{height} {side} end rail",
            (height, side),
            None,
            "A",
            box(x, x + 30, 10, 350, z, z + 45),
            Frame(((1, 1 if side == "left" else -1), (2, 1), (0, 1 if side == "left" else -1))),
        )
        for side, x in (("left", 30), ("right", 940))
        for height, z in (("bottom", 80), ("top", 385))
    )
    features = (
        feature("end lap at R", "end lap", "lap", "F", (0, 45), (0, 45), 15, "post"),
        feature("end lap at R2", "end lap", "lap", "F", (295, 340), (0, 45), 15, "post"),
    )
    return part("end rail", (340, 45, 30), copies, features, "front to back")


def aprons() -> Part:
    """Two aprons with blind tenons 20 x 40 x 8 and a groove for the buttons."""
    copies = (
        Copy("front apron", ("front",), None, "A", box(40, 960, 16, 38, 330, 430),
             Frame(((0, 1), (2, 1), (1, 1)))),
        Copy("back apron", ("back",), None, "A", box(40, 960, 322, 344, 330, 430),
             Frame(((0, -1), (2, 1), (1, -1)))),
    )  # fmt: skip
    ends = (("R", (0, 20)), ("R2", (900, 920)))
    cheeks = tuple(
        feature(f"tenon cheek {surface} at {end}", "end lap", "tenon cheek", surface, along,
                (0, 100), 7, "post")
        for end, along in ends
        for surface in ("F", "B")
    )  # fmt: skip
    shoulders = tuple(
        feature(f"tenon shoulder {surface} at {end}", "notch", "tenon shoulder", surface, along,
                (0, 22), depth, "post")
        for end, along in ends
        for surface, depth in (("E", 5), ("E2", 55))
    )  # fmt: skip
    groove = feature("groove", "long slot", "groove", "B", (0, 920), (82, 88), 9)
    return part("apron", (920, 100, 22), copies, (*cheeks, *shoulders, groove), "across")


def slats() -> Part:
    """Five slats on the bottom rails."""
    copies = tuple(
        Copy(f"slat {number}", (), number, "A",
             box(30, 970, f"{55 * 3 + 25 + 145 * (number - 1)}/3",
                 f"{55 * 3 + 25 + 145 * (number - 1) + 120}/3", 125, 143),
             Frame(((0, 1), (1, 1), (2, 1))))
        for number in range(1, 6)
    )  # fmt: skip
    return part("slat", (940, 40, 18), copies, (), "across")


def top() -> Part:
    """One top."""
    only = Copy("top", (), None, "A", box(0, 1000, 0, 360, 430, 450),
                Frame(((0, 1), (1, 1), (2, -1))))  # fmt: skip
    return part("top", (1000, 360, 20), (only,), (), "across")


def buttons() -> Part:
    """Six buttons under the top, tongues in the groove."""
    places = [(x, y) for x in (200, 480, 760) for y in ("front", "back")]
    copies = tuple(
        Copy(
            f"button {number}",
            (),
            number,
            "A",
            box(x, x + 40, *((29, 65) if y == "front" else (295, 331)), 410, 430),
            Frame(((1, 1 if y == "front" else -1), (0, 1), (2, -1))),
        )
        for number, (x, y) in enumerate(places, start=1)
    )
    tongue = feature("tongue", "end lap", "button tongue", "F", (0, 9), (0, 40), 12)
    return part("button", (36, 40, 20), copies, (tongue,), "front to back")


def assembly(name: str, of: tuple[str, ...], joints: tuple[str, ...], around: Box,
             square: tuple[int, int], axes: tuple[int, int]) -> Assembly:  # fmt: skip
    """A glue-up with its square sizes."""
    sizes = (Fraction(square[0]), Fraction(square[1]))
    return Assembly(name, name.rstrip(" 12"), of, joints, 60, around, sizes, axes, SPAN)


def joints() -> tuple[Joint, ...]:
    """Laps of the end frames and tenons of the aprons."""
    found: list[Joint] = []
    for side, x in (("left", 30), ("right", 940)):
        for depth, y in (("front", 10), ("back", 305)):
            for height, z in (("bottom", 80), ("top", 385)):
                found.append(
                    Joint(f"half lap {len(found) + 1}", "half lap", f"{height} {side} end rail",
                          f"{depth} {side} post", box(x, x + 30, y, y + 45, z, z + 45), ZERO,
                          glued=True, end="R", area=Fraction(2025), span=SPAN))  # fmt: skip
    for depth, y in (("front", 23), ("back", 329)):
        for side, x in (("left", 40), ("right", 940)):
            found.append(
                Joint(f"tenon {len(found) - 7}", "mortise and tenon", f"{depth} apron",
                      f"{depth} {side} post", box(x, x + 20, y, y + 8, 335, 375), ZERO,
                      glued=True, end="R", area=Fraction(1600), span=SPAN))  # fmt: skip
    return tuple(found)


def bench(display: Display | None = None, piece: str = "Boot bench") -> Model:
    """The whole bench."""
    found = joints()
    frames = tuple(
        assembly(
            f"end frame {number}",
            (f"front {side} post", f"back {side} post", f"bottom {side} end rail",
             f"top {side} end rail"),
            tuple(joint.id for joint in found if f"{side} post" in joint.host
                  and joint.kind == "half lap"),
            box(x, x + 30, 10, 350, 0, 430),
            (340, 430),
            (1, 2),
        )
        for number, side, x in ((1, "left", 30), (2, "right", 940))
    )  # fmt: skip
    base = assembly("base", ("end frame 1", "end frame 2", "front apron", "back apron"),
                    tuple(joint.id for joint in found if joint.kind != "half lap"),
                    box(30, 970, 10, 350, 0, 430), (940, 340), (0, 1))  # fmt: skip
    return Model(
        piece=piece,
        source=SOURCE,
        display=display or Display(),
        overall=(Fraction(1000), Fraction(360), Fraction(450)),
        parts=(posts(), end_rails(), aprons(), top(), slats(), buttons()),
        joints=found,
        assemblies=(*frames, base),
        fittings=(),
        coatings=(),
        hardware=(),
        wishes=(),
        stock=(),
        notes=(),
        assumptions=(),
        figures={},
    )
