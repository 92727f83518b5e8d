"""Work that can be done in several ways: what is picked, what falls away, what is proved of it."""

from collections.abc import Iterator
from dataclasses import replace

import pytest

from dryfit.order import (
    Axis,
    Choice,
    Glimpse,
    Option,
    Precedence,
    Problem,
    Range,
    Station,
    Task,
    Unsolvable,
    Value,
    attempts,
    changeover_bound,
    evaluate,
    picked,
    solve,
    violations,
)
from dryfit.order.attempts import FEW

SAW = Station("saw", (Axis("blade", 30), Axis("height", 10)))
BENCH = Station("bench")


def laps(by_hand: int = 400) -> Problem:
    """Laps by a dado set, in one blade's passes, or by hand; a rip and a fit around them."""
    return Problem(
        stations=(SAW, BENCH),
        tasks=(
            Task("rip", "saw", (("blade", "rip"), ("height", "36")), 50),
            Task("dado laps", "saw", (("blade", "dado"), ("height", "27")), 100),
            Task("passes", "saw", (("blade", "rip"), ("height", "27")), 300),
            Task("mark", "bench", (), 20),
            Task("chop", "bench", (), by_hand),
            Task("fit", "bench", (), 50),
        ),
        precedences=(
            Precedence("rip", "dado laps", 0, "cut to width first"),
            Precedence("rip", "passes", 0, "cut to width first"),
            Precedence("rip", "mark", 0, "cut to width first"),
            Precedence("mark", "chop", 0, "to the line"),
            Precedence("dado laps", "fit", 0, "laps before the fit"),
            Precedence("passes", "fit", 0, "laps before the fit"),
            Precedence("chop", "fit", 0, "laps before the fit"),
        ),
        choices=(
            Choice(
                "laps",
                (
                    Option("dado set", ("dado laps",)),
                    Option("passes", ("passes",)),
                    Option("by hand", ("mark", "chop")),
                ),
            ),
        ),
    )


def test_work_counts_like_set_up() -> None:
    """Dado set 80 + 200, passes 50 + 400, by hand 40 + 120 + the chopping."""
    by_dado = solve(laps())
    assert by_dado.picks == (("laps", "dado set"),)
    assert by_dado.order == ("rip", "dado laps", "fit")
    assert solve(laps(by_hand=119)).picks == (("laps", "by hand"),)
    assert solve(laps(by_hand=121)).picks == (("laps", "dado set"),)
    assert violations(laps(), by_dado) == ()


def test_the_bound_holds_over_every_pick() -> None:
    """By hand there are no more changes than for the rip, so that is what can be proved."""
    result = solve(laps())
    assert (result.totals.changeover, result.lower_bound) == (80, 40)
    assert (result.proven, result.gap_percent, result.over) == (False, 100.0, "every pick")
    assert (result.fewest_found, result.picks_bound) == (40, 80)
    assert changeover_bound(laps()) == 40
    by_hand = solve(laps(by_hand=10))
    assert (by_hand.totals.changeover, by_hand.proven) == (40, True)


def test_what_is_proved_of_all_picks_is_proved_of_those_made() -> None:
    """Two blades at two heights: four settings take 30 + 10, then 10, 30, 10."""
    settings = tuple((("blade", blade), ("height", height)) for blade in "ab" for height in "xy")
    cuts = tuple(Task(str(i), "saw", setting, 1) for i, setting in enumerate(settings))
    ends = (Task("round", "bench", (), 1), Task("chamfer", "bench", (), 1))
    choice = Choice("ends", tuple(Option(task.id, (task.id,)) for task in ends))
    problem = Problem((SAW, BENCH), (*cuts, *ends), choices=(choice,))
    result = solve(problem, effort=0)
    assert violations(problem, result) == ()
    assert (result.lower_bound, result.picks_bound, result.totals.changeover) == (90, 90, 90)


def test_nothing_follows_through_a_task_not_done() -> None:
    plain = picked(laps(), {"laps": "passes"})
    assert [task.id for task in plain.tasks] == ["rip", "passes", "fit"]
    assert [(edge.before, edge.after) for edge in plain.precedences] == [
        ("rip", "passes"),
        ("passes", "fit"),
    ]
    empty = replace(
        laps(), choices=(Choice("laps", (Option("none", ()), *laps().choices[0].options)),)
    )
    order = ("fit", "rip")
    assert violations(empty, order) == ()
    assert evaluate(empty, order)[1].work == 100


def test_an_order_says_what_was_picked() -> None:
    assert evaluate(laps(), ("rip", "mark", "chop", "fit"))[1].work == 520
    with pytest.raises(Unsolvable, match="no option of laps takes just these tasks"):
        evaluate(laps(), ("rip", "chop", "fit"))
    with pytest.raises(Unsolvable, match="laps is one of dado set, passes, by hand"):
        picked(laps(), {"laps": "router"})


def test_the_checker_sees_a_wrong_pick() -> None:
    result = solve(laps())
    assert violations(laps(), ("rip", "mark", "chop", "dado laps", "fit"))
    assert violations(laps(), replace(result, picks=(("laps", "passes"),)))
    assert violations(laps(), replace(result, picks=()))
    assert violations(laps(), ("fit", "rip", "dado laps")) != ()


