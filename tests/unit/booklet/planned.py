"""The plan and the shop of the hand-made bench in fixtures.py."""

from __future__ import annotations

from fractions import Fraction
from types import MappingProxyType

from dryfit.plan.operation import ClampRow, GlueUp, Lag, MeasurePoint, Operation, Work
from dryfit.plan.plan import Moment, PartByPart, Plan, Step, StepMinutes, Totals, Waits
from dryfit.plan.setting import Hold, Pass, Setting
from dryfit.shop.shop import (
    Accessory,
    AxisChange,
    Clamp,
    Cutter,
    FinishProduct,
    Glue,
    Rests,
    Sanding,
    Shop,
    Station,
)

_ALLOWANCES = MappingProxyType(
    {
        name: Fraction(millimetres)
        for name, millimetres in (
            *(("rough_length", 25), ("rough_width", 6), ("rough_width_band_saw", 5)),
            *(("rough_thickness", 5), ("panel_length", 20), ("panel_flattening", "1.5")),
            *(("snipe", 60), ("longest_gang", 1100), ("edge_joint", 1)),
            *(("planed_length", 10), ("planed_width", 3), ("hand_margin", "0.5"), ("facing", 1)),
        )
    }
)
"""As TRADE A5 has them, in mm."""

AXES = {
    "planer": ("thickness",),
    "table saw": ("cutter", "accessory", "tilt", "height", "fence", "stop"),
    "mortiser": ("cutter", "fence", "depth", "stop"),
    "glue bench": (),
    "bench": (),
    "finish bench": (),
}

POSTS = ("front left post", "front right post", "back left post", "back right post")
RAILS = (
    "top left end rail",
    "top right end rail",
    "bottom left end rail",
    "bottom right end rail",
)
APRONS = ("front apron", "back apron")
SLATS = tuple(f"slat {n}" for n in range(1, 6))

Values = dict[str, Setting]


def _mm(axis: str, value: str | int, **more: object) -> Setting:
    return Setting(axis, Fraction(value), **more)  # type: ignore[arg-type]


def _work(
    part: str,
    copies: tuple[str, ...],
    *features: str,
    hold: Hold | None = None,
    passes: tuple[Pass, ...] = (),
) -> Work:
    return Work(part, copies, features, hold, passes)


def _cut(
    name: str, kind: str, station: str, sentence: str, work: tuple[Work, ...], **more: object
) -> Operation:
    part = name.partition(" / ")[0]
    return Operation(name, kind, station, part, (), work, 30, sentence, **more)  # type: ignore[arg-type]


SAW = Hold("B", "E", "R")
INSIDE_OUT = Hold("F", "E", "R")
ON_STOP = (Pass(), Pass(between=True))
COMBO = Setting("cutter", "combination blade", "name")
DADO = Setting("cutter", "dado 20", "name")
SLED = Setting("accessory", "sled", "name")
FLAT = Setting("tilt", Fraction(0), "deg")
HIGH = _mm("height", 27, above="table")

END_FRAME = GlueUp(
    "end frame",
    ("front left post", "back left post", "top left end rail", "bottom left end rail"),
    50,
    55,
    100,
    "white glue",
    (
        ClampRow(Fraction(400), 2, "across the frame over each rail"),
        ClampRow(Fraction(60), 4, "one on each lap"),
    ),
    (Lag("out of clamps", 600), Lag("level", 7200), Lag("machine", 14400)),
    (("corner to corner", 548.18),),
)


def _glue(number: int) -> Operation:
    name = f"end frame {number}"
    return Operation(
        f"{name} / glue up",
        "glue up",
        "glue bench",
        "end frame",
        (),
        (),
        195,
        "Glue both faces of every lap and close the frame.",
        after_tenths=600,
        splittable=False,
        check="shoulders shut, frame flat on the bench",
        cautions=("glue-skin",),
        glue_up=END_FRAME,
    )


