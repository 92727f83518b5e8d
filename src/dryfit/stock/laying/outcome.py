"""Blanks laid out on boards, job by job: what was found, and what it costs."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

from dryfit.cutting import Answer, Job, Layout, Piece
from dryfit.cutting import lay_out as _lay_out
from dryfit.shop.shop import Shop
from dryfit.stock.blanks.blank import Blank
from dryfit.stock.laid_out import StockBoard, Verdict
from dryfit.stock.laying.job import Split, splits_of

KEPT = 256
"""So many answers are kept, for whoever asks the same again in one run."""


@dataclass(frozen=True, slots=True)
class Outcome:
    """Jobs that share nothing with their answers; `none` are blanks without any board."""

    splits: tuple[Split, ...]
    answers: tuple[Answer, ...]
    none: tuple[Blank, ...]

    @property
    def pairs(self) -> Iterator[tuple[Split, Answer]]:
        """Each job with its answer."""
        return zip(self.splits, self.answers, strict=True)

    @property
    def verdict(self) -> Verdict:
        """Whether all blanks were laid out, or surely cannot be."""
        said = {answer.verdict for answer in self.answers}
        if self.none or "not enough" in said:
            return "not enough"
        return "not found" if "not found" in said else "enough"

    @property
    def work(self) -> int:
        """Counted steps of the searches."""
        return sum(answer.work for answer in self.answers)

    @property
    def pieces(self) -> Iterator[tuple[StockBoard, Piece]]:
        """Each blank that was laid out, with its board."""
        for split, answer in self.pairs:
            for layout in answer.layouts:
                for piece in layout.pieces:
                    yield split.board(layout.board, layout.copy), piece

    @property
    def lost(self) -> int:
        """How much face of the parts was not laid out, in square mm, rounded."""
        counts = [(blank, blank.count) for blank in self.none]
        for split, answer in self.pairs:
            counts += [(split.blank(one.part), one.copies) for one in answer.missing]
        return sum(
            round(blank.each * blank.part.cut_length * blank.to_width) * count
            for blank, count in counts
        )

    @property
    def cost(self) -> tuple[int, int, int]:
        """The price of what is bought, how many boards these are, and the value of all boards."""
        boards = [
            split.board(layout.board, layout.copy)
            for split, answer in self.pairs
            for layout in answer.layouts
            if layout.pieces
        ]
        return (
            sum(answer.price for answer in self.answers),
            sum(not board.on_hand for board in boards),
            sum(answer.value for answer in self.answers),
        )


def laid_out(
    blanks: Sequence[Blank],
    boards: Sequence[StockBoard],
    shop: Shop,
    effort: int,
    *,
    sparing: bool = False,
    known: tuple[Layout, ...] = (),
    prove: bool = True,
) -> Outcome:
    """Return what comes of laying out the blanks on the boards, `sparing` the thick ones.

    Layouts that are `known` serve where no others are found.  Without `prove` it is not asked for
    long whether they are surely too few.
    """
    splits, none = splits_of(blanks, boards, shop, sparing=sparing)
    answers = tuple(answer_of(split, effort, known, prove=prove) for split in splits)
    return Outcome(splits, answers, none)


def all_of(outcomes: Sequence[Outcome]) -> Outcome:
    """Return outcomes that share nothing as one."""
    return Outcome(
        tuple(split for one in outcomes for split in one.splits),
        tuple(answer for one in outcomes for answer in one.answers),
        tuple(blank for one in outcomes for blank in one.none),
    )


def answer_of(split: Split, effort: int, known: tuple[Layout, ...], *, prove: bool) -> Answer:
    """Return the answer to a job, where "not enough" is proved of the least that it may take."""
    names = {name for name, _ in split.boards}
    own = tuple(layout for layout in known if layout.board in names)
    answer = answered(split.job, effort, own, prove=prove)
    if split.least is None or answer.verdict == "enough":
        return answer
    proved = answered(split.least, effort if prove else 0)
    if proved.verdict == "not enough":
        return replace(answer, verdict="not enough", proofs=proved.proofs)
    return replace(answer, verdict="not found", proofs=())


@lru_cache(maxsize=KEPT)
def answered(
    job: Job, effort: int, known: tuple[Layout, ...] = (), *, prove: bool = True
) -> Answer:
    """Return the answer to a job; the same is worked out once."""
    return _lay_out(job, effort, known, prove=prove)
