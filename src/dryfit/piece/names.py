"""The names that a piece declares, and the finding when a reference meets none of them."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from difflib import get_close_matches

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.notes.tree import Reference
from dryfit.piece.declared import Host, inner_name


def full_name(reference: Reference) -> str:
    """Return the name of what is meant in the whole piece: ``boxes' side`` is box > side."""
    return reference.name if reference.of is None else inner_name(reference.of, reference.name)


@dataclass(slots=True)
class Names:
    """Parts and stages by canonical name; `unreadable` names are never complained about.

    `inner` holds, by the part whose line uses a pattern, what the pattern calls its own;
    `openings` are the names of spaces between parts.
    """

    parts: frozenset[str]
    stages: frozenset[str]
    unreadable: frozenset[str]
    findings: list[Diagnostic] = field(default_factory=list)
    inner: Mapping[str, frozenset[str]] = field(default_factory=dict)
    openings: frozenset[str] = frozenset()

    def hosts(self, references: Iterable[Reference]) -> tuple[Host, ...]:
        """Return the parts and openings that are named; a stage stands for none (finding)."""
        return tuple(
            Host(full_name(reference), reference.places, reference.span)
            for reference in references
            if reference.name in self.openings or self.is_part(reference)
        )

    def subjects(self, references: Iterable[Reference]) -> tuple[Host, ...]:
        """Return the parts and glue-ups that the references name."""
        return tuple(
            Host(full_name(reference), reference.places, reference.span)
            for reference in references
            if self.is_part_or_stage(reference)
        )

    def is_part(self, reference: Reference) -> bool:
        """Return whether the reference names a part; adds a finding when it does not."""
        if reference.of is not None:
            return self._is_inside(reference, reference.of)
        if reference.name in self.parts:
            return True
        if reference.name not in self.unreadable:
            self._unknown(reference, "part", sorted(self.parts))
        return False

    def is_part_or_stage(self, reference: Reference) -> bool:
        """Return whether the reference names a part or a glue-up; finding when neither."""
        if reference.of is not None:
            return self._is_inside(reference, reference.of)
        if reference.name in self.parts or reference.name in self.stages:
            return True
        if reference.name not in self.unreadable:
            known = sorted(self.parts | self.stages)
            self._unknown(reference, "part or glue-up", known)
        return False

    def stage(self, name: str, reference: Reference) -> str | None:
        """Return the stage's name, or None with a finding when no glue-up is called that.

        An instance of a pattern stands for the last glue-up inside it.
        """
        if name in self.stages or name in self.inner:
            return name
        if name not in self.unreadable:
            self._unknown(reference, "glue-up", sorted(self.stages))
        return None

    def _is_inside(self, reference: Reference, instance: str) -> bool:
        names = self.inner.get(instance)
        if names is not None and reference.name in names:
            return True
        if names is not None:
            self._unknown(reference, f"part of the {instance}", sorted(names))
        elif instance not in self.unreadable:
            self._no_pattern(reference, instance)
        return False

    def _no_pattern(self, reference: Reference, instance: str) -> None:
        self.findings.append(
            Diagnostic(
                "no-parts-inside",
                Severity.ERROR,
                f"`{instance}` is made by no pattern, so it has no parts of its own",
                reference.span,
                rule="H38",
                hints=(Hint(f"write `{reference.name}` alone if that is a part of the piece"),),
            )
        )

    def _unknown(self, reference: Reference, what: str, known: list[str]) -> None:
        near = get_close_matches(reference.name, known, n=1)
        listed = ", ".join(f"`{name}`" for name in known[:8]) or "none"
        hint = f"did you mean `{near[0]}`?" if near else f"the names are: {listed}"
        self.findings.append(
            Diagnostic(
                "unknown-part",
                Severity.ERROR,
                f"no {what} is called `{reference.name}`",
                reference.span,
                rule="H38",
                hints=(Hint(hint),),
            )
        )
