"""What is fitted after the finish, and what is bought for it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence

from dryfit.joinery.loose_pieces import piece_sizes
from dryfit.joinery.screws import passes_guest, screw_between
from dryfit.kinds.joints import is_hardware, lets_move
from dryfit.piece.declared import Contact
from dryfit.placing.back_pins import pins_for_backs, pins_for_rabbets
from dryfit.placing.model import Fitting, Hardware, Joint, Part
from dryfit.placing.site import Site
from dryfit.placing.slid_panels import slid
from dryfit.quantities import Display

_BUTTON_SCREW = "4 x 30"
_KEPT_DRY = ("dry", "pinned", "knock-down", "bolted")


def build_fittings(
    site: Site, joints: Sequence[Joint], inside: Sequence[frozenset[str]]
) -> tuple[Fitting, ...]:
    """Return what goes on dry: each contact with screws, buttons, nothing at all, or kept dry.

    `inside` are the copies of each glue-up: what one of them brings together is fitted there.
    """
    fittings = []
    # What is glued or screwed elsewhere is not laid on once more.
    held = {
        contact.guest.part
        for contact in site.declared.contacts
        if contact.joint is not None or contact.preposition in {"crossing", "inside"}
    }
    # What is screwed into its rabbets needs no pins.
    screwed = {each.guest.part for each in site.declared.contacts if each.preposition == "fixed"}
    for contact in site.declared.contacts:
        kind = _dry_kind(contact)
        own = [joint for joint in joints if joint.span == contact.span and not joint.glued]
        # Buttons go on a finished piece; what else a glue-up brings together is held there.
        if kind is None or not lets_move(kind):
            own = [each for each in own if not _brought_together(each, inside)]
        if kind is None or not own or (kind == "pins" and contact.guest.part in screwed):
            continue
        # A lid that slides in its grooves lies on what it slides over, and nothing else holds it.
        slides = slid(site, site.part(contact.guest.part)) == contact
        if kind == "rest" and contact.guest.part in held and not slides:
            continue
        guests = {seat.name for seat in site.guests(contact)}
        fittings.append(
            Fitting(
                name=contact.guest.part,
                part=contact.guest.part,
                onto=tuple(dict.fromkeys(host.part for host in contact.hosts)),
                kind=kind,
                joints=tuple(
                    joint.id for joint in own if guests & {joint.guest} or joint.kind == "buttons"
                ),
                span=contact.span,
            )
        )
    return tuple(fittings)


def _brought_together(joint: Joint, inside: Sequence[frozenset[str]]) -> bool:
    return any({joint.guest, joint.host} <= copies for copies in inside)


def _dry_kind(contact: Contact) -> str | None:
    kinds = [patch.kind for patch in contact.glue if patch.kind in _KEPT_DRY]
    if kinds and (contact.joint is None or not is_hardware(contact.joint.kind)):
        return kinds[0]
    if contact.in_rabbets:
        return "pins"
    if contact.joint is not None:
        return contact.joint.kind if is_hardware(contact.joint.kind) else None
    return "rest" if contact.preposition in {"onto", "under"} else None


def build_hardware(
    site: Site,
    parts: Sequence[Part],
    joints: Sequence[Joint],
    fittings: Sequence[Fitting],
    screws: Mapping[str, int],
) -> tuple[Hardware, ...]:
    """Return screws, dowels, pegs and wedges, sized from the joints; `screws` are theirs by joint.

    Outdoors they are of stainless steel.
    """
    item = "stainless wood screw" if site.declared.outdoors else "wood screw"
    part_of = {copy.name: part for part in parts for copy in part.copies}
    box_of = {copy.name: copy.box for part in parts for copy in part.copies}
    fitted = {name: fitting for fitting in fittings for name in fitting.joints}
    bought: dict[tuple[str, str], int] = {}
    for joint in joints:
        if joint.kind == "screws":
            first, second = joint.guest, joint.host
            axis = next(a for a in range(3) if joint.region.extent(a) == 0)
            if not passes_guest(box_of[first].extent(axis), box_of[second].extent(axis)):
                first, second = second, first
            screw = screw_between(box_of[first], box_of[second], axis, joint.region.low[axis])
            if screw is not None:
                purpose = f"{part_of[first].written} into {part_of[second].written}"
                key = (_sold(screw.size(), site.declared.display), purpose)
                bought[key] = bought.get(key, 0) + screws[joint.id]
        elif joint.kind == "buttons" and joint.id in fitted:
            key = (
                _sold(_BUTTON_SCREW, site.declared.display),
                f"buttons into {fitted[joint.id].part}",
            )
            bought[key] = bought.get(key, 0) + 1
    return (
        *(
            Hardware(item, size, count, purpose)
            for (size, purpose), count in sorted(bought.items())
        ),
        *_pegs_and_dowels(joints, part_of, site.declared.display),
        *pins_for_backs(joints, fittings, part_of, site.declared.display),
        *pins_for_rabbets(joints, part_of, site.declared.display),
        *_keys(parts, site.declared.display),
    )


def _sold(size: str, display: Display) -> str:
    # Screws are sized in mm here, which in a piece in inches has to be said.
    return size if display.unit == "mm" else f"{size} mm"


def _pegs_and_dowels(
    joints: Sequence[Joint], part_of: Mapping[str, Part], display: Display
) -> Iterator[Hardware]:
    """Yield loose pieces, and pegs and wedges of tenons: pegs as long as their holes."""
    counts: dict[tuple[str, str, str], int] = {}
    for joint in joints:
        purpose = f"{part_of[joint.guest].written} into {part_of[joint.host].written}"
        rows = [("dowel", size, count) for size, count in _dowels(joint, display).items()]
        rows += [("loose tenon", size, count) for size, count in _tenons(joint, display).items()]
        rows += [("biscuit", size, count) for size, count in _biscuits(joint).items()]
        tenon = joint.tenon
        if tenon is not None:
            rows.append(("peg", f"{display.shown(tenon.peg)} thick", tenon.all_pegs))
            rows.append(("wedge", f"{display.shown(tenon.thickness)} wide", tenon.wedges))
        for thing, size, count in rows:
            if count:
                made = ", made of offcuts" if thing == "loose tenon" else ""
                key = (thing, size, purpose + made)
                counts[key] = counts.get(key, 0) + count
    yield from (Hardware(thing, size, many, what) for (thing, size, what), many in counts.items())


def _keys(parts: Sequence[Part], display: Display) -> Iterator[Hardware]:
    """Yield the keys across glued corners, which are made; each lies in two members."""
    counts: Counter[tuple[str, str]] = Counter()
    for part in parts:
        for feature in part.features:
            if feature.role != "key slot" or feature.form is None:
                continue
            thick = dict(feature.form.sizes)["thickness"]
            size = f"{display.shown(thick, fitted=True)} thick"
            carried = sum(copy.hand in feature.hands for copy in part.copies)
            counts[size, feature.after or ""] += carried
    for (size, stage), count in counts.items():
        yield Hardware("key", size, count // 2, f"corners of {stage}, made of offcuts")


def _dowels(joint: Joint, display: Display) -> Counter[str]:
    """Count the dowels of a joint by their size, diameter x length as they are sold."""
    pieces = joint.loose_pieces if joint.kind == "dowels" else ()
    sizes = (sorted(box.extent(axis) for axis in range(3)) for box in pieces)
    return Counter(f"{display.shown(thin)} x {display.shown(long)}" for thin, _, long in sizes)


def _biscuits(joint: Joint) -> Counter[str]:
    """Count the biscuits of a joint by the number that they are sold by."""
    if joint.kind != "biscuits":
        return Counter()
    from dryfit.joinery.biscuits import of_length

    pieces = joint.loose_pieces
    sizes = (of_length(max(box.extent(axis) for axis in range(3))) for box in pieces)
    return Counter(f"#{size.number}" for size in sizes if size is not None)


def _tenons(joint: Joint, display: Display) -> Counter[str]:
    """Count the loose tenons of a joint by length, width and thickness; they are made."""
    pieces = joint.loose_pieces if joint.kind == "loose tenon" else ()
    return Counter(
        " x ".join(display.shown(size) for size in piece_sizes(piece, joint.region))
        for piece in pieces
    )
