"""The least that any way of making the parts may take: what "not enough, for certain" is proved of.

Every part is as small as it can ever be sawn: cut short, in the longest gangs, in the state that
takes the least, without what the notes wish about boards.  What is too much even so cannot be had
by any way of cutting.  Where the wood holds that, nothing is proved.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction

from dryfit.placing.model import Part
from dryfit.shop.shop import Shop
from dryfit.stock.blanks.between_strips import without_snipe
from dryfit.stock.blanks.blank import Blank
from dryfit.stock.blanks.rough_sizes import Rough, rough_sizes
from dryfit.stock.boards import rip_room, sizes
from dryfit.stock.laid_out import StockBoard
from dryfit.stock.laying.job import Sizes, by_line, joined, split_of
from dryfit.stock.laying.outcome import Outcome, answered
from dryfit.stock.saws import crosscut_kerf, exact, rules_for

HUNDREDTH = Fraction(1, 100)
"""No size is rounded up to whole steps."""
NONE = Fraction(0)


def at_least(
    ways: Sequence[Sequence[Blank]], boards: Sequence[StockBoard], shop: Shop, effort: int
) -> Outcome:
    """Return what comes of laying out the least of the `ways`, the usual one first.

    Its verdict "not enough" holds for every way, also for those that nobody thought of.
    """
    lines = by_line(boards)
    wanted: list[tuple[Blank, Sizes]] = []
    none: list[Blank] = []
    for blank, of in _least(ways, boards, shop):
        rough = ((name, _narrowest(blank, alike[0], of)) for name, alike in lines)
        found = {name: one for name, one in rough if one is not None}
        if found:
            wanted.append((blank, found))
        else:
            none.append(blank)
    groups = joined([found for _, found in wanted], [blank for blank, _ in wanted])
    splits = [split_of([wanted[place] for place in group], lines, shop) for group in groups]
    often = {name: _layers(alike[0], ways) for name, alike in lines}
    jobs = [split.least or split.job for split in splits]
    jobs = [
        replace(
            job,
            boards=tuple(
                replace(board, count=board.count * often[board.id]) for board in job.boards
            ),
            # What is a part here may be a piece of a gang, which is ripped before it is parted.
            rules=replace(job.rules, least_rip=0),
        )
        for job in jobs
    ]
    return Outcome(tuple(splits), tuple(answered(job, effort) for job in jobs), tuple(none))


def _narrowest(blank: Blank, board: StockBoard, shop: Shop) -> Rough | None:
    """Return how the blank is sawn out of a board, also with its width out of the thickness."""
    found = [rough_sizes(blank, board.line, shop)]
    if not (blank.sheet or blank.staves or blank.leaves > 1):
        turned = replace(blank, to_width=blank.to_thickness, to_thickness=blank.to_width)
        found.append(rough_sizes(turned, board.line, shop))
    return min((one for one in found if one is not None), key=lambda one: one.width, default=None)


def _layers(board: StockBoard, ways: Sequence[Sequence[Blank]]) -> int:
    """Return how many parts may be resawn out of the thickness of a board, if a way resaws any."""
    free = [
        blank for way in ways for blank in way if blank.leaves > 1 and not blank.part.bookmatched
    ]
    thick = sizes(board.line)[2]
    return max((max(1, thick // blank.to_thickness) for blank in free), default=1)


def _least(
    ways: Sequence[Sequence[Blank]], boards: Sequence[StockBoard], shop: Shop
) -> Iterator[tuple[Blank, Shop]]:
    """Yield blanks with the shop whose allowances they have.

    What is asked for besides the parts is left out: it may be cut smaller.
    """
    room, bare = _taking_all(shop), without_allowances(shop)
    found: dict[str, list[Blank]] = {}
    for way in ways:
        for blank in way:
            if blank.what == "part":
                found.setdefault(blank.part.name, []).append(blank)
    for same in found.values():
        one = replace(
            min(same, key=lambda blank: blank.leaves),
            group="",
            rule="",
            state="",
            first=1,
            between_strips=True,
            step=HUNDREDTH,
        )
        if one.leaves > 1 and not one.part.bookmatched:
            # How many leaves lie in the thickness of a board is told by `_layers`.
            one = replace(one, leaves=1, strip=NONE)
        if one.sheet:
            yield _of_sheet(one, same), room
        elif one.staves:
            yield _strips(one, same, boards, room), room
        else:
            yield from _in_gangs(one, _pieces(same), boards, room, bare)


def without_allowances(shop: Shop) -> Shop:
    """Return the shop without allowances at the ends of blanks, and machines that take any."""
    room = _taking_all(shop)
    return replace(
        room, allowances={**room.allowances, "rough_length": NONE, "planed_length": NONE}
    )


def _taking_all(shop: Shop) -> Shop:
    """Return the shop without snipe, and with machines that take pieces however short."""
    stations = {
        name: replace(
            station,
            limits={
                limit: size
                for limit, size in station.limits.items()
                if not limit.startswith("shortest")
            },
        )
        for name, station in shop.stations.items()
    }
    return replace(without_snipe(shop), stations=stations)


def _pieces(same: Sequence[Blank]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(piece for blank in same for piece in blank.pieces))


def _of_sheet(one: Blank, same: Sequence[Blank]) -> Blank:
    """Return pieces of a sheet that keep their factory edges."""
    pieces = _pieces(same)
    return replace(
        one,
        pieces=pieces,
        count=len(pieces),
        length=one.part.cut_length,
        width=one.to_width,
    )


def _strips(one: Blank, same: Sequence[Blank], boards: Sequence[StockBoard], shop: Shop) -> Blank:
    """Return strips of which the staves of a panel hold at least so many, however wide they are.

    A strip is a stave of the least width w; a stave of width x, ripped r wider, holds the whole
    part of (x + r + k) / (w + r + k) of them beside saw cuts k, and so at least x / (2 w + r + k).
    """
    shop_room = [rip_room(board.line, shop) for board in boards]
    lost = min(shop_room, default=NONE) + exact(rules_for(shop, sheet=False).rip_kerf)
    staves = [blank.part.staves for blank in same if blank.part.staves is not None]
    low = min(
        shop.allowances["narrowest_stave"],
        *(width for each in staves for width in (each.width, *each.widths)),
    )
    total = min(each.total for each in staves)
    strips = -(-total // (2 * low + lost))
    strips = max(strips, min(each.count for each in staves) if staves[0].fixed else 1)
    copies = len(one.part.copies)
    return replace(
        one,
        to_width=low,
        width=one.width - one.to_width + low,
        count=-(-strips * copies // one.leaves),
    )


def _in_gangs(
    one: Blank, pieces: Sequence[str], boards: Sequence[StockBoard], room: Shop, bare: Shop
) -> Iterator[tuple[Blank, Shop]]:
    """Yield pieces one by one: as many as there are gangs at least with what is lost at the ends.

    The saw that parts a gang may take less than the one that crosscuts boards.
    """
    if one.leaves > 1:
        yield replace(one, each=one.leaves, count=-(-len(pieces) // one.leaves)), bare
        return
    parting = crosscut_kerf(room)
    less = max(NONE, exact(rules_for(room, sheet=False).crosscut_kerf) - parting)
    long = one.part.cut_length
    ends = min(room.allowances["rough_length"], room.allowances["planed_length"])
    longest = max((board.sizes[0] for board in boards), default=NONE)
    longest -= 2 * room.allowances["end_trim"]
    most = max(1, (longest - ends + parting) // (long + parting))
    gangs = -(-len(pieces) // most)
    yield replace(one, pieces=tuple(pieces[:gangs]), each=1, count=gangs), room
    if len(pieces) > gangs:
        yield (
            replace(
                one,
                pieces=tuple(pieces[gangs:]),
                each=1,
                count=len(pieces) - gangs,
                first=gangs + 1,
                part=_shorter(one.part, less),
            ),
            bare,
        )


def _shorter(part: Part, less: Fraction) -> Part:
    return replace(part, sloped=None, horns=NONE, length=part.cut_length - less) if less else part
