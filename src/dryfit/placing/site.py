"""The working state of placing, and the small questions that every rule asks of it."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, field, replace
from fractions import Fraction
from functools import partial

from dryfit.diagnostics import Assumption, Diagnostic, Span
from dryfit.piece.declared import (
    PART_DIMENSIONS,
    PIECE_DIMENSIONS,
    PLACE_SIDE,
    Amount,
    Contact,
    Declared,
    DeclaredPart,
    Host,
    Lean,
    Opening,
)
from dryfit.piece.sum_words import lean_figure, sum_words
from dryfit.placing.air import moisture_of
from dryfit.placing.equations import Equations
from dryfit.placing.lines import with_phrase
from dryfit.placing.positions import WHOLE, Face, Positions, Reason
from dryfit.placing.relations import Equal, LeaningTerm, Relation, Statement, measures_of
from dryfit.placing.seats import Seat, Seating, compatible, on_its_side_of_a_divider
from dryfit.shop.shop import Shop
from dryfit.wood import Moisture, Moving, moving

Phrase = str | Callable[[], str | None] | None
SIDE_WORDS = {side: place for place, side in PLACE_SIDE.items()}
"""The place word of each side of an axis."""


@dataclass(slots=True)
class Site:
    """Declared piece, copies, and the positions found so far.

    `pending` rules wait for figures: each returns True once it has said its fact.  `phrases`
    says the words of assumptions that wait for figures; `unsaid_ends` holds, by copy and contact,
    where it is not yet known which hosts stand at a copy's two ends, and along which axis;
    `gaps` the faces that the two shoulders of each copy between hosts meet; `carriers` remembers,
    by contact and copy, on the faces of which copies it lies.  `equations` hold what
    leans on sizes that are not known yet; at a standstill they are solved together.  `boxes` tells,
    for each instance of a pattern whose inside has been set in, its first copy; `corners`, by
    contact, how long all tenons are that meet others round the corner of a leg; `moved` names the
    parts of which a size was set by how their wood moves.
    """

    declared: Declared
    seating: Seating
    shop: Shop
    positions: Positions = field(default_factory=Positions)
    pending: list[Callable[[], bool]] = field(default_factory=list)
    assumptions: list[Assumption] = field(default_factory=list)
    findings: list[Diagnostic] = field(default_factory=list)
    phrases: dict[tuple[str, Span | None], Callable[[], str | None]] = field(default_factory=dict)
    unsaid_ends: dict[tuple[str, Span], tuple[Contact, int]] = field(default_factory=dict)
    gaps: list[tuple[Contact, Face, Face]] = field(default_factory=list)
    carriers: dict[tuple[Span, str], tuple[Seat, ...]] = field(default_factory=dict)
    boxes: dict[str, str] = field(default_factory=dict)
    corners: dict[Span, Fraction] = field(default_factory=dict)
    moved: set[str] = field(default_factory=set)
    equations: Equations = field(init=False)
    _by_name: dict[str, DeclaredPart] = field(init=False)
    _openings: dict[str, Opening] = field(init=False)
    _named_also: dict[str, tuple[Seat, ...]] = field(default_factory=dict)
    _contacts: dict[str, list[Contact]] = field(init=False)
    _contacts_on: dict[str, list[Contact]] = field(init=False)

    def __post_init__(self) -> None:
        """Index the parts by name, and the contacts by their guest."""
        self.equations = Equations(self.positions, measures_of(self.declared.openings))
        self._by_name = {part.name: part for part in self.declared.parts}
        self._openings = {opening.name: opening for opening in self.declared.openings}
        self._contacts = {}
        self._contacts_on = {}
        for contact in self.declared.contacts:
            self._contacts.setdefault(contact.guest.part, []).append(contact)
            for host in dict.fromkeys(host.part for host in contact.hosts):
                self._contacts_on.setdefault(host, []).append(contact)

    def parts(self) -> tuple[DeclaredPart, ...]:
        """Return the declared parts in the order of the notes."""
        return self.declared.parts

    def tell_once(self, finding: Diagnostic) -> None:
        """Report a finding, once however many copies meet with it."""
        if finding not in self.findings:
            self.findings.append(finding)

    @property
    def moisture(self) -> Moisture:
        """What the wood holds now and where the piece will stand, as far as the notes say."""
        return moisture_of(self.declared.air)

    def moving(self, part: DeclaredPart) -> Moving:
        """Return how a part's wood moves; that it set a size is listed (`air.assume_air`)."""
        self.moved.add(part.name)
        declared = self.declared
        return moving(part.timber or declared.timber, part.cut or declared.cut, self.moisture)

    def seats(self, part: str) -> tuple[Seat, ...]:
        """Return the copies of a part."""
        return self._named_also.get(part) or self.seating.seats.get(part, ())

    def part(self, name: str) -> DeclaredPart:
        """Return a declared part that is known to exist."""
        return self._by_name[name]

    def named_also(
        self, part: DeclaredPart, names: tuple[str, str], copies: Sequence[str]
    ) -> DeclaredPart:
        """Return a part under another name, by which copies of another width are known from now on.

        `names` are the name of one and of several.
        """
        name, written = names
        while name in self._by_name and self._by_name[name].span != part.span:
            name, written = f"{name} of the row", f"{written} of the row"
        sizes = part.sizes[0], None, part.sizes[2]  # the width is not that on the line
        self._by_name[name] = replace(part, name=name, written=written, sizes=sizes)
        self._named_also[name] = tuple(
            seat for seat in self.seats(part.name) if seat.name in set(copies)
        )
        return self._by_name[name]

    def contacts(self, part: str, *prepositions: str) -> tuple[Contact, ...]:
        """Return the contacts in which the part is the guest, with one of the prepositions."""
        return tuple(each for each in self.contacts_of(part) if each.preposition in prepositions)

    def contacts_of(self, part: str) -> Sequence[Contact]:
        """Return all contacts in which the part is the guest."""
        return self._contacts.get(part, ())

    def contacts_on(self, part: str, *prepositions: str) -> tuple[Contact, ...]:
        """Return the contacts in which the part is a host, with one of the prepositions."""
        own = self._contacts_on.get(part, ())
        return tuple(each for each in own if each.preposition in prepositions)

    def is_placed(self, part: DeclaredPart) -> bool:
        """Return whether every face of every copy has a coordinate."""
        return all(
            self.known(seat, axis, side)
            for seat in self.seats(part.name)
            for axis in range(3)
            for side in (-1, 1)
        )

    def guests(self, contact: Contact) -> tuple[Seat, ...]:
        """Return the guest copies that a contact speaks of."""
        return self.named(contact.guest)

    def named(self, host: Host) -> tuple[Seat, ...]:
        """Return the copies that a name with place words means."""
        return tuple(seat for seat in self.seats(host.part) if set(host.places) <= set(seat.places))

    def hosts(self, contact: Contact, guest: Seat, axis: int) -> tuple[Seat, ...]:
        """Return the host copies on the guest's side of the piece, seen along an axis."""
        found = tuple(seat for seat in self.mates(contact, guest) if compatible(guest, seat, axis))
        return on_its_side_of_a_divider(found, guest, axis)

    def mates(self, contact: Contact, guest: Seat) -> tuple[Seat, ...]:
        """Return the host copies of a contact, those in the guest's own copy of a pattern."""
        return tuple(
            seat
            for host in contact.hosts
            for seat in self.named(host)
            if not contact.inner or seat.within == guest.within
        )

    def shown(self, length: Fraction) -> str:
        """Return a length as the maker reads it."""
        return self.declared.display.shown(length)

    def known(self, seat: Seat, axis: int, side: int) -> bool:
        """Return whether that face of the copy has a coordinate."""
        return self.positions.knows(Face(seat.name, axis, side))

    def waits_for_ends(self, seat: Seat, axis: int) -> bool:
        """Return whether hosts will say where the copy ends on an axis, once they are placed."""
        return any(
            self.unsaid_ends.get((seat.name, contact.span), (contact, -1))[1] == axis
            for contact in self.contacts(seat.part, "into", "between")
        )

    def opening(self, name: str) -> Opening | None:
        """Return the opening of that name, or None."""
        return self._openings.get(name)

    def owners(self, host: Host) -> tuple[str, ...]:
        """Return the owners of faces that a name means: copies of a part, or an opening."""
        if host.part in self._openings:
            return (host.part,)
        return tuple(seat.name for seat in self.named(host))

    def state(
        self, start: Face, end: Face, amount: Amount | Fraction, reason: Reason, *, sign: int = 1
    ) -> None:
        """Tell that `end` lies `sign` times an amount beyond `start`.

        What leans on a size that is not known yet holds as a relation until it is.
        """
        if isinstance(amount, Fraction) or not amount.leans:
            value = amount if isinstance(amount, Fraction) else amount.value
            self.positions.add(start, end, sign * value, reason)
            return
        terms: list[LeaningTerm] = []
        for lean in amount.leans:
            faces = self.faces_of(lean)
            if faces is None:
                return
            terms.append(LeaningTerm(sign * lean.factor, *faces, self.figure_of(lean)))
        constant = sign * amount.value
        self.equations.statements.append(Statement(start, end, constant, tuple(terms), reason))

    def relate(self, *relations: Relation | Equal) -> None:
        """Tell linear relations between faces, or distances that are equal."""
        for each in relations:
            if isinstance(each, Equal):
                self.equations.equals[each] = None
            else:
                self.equations.relations.append(each)

    def faces_of(self, lean: Lean) -> tuple[Face, Face] | None:
        """Return the low and the high face of what a sum leans on; of equal copies, the first's.

        None where it stands for nothing here, since its own line has a mistake.
        """
        part = self._by_name.get(lean.subject)
        if lean.subject in self._openings:
            return both(lean.subject, PIECE_DIMENSIONS.index(lean.dimension))
        if part is None or not self.seats(part.name):
            return None
        return both(self.seats(part.name)[0].name, _axis_of(part, lean.dimension))

    def figure_of(self, lean: Lean) -> str:
        """Return the name of the figure that a sum leans on: the height of a rail is its width."""
        part = self._by_name.get(lean.subject)
        if part is None:
            return lean_figure(lean)
        return size_name(self, part.name, _axis_of(part, lean.dimension))

    def amount(self, amount: Amount) -> Fraction | None:
        """Return an amount in mm, or None while a size that it leans on is unknown."""
        total = amount.value
        for lean in amount.leans:
            faces = self.faces_of(lean)
            size = self.positions.distance(*faces) if faces else None
            if size is None:
                return None
            total += lean.factor * size
        return total

    def said(self, amount: Amount, *, fitted: bool = False) -> str:
        """Return an amount as the maker reads it: a length (`fitted`: of play), or the sum."""
        return sum_words(amount, partial(self.declared.display.shown, fitted=fitted))

    def assume(self, text: str, span: Span, phrase: Phrase) -> None:
        """List an assumption once; `phrase` on the end of the line at `span` says it outright.

        A phrase with a figure that is not known yet is given as a function, asked at the end.
        """
        if callable(phrase):
            self.phrases[text, span] = phrase
            phrase = None
        self.assume_line(text, span, with_phrase(span, phrase) if phrase else None)

    def assume_line(self, text: str, span: Span | None, instead: str | None) -> None:
        """List an assumption once, with the whole line that says it, or says otherwise."""
        assumption = Assumption(text, span, instead)
        if assumption not in self.assumptions:
            self.assumptions.append(assumption)

    def listed(self) -> tuple[Assumption, ...]:
        """Return the assumptions with all their lines, once all figures are known."""
        said = []
        for assumption in self.assumptions:
            ask = self.phrases.get((assumption.text, assumption.span))
            phrase = ask() if ask else None
            if phrase and assumption.span:
                said.append(replace(assumption, instead=with_phrase(assumption.span, phrase)))
            else:
                said.append(assumption)
        return tuple(said)

    def written(self, part: str) -> str:
        """Return a part's name as the maker wrote it, plural and all."""
        return self.part(part).written


