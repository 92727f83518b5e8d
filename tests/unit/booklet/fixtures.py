"""A small bench with a plan, made by hand: enough of everything that a booklet prints.

All figures are invented by us.  The figures agree with one another as the planner's would, but
nothing here was planned: the booklet must print what it is given.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from dryfit.diagnostics import (
    Assumption,
    Diagnostic,
    Figure,
    Findings,
    Hint,
    Severity,
    Source,
    Span,
    Term,
)
from dryfit.geometry.box import Box
from dryfit.geometry.frame import Frame
from dryfit.joinery.feature import Feature
from dryfit.joinery.staves import Staves
from dryfit.piece.declared import Coats, Have
from dryfit.placing.model import (
    Assembly,
    Coating,
    Copy,
    EndAdd,
    Fitting,
    Hardware,
    Joint,
    Measure,
    Model,
    Part,
)
from dryfit.quantities import Display

NOTES = """piece Hall bench
units mm
overall 1000 wide, 360 deep, 450 high
timber ash
have 1 board of ash, 2400 x 160 x 34, rough
4 posts, upright, 45 x 30, at corners
4 end rails, front to back, on edge, 45 x 30
2 aprons, across, on edge, 100 x 22, tenon 20 long into posts
1 top, flat, 20 thick, glued from 4
5 slats, across, flat, 40 x 18, cut after glue up base
finish oil varnish, 2 coats, 24 h apart
"""

SOURCE = Source("hall_bench.dryfit", NOTES)


def _at(line: int) -> Span:
    return Span(SOURCE, line, 1, len(SOURCE.lines()[line - 1]) + 1)


def _box(x: tuple[int, int], y: tuple[int, int], z: tuple[int, int]) -> Box:
    low, high = zip(x, y, z, strict=True)
    return Box(
        (Fraction(low[0]), Fraction(low[1]), Fraction(low[2])),
        (Fraction(high[0]), Fraction(high[1]), Fraction(high[2])),
    )


def _range(start: int, end: int) -> tuple[Fraction, Fraction]:
    return Fraction(start), Fraction(end)


def _post(name: str, x: tuple[int, int], y: tuple[int, int]) -> Copy:
    front, left = "front" in name, "left" in name
    frame = Frame(((2, 1), (1, 1 if front else -1), (0, -1 if left else 1)))
    hand = "A" if frame.handedness() < 0 else "B"
    return Copy(name, tuple(name.split()[:2]), None, hand, _box(x, y, (0, 430)), frame)


def _posts() -> Part:
    lap = Feature(
        "end lap at R2",
        "end lap",
        "lap",
        "F",
        _range(385, 430),
        _range(0, 45),
        Fraction(15),
        "knife",
        "half lap 1",
        "end rail",
        ("A", "B"),
    )
    housing = Feature(
        "cross slot for end rail",
        "cross slot",
        "lap",
        "F",
        _range(80, 125),
        _range(0, 45),
        Fraction(15),
        "knife",
        "half lap 5",
        "end rail",
        ("A", "B"),
    )
    mortise = Feature(
        "mortise for apron",
        "mortise",
        "mortise",
        "F",
        _range(335, 375),
        _range(13, 21),
        Fraction(21),
        "slip",
        "mortise and tenon 1",
        "apron",
        ("A", "B"),
    )
    return Part(
        "post",
        "posts",
        "ash",
        "solid",
        Fraction(430),
        Fraction(45),
        Fraction(30),
        None,
        (),
        None,
        (),
        (
            _post("front left post", (30, 60), (10, 55)),
            _post("front right post", (940, 970), (10, 55)),
            _post("back left post", (30, 60), (305, 350)),
            _post("back right post", (940, 970), (305, 350)),
        ),
        (lap, housing, mortise),
        (_at(6),),
        "upright",
    )


def _end_rail(name: str, x: tuple[int, int], z: tuple[int, int]) -> Copy:
    left, top = "left" in name, "top" in name
    frame = Frame(((1, 1), (2, -1 if top else 1), (0, 1 if left else -1)))
    hand = "A" if frame.handedness() < 0 else "B"
    return Copy(name, tuple(name.split()[:2]), None, hand, _box(x, (10, 350), z), frame)


def _end_rails() -> Part:
    laps = tuple(
        Feature(
            f"end lap at {end}",
            "end lap",
            "lap",
            "F",
            along,
            _range(0, 45),
            Fraction(15),
            "knife",
            "half lap 1",
            "post",
            ("A", "B"),
        )
        for end, along in (("R", _range(0, 45)), ("R2", _range(295, 340)))
    )
    return Part(
        "end rail",
        "end rails",
        "ash",
        "solid",
        Fraction(340),
        Fraction(45),
        Fraction(30),
        Fraction(250),
        (EndAdd("R", "half lap", Fraction(45)), EndAdd("R2", "half lap", Fraction(45))),
        None,
        (),
        (
            _end_rail("top left end rail", (30, 60), (385, 430)),
            _end_rail("top right end rail", (940, 970), (385, 430)),
            _end_rail("bottom left end rail", (30, 60), (80, 125)),
            _end_rail("bottom right end rail", (940, 970), (80, 125)),
        ),
        laps,
        (_at(7),),
        "front to back",
    )


def _aprons() -> Part:
    cheeks = tuple(
        Feature(
            f"tenon cheek at {end} in {surface}",
            "end lap",
            "tenon cheek",
            surface,
            along,
            _range(0, 100),
            Fraction(7),
            "slip",
            "mortise and tenon 1",
            "post",
            ("A", "B"),
        )
        for end, along in (("R", _range(0, 20)), ("R2", _range(900, 920)))
        for surface in ("F", "B")
    )
    copies = tuple(
        Copy(
            f"{place} apron",
            (place,),
            None,
            "A" if place == "front" else "B",
            _box((40, 960), y, (330, 430)),
            Frame(((0, 1), (2, -1), (1, sign))),
        )
        for place, y, sign in (("front", (16, 38), 1), ("back", (322, 344), -1))
    )
    return Part(
        "apron",
        "aprons",
        "ash",
        "solid",
        Fraction(920),
        Fraction(100),
        Fraction(22),
        Fraction(880),
        (EndAdd("R", "tenon", Fraction(20)), EndAdd("R2", "tenon", Fraction(20))),
        None,
        (),
        copies,
        cheeks,
        (_at(8),),
        "across",
    )


def _top() -> Part:
    frame = Frame(((0, 1), (1, 1), (2, -1)))
    copy = Copy("top", (), None, "A", _box((0, 1000), (0, 360), (430, 450)), frame)
    return Part(
        "top",
        "top",
        "ash",
        "solid",
        Fraction(1000),
        Fraction(360),
        Fraction(20),
        None,
        (),
        Staves(4, Fraction(183, 2)),
        (),
        (copy,),
        (),
        (_at(9),),
        "across",
    )


def _slats() -> Part:
    frame = Frame(((0, 1), (1, 1), (2, -1)))
    rows = ((63, 103), (112, 152), (160, 200), (208, 248), (257, 297))
    copies = tuple(
        Copy(f"slat {n}", (), n, "A", _box((30, 970), row, (125, 143)), frame)
        for n, row in enumerate(rows, start=1)
    )
    measure = Measure(
        "length",
        "base length",
        "base",
        Fraction(940),
        Fraction(0),
        "base length",
        "along the bottom rails",
    )
    return Part(
        "slat",
        "slats",
        "ash",
        "solid",
        Fraction(940),
        Fraction(40),
        Fraction(18),
        None,
        (),
        None,
        (measure,),
        copies,
        (),
        (_at(10),),
        "across",
    )


def _joints() -> tuple[Joint, ...]:
    found = []
    corners = [
        (p, s, v) for v in ("top", "bottom") for s in ("left", "right") for p in ("front", "back")
    ]
    for number, (place, side, level) in enumerate(corners, start=1):
        x = (30, 60) if side == "left" else (940, 970)
        y = (10, 55) if place == "front" else (305, 350)
        z = (385, 430) if level == "top" else (80, 125)
        found.append(
            Joint(
                f"half lap {number}",
                "half lap",
                f"{level} {side} end rail",
                f"{place} {side} post",
                _box(x, y, z),
                Fraction(0),
                True,
                "R" if place == "front" else "R2",
                Fraction(2025),
                _at(7),
            )
        )
    for number, (place, side) in enumerate(
        ((p, s) for p in ("front", "back") for s in ("left", "right")), start=1
    ):
        x = (40, 60) if side == "left" else (940, 960)
        y = (23, 31) if place == "front" else (329, 337)
        found.append(
            Joint(
                f"mortise and tenon {number}",
                "mortise and tenon",
                f"{place} apron",
                f"{place} {side} post",
                _box(x, y, (335, 375)),
                Fraction(0),
                True,
                "R" if side == "left" else "R2",
                Fraction(1920),
                _at(8),
            )
        )
    return tuple(found)


def _end_frame(number: int, side: str, x: tuple[int, int]) -> Assembly:
    members = (
        f"front {side} post",
        f"back {side} post",
        f"top {side} end rail",
        f"bottom {side} end rail",
    )
    joints = tuple(j.id for j in _joints() if j.kind == "half lap" and side in j.host)
    return Assembly(
        f"end frame {number}",
        "end frame",
        members,
        joints,
        60,
        _box(x, (10, 350), (0, 430)),
        (Fraction(340), Fraction(430)),
        (1, 2),
        _at(7),
    )


def _base() -> Assembly:
    joints = tuple(j.id for j in _joints() if j.kind == "mortise and tenon")
    return Assembly(
        "base",
        "base",
        ("end frame 1", "end frame 2", "front apron", "back apron"),
        joints,
        60,
        _box((30, 970), (10, 350), (0, 430)),
        (Fraction(940), Fraction(340)),
        (0, 1),
        _at(8),
    )


def _figures() -> dict[str, Figure]:
    rows = (
        Figure(
            "post.length",
            Fraction(430),
            "sum",
            "from the floor to the underside of the top",
            (Term("overall height", Fraction(450)), Term("top thickness", Fraction(-20))),
        ),
        Figure(
            "end rail.length",
            Fraction(340),
            "sum",
            "between shoulders, and a lap at each end",
            (
                Term("shoulder", Fraction(250)),
                Term("half lap", Fraction(45)),
                Term("half lap", Fraction(45)),
            ),
        ),
        Figure(
            "apron.length",
            Fraction(920),
            "sum",
            "between shoulders, and a tenon at each end",
            (
                Term("shoulder", Fraction(880)),
                Term("tenon", Fraction(20)),
                Term("tenon", Fraction(20)),
            ),
        ),
        Figure("top.length", Fraction(1000), "taken", "the overall width"),
        Figure("slat.length", Fraction(940), "measured", "measured on the glued base"),
    )
    return {row.name: row for row in rows}


_OIL = (Coats("oil varnish", 2, 1440, _at(11)),)


def model(display: Display | None = None, piece: str = "Hall bench") -> Model:
    """Return the bench, read in millimetres unless another display is given."""
    return Model(
        piece=piece,
        source=SOURCE,
        display=display or Display(),
        overall=(Fraction(1000), Fraction(360), Fraction(450)),
        parts=(_posts(), _end_rails(), _aprons(), _top(), _slats()),
        joints=_joints(),
        assemblies=(_end_frame(1, "left", (30, 60)), _end_frame(2, "right", (940, 970)), _base()),
        fittings=(Fitting("slats onto end rails", "slat", ("end rail",), "screws", (), _at(10)),),
        coatings=(
            Coating("base", ("front left post",), Fraction(900000), (), None, _at(11), _OIL),
            Coating("top", ("top",), Fraction(720000), (), None, _at(11), _OIL),
        ),
        hardware=(Hardware("wood screw", "4 x 35", 10, "slats onto end rails"),),
        wishes=(),
        stock=(
            Have(
                1,
                "board",
                "ash",
                (Fraction(2400), Fraction(160), Fraction(34)),
                True,
                "1 board of ash, 2400 x 160 x 34, rough",
                _at(5),
            ),
        ),
        notes=("The hall floor is 4 out of level to the left.",),
        assumptions=(
            Assumption(
                "the aprons stand level with the top of the posts",
                _at(8),
                "aprons, flush with top of posts",
            ),
        ),
        figures=_figures(),
    )


def findings() -> Findings:
    """Return one warning and one question, as a run would."""
    return (
        Diagnostic(
            "panel-wider-than-planer",
            Severity.WARNING,
            "the glued top is wider than the planer takes",
            _at(9),
            "H47",
            {"top": Fraction(366), "planer": Fraction(310)},
            hints=(Hint("flatten it by hand, or plane two halves and join them last"),),
        ),
        Diagnostic(
            "end-grain-to-the-wall",
            Severity.QUESTION,
            "does the left end stand against a wall?",
            _at(3),
        ),
    )


def hostile(name: str) -> Model:
    """Return the bench with the piece, a part, its copies and a note called `name`."""
    base = model(piece=name)
    slats = base.parts[-1]
    copies = tuple(replace(copy, name=f"{name} {copy.number}") for copy in slats.copies)
    renamed = replace(slats, written=name, copies=copies)
    return replace(base, parts=(*base.parts[:-1], renamed), notes=(name,))
