"""Boot benches of many sizes: every cut follows from its feature, and no plan breaks a rule."""

from collections import Counter
from fractions import Fraction

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from tests.pieces.reading import FILES, changed, checked, checked_piece, text_of
from tests.unit.operations.worked import shipped_shop

from dryfit.operations import work_list
from dryfit.order import solve, violations
from dryfit.placing.model import Model
from dryfit.plan.operation import Operation, Work, WorkList
from dryfit.plan.setting import Setting
from dryfit.planning.problem_of import problem_of

SLED_BASE = 12
KINDS_OF_MILLING = ("rough length", "face", "edge", "thickness", "width", "length")


@st.composite
def benches(draw: st.DrawFn) -> str:
    """Notes of a boot bench; sizes in half millimetres, so that nothing comes out round."""

    def size(low: int, high: int) -> str:
        half = draw(st.integers(2 * low, 2 * high))
        return f"{half // 2}.5" if half % 2 else str(half // 2)

    wide, deep = size(700, 1400), size(320, 420)
    post, rail = size(40, 55), size(38, 52)
    thick = size(26, 34)
    return changed(
        text_of("boot_bench"),
        ("1000 wide, 360 deep", f"{wide} wide, {deep} deep"),
        ("facing side, 45 x 30", f"facing side, {post} x {thick}"),
        ("on edge, 45 x 30", f"on edge, {rail} x {thick}"),
        ("up 80", f"up {size(60, 140)}"),
        ("6 wide, 9 deep, 12 from top", f"{size(4, 9)} wide, {size(6, 9)} deep, 12 from top"),
    )


def model_and_work(text: str) -> tuple[Model, WorkList]:
    found = checked(text)
    assume(found.model is not None)
    assert found.model is not None
    work, _ = work_list(found.model, shipped_shop())
    assert work is not None
    return found.model, work


def axis(operation: Operation, name: str) -> Setting:
    return next(each for each in operation.settings if each.axis == name)


def kerf_of(operation: Operation) -> Fraction:
    stop = next(s for s in operation.settings if s.to == "near" and s.far is not None)
    assert stop.far is not None
    assert isinstance(stop.value, Fraction)
    return stop.far - stop.value


@settings(max_examples=25)
@given(benches())
def test_every_feature_of_every_copy_is_cut_exactly_once(text: str) -> None:
    model, work = model_and_work(text)
    wanted = Counter(
        (copy.name, feature.id)
        for part in model.parts
        for copy in part.copies
        for feature in part.features
        if copy.hand in feature.hands
    )
    done: Counter[tuple[str, str]] = Counter()
    for operation in work.operations:
        done.update(
            (name, feature)
            for row in operation.work
            for name in row.copies
            for feature in row.features
            if not operation.id.endswith(("/ 2", "/ 3", "/ 4"))
        )
    assert done == wanted


@settings(max_examples=25)
@given(benches())
def test_every_copy_is_milled_exactly_once(text: str) -> None:
    model, work = model_and_work(text)
    for kind in KINDS_OF_MILLING:
        done = Counter(
            name
            for operation in work.operations
            if operation.kind == kind and not operation.id.startswith("top /")
            for row in operation.work
            for name in row.copies
        )
        if kind == "length":
            done.update(next(o for o in work.operations if o.id == "top / length").work[0].copies)
        pieces = [
            name
            for part in model.parts
            if not part.made
            for name in (
                [copy.name for copy in part.copies]
                if part.staves is None or kind == "length"
                else [f"{part.name} stave {n}" for n in range(1, part.staves.count + 1)]
            )
        ]
        assert done == Counter(pieces), kind


@settings(max_examples=25)
@given(benches())
def test_settings_follow_from_the_features(text: str) -> None:
    model, work = model_and_work(text)
    for operation in work.operations:
        for row in operation.work:
            if row.features and operation.kind in {"lap", "tenon cheek", "tenon shoulder"}:
                _check_cross_cut(model, operation, row)
            if row.features and operation.kind == "mortise":
                _check_mortise(model, operation, row)
    _check_groove(model, work)


def _check_cross_cut(model: Model, operation: Operation, row: Work) -> None:
    if operation.station == "bench":
        return
    part = model.part(row.part)
    for feature in (each for each in part.features if each.id in row.features):
        assert axis(operation, "height").value == feature.depth + SLED_BASE
        assert row.hold is not None
        assert row.hold.down == feature.surface
        stop = axis(operation, "stop")
        low, high = feature.along
        if row.hold.at_stop == "R2":
            low, high = part.length - high, part.length - low
        assert stop.far == high
        spacers = [each.spacer for each in row.passes if each.spacer is not None]
        if low > 0 and high - low > kerf_of(operation):
            assert spacers == [high - low - kerf_of(operation)]
        else:
            assert spacers == []


def _check_mortise(model: Model, operation: Operation, row: Work) -> None:
    if operation.station == "bench":
        return
    part = model.part(row.part)
    (feature,) = (each for each in part.features if each.id in row.features)
    stop, fence = axis(operation, "stop"), axis(operation, "fence")
    assert (stop.value, stop.far) == feature.along
    assert (fence.value, fence.far) == feature.across
    assert axis(operation, "depth").value == feature.depth


def _check_groove(model: Model, work: WorkList) -> None:
    (groove,) = (f for f in model.part("apron").features if f.role == "groove")
    passes = [
        axis(operation, "fence")
        for operation in work.operations
        if operation.id.startswith("apron / groove") and operation.station == "table saw"
    ]
    if passes:
        assert min(Fraction(str(each.value)) for each in passes) == groove.across[0]
        assert max(each.far for each in passes if each.far is not None) == groove.across[1]


@settings(max_examples=8)
@given(benches())
def test_no_plan_breaks_a_rule(text: str) -> None:
    problem = problem_of(model_and_work(text)[1], shipped_shop())
    assert violations(problem, solve(problem, effort=0)) == ()


@pytest.mark.parametrize("name", sorted(FILES))
def test_every_piece_that_can_be_placed_can_be_built(name: str) -> None:
    found = checked_piece(name)
    if found.model is None:
        pytest.skip("not placed yet")
    work, findings = work_list(found.model, shipped_shop())
    assert work is not None, findings
    problem = problem_of(work, shipped_shop())
    assert violations(problem, solve(problem, effort=0)) == ()