def _rows() -> list[
    tuple[int, str, Values, tuple[Operation, ...], StepMinutes, int, tuple[Waits, ...]]
]:
    """One row a step: visit, station, values that it sets, operations, minutes, tests, waits."""
    laps = _cut(
        "post / end lap",
        "lap",
        "table saw",
        "Cut the end lap on the top of each post.",
        (_work("post", POSTS, "end lap at R2", hold=Hold("F", "E", "R2"), passes=ON_STOP),),
        check="two test laps lie flush",
        cautions=("table-saw-dado",),
        trial="height",
    )
    rail_laps = _cut(
        "end rail / end lap",
        "lap",
        "table saw",
        "Cut the laps on both ends of the end rails.",
        (
            _work("end rail", RAILS, "end lap at R", hold=INSIDE_OUT, passes=ON_STOP),
            _work("end rail", RAILS, "end lap at R2", hold=Hold("F", "E", "R2"), passes=ON_STOP),
        ),
        check="two test laps lie flush",
        cautions=("table-saw-dado",),
    )
    housing = _cut(
        "post / cross slot for end rail",
        "lap",
        "table saw",
        "Cut the housing for the bottom end rail in each post.",
        (
            _work(
                "post",
                POSTS,
                "cross slot for end rail",
                hold=Hold("F", "E", "R"),
                passes=(Pass(), Pass(spacer=Fraction(25)), Pass(between=True)),
            ),
        ),
        check="an end rail goes in by hand",
        cautions=("table-saw-dado",),
    )
    mortise = [
        _cut(
            f"post / mortise for apron / hand {hand}",
            "mortise",
            "mortiser",
            f"Chop the mortise for the apron in each post of hand {hand}.",
            (_work("post", copies, "mortise for apron", hold=Hold("B", "E", "R")),),
            check="a test tenon slides in by hand",
        )
        for hand, copies in (("A", (POSTS[1], POSTS[2])), ("B", (POSTS[0], POSTS[3])))
    ]
    lengths = [
        _cut(
            f"{part} / length",
            "length",
            "table saw",
            f"Cut each {part} to length.",
            (_work(part, copies, hold=Hold("B", "E", "R")),),
            cautions=("table-saw-crosscut",),
        )
        for part, copies in (("post", POSTS), ("end rail", RAILS), ("apron", APRONS))
    ]
    plane = _cut(
        "post / thickness",
        "thickness",
        "planer",
        "Plane the post and rail blanks to thickness.",
        (_work("post", POSTS), _work("end rail", RAILS)),
        cautions=("thickness-planer",),
    )
    cheeks = _cut(
        "apron / tenon cheeks",
        "tenon cheek",
        "table saw",
        "Cut both cheeks of the tenons on both ends of each apron.",
        (
            _work(
                "apron",
                APRONS,
                "tenon cheek at R in F",
                "tenon cheek at R in B",
                "tenon cheek at R2 in F",
                "tenon cheek at R2 in B",
                hold=SAW,
            ),
        ),
        tests=2,
        check="slips into a mortise by hand, shoulders shut",
    )
    dry = _cut(
        "end frame 1 / dry fit",
        "dry fit",
        "bench",
        "Put both end frames together dry, with the clamps set.",
        (),
        check="laps flush, shoulders shut",
    )
    measure = Operation(
        "base length / measure",
        "measure",
        "bench",
        "slat",
        (),
        (),
        20,
        "Measure the base along the bottom rails, at the front, the middle and the back.",
        measure=MeasurePoint("base length", "base length", Fraction(940), ("slat / length",)),
    )
    slats = _cut(
        "slat / length",
        "length",
        "table saw",
        "Cut the slats to the measured length.",
        (_work("slat", SLATS, hold=Hold("B", "E", "R")),),
        cautions=("table-saw-crosscut",),
    )
    coats = [
        _cut(
            f"base / coat {n}",
            "coat",
            "finish bench",
            f"Lay coat {n} of oil varnish on the base and the top.",
            (),
            after_tenths=14400,
            cautions=("oily-rags",),
        )
        for n in (1, 2)
    ]
    fit = _cut(
        "slat / fit",
        "fit",
        "bench",
        "Screw the slats down with spacers between them.",
        (_work("slat", SLATS),),
        check="equal gaps",
    )
    base = Operation(
        "base / glue up",
        "glue up",
        "glue bench",
        "base",
        (),
        (),
        185,
        "Glue the four tenons and close the base.",
        after_tenths=600,
        splittable=False,
        glue_up=GlueUp(
            "base",
            ("end frame 1", "end frame 2", "front apron", "back apron"),
            50,
            48,
            100,
            "white glue",
            (ClampRow(Fraction(1000), 2, "along each apron"),),
            (Lag("out of clamps", 600), Lag("finish", 14400)),
            (("over the top", 999.6),),
        ),
    )
    cure = (Waits(11, "end frame 1 / glue up", "the glue has to hold before it is handled", 600),)
    coat_wait = (Waits(17, "base / coat 1", "coat 1 has to be dry", 14400),)
    through = _mm("height", 48, above="table", at_least=Fraction(45), at_most=Fraction(57))
    return [
        (
            1,
            "planer",
            {"thickness": _mm("thickness", 30)},
            (plane,),
            StepMinutes(0, 15, 0, 72, 0),
            0,
            (),
        ),
        *(
            (
                2,
                "table saw",
                {
                    "cutter": COMBO,
                    "accessory": SLED,
                    "tilt": FLAT,
                    "height": through,
                    "stop": _mm("stop", size, to="near", origin="R"),
                },
                (operation,),
                StepMinutes(10 * (size == 430), 35, 0, 24, 0),
                0,
                (Waits(1, "post / thickness", "thickness before length", 0),),
            )
            for size, operation in zip((430, 340, 920), lengths, strict=True)
        ),
        *(
            (
                3,
                "mortiser",
                {
                    "cutter": Setting("cutter", "chisel 8", "name"),
                    "fence": _mm("fence", 13, to="near", origin="E"),
                    "depth": _mm("depth", 21),
                    "stop": _mm("stop", 335, to="both", far=Fraction(375), origin="R", side=side),
                },
                (operation,),
                StepMinutes(10 * (side == "left"), 85, 15, 45, 0),
                1,
                (),
            )
            for side, operation in zip(("left", "right"), mortise, strict=True)
        ),
        (
            4,
            "table saw",
            {
                "cutter": DADO,
                "accessory": SLED,
                "tilt": FLAT,
                "height": HIGH,
                "stop": _mm("stop", 25, to="near", far=Fraction(45), origin="R"),
            },
            (laps, rail_laps),
            StepMinutes(10, 105, 30, 90, 0),
            2,
            (Waits(2, "post / length", "the stop reads the end, so length comes first", 0),),
        ),
        (
            4,
            "table saw",
            {"stop": _mm("stop", 105, to="near", far=Fraction(125), origin="R")},
            (housing,),
            StepMinutes(0, 15, 0, 30, 0),
            0,
            (Waits(7, "post / end lap", "laps of one height are cut in one visit", 0),),
        ),
        (
            4,
            "table saw",
            {
                "height": _mm("height", 19, above="table"),
                "stop": _mm("stop", 0, to="near", far=Fraction(20), origin="R"),
            },
            (cheeks,),
            StepMinutes(0, 25, 30, 20, 0),
            2,
            (
                Waits(
                    5, "post / mortise for apron / hand A", "the tenon is fitted to its mortise", 0
                ),
            ),
        ),
        (5, "bench", {}, (dry,), StepMinutes(10, 0, 0, 100, 0), 0, ()),
        (
            6,
            "glue bench",
            {},
            (_glue(1),),
            StepMinutes(10, 0, 0, 195, 600),
            0,
            (Waits(10, "end frame 1 / dry fit", "every glue-up is tried dry first", 0),),
        ),
        (6, "glue bench", {}, (_glue(2),), StepMinutes(0, 0, 0, 195, 600), 0, cure),
        (
            6,
            "glue bench",
            {},
            (base,),
            StepMinutes(0, 0, 0, 185, 600),
            0,
            (Waits(12, "end frame 2 / glue up", "the frame comes out of its clamps", 600),),
        ),
        (
            7,
            "bench",
            {},
            (measure,),
            StepMinutes(10, 0, 0, 20, 0),
            0,
            (Waits(13, "base / glue up", "measured on the glued base", 600),),
        ),
        (
            8,
            "table saw",
            {
                "cutter": COMBO,
                "accessory": SLED,
                "tilt": FLAT,
                "height": through,
                "stop": _mm(
                    "stop", 940, to="near", origin="R", measure="base length", formula="base length"
                ),
            },
            (slats,),
            StepMinutes(10, 120, 0, 40, 0),
            0,
            (),
        ),
        *(
            (
                9,
                "finish bench",
                {},
                (operation,),
                StepMinutes(10 * (n == 1), 0, 0, 300, 14400),
                0,
                coat_wait if n == 2 else (),
            )
            for n, operation in enumerate(coats, start=1)
        ),
        (10, "bench", {}, (fit,), StepMinutes(10, 0, 0, 180, 0), 0, ()),
    ]