def size_name(site: Site, part: str, axis: int) -> str:
    """Return the name of a part's figure along a piece axis: ``leg.width``."""
    return f"{part}.{dimension_on(site.part(part), axis)}"


def _axis_of(part: DeclaredPart, dimension: str) -> int:
    if dimension in PART_DIMENSIONS and part.instance is None:
        return part.axes[PART_DIMENSIONS.index(dimension)]
    return PIECE_DIMENSIONS.index(dimension)


def dimension_on(part: DeclaredPart, axis: int) -> str:
    """Return what the size of a part along a piece axis is called."""
    if part.instance is not None:
        return PIECE_DIMENSIONS[axis]
    return PART_DIMENSIONS[part.axes.index(axis)]


def both(owner: str, axis: int) -> tuple[Face, Face]:
    """Return the low and the high face of a copy on an axis."""
    return Face(owner, axis, -1), Face(owner, axis, 1)


def whole(axis: int, side: int) -> Face:
    """Return a face of the overall box."""
    return Face(WHOLE, axis, side)


def part_words(site: Site, seats: Iterable[Seat]) -> str:
    """Return the parts of some copies as written, each once, for a sentence."""
    return " and ".join(dict.fromkeys(site.written(seat.part) for seat in seats))


def size_phrase(site: Site, part: DeclaredPart, axis: int) -> str | None:
    """Return the phrase that writes a size that the line does not say: ``340 long``."""
    at = part.axes.index(axis)
    size = site.positions.extent(site.seats(part.name)[0].name, axis)
    if part.sizes[at] is not None or size is None:
        return None
    return f"{site.shown(size)} {('long', 'wide', 'thick')[at]}"
