"""The stage: tree of the notes -> declared piece."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from dryfit.diagnostics import Findings
from dryfit.notes.tree import (
    BareLine,
    DoneLine,
    FeatureLine,
    FinishLine,
    GlueLine,
    HaveLine,
    JointLine,
    LimitLine,
    NoteLine,
    Notes,
    OpeningLine,
    OrderLine,
    OverallLine,
    PartsLine,
    PlaceLine,
    RoomLine,
    ScribeLine,
    SpoiledLine,
    TimberLine,
    UnitsLine,
    ValueLine,
    WallLine,
    WayInLine,
)
from dryfit.piece.air import air_of
from dryfit.piece.bought import supplies
from dryfit.piece.declared import Declared, Measured
from dryfit.piece.features import declared_features
from dryfit.piece.finishing import declared_bare, declared_finishes
from dryfit.piece.gaps import gaps_of_nothing
from dryfit.piece.joint_keys import with_keys
from dryfit.piece.joints import contacts_of_lines
from dryfit.piece.limits import declared_limits
from dryfit.piece.measured import with_measured
from dryfit.piece.names import Names
from dryfit.piece.openings import declared_openings
from dryfit.piece.part_lines import declared_parts
from dryfit.piece.parts import WholePiece
from dryfit.piece.patterns import inner_names
from dryfit.piece.progress import done_deeds, spoiled_copies
from dryfit.piece.readings import sums_read
from dryfit.piece.spare_lines import with_spares
from dryfit.piece.stages import stage_of
from dryfit.piece.statements import first_line, lines_of
from dryfit.piece.sums import Sums
from dryfit.piece.unit_slips import unit_slips
from dryfit.piece.whole_lines import (
    display_of,
    is_wider_than_deep,
    missing_lines,
    overall_size,
    sums_of_overall,
    title_of,
)
from dryfit.piece.wishes import circles, wish_of
from dryfit.piece.written_sizes import sizes_on

if TYPE_CHECKING:
    from dryfit.piece.declared.site import PlaceWords
    from dryfit.piece.stock_whole import StockList, Wood


_OF_THE_PLACE = (RoomLine, ScribeLine, WayInLine, WallLine)


def declare(
    notes: Notes, inventories: Sequence[Notes] = (), measured_sheets: Sequence[Measured] = ()
) -> tuple[Declared, Findings]:
    """Return what the notes declare, and the findings about names, kinds and sums.

    `inventories` are lists of wood that lies in the shop besides; `measured_sheets` those that the
    parts are made of, where the notes do not list them.

    Findings: those of `missing_lines`, `with_measured`, `declared_parts`, `circles`,
    `gaps_of_nothing`, `nominal_sizes`, `unit_slips`, of the module of each kind of line, and of
    `Names` and `Sums`.
    """
    notes = with_spares(notes)
    units = first_line(notes, UnitsLine)
    first = units.first if units else "length"
    names = _names(notes)
    planned = _sums(notes, names, first)
    lists = _stock_lists(notes, inventories, planned, names)
    wood, sheets = _wood(lists)
    as_measured, measured = with_measured(notes, planned, first, (*sheets, *measured_sheets))
    sums = _sums(as_measured, names, first) if measured else planned
    declared = with_keys(_declared(as_measured, sums, names, first), names)
    if wood is not None:
        from dryfit.piece.stock_whole import as_measured as as_measured_wood

        made = {
            (part.timber or declared.timber, None if size is None else size.value)
            for part in declared.parts
            for size in part.sizes[2:]
        }
        wood = as_measured_wood(wood, measured, made, planned)
        declared = replace(declared, stock=wood.stock, yard=wood.yard)
    sums.work_out_values()
    slips = tuple(unit_slips(sums, declared.parts, declared.overall, units_said=units is not None))
    if sums.unit == "in":
        from dryfit.piece.nominal_sizes import nominal_sizes

        slips += tuple(nominal_sizes(notes, thickness_first=first == "thickness"))
    told = {slip.span for slip in slips}
    of_sums = tuple(each for each in sums.findings if each.span not in told)
    of_planned = () if sums is planned else planned.findings
    findings = (
        *missing_lines(notes, sums.display),
        *circles(declared.wishes, declared.stages),
        *gaps_of_nothing(declared.parts, declared.contacts, sums.display),
        *slips,
        *(each for each in of_planned if each not in of_sums),
        *(each for listed in lists[1:] for each in listed.sums.findings),
        *of_sums,
        *names.findings,
    )
    read = sums_read(as_measured, sums, first)
    return replace(declared, measured=measured, sums=read), findings


def _names(notes: Notes) -> Names:
    return Names(
        frozenset(line.name for line in lines_of(notes, PartsLine)),
        frozenset(line.name for line in lines_of(notes, GlueLine)),
        notes.unreadable,
        inner=inner_names(notes),
        openings=frozenset(line.name for line in lines_of(notes, OpeningLine)),
    )


def _sums(notes: Notes, names: Names, first: str) -> Sums:
    units = first_line(notes, UnitsLine)
    return Sums(
        unit=units.unit if units else "mm",
        display=display_of(units),
        values={line.name: line for line in lines_of(notes, ValueLine)},
        sizes={
            (line.name, dimension): word.amount
            for line in lines_of(notes, PartsLine)
            for dimension, word in sizes_on(line, first).items()
        },
        overall=sums_of_overall(first_line(notes, OverallLine)),
        parts=names.parts,
        unreadable=notes.unreadable,
        spaces=names.openings | frozenset(names.inner),
    )


def _stock_lists(
    notes: Notes, inventories: Sequence[Notes], sums: Sums, names: Names
) -> tuple[StockList, ...]:
    """Return the lines of wood of each text, those of the notes first; nothing without any."""
    own = lines_of(notes, HaveLine)
    if not own and not inventories:
        return ()
    from dryfit.piece.stock_whole import StockList

    units = first_line(notes, UnitsLine)
    found = [StockList(own, sums, units.first if units else "length")]
    for each in inventories:
        units = first_line(each, UnitsLine)
        first = units.first if units else "length"
        sums, name = _sums(each, names, first), each.source.name.rpartition("/")[2]
        found.append(StockList(lines_of(each, HaveLine), sums, first, name))
    return tuple(found)


def _wood(lists: Sequence[StockList]) -> tuple[Wood | None, tuple[Measured, ...]]:
    """Return all wood, and what its sheets measure."""
    if not lists:
        return None, ()
    from dryfit.piece.stock_whole import declared_wood, measured_sheets

    wood = declared_wood(lists)
    return wood, tuple(measured_sheets(wood.stock))


def _place(notes: Notes, sums: Sums) -> PlaceWords | None:
    """Return what the notes say of the place, the way in, the wall and the users, if anything."""
    said = any(isinstance(line, _OF_THE_PLACE) for line in notes.statements)
    words = {line.kind for line in lines_of(notes, PlaceLine)}
    if not said and not words & {"children", "built"}:
        return None
    from dryfit.piece.site import place_words

    return place_words(notes, sums)


def _declared(notes: Notes, sums: Sums, names: Names, first: str) -> Declared:
    overall, timber = overall_size(sums), first_line(notes, TimberLine)
    whole = WholePiece(first, timber.timber if timber else None, is_wider_than_deep(overall))
    part_lines = lines_of(notes, PartsLine)
    made = declared_parts(notes, sums, names, whole)
    stands = [line.span for line in lines_of(notes, PlaceLine) if line.kind == "outdoors"]
    return Declared(
        piece=title_of(notes),
        source=notes.source,
        display=sums.display,
        overall=overall,
        timber=whole.timber,
        parts=made.parts,
        instances=made.instances,
        broken=notes.unreadable | made.broken,
        contacts=contacts_of_lines(part_lines, lines_of(notes, JointLine), sums, names),
        wishes=tuple(w for line in lines_of(notes, OrderLine) for w in wish_of(line, names)),
        features=declared_features(lines_of(notes, FeatureLine), sums, names),
        stages=tuple(stage_of(line, sums, names) for line in lines_of(notes, GlueLine)),
        finishes=declared_finishes(lines_of(notes, FinishLine), sums, names),
        bare=declared_bare(lines_of(notes, BareLine), names),
        stock=(),
        notes=tuple(line.text for line in lines_of(notes, NoteLine)),
        supplies=supplies(part_lines, names),
        openings=declared_openings(lines_of(notes, OpeningLine), names),
        done=done_deeds(lines_of(notes, DoneLine), names),
        spoiled=spoiled_copies(lines_of(notes, SpoiledLine), made.parts, names),
        limits=declared_limits(lines_of(notes, LimitLine), part_lines, sums, names),
        outdoors=next(iter(stands), None),
        timber_span=timber.span if timber else None,
        place=_place(notes, sums),
        cut=timber.cut if timber else None,
        air=air_of(notes),
    )
