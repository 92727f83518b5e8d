"""The examples and the test pieces as texts, read and checked by the shipped shop file."""

from fractions import Fraction
from functools import cache
from pathlib import Path

from dryfit import workshop
from dryfit.diagnostics import Diagnostic, Severity, Source
from dryfit.notes import source_of
from dryfit.placing.model import Model
from dryfit.workshop import Checked

HERE = Path(__file__).resolve().parent
EXAMPLES = HERE.parents[1] / "examples"
FILES = {path.stem: path for path in sorted((*EXAMPLES.glob("*.dryfit"), *HERE.glob("*.dryfit")))}


def text_of(name: str) -> str:
    """The notes of an example or test piece."""
    return FILES[name].read_text(encoding="utf-8")


def without_boards(text: str) -> str:
    """The notes without their lines of wood, so that nothing is laid out."""
    lines = text.splitlines(keepends=True)
    return "".join(line for line in lines if not line.startswith(("have ", "buy ")))


def checked(text: str, name: str = "notes.dryfit") -> Checked:
    """Notes read, declared, placed and checked with the shipped shop file."""
    source = source_of(name, text.encode())
    assert isinstance(source, Source), source
    return workshop.check(source, None, {})


@cache
def checked_piece(name: str) -> Checked:
    """An example or test piece, checked once for all tests of a process."""
    return checked(text_of(name), f"{name}.dryfit")


@cache
def model_of_piece(name: str) -> Model:
    """The Model of an example or test piece, placed once for all tests of a process."""
    return _sound(checked_piece(name))


def model_of(text: str) -> Model:
    """The Model of notes that have no error."""
    return _sound(checked(text))


def _sound(found: Checked) -> Model:
    assert not errors(found), [finding.message for finding in errors(found)]
    assert found.model is not None
    return found.model


def errors(found: Checked) -> list[Diagnostic]:
    """The findings that keep the piece from being built."""
    return [finding for finding in found.findings if finding.severity is Severity.ERROR]


def codes(found: Checked) -> list[str]:
    """The codes of all findings, sorted."""
    return sorted(finding.code for finding in found.findings)


def mm(*values: int) -> tuple[Fraction, ...]:
    """Whole millimetres as the exact lengths that the Model holds."""
    return tuple(Fraction(value) for value in values)


def changed(text: str, *changes: tuple[str, str]) -> str:
    """The notes with words replaced; every word to be replaced must be there."""
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new)
    return text
