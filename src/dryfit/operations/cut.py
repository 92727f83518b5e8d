"""One way to cut one feature on the copies of one hand, before equal cuts are drawn together."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.joinery.feature import Feature
from dryfit.joinery.splay import Slopes
from dryfit.placing.horns import sawn_to_length
from dryfit.placing.model import Copy, Part
from dryfit.plan.operation import Detail
from dryfit.plan.setting import Hold, Pass, Setting


@dataclass(frozen=True, slots=True)
class Site:
    """A feature on the copies of one hand of a part: what a way of cutting is chosen for.

    `fence` names the surface that has to touch a fence, where a glued frame leaves no other free.
    """

    part: Part
    feature: Feature
    copies: tuple[Copy, ...]
    fence: str | None = None

    @property
    def handedness(self) -> int:
        """Return +1 or -1: how the hand's copies are turned, as their frames say."""
        return self.copies[0].frame.handedness()

    @property
    def sizes(self) -> tuple[Fraction, Fraction, Fraction]:
        """Return length, width and thickness of the part."""
        return self.part.length, self.part.width, self.part.thickness


@dataclass(frozen=True, slots=True)
class Cut:
    """Machine, settings, hold and passes for a site; `exact` tenths of work for all its copies.

    `deed` and `manner` are the sentence before and after the copies, which are known only when
    equal cuts are drawn together.  `turn` counts the operations that one feature takes, where the
    fence has to move between passes.  `fitted` cuts are tried on scrap first, `tests` times for
    each new setting `trial`.  `visit` names what belongs in one visit because the cuts have to
    agree.  `slopes` are those that a hand tool is led by.
    """

    site: Site
    what: str
    kind: str
    station: str
    settings: tuple[Setting, ...]
    hold: Hold | None
    passes: tuple[Pass, ...]
    exact: Fraction
    deed: str
    manner: str = ""
    turn: int = 1
    trial: str | None = None
    tests: int = 0
    visit: str | None = None
    check: str | None = None
    cautions: tuple[str, ...] = ()
    details: tuple[Detail, ...] = ()
    slopes: Slopes = ()

    @property
    def needs_length(self) -> bool:
        """Return whether the cut is measured from an end that has to be finished first."""
        if self.hold is not None and self.hold.at_stop is not None:
            return True
        return not self.by_a_fence

    @property
    def by_a_fence(self) -> bool:
        """Return whether a fence alone guides the cut: by hand, only a groove from end to end."""
        whole = self.site.feature.along == (Fraction(0), self.site.part.length)
        return self.kind == "groove" and (self.hold is not None or whole)


def sites_of(part: Part) -> tuple[Site, ...]:
    """Return the features of a part for each hand that carries them, in order of the features."""
    finished = sawn_to_length(part)
    rows: list[Site] = []
    for feature in part.features:
        for hand in part.hands():
            copies = tuple(copy for copy in part.copies if copy.hand == hand)
            if hand in feature.hands and copies:
                rows.append(Site(part if feature.after is None else finished, feature, copies))
    return tuple(rows)
