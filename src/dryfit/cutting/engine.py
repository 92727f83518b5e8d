"""Is the stock enough, and what comes out of what? A table of contents of the answer."""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import replace

from dryfit.cutting.boxes import Steps
from dryfit.cutting.checker import violations
from dryfit.cutting.instance import Instance, compiled
from dryfit.cutting.layouts import layouts_of
from dryfit.cutting.least import Least
from dryfit.cutting.offcuts import offcuts_used
from dryfit.cutting.polish import polished
from dryfit.cutting.problem import Job
from dryfit.cutting.proof import alone, short_by_area, short_of
from dryfit.cutting.result import Answer, Layout, Missing, Proof
from dryfit.cutting.search import Search
from dryfit.cutting.sticks import filled, one_row

STEPS = 300_000
"""Steps of a proof for each blank and unit of effort: about a tenth of a second."""

PROVED = 25
"""More blanks than these get no more steps: a proof that takes longer is hardly ever found."""

QUICK = 5_000
"""As many steps for a proof that is tried early on, and that no cheaper boards are enough."""

MOST_AGAIN = 5_200
"""Twice so many rounds at most, for a unit of effort, where neither layout nor proof is found."""

MANY = 150
"""More blanks than these get no more rounds, each of which takes the longer."""

FEW = 30
"""So many blanks at most are also looked for on the first boards alone."""


