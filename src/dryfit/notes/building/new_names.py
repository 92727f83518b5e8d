"""The name that a line declares."""

from __future__ import annotations

from lark import Token

from dryfit.diagnostics import Hint
from dryfit.notes.building.draft import Draft, ends, text_of
from dryfit.notes.limits import LONGEST_NAME
from dryfit.notes.mistake import Repair
from dryfit.notes.reading.word_kinds import RESERVED

_SOLD_TOO = frozenset({"clip", "tabletop clip", "figure 8 plate", "screw", "dowel"})


def check_name(name: Token, draft: Draft) -> None:
    """Check that the name is no word of the language, and that it can be printed."""
    check_length(name, draft)
    if text_of(name) in RESERVED and not _is_bought(name, draft):
        draft.error(
            "trade-word",
            f"`{written_name(name, draft)}` is a word of the language and cannot name a part",
            draft.span(name),
            Repair(
                "add a word that tells it apart",
                draft.span(name),
                f"long {written_name(name, draft)}",
            ),
            Repair("add a word that tells it apart", draft.span(name), f"{text_of(name)} piece"),
        )


def _is_bought(name: Token, draft: Draft) -> bool:
    """Return whether a line buys what is called as a joint is: ``bought 8 shelf pins``."""
    opener = draft.line.text.split(maxsplit=1)[0].rstrip(":").lower()
    return opener == "bought" and text_of(name) in _SOLD_TOO


def check_length(name: Token, draft: Draft) -> None:
    """Check that the name is short enough for a list of parts."""
    if len(written_name(name, draft)) > LONGEST_NAME:
        draft.error(
            "name-too-long",
            f"a name can have {LONGEST_NAME} characters at most",
            draft.span(name),
            Hint("give it a short name, and say the rest in a line `note ...`"),
        )


def written_name(name: Token, draft: Draft) -> str:
    """Return the name as it was typed, with single blanks between its words."""
    start, end = ends(name)
    return " ".join(draft.line.text[start:end].split())
