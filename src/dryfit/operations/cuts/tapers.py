"""Tapers: on a jig at the table saw, else beside a line at the band saw, else by hand (TRADE B0).

The jig is a board that runs in the saw's slot; this blade has sawn its edge, which is the line of
the cut.  A cleat leans on the face opposite the taper: at the stop block it stands off that edge by
what is left of the wood there, and where the blade comes in by all of it.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from dryfit.geometry.frame import OPPOSITE, SURFACES
from dryfit.joinery.feature import Feature
from dryfit.operations import setting_of, through_cuts
from dryfit.operations.cut import Cut, Site
from dryfit.operations.machine_limits import Piece, why_not_at_band_saw, why_not_on_sled
from dryfit.operations.minutes import METRE, worked
from dryfit.operations.shapes import TAPER, of_one_kind, shaped_before
from dryfit.operations.sides import down_on_jig
from dryfit.plan.operation import Detail
from dryfit.plan.setting import Hold, Pass, Setting
from dryfit.shop.shop import Shop

JIG = "taper jig"
CAUTION = "taper-jig"
BAND_SAW = "band saw"
CHECK = "both ends of the taper against their lines, and the face straight from one to the other"

_ORDINALS = {1: "first", 2: "second", 3: "third", 4: "fourth"}
_ABOUT_JIG: Detail = (
    (
        "The jig is a board with a runner in the slot left of the blade; this blade has sawn its "
        "edge, and where the edge is, the cut will be"
    ),
)
_ON_STRIPS: Detail = ("It lies and leans on the strips that are taped back, so that it lies flat",)
_FREE: Detail = (
    (
        "Take the rip fence off, so that the strip falls away to the right, and let it lie there "
        "until the blade stands still"
    ),
)
_FIRST: Detail = ("It lies on the face that is tapered next, while that is still flat",)
_BESIDE: Detail = (
    (
        "Draw each line on the face that is up when it is sawn, and saw a hair outside it; set the "
        "fence aside"
    ),
)
_BY_HAND: Detail = (
    (
        "Draw the line on both faces beside the taper, saw a hair outside it or plane the waste "
        "away, and plane to it from the full end to the thin one, with the grain"
    ),
)


@dataclass(frozen=True, slots=True)
class Turn:
    """When a taper is cut among those of its part, from 1, and what faces are gone by then.

    `gone` are those that no strip can fill up again; `tapered` those whose strips can be taped
    back where they came off.
    """

    number: int
    gone: frozenset[str]
    tapered: frozenset[str]


def taper_cut(site: Site, shop: Shop) -> Cut:
    """Return the cut of a taper; all tapers of a part are cut in one way."""
    turns = turns_of(site)
    own = of_one_kind(site)
    turn = turns[site.feature.id]
    if site.feature.after is not None:
        return _by_hand(site, shop)
    if all(_on_jig(site, each, turns[each.id], shop) for each in own):
        return _with_jig(site, turn, shop)
    if all(_band_saw_lies(site, each, turns[each.id], shop) is not None for each in own):
        return _at_band_saw(site, turn, shop)
    return _by_hand(site, shop)


def turns_of(site: Site) -> dict[str, Turn]:
    """Return the turn of each taper: what lies on a face is cut before that face is tapered."""
    gone = shaped_before(site)
    tapered: set[str] = set()
    rest = list(of_one_kind(site))
    found: dict[str, Turn] = {}
    number = 0
    while rest:
        number += 1
        free = [
            each
            for each in rest
            if not any(_down(site, other) == each.surface for other in rest if other is not each)
        ]
        now: list[Feature] = []
        for each in free or rest[:1]:
            # What leans on a face that is tapered in the same turn waits for its own.
            if OPPOSITE[each.surface] not in {other.surface for other in now}:
                now.append(each)
        found |= {each.id: Turn(number, gone, frozenset(tapered)) for each in now}
        tapered |= {each.surface for each in now}
        rest = [each for each in rest if each not in now]
    return found


def _down(site: Site, feature: Feature) -> str:
    return down_on_jig(OPPOSITE[feature.surface], thin_end(feature), site.handedness)


def thin_end(feature: Feature) -> str:
    """Return the end toward which a taper grows thinner."""
    assert feature.form is not None
    assert feature.form.toward is not None
    return feature.form.toward


def lies_on_strips(site: Site) -> bool:
    """Return whether a taper lies or leans on faces that are tapered by then: strips fill them."""
    turn, down = turns_of(site)[site.feature.id], _down(site, site.feature)
    return bool(turn.tapered & {down, OPPOSITE[site.feature.surface]})


def _on_strips(site: Site) -> tuple[Detail, ...]:
    return (_ON_STRIPS,) if lies_on_strips(site) else ()


def _size(site: Site, surface: str) -> Fraction:
    return site.sizes[SURFACES[surface][0]]


def _is_known(site: Site, feature: Feature) -> bool:
    """Return whether a taper runs out at its thin end, and waits for no measurement."""
    start, end = feature.along
    runs_out = start == 0 if thin_end(feature) == "R" else end == site.part.length
    waits = site.part.untaken("length") is not None
    return runs_out and not waits and all(row.feature != feature.id for row in site.part.drifts)


def _piece(site: Site, down: str) -> Piece:
    """Return the part as it lies: its thickness is what the blade goes through."""
    deep = _size(site, down)
    wide = next(size for turn, size in enumerate(site.sizes) if turn not in {0, SURFACES[down][0]})
    return Piece(site.part.length, wide, deep)


def _on_jig(site: Site, feature: Feature, turn: Turn, shop: Shop) -> bool:
    jig = shop.accessory(JIG)
    if jig is None or through_cuts.SAW not in shop.stations or not _is_known(site, feature):
        return False
    if all(axis.name != "jig" for axis in shop.stations[through_cuts.SAW].axes):
        return False
    down = _down(site, feature)
    if turn.gone & {down, OPPOSITE[feature.surface]}:
        return False
    if jig.longest is not None and site.part.length > jig.longest:
        return False
    return why_not_on_sled(_piece(site, down), JIG, shop) is None


def _band_saw_lies(site: Site, feature: Feature, turn: Turn, shop: Shop) -> str | None:
    """Return the face to lie down at the band saw: one beside the taper that is still flat."""
    first = _down(site, feature)
    for down in (first, OPPOSITE[first]):
        if down not in turn.gone and why_not_at_band_saw(_piece(site, down), shop) is None:
            return down
    return None


def _with_jig(site: Site, turn: Turn, shop: Shop) -> Cut:
    feature = site.feature
    down, cleat, end = _down(site, feature), OPPOSITE[feature.surface], thin_end(feature)
    size = _size(site, feature.surface)
    left, run = size - feature.depth, feature.along[1] - feature.along[0]
    blade, _ = through_cuts.saw_blade(shop)
    settings = (
        setting_of.named("cutter", blade),
        setting_of.named("accessory", JIG),
        setting_of.angle("tilt"),
        through_cuts.through_height(_size(site, down), JIG, shop),
        setting_of.named("fence", "off"),
        Setting("stop", run, to="near", origin=end),
        Setting("jig", left, to="near", far=size, origin=cleat),
    )
    several = len({each.number for each in turns_of(site).values()}) > 1
    return replace(
        _plain(site, turn),
        station=through_cuts.SAW,
        settings=setting_of.known_to(shop, through_cuts.SAW, settings),
        hold=Hold(down, cleat, end),
        passes=(Pass(),),
        exact=worked(shop, "taper", each=len(site.copies)),
        deed=f"Saw the {_ORDINALS.get(turn.number, 'other') + ' ' if several else ''}tapers on",
        manner=" on the taper jig",
        tests=1,
        trial=f"the taper jig at {left} and {size} over {run}",
        cautions=(CAUTION,),
        details=(_begins(site), *_on_strips(site))
        if turn.number > 1
        else (
            _ABOUT_JIG,
            _screwed(left, size, run),
            _begins(site),
            *((_FIRST,) if several else ()),
            _FREE,
        ),
    )


def _screwed(left: Fraction, size: Fraction, run: Fraction) -> Detail:
    return (
        "Screw the cleat on ", left, " from the jig's edge at the stop block, and ", size,
        " from it ", run, " before the block: there the blade comes into the wood",
    )  # fmt: skip


def _begins(site: Site) -> Detail:
    """Return the taper by two figures: where it begins from R, and what is off at its end."""
    feature = site.feature
    start, end = feature.along
    from_r = end if thin_end(feature) == "R" else start
    return (
        "A taper begins ", from_r, " from R, and at ", thin_end(feature), " ", feature.depth,
        " is off",
    )  # fmt: skip


def _at_band_saw(site: Site, turn: Turn, shop: Shop) -> Cut:
    down = _band_saw_lies(site, site.feature, turn, shop)
    assert down is not None
    blade = next(cutter for cutter in shop.cutters_at(BAND_SAW))
    settings = (setting_of.named("cutter", blade.name), setting_of.named("fence", "off"))
    return replace(
        _plain(site, turn),
        station=BAND_SAW,
        settings=setting_of.known_to(shop, BAND_SAW, settings),
        hold=Hold(down, None, None),
        passes=(Pass(),),
        exact=worked(shop, "sawn taper", each=len(site.copies), per_metre=_metres(site)),
        deed="Saw the tapers on",
        manner=" beside their lines",
        details=(_begins(site), *_on_strips(site), _BESIDE),
    )


def _by_hand(site: Site, shop: Shop) -> Cut:
    return replace(
        _plain(site, Turn(1, frozenset(), frozenset())),
        exact=worked(shop, "hand taper", each=len(site.copies), per_metre=_metres(site)),
        details=(_begins(site), _BY_HAND),
    )


def _metres(site: Site) -> Fraction:
    return (site.feature.along[1] - site.feature.along[0]) * len(site.copies) / METRE


def _plain(site: Site, turn: Turn) -> Cut:
    """Return the cut by hand, without its minutes."""
    return Cut(
        site=site,
        what=TAPER,
        kind=TAPER,
        station="bench",
        settings=(),
        hold=None,
        passes=(),
        exact=Fraction(0),
        deed="Saw and plane the tapers on",
        turn=turn.number,
        check=CHECK,
    )
