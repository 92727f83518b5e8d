"""Steps on the bench of drawn_bench.py, with the settings of a sled, a rip fence and a mortiser."""

from dataclasses import replace
from fractions import Fraction

from dryfit.plan.operation import ClampRow, GlueUp, Operation, Work
from dryfit.plan.plan import Moment, Step, StepMinutes
from dryfit.plan.setting import Hold, Pass, Setting
from dryfit.shop.shop import Accessory

SLED = Accessory("sled", "table saw", Fraction(12), Fraction(600))
RIP_FENCE = Accessory("rip fence", "table saw", Fraction(0), None)
ACCESSORIES = (RIP_FENCE, SLED)

HAND_A = ("front left post", "back right post")
HAND_B = ("front right post", "back left post")
HOUSING = "cross slot for bottom end rail"
MORTISE = "mortise for apron"

ON_SLED = Setting("accessory", "sled", "name")
ON_FENCE = Setting("accessory", "rip fence", "name")
BLADE = Setting("cutter", "blade", "name")


def mm(axis: str, value: str | int, far: str | int | None = None, **more: str) -> Setting:
    beyond = Fraction(far) if far is not None else None
    return Setting(axis, Fraction(value), far=beyond, **more)  # type: ignore[arg-type]


def step(
    station: str,
    settings: tuple[Setting, ...],
    *works: Work,
    kind: str = "cut",
    stale: tuple[Setting, ...] = (),
    glue_up: GlueUp | None = None,
) -> Step:
    """One operation; `stale` settings stand from earlier and are not asked for."""
    part = works[0].part if works else "top"
    operation = Operation(
        f"{part} / {kind}", kind, station, part, settings, works, 30, "Do it.", glue_up=glue_up
    )
    moment = Moment(0, 1, "08:00")
    standing = tuple((setting.axis, setting) for setting in (*stale, *settings))
    minutes = StepMinutes(0, 0, 0, 30, 0)
    return Step(1, 1, station, standing, (), (operation,), minutes, 0, moment, moment, ())


def housing() -> Step:
    """The housing of all posts, dado 20 at 105 to 125, spacer 25; one work a hand."""
    passes = (Pass(), Pass(spacer=Fraction(25)), Pass(between=True))
    settings = (
        Setting("cutter", "dado 20", "name"),
        ON_SLED,
        mm("height", 27, above="table"),
        mm("stop", 105, 125, to="near"),
    )
    works = (
        Work("post", HAND_A, (HOUSING,), Hold("B", "E2", "R"), passes),
        Work("post", HAND_B, (HOUSING,), Hold("B", "E", "R"), passes),
    )
    return step("table saw", settings, *works, kind="housing", stale=(mm("fence", 360, to="near"),))


def length(measure: str | None = None) -> Step:
    stop = replace(mm("stop", 430, "433.2", to="near"), measure=measure)
    settings = (BLADE, ON_SLED, mm("height", 45, above="table"), stop)
    work = Work("post", (*HAND_A, *HAND_B), (), Hold("F", "E", "R"), ())
    return step("table saw", settings, work, kind="length")


def mortise(hand: tuple[str, ...], side: str) -> Step:
    settings = (
        Setting("cutter", "chisel 8", "name"),
        mm("fence", 13, 21, to="near"),
        mm("depth", 21),
        mm("stop", 335, 375, to="both", side=side),
    )
    work = Work("post", hand, (MORTISE,), Hold("F", "E", "R"), ())
    return step("mortiser", settings, work, kind="mortise")


def groove() -> Step:
    settings = (BLADE, ON_FENCE, mm("height", 9, above="table"), mm("fence", 12, "15.2", to="near"))
    work = Work("apron", ("front apron", "back apron"), ("groove",), Hold("B", "E2", None),
                (Pass(fence=Fraction(12)),))  # fmt: skip
    return step("table saw", settings, work, kind="groove")


def rip() -> Step:
    settings = (
        BLADE,
        ON_FENCE,
        mm("height", 33, above="table"),
        mm("fence", 45, "48.2", to="near"),
    )
    work = Work("post", (*HAND_A, *HAND_B), (), Hold("F", "E", None), ())
    return step("table saw", settings, work, kind="width")


def plane() -> Step:
    work = Work("post", HAND_A, (), Hold("F", None, None), ())
    return step("planer", (mm("thickness", 30),), work, kind="thickness")


def joint() -> Step:
    fence = Setting("fence", Fraction(90), "deg")
    work = Work("post", HAND_A, (), Hold("F", None, None), ())
    return step("jointer", (mm("depth", "1/2"), fence), work, kind="face")


def by_hand() -> Step:
    features = ("tenon shoulder E2 at R", "tenon shoulder E2 at R2")
    work = Work("apron", ("front apron", "back apron"), features, None, ())
    return step("bench", (), work, kind="tenon shoulder")


def glue_panel() -> Step:
    clamps = (ClampRow(Fraction(431), 5, "across the staves, over and under in turn"),)
    glue = GlueUp("top", ("top",), 50, 55, 100, "white glue", clamps, (), ())
    return step("glue bench", (), kind="glue up", glue_up=glue)
