"""Is the stock enough, and what comes out of what? A table of contents of the answer."""

from collections import Counter
from collections.abc import Sequence

from dryfit.cutting.checker import violations
from dryfit.cutting.instance import compiled
from dryfit.cutting.layouts import layouts_of
from dryfit.cutting.polish import polished
from dryfit.cutting.problem import Job
from dryfit.cutting.result import Answer, Layout, Missing
from dryfit.cutting.search import Search


def lay_out(job: Job, effort: int = 1, known: Sequence[Layout] = ()) -> Answer:
    """Whether the stock is enough, with the best layout found.

    effort  the search goes on for so many times 400 rounds and 40 for each blank; the same job
            and effort give the same answer on every machine
    known   layouts found before, on less stock: if they still hold every part, the answer is
            "enough" whatever this search finds

    Raises `Malformed` for a job that contradicts itself.
    """
    instance = compiled(job)
    search = Search(instance)
    rounds = effort * (400 + 40 * len(instance.blanks))
    search.run(rounds)
    state = polished(search, rounds // 4)
    layouts = layouts_of(instance, state.boards)
    if state.lost and known and not violations(job, known):
        layouts = tuple(known)
    missing = _missing(job, layouts)
    faults = violations(job, layouts, missing)
    assert not faults, faults
    boards = {board.id: board for board in job.boards}
    return Answer(
        verdict="not found" if missing else "enough",
        layouts=layouts,
        missing=missing,
        proof=None,
        value=sum(boards[layout.board].value for layout in layouts),
        price=sum(boards[layout.board].price or 0 for layout in layouts),
        work=search.bench.work,
    )


def _missing(job: Job, layouts: Sequence[Layout]) -> tuple[Missing, ...]:
    cut = Counter(piece.part for layout in layouts for piece in layout.pieces)
    return tuple(
        Missing(part.id, part.quantity - cut[part.id])
        for part in job.parts
        if cut[part.id] < part.quantity
    )
