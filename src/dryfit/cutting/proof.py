"""Proofs that the stock cannot be enough, whichever way it is cut right through.

Three bounds, each on whole numbers: a part that fits no board alone; the faces of all parts with
their kerfs against those of all boards; and the sharing out of the parts to the boards, where each
board holds only what its smallest rectangles and dual-feasible functions allow. None of them counts
on what the search found. Groups from one board are taken apart, so their rule makes no stock short.
A run has its whole length where it is alone and in the faces; in the sharing out its blanks are
taken one by one, because a cut may go through between two of them.
"""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from dryfit.cutting.boxes import Boxes, Steps, TooMuchWork
from dryfit.cutting.dual import Size
from dryfit.cutting.dual_prices import Share, dual_prices
from dryfit.cutting.instance import Instance, Sizes
from dryfit.cutting.problem import Part
from dryfit.cutting.result import Proof
from dryfit.cutting.rooms import Counts, Filling, Room, rooms_of
from dryfit.cutting.sharing import Sharing

Rectangle = tuple[int, int, tuple[Sizes, ...]]
"""Length and width of a blank, and for each stock the sizes in which it may lie there."""


def alone(instance: Instance) -> tuple[Proof, ...]:
    """A proof for each part (or run) that comes out of no board even if it is the only one."""
    found = []
    for place, blank in enumerate(instance.blanks):
        if any(fits[place] for fits in instance.fits):
            continue
        names = tuple(dict.fromkeys(instance.job.parts[part].id for part, _ in blank.members))
        proof = _short(instance, place, names)
        if proof not in found:
            found.append(proof)
    return tuple(found)


def _short(instance: Instance, place: int, names: tuple[str, ...]) -> Proof:
    """By which size a part is too large for every board: the first that no board has."""
    blank = instance.blanks[place]
    part = instance.job.parts[blank.members[0][0]]
    thickness = max(instance.job.parts[member].thickness for member, _ in blank.members)
    stocks = [
        one
        for one in instance.stocks
        if one.board.material == part.material
        and all(
            allowed is None or one.board.id in allowed
            for allowed in (instance.job.parts[member].boards for member, _ in blank.members)
        )
    ]
    if not stocks:
        return Proof("part", names, 0, 0, "material")
    thickest = max(one.board.thickness for one in stocks)
    if thickest < thickness:
        return Proof("part", names, thickness, thickest, "thickness")
    rooms = [room for one in stocks if one.board.thickness >= thickness for room in one.rooms]
    longest = max((room.length for room in rooms), default=0)
    if longest < blank.length:
        return Proof("part", names, blank.length, longest, "length")
    widest = max(room.width for room in rooms if room.length >= blank.length)
    return Proof("part", names, blank.width, widest, "width")


def short_of(instance: Instance, steps: Steps) -> Proof | None:
    """A proof that all parts together are too much, or None if there is none in so many steps.

    Where it was the steps that ended, `steps.left` is below zero.
    """
    proof = short_by_area(instance)
    if proof is not None:
        return proof
    for _, places in materials(instance):
        try:
            for needed, values in dual_prices(*_shares(instance, places), steps):
                counts = (instance.stocks[n].board.count * value for n, value in values.items())
                if needed > sum(counts):
                    return Proof("boards", _names(instance, places), steps=steps.done)
            proof = _by_sharing(instance, places, steps)
        except TooMuchWork:
            return None
        if proof is not None:
            return proof
    return None


def short_by_area(instance: Instance) -> Proof | None:
    """A proof by faces alone."""
    proofs = (_by_area(instance, places) for _, places in materials(instance))
    return next((proof for proof in proofs if proof is not None), None)


def materials(instance: Instance) -> Iterator[tuple[str, list[int]]]:
    """The places of the blanks of each material."""
    for material in dict.fromkeys(part.material for part in instance.job.parts):
        places = _places(instance, material)
        if places:
            yield material, places


def _places(instance: Instance, material: str) -> list[int]:
    parts: Sequence[Part] = instance.job.parts
    return [
        place
        for place, blank in enumerate(instance.blanks)
        if parts[blank.members[0][0]].material == material
    ]


def _names(instance: Instance, places: Sequence[int]) -> tuple[str, ...]:
    return tuple(
        dict.fromkeys(
            instance.job.parts[part].id
            for place in places
            for part, _ in instance.blanks[place].members
        )
    )


def _by_area(instance: Instance, places: Sequence[int]) -> Proof | None:
    for inside, needed, rooms in _faces(instance, places):
        there = sum(size * instance.stocks[number].board.count for number, size in rooms.items())
        if needed > there:
            return Proof("area", _names(instance, inside), needed, there)
    return None


def prices_of(
    instance: Instance, places: Sequence[int], steps: Steps
) -> Iterator[tuple[int, dict[int, int]]]:
    """What all blanks are worth at some prices, and what comes out of one board of each stock.

    First faces of those that fit the same stocks or fewer, then by dual-feasible functions.
    """
    for _, needed, rooms in _faces(instance, places):
        yield needed, rooms
    yield from dual_prices(*_shares(instance, places), steps)