def lay_out(
    job: Job, effort: int = 1, known: Sequence[Layout] = (), *, prove: bool = True
) -> Answer:
    """Whether the stock is enough, with the best layout found.

    effort  the search goes on for so many times 400 rounds and 80 for each blank at most, and
            twice that again where neither a layout nor a proof is found; with 0 it only begins.
            It ends earlier where it is proved that no cheaper boards are enough, or where long
            nothing was gained. The same job and effort give the same answer on every machine
    known   layouts that were found by other means: where they are sound, and hold more than what
            this search comes to, they are the answer
    prove   whether it is worth a long time to find out that the stock is not enough, or that it is

    Of up to 30 blanks that are laid out, boards added at the end of a job never turn "enough" into
    anything else, where a proof is worth its time. Raises `Malformed` for a job that contradicts
    itself.
    """
    instance = compiled(job)
    hopeless = alone(instance)
    if hopeless:
        answer = lay_out(_without(job, hopeless), effort, prove=prove)
        missing = _missing(job, answer.layouts)
        proofs = (*hopeless, *answer.proofs)
        return replace(answer, verdict="not enough", missing=missing, proofs=proofs)
    blanks = len(instance.blanks)
    rounds, patience = _rounds(blanks, effort), effort * (40 + 6 * blanks)
    search = _begun(instance)
    least = Least(instance, effort * QUICK * blanks)
    proofs = _searched(search, effort, least, prove=prove)
    layouts: tuple[Layout, ...] | None = None
    if search.best.lost and not proofs and prove:
        search.run(2 * min(rounds, effort * MOST_AGAIN), patience=0)
        if search.best.lost:
            layouts = _on_the_first_boards(job, effort)
        else:
            _cheapened(search, search.rounds + rounds // 2, effort, least)
    if layouts is None:
        best = offcuts_used(search, polished(search, rounds // 4, patience), patience)
        layouts = layouts_of(instance, best.boards)
    if search.best.lost and _hold_more(job, known, layouts):
        layouts = tuple(known)
    missing = _missing(job, layouts)
    faults = violations(job, layouts, missing)
    assert not faults, faults
    boards = {board.id: board for board in job.boards}
    return Answer(
        verdict="not enough" if proofs else "not found" if missing else "enough",
        layouts=layouts,
        missing=missing,
        proofs=proofs,
        value=sum(boards[layout.board].value for layout in layouts),
        price=sum(boards[layout.board].price or 0 for layout in layouts),
        work=search.bench.work,
        least=not missing and _least_worth(job, layouts, least),
    )


def _least_worth(job: Job, layouts: Sequence[Layout], least: Least) -> bool:
    """Whether the worth of layouts of everything is proved least."""
    numbers = {board.id: number for number, board in enumerate(job.boards)}
    return least.proved([numbers[layout.board] for layout in layouts])


def _begun(instance: Instance) -> Search:
    search = Search(instance)
    if one_row(instance):
        search.begin_with(filled(instance)[0])
    return search


def _rounds(blanks: int, effort: int) -> int:
    return effort * (400 + 80 * min(blanks, MANY))


def _searched(search: Search, effort: int, least: Least, *, prove: bool) -> tuple[Proof, ...]:
    """Search until everything has its place and no more is to be hoped for, or a proof is found."""
    blanks = len(search.instance.blanks)
    rounds = _rounds(blanks, effort)
    search.run(min(rounds, effort * (60 + 8 * blanks)), patience=effort * (10 + blanks))
    if search.best.lost:
        steps = Steps(effort * QUICK * blanks)
        proof = short_of(search.instance, steps)
        if proof is not None:
            search.run(rounds - search.rounds, patience=effort * (40 + 30 * blanks), settled=True)
            return (proof,)
        search.run(rounds - search.rounds, patience=0)
        if prove and search.best.lost and steps.left < 0:
            proof = short_of(search.instance, Steps(effort * STEPS * min(blanks, PROVED)))
        if search.best.lost:
            return () if proof is None else (proof,)
    _cheapened(search, rounds, effort, least)
    return ()


def _cheapened(search: Search, rounds: int, effort: int, least: Least) -> None:
    """Search on for less stock, until there is a proof or little hope that there is none."""
    blanks = len(search.instance.blanks)
    soon, late = effort * (10 + blanks), effort * (40 + 3 * blanks * blanks)
    while search.rounds < rounds:
        before = search.run(rounds - search.rounds, patience=soon)
        if least.proved([board.stock for board in before.boards]):
            return
        if search.run(rounds - search.rounds, before.worth - 1, patience=late) is before:
            return


def _without(job: Job, hopeless: Sequence[Proof]) -> Job:
    """The job without parts that fit no board, and without what belongs to them."""
    names = {name for proof in hopeless for name in proof.parts}
    groups = {part.group for part in job.parts if part.id in names} - {""}
    parts = tuple(p for p in job.parts if p.id not in names and p.group not in groups)
    return replace(job, parts=parts)


def _on_the_first_boards(job: Job, effort: int) -> tuple[Layout, ...] | None:
    """Layouts of everything that are found on the first boards alone."""
    for first in _beginnings(job):
        instance = compiled(first)
        search = Search(instance)
        search.run(3 * _rounds(len(instance.blanks), effort), patience=0)
        if not search.best.lost:
            return layouts_of(instance, search.best.boards)
    return None


def _beginnings(job: Job) -> Iterator[Job]:
    """The job with ever fewer boards, while these might be enough."""
    if sum(part.quantity for part in job.parts) > FEW:
        return
    for count in range(len(job.boards) - 1, 0, -1):
        first = replace(job, boards=job.boards[:count])
        instance = compiled(first)
        if alone(instance) or short_by_area(instance):
            return
        yield first


def _hold_more(job: Job, known: Sequence[Layout], found: Sequence[Layout]) -> bool:
    faces = [
        sum(piece.area.size for layout in layouts for piece in layout.pieces)
        for layouts in (known, found)
    ]
    return faces[0] > faces[1] and not violations(job, known, _missing(job, known))


def _missing(job: Job, layouts: Sequence[Layout]) -> tuple[Missing, ...]:
    cut = Counter(piece.part for layout in layouts for piece in layout.pieces)
    return tuple(
        Missing(part.id, part.quantity - cut[part.id])
        for part in job.parts
        if cut[part.id] < part.quantity
    )
