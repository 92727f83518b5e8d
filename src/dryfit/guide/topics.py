"""The subjects of `dryfit help`, and the page on each."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from dryfit.guide.colours import colours_json
from dryfit.guide.joints import joints_text
from dryfit.guide.language import language_text
from dryfit.guide.patterns import patterns_text
from dryfit.guide.words import words_text


@dataclass(frozen=True, slots=True)
class Topic:
    """A subject: its name on the command line, what it is in a few words, and its page."""

    name: str
    says: str
    text: Callable[[], str]


TOPICS: tuple[Topic, ...] = (
    Topic("language", "every form of a sentence with an example", language_text),
    Topic("joints", "every family of joints: what it is, and a line that makes it", joints_text),
    Topic("patterns", "every pattern: its sketch, and what it can be told", patterns_text),
    Topic("words", "all words, what else they may be called, what cannot be a name", words_text),
    Topic(
        "colours", "the language for an editor's syntax colouring (TextMate, JSON)", colours_json
    ),
)


def topic(name: str) -> Topic | None:
    """Return the subject of that name, or None."""
    return next((known for known in TOPICS if known.name == name), None)


def topics_text() -> str:
    """Return the list of subjects as plain text, ending in a newline."""
    width = max(len(known.name) for known in TOPICS)
    rows = "\n".join(f"  {known.name.ljust(width)}  {known.says}" for known in TOPICS)
    return (
        f"dryfit help TOPIC, where TOPIC is one of\n\n{rows}\n\n"
        "On a command: dryfit COMMAND --help. On the code of a finding: dryfit explain CODE.\n"
    )
