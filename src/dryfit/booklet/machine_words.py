"""How the settings of a machine are said: labels, values, and what each is measured to."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from dryfit.booklet.bench import Bench
from dryfit.booklet.sides import sides_that_count
from dryfit.booklet.text import Amount, Mark, Say, Text, capital, joined
from dryfit.placing.horns import with_horns
from dryfit.plan.plan import Step
from dryfit.plan.setting import Setting
from dryfit.plan.sides import Side, cuts_through, distance, other_side
from dryfit.shop.shop import Shop

TAPER_JIG = "taper jig"

_LABELS = {
    "accessory": "Guide",
    "tilt": "Blade tilt",
    "angle": "Saw angle",
    "depth": "Depth",
    "thickness": "Thickness",
    "product": "Finish",
    "jig": "Cleat",
}

_NO_RANGE = Fraction(1)
"""Heights of the blade, in mm, that nobody sets apart (ours)."""

_CUTTER_WORDS = {
    "mitre saw": "blade",
    "band saw": "blade",
    "table saw": "blade",
    "router table": "bit",
    "mortiser": "chisel",
    "drill press": "drill",
}

_KIND_WORDS = {
    "blade": "blade",
    "set": "dado set",
    "bit": "bit",
    "drill": "drill",
    "chisel": "chisel",
}


@dataclass(frozen=True, slots=True)
class Machine:
    """What the words for one setting take from the others.

    `cutter` is its word, `cutter_name` its name, `base` the thickness of the floor of the `guide`,
    `through` whether the cut severs the work, and `origins` the marks that touch fence or stop, in
    the order of work.  `sides` says by axis which side of the cutter makes the joint.
    """

    cutter: str
    cutter_name: Text
    base: Fraction
    guide: str
    through: bool
    origins: Mapping[str, tuple[str, ...]]
    sides: Mapping[str, Side]
    say: Say


def machine_at(step: Step, values: Mapping[str, Setting], bench: Bench) -> Machine:
    """Return what the words need to know of the machine as it stands in the step."""
    return Machine(
        cutter=_cutter_word(step.station, values.get("cutter"), bench.shop),
        cutter_name=cutter_name(values.get("cutter"), bench),
        base=_base(values.get("accessory"), bench.shop),
        guide=str(values["accessory"].value) if "accessory" in values else "sled",
        through=cuts_through(step),
        origins=_origins(step, values),
        sides=sides_that_count(
            step, values, {part.name: part for part in with_horns(bench.model).parts}
        ),
        say=bench.say,
    )


def cutter_name(cutter: Setting | None, bench: Bench) -> Text:
    """Return the name of a cutter, the width that a dado set is built to as an amount."""
    if cutter is None:
        return ()
    name, width = str(cutter.value), dict(bench.plan.cutters).get(str(cutter.value))
    for known in bench.shop.cutters:
        if known.kind == "set" and width is not None and name.startswith(f"{known.name} "):
            return (f"{known.name} ", bench.say.setting(width))
    return (name,)


def _origins(step: Step, values: Mapping[str, Setting]) -> dict[str, tuple[str, ...]]:
    """Return by axis the marks that touch: those of the settings, then those held at the stop."""
    asked = [setting for op in step.operations for setting in op.settings] or values.values()
    marks = [(setting.axis, setting.origin) for setting in asked]
    works = (work for op in step.operations for work in op.work)
    marks += [("stop", work.hold.at_stop) for work in works if work.hold is not None]
    origins: dict[str, tuple[str, ...]] = {}
    for axis, mark in marks:
        if mark is not None:
            origins[axis] = tuple(dict.fromkeys((*origins.get(axis, ()), mark)))
    return origins


def label_of(setting: Setting, machine: Machine) -> str:
    """Return the name of an axis as it is said at this machine: ``Blade height``."""
    if setting.axis == "cutter":
        return capital(machine.cutter)
    if setting.axis == "height":
        return f"{capital(machine.cutter)} height"
    return _LABELS.get(setting.axis, capital(setting.axis))


def side_of(setting: Setting, machine: Machine) -> str:
    """Return the side of the cutter to which the large figure is: ``NEAR side``, or nothing."""
    if setting.to is None or setting.to == "both" or machine.guide == TAPER_JIG:
        return ""
    return machine.sides.get(setting.axis, Side.NEAR).value


def value_of(setting: Setting, machine: Machine) -> Text:
    """Return the value in short: a name, an angle, a length, or the two limits of a cut."""
    say = machine.say
    if setting.axis == "cutter":
        return machine.cutter_name
    if isinstance(setting.value, str):
        return (setting.value,)
    if setting.unit == "deg":
        return (say.angle(setting.value),)
    if setting.axis == "stop" and setting.to == "both" and setting.far is not None:
        return (say.setting(setting.value), " – ", say.setting(setting.far))
    return (say.setting(setting.value),)


def large_value_of(setting: Setting, machine: Machine) -> Text:
    """Return what is printed large: for a distance, to the side of the cutter that counts.

    A setting to both sides is two limits of a cut, of which none counts more.
    """
    if setting.to == "both":
        return value_of(setting, machine)
    if isinstance(setting.value, Fraction) and setting.far is not None:
        counts = machine.sides.get(setting.axis, Side.NEAR)
        far = distance(setting, counts)
        if counts is not Side.NEAR and isinstance(far, Fraction):
            return (machine.say.setting(far),)
    return value_of(setting, machine)


def details_of(setting: Setting, machine: Machine) -> tuple[Text, ...]:
    """Return the lines beneath the value: measured to what, from what, and what it waits for."""
    if isinstance(setting.value, str) or setting.unit == "deg":
        return ()
    rows: list[Text] = []
    if setting.axis == "height":
        rows += _height_details(setting, setting.value, machine)
    elif setting.axis in {"stop", "jig"} and machine.guide == TAPER_JIG:
        rows += _taper_details(setting, machine)
    elif setting.axis in {"stop", "fence"}:
        rows += _distance_details(setting, machine)
    if setting.measure is not None:
        worked = machine.say.detail(setting.worked or (setting.formula or setting.measure,))
        on_paper = machine.say.setting(setting.value)
        known: Text = ("= ", *worked, ", as measured")
        rows.append(known if setting.taken else (*known, "; on paper ", on_paper))
    return tuple(rows)


def _height_details(setting: Setting, height: Fraction, machine: Machine) -> Iterator[Text]:
    say, base = machine.say, machine.base
    yield (f"above the {setting.above or 'table'}",)
    if base and setting.at_least is None:
        yield (say.setting(height - base), f" deep + {machine.guide} floor ", say.setting(base))
    elif base:
        yield (f"{machine.guide} floor ", say.setting(base), " included")
    if setting.at_least is not None and setting.at_most is not None:
        yield _through(say.setting(setting.at_least), say.setting(setting.at_most))


def _through(least: Amount, most: Amount) -> Text:
    if most.value - least.value < _NO_RANGE:
        return ("cuts right through thick and thin: no lower, and hardly higher",)
    return ("cuts right through; ", least, " to ", most, " will do")


def _taper_details(setting: Setting, machine: Machine) -> Iterator[Text]:
    """Yield how a taper jig is set: its cleat off its edge, and where the blade comes in."""
    say, mark = machine.say, Mark(setting.origin or "R")
    if setting.axis == "stop":
        yield ("from the stop block to where the blade comes into the wood",)
        yield (_surface_word(mark.sign), " ", mark, " against the block")
        return
    yield ("from the jig's edge, at the stop block",)
    if setting.far is not None:
        yield (say.setting(setting.far), " from it where the blade comes in")
    yield (_surface_word(mark.sign), " ", mark, " against it")


def _distance_details(setting: Setting, machine: Machine) -> Iterator[Text]:
    if setting.to == "both":
        if machine.cutter == "bit":
            # Each end of the part meets a stop of its own: their places are told below.
            yield ("the two limits of the cut, from ", Mark(setting.origin or "R"))
            return
        yield ("the two limits of the cut",)
    elif setting.to is not None:
        counts = machine.sides.get(setting.axis, Side.NEAR)
        yield (f"to the {counts.value} of the {machine.cutter}",)
        other = other_side(setting, counts)
        if other is not None and not machine.through:
            yield (other[0], machine.say.setting(other[1]))
    marks = machine.origins.get(setting.axis, ())
    if marks:
        touching = joined(((_surface_word(mark), " ", Mark(mark)) for mark in marks), ", then ")
        yield (*touching, " against it")
    if setting.side is not None:
        yield (f"on the {setting.side}",)


def _surface_word(mark: str) -> str:
    return {"R": "end", "E": "edge"}.get(mark[:1], "face")


def _cutter_word(station: str, cutter: Setting | None, shop: Shop) -> str:
    """Return blade, dado set, bit, chisel or drill: by the cutter if it is known, by station."""
    name = "" if cutter is None else str(cutter.value)
    for known in shop.cutters_at(station):
        if name == known.name or name.startswith(f"{known.name} "):
            return _KIND_WORDS.get(known.kind, _CUTTER_WORDS.get(station, "cutter"))
    return _CUTTER_WORDS.get(station, "cutter")


def _base(accessory: Setting | None, shop: Shop) -> Fraction:
    if accessory is None:
        return Fraction(0)
    known = shop.accessory(str(accessory.value))
    return Fraction(0) if known is None else known.base
