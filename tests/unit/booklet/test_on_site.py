"""The pages about the place: the sheet to fill, the loads, the work on site, what to bring."""

from __future__ import annotations

from functools import cache

from tests.pieces.reading import changed, checked, model_of, text_of

from dryfit import workshop
from dryfit.booklet.bench import Bench
from dryfit.booklet.labels import label
from dryfit.booklet.on_site import SiteView, site_view
from dryfit.booklet.owners_care import owners_care
from dryfit.booklet.site_cautions import site_words
from dryfit.booklet.text import Say, plain
from dryfit.plan.plan import Plan

CASE = text_of("alcove_case")
TABLE = """piece Table
overall 900 wide, 900 deep, 700 high
timber ash
way in 600 wide, 1980 high
way in 700 wide, 1980 high, turn 800
4 legs, upright, 60 x 60, at corners, set in 60
2 aprons, across, 80 x 22, tenon 20 long 8 thick 40 wide into legs
2 rails, front to back, 80 x 22, dowels into legs
1 top, flat, 20 thick, onto aprons and rails: buttons
glue up base: legs, aprons, rails
finish oil, 3 coats
"""


@cache
def plan_of(text: str) -> Plan:
    made, _ = workshop.plan(checked(text), lambda _: None)
    assert made is not None
    return made


def view(text: str, planned: str | None = None) -> SiteView:
    """What is printed of notes; the plan may be that of another text where no step is named."""
    found = checked(text)
    model, shop = model_of(text), found.shop
    assert model.place is not None
    assert shop is not None
    plan = plan_of(planned or text)
    return site_view(model.place, Bench(model, plan, shop, label(model), Say(model.display)))


def steps(text: str, planned: str | None = None) -> list[str]:
    return [plain(step) for step in view(text, planned).steps]


def test_the_load_by_hand() -> None:
    # Sides 620 x 242 x 18 twice, bottom and top, shelf and strips, less trenches and notches.
    (load,) = view(CASE).loads
    assert (load.title, load.count, load.hands, load.ways) == (
        "The whole piece",
        1,
        1,
        ("upright",),
    )
    assert plain(load.size) == "540 × 260 × 620 mm"
    assert load.weight == "6.5 kg"


def test_on_site_level_comes_before_scribing_and_that_before_fixing() -> None:
    said = steps(CASE)
    begins = ["Measure", "Find the highest", "Scribe the left", "Scribe the right"]
    begins += ["Find out", "Fix it to the wall"]
    assert [any(words in each for words in begins) for each in said] == [True] * 6
    assert [next(b for b in begins if each.startswith(b)) for each in said] == begins
    assert "by up to 6 mm" in said[1]
    assert said[2].startswith("Scribe the left strip to the left wall")
    assert said[2].endswith("Up to 15 mm may go.")


def test_a_range_asks_for_the_measuring_sheet_and_exact_figures_do_not() -> None:
    rows = view(CASE).sheet
    assert rows[0].places == ("floor", "middle", "top")
    assert plain(rows[0].said) == "512 to 538 mm"
    assert plain(rows[-1].said) == "720 × 1980 mm, turn 900"
    exact = changed(CASE, ("512 mm to 538 mm wide", "530 wide, 400 deep"))
    assert view(exact, CASE).sheet == ()


def test_what_is_built_in_place_is_glued_there_by_its_step() -> None:
    # A door through which only boards go, and the glue-up keeps its step in the order of work.
    small = changed(CASE, ("way in 720 mm wide", "built in place\nway in 180 mm wide"))
    found = view(small, CASE)
    assert [load.title for load in found.loads] == ["Side", "Bottom", "Top", "Shelf", "Strip"]
    glued = next(plain(step) for step in found.steps if "Glue up" in plain(step))
    number = next(
        step.number
        for step in plan_of(CASE).steps
        if any(op.glue_up is not None for op in step.operations)
    )
    assert glued.startswith(f"Glue up the case here: leave that glue-up, step {number},")
    assert "clamps, glue, scrap blocks, damp rags" in found.bring
    assert not any("Then the bottom" in plain(step) for step in found.steps)


def test_a_table_goes_in_as_base_and_top() -> None:
    found = view(TABLE)
    assert [(load.title, load.ways) for load in found.loads] == [
        ("Base", ("does not go through", "on its back")),
        ("Top", ("on edge", "on edge")),
    ]
    assert "Then the top: lay it on and hold it by its buttons." in steps(TABLE)
    assert found.bring[:2] == ("base", "top")
    assert "Oil: wipe with a damp cloth" in " ".join(found.care)


def test_cautions_follow_what_the_notes_say() -> None:
    assert set(site_words(model_of(CASE), ())) == {"site:carry", "site:wall", "site:tip"}
    kids = changed(CASE, ("fixed to the wall", "for children"))
    found = checked(kids)
    assert found.model is not None
    assert set(site_words(found.model, found.findings)) == {"site:carry", "site:children"}
    assert set(site_words(model_of(text_of("step_stool")), ())) == set()


def test_a_hard_wax_oil_is_cared_for_as_an_oil() -> None:
    words = " ".join(owners_care(model_of(CASE)))
    assert "Oil:" in words
    assert "Wax:" not in words


def test_what_hangs_on_a_cleat_says_how_its_halves_lie() -> None:
    hung = changed(
        CASE,
        ("fixed to the wall", "hangs on a stud wall, 1400 up"),
        ("bought 1 wall bracket", "bought 1 wall cleat"),
    )
    said = steps(hung, CASE)
    assert any("1400 mm above the floor. Take 2 fixings" in step for step in said)
    assert any("each with its longer face away from what it is screwed to" in step for step in said)
    assert said[-1].startswith("Hang it")


def test_a_cabinet_is_put_together_by_what_holds_each_load() -> None:
    cabinet = text_of("wall_cabinet")
    narrow = changed(cabinet, ("timber cherry", "timber cherry\nway in 390 wide, 185 high"))
    found = view(narrow, cabinet)
    assert [load.title for load in found.loads] == ["Case", "Shelf", "Door", "Drawer"]
    assert [plain(step) for step in found.steps] == [
        "Then 2 × shelf: lay them on their pins.",
        "Then the door: hang it on its hinges.",
        "Then the drawer: put it into the opening and try the gaps.",
    ]
    listed = " ".join(found.bring)
    assert "shelf pin" in listed
    assert "butt hinge" in listed
    assert "drawer back" not in listed


def test_what_holds_it_to_the_wall_is_brought_unless_it_is_bought() -> None:
    assert "a bracket or a strap for its top" not in view(CASE).bring
    bare = changed(CASE, ("bought 1 wall bracket\n", ""))
    assert "a bracket or a strap for its top" in view(bare, CASE).bring


def test_a_narrow_piece_may_meet_one_stud_only() -> None:
    stud = changed(CASE, ("fixed to the wall", "fixed to a stud wall"))
    assert any("400 or 600 mm apart" in step for step in steps(stud, CASE))
    assert not any("apart:" in step for step in steps(CASE))