def plan() -> Plan:
    """Return the plan of eighteen steps in ten visits."""
    standing: dict[str, dict[str, Setting | None]] = {
        station: dict.fromkeys(axes) for station, axes in AXES.items()
    }
    steps: list[Step] = []
    clock = 0
    for number, (visit, station, values, operations, minutes, tests, waits) in enumerate(
        _rows(), start=1
    ):
        now = standing[station]
        changed = tuple(
            axis
            for axis in AXES[station]
            if axis in values and (now[axis] is None or now[axis].token() != values[axis].token())  # type: ignore[union-attr]
        )
        now.update(values)
        wait = max((wait.lag for wait in waits), default=0)
        start = clock + wait
        end = start + minutes.walk + minutes.changeover + minutes.tests + minutes.work
        steps.append(
            Step(
                number,
                visit,
                station,
                tuple(now.items()),
                changed,
                operations,
                minutes,
                tests,
                _moment(start),
                _moment(end),
                waits,
                (14, 15) if station == "glue bench" else (),
            )
        )
        clock = end
    return Plan("hand-made shop", "5" * 64, "balanced", tuple(steps), _totals(), ())


def _moment(tenths: int) -> Moment:
    day, rest = divmod(tenths, 14400)
    minutes = 480 + rest // 30
    return Moment(tenths, day + 1, f"{minutes // 60:02}:{minutes % 60:02}")


