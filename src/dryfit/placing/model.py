"""The Model: every part and copy with its place, every joint instance, every derived figure.

Plain data.  Lengths are exact millimetres in Fractions, durations in notes whole minutes.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING

from dryfit.diagnostics import Assumption, Figure, Source, Span
from dryfit.geometry.box import Box
from dryfit.geometry.frame import Frame
from dryfit.geometry.lean import Lean
from dryfit.joinery.feature import Feature
from dryfit.joinery.mortise_tenon import TenonSizes
from dryfit.joinery.splay import Sloped
from dryfit.joinery.staves import Staves
from dryfit.piece.declared import (
    AirWords,
    Coats,
    Done,
    Have,
    LoadWords,
    Measured,
    PieceLimit,
    Spoiled,
)
from dryfit.placing.lip import Lip
from dryfit.placing.wish import Wish
from dryfit.quantities import Display
from dryfit.wood import Moisture, Moving, moving

if TYPE_CHECKING:
    # Few notes say where the piece will stand; for the others it is not loaded.
    from dryfit.piece.declared.site import PlaceWords

_NOBODY_MEASURED = Moisture()
_NOTHING_SAID = AirWords()


@dataclass(frozen=True, slots=True)
class Copy:
    """One copy of a part: its name (``front left post``, ``slat 3``), hand, box and frame.

    `box` is the finished outside with tenons and laps, in the piece frame; where the copy leans it
    is its design box, upright, and `lean` says where that really stands.
    """

    name: str
    places: tuple[str, ...]
    number: int | None
    hand: str
    box: Box
    frame: Frame
    lean: Lean | None = None

    @property
    def foot(self) -> Box:
        """The box moved to where it really stands at its lower end: of what leans, farther out."""
        return self.box if self.lean is None else self.lean.foot(self.box)


@dataclass(frozen=True, slots=True)
class EndAdd:
    """What a joint adds to the shoulder length at end R or R2; `joint` in words, ``tenon``.

    Of `length`, `proud` stands out on the far side of the host; it `floats` so far before it.
    """

    end: str
    joint: str
    length: Fraction
    proud: Fraction = Fraction(0)
    floats: Fraction = Fraction(0)


@dataclass(frozen=True, slots=True)
class Measure:
    """A size of a part that waits for a measurement on the piece; `dimension` is length or width.

    `name` is the measurement (``base length``, ``bay width``), `nominal` what it comes to on paper
    in mm; `stage` the assembly after whose glue-up it is taken.  The size is `share` times the
    measurement less `clearance`, which `formula` says in words, and `worked` with exact lengths
    between words; `along` says where to measure, `walls` between which copies, none where it is
    taken along something.  `taken` is the figure that the notes give, None until then.  Where the
    part is planed to fit in its place it is sawn larger by `trim`, to `sawn_formula`.
    """

    dimension: str
    name: str
    stage: str
    nominal: Fraction
    clearance: Fraction
    formula: str
    along: str
    worked: tuple[str | Fraction, ...] = ()
    share: Fraction = Fraction(1)
    walls: tuple[str, ...] = ()
    taken: Fraction | None = None
    trim: Fraction = Fraction(0)
    sawn_formula: str = ""
    sawn_worked: tuple[str | Fraction, ...] = ()


@dataclass(frozen=True, slots=True)
class Drift:
    """A cut that moves with the measurement `measure`: how often it counts in each of its limits.

    `along` for the limits from R, `across` for those from E (or F).
    """

    feature: str
    measure: str
    along: tuple[Fraction, Fraction]
    across: tuple[Fraction, Fraction]


@dataclass(frozen=True, slots=True)
class Part:
    """One line of the cut list: equal copies with their features in the part frame.

    `stock` is ``solid`` or ``sheet``.  `written` is the name as typed, mostly plural.  `run` is
    upright, across or front to back.  `made` parts the tool adds itself (buttons).  `asked` is what
    the line asks of its wood, as written, `wishes` the same in our words.  `opening` names that in
    which it stands free.  `drifts` move with a measurement.  `horns` is what each end is longer
    until the glue-up, beyond `length`; `with_horns` that all is counted so.  `cut` is how its
    boards are sawn, None if nobody says; `moisture` what its wood holds, `carries` what it bears;
    `slopes_out` how far a box's side leans, mm per mm up.  `sloped` is how splayed copies are cut,
    all places being upright.  `spare` counts more blanks; `rested` tenths on stickers, None by
    rule.  `lips` are glued on before joints are cut; `waney` edges (E2 or both) stay as they grew.
    """

    name: str
    written: str
    timber: str | None
    stock: str
    length: Fraction
    width: Fraction
    thickness: Fraction
    shoulder_length: Fraction | None
    adds: tuple[EndAdd, ...]
    staves: Staves | None
    measures: tuple[Measure, ...]
    copies: tuple[Copy, ...]
    features: tuple[Feature, ...]
    spans: tuple[Span, ...]
    run: str
    made: bool = False
    asked: tuple[str, ...] = ()
    wishes: frozenset[str] = frozenset()
    opening: str | None = None
    drifts: tuple[Drift, ...] = ()
    horns: Fraction = Fraction(0)
    with_horns: bool = False
    cut: str | None = None
    moisture: Moisture = _NOBODY_MEASURED
    sloped: Sloped | None = None
    slopes_out: Fraction | None = None
    carries: LoadWords | None = None
    spare: int = 0
    rested: int | None = None
    lips: tuple[Lip, ...] = ()
    waney: tuple[str, ...] = ()

    @property
    def moving(self) -> Moving:
        """How its wood moves across the grain."""
        return moving(self.timber, self.cut, self.moisture)

    @property
    def measure(self) -> Measure | None:
        """The measurement that the length waits for, or None."""
        return self.waits_for("length")

    def waits_for(self, dimension: str) -> Measure | None:
        """Return the measurement that a size (length, width) waits for, or None."""
        return next((each for each in self.measures if each.dimension == dimension), None)

    def untaken(self, dimension: str) -> Measure | None:
        """Return the measurement that a size waits for while the notes do not give it."""
        measure = self.waits_for(dimension)
        return measure if measure is not None and measure.taken is None else None

    @property
    def cut_length(self) -> Fraction:
        """The length that it is cut to: with horns, which are sawn off later; along a slope."""
        if self.sloped is not None:
            return self.sloped.length
        return self.length + 2 * self.horns

    @property
    def bookmatched(self) -> bool:
        """Whether it is a panel made of leaves of a slab that are opened like a book."""
        return self.staves is not None and "bookmatched" in self.wishes

    @property
    def free_widths(self) -> bool:
        """Whether it is glued from boards as they come, each as wide as it is."""
        return self.staves is not None and "free widths" in self.wishes

    @property
    def in_sequence(self) -> bool:
        """Whether its copies follow one another along one board."""
        return "in sequence" in self.wishes

    @property
    def one_board(self) -> bool:
        """Whether all its copies come out of one board, perhaps in sequence."""
        return "one board" in self.wishes or self.in_sequence

    def hands(self) -> tuple[str, ...]:
        """Return the hands that occur among the copies, sorted."""
        return tuple(sorted({copy.hand for copy in self.copies}))


@dataclass(frozen=True, slots=True)
class Joint:
    """A joint instance between two copies, found from their contact.

    `kind`: half lap, mortise and tenon, housing, groove, screws, buttons, rest (one lies on the
    other without a fastener).  `guest` enters or lies on `host`.  `region` is the common box (flat
    for butted faces); `glued` says whether glue goes on it; `end` is the guest's end R or R2 where
    an end enters; `area` is the glue area in mm2.  `patches` are the parts of the region that get
    glue: all of it unless the notes say less, none where it is not glued.  What the notes keep
    `dry` holds without glue: by a pin in the box `pinned`, or `fastened` so that it comes apart
    again (knock-down, bolted), or by its fit alone.  `tenon` holds the sizes of a tenon, with its
    haunch, wedges and pegs; `loose_pieces` are boxes around what lies in both without being part of
    either, such as dowels and biscuits.  `fingers` is how many sockets, or tails, a joint of a
    corner has.
    """

    id: str
    kind: str
    guest: str
    host: str
    region: Box
    clearance: Fraction
    glued: bool
    end: str | None
    area: Fraction
    span: Span
    patches: tuple[Box, ...] = ()
    dry: bool = False
    pinned: Box | None = None
    fastened: str | None = None
    tenon: TenonSizes | None = None
    loose_pieces: tuple[Box, ...] = ()
    fingers: int = 0


@dataclass(frozen=True, slots=True)
class Assembly:
    """One glue-up: `of` names copies or earlier assemblies, `joints` the instances it closes.

    `name` is unique (``end frame 1``); `stage` the declared name (``end frame``).  `cure` is
    minutes, or None for the shop's glue.  `square` holds the two sizes whose diagonals are
    compared, in mm, with the axes they lie along.  `glue` is the glue as named, or None; `pressed`
    is weights, tape or pins where no clamps are used; `people` how many it takes, or None.
    """

    name: str
    stage: str
    of: tuple[str, ...]
    joints: tuple[str, ...]
    cure: int | None
    box: Box
    square: tuple[Fraction, Fraction] | None
    square_axes: tuple[int, int] | None
    span: Span
    glue: str | None = None
    pressed: str | None = None
    people: int | None = None


@dataclass(frozen=True, slots=True)
class Fitting:
    """Joints closed without glue after the finish: top on buttons, slats with screws."""

    name: str
    part: str
    onto: tuple[str, ...]
    kind: str
    joints: tuple[str, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Coating:
    """What is finished together: an assembly or a loose part, before the stage if one is named.

    `area` in mm2 over all copies; `masks` names the joints whose glue faces stay bare.  `products`
    go on one after the other; `surfaces` says which surfaces (``the inside``), nothing for all;
    `spared` what is left out of them, in words.  With a `before`, `glued_later` names the glue-ups
    with its copies that come after the coats; those without that name have come before.  `visit`
    counts what wishes keep apart: only subjects of one number are coated in one go.
    """

    subject: str
    copies: tuple[str, ...]
    area: Fraction
    masks: tuple[str, ...]
    before: str | None
    span: Span | None
    products: tuple[Coats, ...] = ()
    surfaces: str = ""
    spared: tuple[str, ...] = ()
    glued_later: tuple[str, ...] = ()
    visit: int = 0


@dataclass(frozen=True, slots=True)
class Hardware:
    """Bought fastenings: ``wood screw``, ``4 x 35``, 10, for what."""

    item: str
    size: str
    count: int
    purpose: str


@dataclass(frozen=True, slots=True)
class Bought:
    """A thing that is bought: how many, of which size, for what, and when it is ordered.

    `copies` are those that take up space in the piece; none where only the list knows it.
    `kilograms` is what each weighs, None where the notes do not say.
    """

    name: str
    written: str
    count: int
    size: str
    purpose: str
    order: str | None
    copies: tuple[Copy, ...]
    span: Span
    kilograms: Fraction | None = None


@dataclass(frozen=True, slots=True)
class Model:
    """Everything that later stages need to know about the piece."""

    piece: str
    source: Source
    display: Display
    overall: tuple[Fraction, Fraction, Fraction]
    parts: tuple[Part, ...]
    joints: tuple[Joint, ...]
    assemblies: tuple[Assembly, ...]
    fittings: tuple[Fitting, ...]
    coatings: tuple[Coating, ...]
    hardware: tuple[Hardware, ...]
    wishes: tuple[Wish, ...]
    stock: tuple[Have, ...]
    notes: tuple[str, ...]
    assumptions: tuple[Assumption, ...]
    figures: Mapping[str, Figure]
    limits: tuple[PieceLimit, ...] = ()
    measured: tuple[Measured, ...] = ()
    done: tuple[Done, ...] = ()
    spoiled: tuple[Spoiled, ...] = ()
    outdoors: Span | None = None
    bought: tuple[Bought, ...] = ()
    place: PlaceWords | None = None
    moisture: Moisture = _NOBODY_MEASURED
    air: AirWords = _NOTHING_SAID
    yard: tuple[Have, ...] = ()

    def part(self, name: str) -> Part:
        """Return the part of that name; KeyError when there is none."""
        for part in self.parts:
            if part.name == name:
                return part
        raise KeyError(name)

    def part_of(self, copy_name: str) -> Part:
        """Return the part that the copy belongs to; KeyError when there is none."""
        for part in self.parts:
            if any(copy.name == copy_name for copy in part.copies):
                return part
        raise KeyError(copy_name)

    def copy(self, name: str) -> Copy:
        """Return the copy of that name; KeyError when there is none."""
        for part in self.parts:
            for copy in part.copies:
                if copy.name == name:
                    return copy
        raise KeyError(name)

    def joint(self, joint_id: str) -> Joint:
        """Return the joint instance of that id; KeyError when there is none."""
        for joint in self.joints:
            if joint.id == joint_id:
                return joint
        raise KeyError(joint_id)
