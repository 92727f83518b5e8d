"""What is coated before it is glued: which glue faces stay bare, counted and not named singly."""

from __future__ import annotations

import re

from tests.pieces.reading import checked_piece

from dryfit import workshop
from dryfit.booklet import render


def test_glue_faces_of_one_kind_between_two_parts_are_told_together() -> None:
    shown = checked_piece("framed_panel")
    plan, findings = workshop.plan(shown, lambda _: None)
    assert plan is not None
    assert shown.model is not None
    assert shown.shop is not None
    html = render(shown.model, plan, shown.shop, findings)
    bare = re.findall(r"Keep bare, for glue: ([^<]*)</p>", html)
    # The panel lies on a cleat above and one below; both coats of it spare the same two places.
    assert set(bare) == {"2 glued butt joints, panel and cleats."}