def _totals() -> Totals:
    return Totals(
        26,
        520,
        80,
        90,
        690,
        1450,
        2140,
        120,
        47000,
        480,
        "all alternatives",
        False,
        Fraction(25, 6),
        PartByPart(41, 830, 1110, 2560),
    )


def shop() -> Shop:
    """Return the shop that the plan was made for."""
    stations = {
        name: Station(
            name,
            1,
            15,
            tuple(AxisChange(axis, 10, (), (), None) for axis in axes),
            MappingProxyType({}),
        )
        for name, axes in AXES.items()
    }
    width = Fraction(20)
    return Shop(
        name="hand-made shop",
        files=("shop.toml",),
        sha256="5" * 64,
        one_room=True,
        workers=1,
        opens=4800,
        closes=9600,
        days_off=(5, 6),
        walk=10,
        stations=MappingProxyType(stations),
        cutters=(
            Cutter(
                "combination blade",
                "table saw",
                "blade",
                Fraction("3.2"),
                Fraction("3.2"),
                Fraction(0),
            ),
            Cutter("dado", "table saw", "set", Fraction(6), width, Fraction(1, 10)),
            Cutter("chisel 8", "mortiser", "chisel", Fraction(8), Fraction(8), Fraction(0)),
        ),
        accessories=(Accessory("sled", "table saw", Fraction(12), Fraction(600)),),
        clamps=(Clamp("bar 1200", Fraction(1200), 6),),
        glues=MappingProxyType(
            {"white glue": Glue("white glue", 50, 100, MappingProxyType({"out of clamps": 600}))}
        ),
        finishes=MappingProxyType({"oil varnish": FinishProduct("oil varnish", 2, 14400, 4800)}),
        minutes=MappingProxyType({}),
        allowances=_ALLOWANCES,
        shims=MappingProxyType({}),
        clamping=MappingProxyType({}),
        sanding=Sanding(("120", "180"), Fraction(1, 2)),
        by_hand=6,
        rests=Rests(14400, 14400, 0, 14400),
        default_glue="white glue",
    )
