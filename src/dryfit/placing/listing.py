"""The list of all that was taken for granted, in the order in which it was."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from dryfit.diagnostics import Assumption, Span
from dryfit.piece.declared import Host
from dryfit.placing.crossing import shown_part
from dryfit.placing.found import Found
from dryfit.placing.lines import with_phrase
from dryfit.placing.site import SIDE_WORDS, Site
from dryfit.placing.waney import waney_assumptions
from dryfit.shop.finishes import finish_named
from dryfit.wood import assumption as wood_assumption
from dryfit.wood import species

_HOUR = 60 * 10


def all_assumptions(site: Site, found: Sequence[Found]) -> tuple[Assumption, ...]:
    """Return how parts lie, where they are, how laps show, which wood, how finishes dry."""
    assumptions = [
        Assumption(text, part.span, with_phrase(part.span, phrase))
        for part in site.parts()
        for text, phrase in part.assumed
    ]
    assumptions += site.listed()
    for part in site.parts():
        assumptions += waney_assumptions(part)
    assumptions += _lap_assumptions(site, found)
    assumptions += _timber_assumptions(site)
    assumptions += _finish_assumptions(site)
    return tuple(dict.fromkeys(_at_users_line(each) for each in assumptions))


def _at_users_line(assumption: Assumption) -> Assumption:
    # The line of a pattern is not the maker's to change: the line that uses it is shown.
    if assumption.span is None or assumption.span.used_by is None:
        return assumption
    return replace(assumption, span=assumption.span.told(), instead=None)


def _lap_assumptions(site: Site, found: Sequence[Found]) -> list[Assumption]:
    # One sentence for each line that speaks of laps: which of the two keeps its outer face.
    sides: dict[Span, set[tuple[int, int]]] = {}
    decided = {each.span for each in site.declared.contacts if shown_part(each) is not None}
    for lap in found:
        if lap.kind == "half lap" and lap.span not in decided:
            cut = lap.cuts[0]
            sides.setdefault(lap.span, set()).add((cut.axis, -cut.side))
    said = []
    for span, shown in sides.items():
        contacts = [contact for contact in site.declared.contacts if contact.span == span]
        guests = _listed(site, [contact.guest for contact in contacts])
        hosts = _listed(site, contacts[0].hosts)
        joint_words = contacts[0].joint
        joint = joint_words.span.text() if joint_words else "half lap"
        outside, inside = _shown_sides(shown)
        text = f"where they are lapped, {outside} shows the {guests}, {inside} the {hosts}"
        swapped = f"{hosts} crossing {guests}: {joint}"
        said.append(Assumption(text, span, None if contacts[0].own_line else swapped))
    return said


def _listed(site: Site, hosts: Sequence[Host]) -> str:
    return " and ".join(dict.fromkeys(site.written(host.part) for host in hosts))


def _shown_sides(sides: set[tuple[int, int]]) -> tuple[str, str]:
    if len(sides) > 1:
        return "the outside", "the inside"
    ((axis, side),) = sides
    return f"the {SIDE_WORDS[axis, side]}", f"the {SIDE_WORDS[axis, -side]}"


def _timber_assumptions(site: Site) -> list[Assumption]:
    named = [site.declared.timber, *(part.timber for part in site.parts())]
    said = []
    for timber in dict.fromkeys(name for name in named if name):
        taken = species(timber)
        words = wood_assumption(timber, taken) if taken else None
        if taken and words:
            text = f"{words} where its movement counts"
            said.append(Assumption(text, None, f"timber {taken.name}"))
    return said


def _finish_assumptions(site: Site) -> list[Assumption]:
    """Return how long coats that the shop file does not know take up dust, which notes never say.

    The plan waits no longer than until the next coat.
    """
    products = [each for finish in site.declared.finishes for each in finish.products]
    unknown = [each.product for each in products if each.product not in site.shop.finishes]
    said = []
    for product in dict.fromkeys(unknown) if site.shop.one_room else ():
        finish = finish_named(site.shop, product)
        dust_free, recoat = finish.dust_free // _HOUR, finish.recoat // _HOUR
        line = f'coats = {finish.coats}, recoat = "{recoat} h", dust_free = "{dust_free} h"'
        said.append(
            Assumption(
                f"a coat of {product} takes up dust for {dust_free} h, but not longer than until "
                "the next coat",
                None,
                f'in the shop file under [finish]: "{product}" = {{ {line} }}',
                "shop file",
            )
        )
    return said