def test_an_option_that_cannot_be_is_left_out() -> None:
    circle = Precedence("fit", "rip", 0, "by mistake")
    problem = replace(laps(), precedences=(*laps().precedences, circle))
    with pytest.raises(Unsolvable, match="circle"):
        solve(problem)
    only = replace(
        problem, choices=(Choice("laps", (*laps().choices[0].options, Option("none", ()))),)
    )
    assert solve(only).picks == (("laps", "none"),)


@pytest.mark.parametrize("demand", [("fence", "10"), ("height", Range(30, 20))])
def test_an_option_with_a_setting_that_cannot_be_is_left_out(demand: tuple[str, Value]) -> None:
    tasks = tuple(
        replace(task, demands=(demand,)) if task.id == "passes" else task for task in laps().tasks
    )
    problem = replace(laps(), tasks=tasks)
    assert solve(problem).picks == (("laps", "dado set"),)


@pytest.mark.parametrize(
    ("choices", "message"),
    [
        ((Choice("laps", ()),), "laps needs options"),
        ((Choice("laps", (Option("a", ()), Option("a", ()))),), "laps needs options"),
        ((Choice("laps", (Option("a", ("drill",)),)),), "laps: no task drill"),
        (
            (Choice("x", (Option("a", ("rip",)),)), Choice("y", (Option("a", ("rip",)),))),
            "rip belongs to two choices, x and y",
        ),
        ((Choice("x", (Option("a", ()),)),) * 2, "two choices have the same name"),
    ],
)
def test_a_choice_that_is_not_well_formed_is_refused(
    choices: tuple[Choice, ...], message: str
) -> None:
    with pytest.raises(Unsolvable, match=message):
        solve(replace(laps(), choices=choices))


def many(number: int) -> Problem:
    """Cuts at one height each, or two, of which the second is the same for all."""
    tasks = []
    choices = []
    for cut in range(number):
        tasks.append(Task(f"own {cut}", "saw", (("height", f"own {cut}"),), 10))
        tasks.append(Task(f"same {cut}", "saw", (("height", "same"),), 12))
        options = (Option("own", (f"own {cut}",)), Option("same", (f"same {cut}",)))
        choices.append(Choice(f"cut {cut}", options))
    return Problem((SAW,), tuple(tasks), choices=tuple(choices))


def test_of_many_combinations_the_best_is_found_pick_by_pick() -> None:
    """Eight cuts: 8 * (10 + 10) each at its own height, 10 + 8 * 12 together."""
    assert FEW < 2**8
    result = solve(many(8))
    assert {option for _, option in result.picks} == {"same"}
    assert (result.totals.setup, result.totals.work) == (10, 96)
    assert (result.over, result.lower_bound, result.proven) == ("common tasks", 10, True)
    assert violations(many(8), result) == ()


def test_a_way_round_by_the_blade_of_an_option_is_in_the_bound(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """Rip to dado takes 50 at once, 20 by way of any other blade; there is always one, 3 * 10."""
    monkeypatch.setattr(attempts, "FEW", 0)
    blade = Axis("blade", 10, (("rip", "dado", 50),))
    tasks = (
        Task("rip", "saw", (("blade", "rip"),), 1),
        Task("dado", "saw", (("blade", "dado"),), 1),
        Task("cross", "saw", (("blade", "cross"),), 1),
        Task("mitre", "saw", (("blade", "mitre"),), 1),
    )
    options = (Option("square", ("cross",)), Option("mitred", ("mitre",)))
    problem = Problem(
        stations=(Station("saw", (blade,)),),
        tasks=tasks,
        precedences=(Precedence("rip", "dado", 0, "cut to width first"),),
        choices=(Choice("ends", options),),
    )
    result = solve(problem)
    assert violations(problem, result) == ()
    assert (result.totals.changeover, result.lower_bound, result.over) == (30, 30, "common tasks")
    assert changeover_bound(problem) == 30


def test_glimpses_get_no_worse_and_an_interrupt_keeps_the_best() -> None:
    seen: list[Glimpse] = []
    solve(many(8), effort=400, watch=seen.append)
    assert seen
    assert [glimpse.setup for glimpse in seen] == sorted((g.setup for g in seen), reverse=True)

    def interrupt(_: Glimpse) -> None:
        raise KeyboardInterrupt

    result = solve(many(8), effort=400, watch=interrupt)
    assert result.ended_early
    assert violations(many(8), result) == ()


def test_a_search_over_picks_can_be_ended_at_any_time() -> None:
    """Also while picks are searched that are no better, and while a bound is raised."""
    seen: list[Glimpse] = []
    solve(many(8), effort=400, watch=seen.append)
    for last in range(1, len(seen), 4):
        left = iter(range(last))

        def interrupt(_: Glimpse, left: Iterator[int] = left) -> None:
            if next(left, None) is None:
                raise KeyboardInterrupt

        result = solve(many(8), effort=400, watch=interrupt)
        assert result.ended_early
        assert violations(many(8), result) == ()