def _shares(
    instance: Instance, places: Sequence[int]
) -> tuple[list[Share], dict[int, list[tuple[Size, int]]]]:
    """Kinds of blanks and the rooms of each stock, a kerf added to both."""
    kerfs = instance.job.rules.crosscut_kerf, instance.job.rules.rip_kerf
    counts = Counter(rectangle for place in places for rectangle in _taken_apart(instance, place))
    shares = [
        Share(tuple({(a + kerfs[0], b + kerfs[1]) for sizes in kind[2] for a, b in sizes}), count)
        for kind, count in counts.items()
    ]
    rooms = {
        number: [
            ((room.area.length + kerfs[0], room.area.width + kerfs[1]), stock.board.count)
            for room in _rooms(instance, number, [kind[2][number] for kind in counts])
        ]
        for number, stock in enumerate(instance.stocks)
    }
    return shares, rooms


def _faces(
    instance: Instance, places: Sequence[int]
) -> Iterator[tuple[list[int], int, dict[int, int]]]:
    """Faces with a kerf on two sides, of the parts that need one thickness or more."""
    rules = instance.job.rules
    kerf = min(rules.crosscut_kerf, rules.rip_kerf)
    for fitting in dict.fromkeys(_open_to(instance, place) for place in places):
        inside = [p for p in places if set(_open_to(instance, p)) <= set(fitting)]
        needed = sum(
            (instance.blanks[p].length + kerf) * (instance.blanks[p].width + kerf) for p in inside
        )
        rooms = {
            number: sum(
                (room.area.length + rules.crosscut_kerf) * (room.area.width + rules.rip_kerf)
                for room in _rooms(instance, number, [instance.fits[number][p] for p in inside])
            )
            for number in fitting
        }
        yield inside, needed, rooms


def _open_to(instance: Instance, place: int) -> tuple[int, ...]:
    return tuple(number for number, fits in enumerate(instance.fits) if fits[place])


def _rooms(instance: Instance, stock: int, fits: Sequence[Sizes]) -> list[Room]:
    return rooms_of(instance, instance.stocks[stock], fits)


def _by_sharing(instance: Instance, places: Sequence[int], steps: Steps) -> Proof | None:
    shared = shared_out(instance, places, steps)
    sets = [
        room
        for stock, rooms in zip(instance.stocks, shared.sets, strict=True)
        for _ in range(stock.board.count)
        for room in rooms
    ]
    if Sharing(shared.quantities, sets, steps).impossible(shared.faces):
        return Proof("boards", _names(instance, places), steps=steps.done)
    return None


@dataclass(frozen=True, slots=True)
class Shared:
    """What is to be shared out: kinds of blanks, and the fullest sets of them.

    quantities, faces  of each kind
    sets               for each stock, and each room of one board of it, the fullest sets
    """

    quantities: Counts
    faces: Counts
    sets: tuple[tuple[Sequence[Counts], ...], ...]


def shared_out(instance: Instance, places: Sequence[int], steps: Steps) -> Shared:
    """The blanks at some places by kinds, and what a board of each stock holds of them."""
    counts = Counter(rectangle for place in places for rectangle in _taken_apart(instance, place))
    # The large ones first: what they leave out is seen early.
    kinds = sorted(counts, key=lambda kind: -kind[0] * kind[1])
    quantities = tuple(counts[kind] for kind in kinds)
    rooms = [
        _rooms(instance, number, [sizes[number] for _, _, sizes in kinds])
        for number in range(len(instance.stocks))
    ]
    sets = _sets(instance, rooms, quantities, steps)
    return Shared(quantities, tuple(length * width for length, width, _ in kinds), sets)


def _taken_apart(instance: Instance, place: int) -> Iterator[Rectangle]:
    """The single blanks of a blank or run, each with its sizes in every stock."""
    blank = instance.blanks[place]
    if not blank.run:
        yield blank.length, blank.width, tuple(fits[place] for fits in instance.fits)
        return
    for part, _ in blank.members:
        size = instance.job.parts[part].length, blank.width
        yield *size, tuple((size,) if fits[place] else () for fits in instance.fits)


def _sets(
    instance: Instance,
    rooms: Sequence[Sequence[Room]],
    quantities: Counts,
    steps: Steps,
) -> tuple[tuple[Sequence[Counts], ...], ...]:
    """The fullest sets of each room."""
    kerfs = instance.job.rules.crosscut_kerf, instance.job.rules.rip_kerf
    known: dict[tuple[object, ...], list[Counts]] = {}
    boxes: dict[tuple[tuple[Size, ...], ...], Boxes] = {}
    largest = [(room.area.length, room.area.width) for some in rooms for room in some]
    for room in (room for some in rooms for room in some):
        if room.shape not in known:
            box = boxes.setdefault(room.sizes, Boxes(room.sizes, largest, kerfs, steps))
            known[room.shape] = Filling(room, quantities, box, kerfs, steps).fullest()
    return tuple(tuple(known[room.shape] for room in some) for some in rooms)
