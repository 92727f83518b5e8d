"""The glue that leaves time to spread, place and clamp; a word where time is short (TRADE C2)."""

from __future__ import annotations

from dryfit.diagnostics import Diagnostic, Hint, Severity, Span
from dryfit.operations.minutes import in_minutes
from dryfit.shop.glues import usual_glue
from dryfit.shop.shop import Glue, Shop

NEARLY_ALL = 9
"""From nine tenths of the glue's time on there is no room for a mishap (TRADE C2.2)."""


def glue_for(closing: int, shop: Shop, *, outdoors: bool = False) -> Glue:
    """Return the shop's usual glue, or the quickest of those that leave time enough.

    `closing` are the tenths of a minute from the first glue to the last clamp.  Where no glue
    does, the usual one comes back, and `short_of_time` finds fault.  With `outdoors` only glues
    that last there are taken, as far as the shop has any.
    """
    usual = usual_glue(shop, outdoors=outdoors)
    lasting = [glue for glue in shop.glues.values() if glue.outdoors] if outdoors else []
    if closing <= usual.close_within:
        return usual
    slower = [glue for glue in lasting or shop.glues.values() if closing <= glue.close_within]
    return min(slower, key=lambda glue: glue.close_within, default=usual)


def short_of_time(
    stage: str,
    closing: int,
    glue: Glue,
    span: Span | None,
    shop: Shop,
    *,
    named: bool = False,
    staged: bool = True,
) -> tuple[Diagnostic, ...]:
    """Return ``glue-time-short`` (H60): no glue, a slower glue, or little time to spare.

    A glue that was `named` stays: nothing is chosen in its place.  What is not `staged` by the
    notes can be parted in no more stages there, and no line of it names helpers.
    """
    usual = glue if named else shop.glues[shop.default_glue]
    allows = f"{usual.name} allows {in_minutes(usual.close_within)}"
    takes = f"{stage}: spreading, placing and clamping take {in_minutes(closing)}, {allows}"
    if closing > glue.close_within:
        hint = "glue it up in two stages, put a slower glue into the shop file, or get a helper "
        hint += "and write `two people`"
        if not staged:
            hint = "put a slower glue into the shop file"
        elif named:
            hint = "glue it up in two stages, name a slower glue, or write `two people`"
        return (_found(Severity.ERROR, takes, hint, span),)
    if glue is not usual:
        chosen = f"{takes}: planned with {glue.name}, {in_minutes(glue.close_within)}"
        # The shop has that glue: which one it takes is its choice, and said there once (M30).
        hint = f'if the shop always takes it, put `default_glue = "{glue.name}"` into its file'
        if staged:
            hint += "; or glue it up in two stages, or get a helper and write `two people`"
        return (_found(Severity.NOTICE, chosen, hint, span),)
    if closing * 10 > glue.close_within * NEARLY_ALL:
        hint = "lay everything out within reach first, or take a slower glue"
        return (_found(Severity.WARNING, takes, hint, span),)
    return ()


def _found(severity: Severity, message: str, hint: str, span: Span | None) -> Diagnostic:
    return Diagnostic("glue-time-short", severity, message, span, rule="H60", hints=(Hint(hint),))
