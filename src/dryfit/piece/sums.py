"""Working out sums: values, sizes of parts and of the whole, with their kinds."""

from __future__ import annotations

from collections.abc import Mapping
from contextlib import suppress
from dataclasses import dataclass, field
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity, Span
from dryfit.notes.tree import (
    LeftOut,
    Number,
    Operation,
    OverallSize,
    PartSize,
    Sum,
    ValueLine,
    ValueName,
)
from dryfit.piece.declared import Amount, Behind
from dryfit.piece.leaning import LinearForm, NotLinearError, of_figure
from dryfit.piece.references import behind, is_bare
from dryfit.piece.sum_findings import (
    chain_too_long,
    circle,
    no_such_size,
    not_known_here,
    not_linear,
    size_huge,
    wrong_kind,
)
from dryfit.quantities import ANGLE, LENGTH, NUMBER, TIME, UNITS, Display, KindError, Quantity
from dryfit.quantities.kinds import Kind

# Deeper chains are a mistake or an attack; 80 links is far beyond any real piece (measured in
# the language experiment, where a chain of 998 values exhausted the stack).
LONGEST_CHAIN = 80
# No figure of a workshop needs more; without a limit a chain of products doubles in length at
# every link.
MOST_BITS = 200
LONGEST_BOARD = Fraction(6000)


class UnresolvedError(Exception):
    """A sum that cannot be worked out; its diagnostic has been recorded once already."""


@dataclass(slots=True)
class Sums:
    """Evaluates sums of one set of notes; findings gather in `findings`.

    `sizes` maps (part, dimension) to the sum written on the part's line; `overall` maps width,
    depth, height; `unreadable` names what has a mistake of its own.  `spaces` are openings and
    instances of patterns, which have a width, a depth and a height.  Each value is worked out
    once, and a value that failed fails quietly again; `failures` counts the sums that came to
    nothing, told or not.

    A size that no line writes is known once the piece is placed: an `amount` may lean on it, a
    `length` and a `size` may not.
    """

    unit: str
    display: Display
    values: Mapping[str, ValueLine]
    sizes: Mapping[tuple[str, str], Sum]
    overall: Mapping[str, Sum]
    parts: frozenset[str]
    unreadable: frozenset[str] = frozenset()
    spaces: frozenset[str] = frozenset()
    findings: list[Diagnostic] = field(default_factory=list)
    failures: int = 0
    _known: dict[str, LinearForm | None] = field(default_factory=dict)
    _trail: list[str] = field(default_factory=list)

    def length(self, amount: Sum) -> Fraction | None:
        """Return the sum in mm, or None with a finding when it is no length that is known."""
        return self._known_value(amount, LENGTH)

    def minutes(self, amount: Sum) -> int | None:
        """Return the sum in whole minutes, or None with a finding when it is no time."""
        value = self._known_value(amount, TIME)
        if value is not None and value < 0:
            self._add(
                "time-not-positive",
                "this comes to less than no time",
                amount.span,
                "write a time such as `1 h` or `45 min`",
            )
            self.failures += 1
            return None
        return None if value is None else round(value)

    def size(self, amount: Sum) -> Fraction | None:
        """Return a length that must be known and more than nothing, in mm."""
        value = self.length(amount)
        return value if value is not None and self._is_a_size(value, amount.span) else None

    def size_amount(self, amount: Sum, span: Span) -> Amount | None:
        """Return a size with what it refers to; it may lean on sizes that are known later."""
        told = self.amount(amount, span)
        if told is None or told.leans or self._is_a_size(told.value, amount.span):
            return told
        return None

    def _is_a_size(self, value: Fraction, span: Span) -> bool:
        if value <= 0:
            self._add(
                "size-not-positive",
                f"this comes to {self.display.with_unit(value)}: a size must be more than nothing",
                span,
                "write a size greater than 0",
            )
            self.failures += 1
            return False
        if value > LONGEST_BOARD:
            self._tell(size_huge(value, span, self.display, self.unit))
        return True

    def degrees(self, amount: Sum) -> Fraction | None:
        """Return an angle in degrees, a bare number taken for one, or None with a finding."""
        return self._known_value(amount, ANGLE)

    def amount(self, amount: Sum, span: Span) -> Amount | None:
        """Return the sum as a length with all that it leans on, or None with a finding."""
        form = self._of_kind(amount, LENGTH)
        if form is None:
            return None
        return Amount(form.constant.value, span, self.behind(amount), form.leans)

    def measure(self, amount: Sum, span: Span) -> Amount | None:
        """Return the sum as a length that must be known, with what it refers to."""
        value = self.length(amount)
        return None if value is None else Amount(value, span, self.behind(amount))

    def quietly(self, amount: Sum, span: Span) -> Amount | None:
        """Return a length as `amount` does, or None; what is wrong with it is told elsewhere."""
        told, failures = len(self.findings), self.failures
        found = self.amount(amount, span)
        del self.findings[told:]
        self.failures = failures
        return found

    def work_out_values(self) -> None:
        """Work out also the values that nothing refers to; findings as for all others."""
        for line in self.values.values():
            with suppress(UnresolvedError):
                self._named(f"value {line.name}", line.name, line.span)

    def behind(self, *amounts: Sum) -> Behind:
        """Return what sums refer to, values followed to their own lines."""
        return behind(amounts, self.values)

    def _known_value(self, amount: Sum, kind: Kind) -> Fraction | None:
        form = self._of_kind(amount, kind)
        if form is not None and form.leans:
            self._tell(not_known_here(form, amount.span))
            self.failures += 1
            return None
        return None if form is None else form.constant.value

    def _of_kind(self, amount: Sum, kind: Kind) -> LinearForm | None:
        form = self._worked_out(amount, kind)
        self.failures += form is None
        return form

    def _worked_out(self, amount: Sum, kind: Kind) -> LinearForm | None:
        try:
            form = self._as_measure(amount, self._value(amount), kind)
        except UnresolvedError:
            return None
        except KindError as error:
            self._mixed(error, amount.span)
            return None
        except NotLinearError:
            self._tell(not_linear(amount.span))
            return None
        if form.constant.kind != kind:
            self._tell(wrong_kind(amount.span, kind, form.constant.kind))
            return None
        return form

    def _as_measure(self, amount: Sum, form: LinearForm, kind: Kind) -> LinearForm:
        # Only what is written as a bare number is meant in the file's unit; a ratio of two
        # lengths is no length.
        number = form.constant
        if number.kind == NUMBER and kind == LENGTH and is_bare(amount, self.values):
            return LinearForm(Quantity(number.value * UNITS[self.unit].size, LENGTH))
        if number.kind == NUMBER and kind == ANGLE:
            return LinearForm(Quantity(number.value, ANGLE))
        return form

    def _value(self, amount: Sum) -> LinearForm:
        if isinstance(amount, LeftOut):
            raise UnresolvedError
        if isinstance(amount, Number):
            return LinearForm(amount.quantity or Quantity(amount.value, NUMBER))
        if isinstance(amount, ValueName):
            return self._named(f"value {amount.name}", amount.name, amount.span)
        if isinstance(amount, OverallSize):
            return self._overall(amount)
        if isinstance(amount, PartSize):
            return self._part_size(amount)
        return self._operation(amount)

    def _operation(self, amount: Operation) -> LinearForm:
        left, right = self._value(amount.left), self._value(amount.right)
        if amount.sign in "+-":
            # A bare number beside a measure is a length in the file's unit.
            if right.constant.kind != NUMBER:
                left = self._as_measure(amount.left, left, LENGTH)
            if left.constant.kind != NUMBER:
                right = self._as_measure(amount.right, right, LENGTH)
            result = left.plus(right) if amount.sign == "+" else left.minus(right)
        else:
            result = left.times(right) if amount.sign == "*" else left.over(right)
        if result.most_bits() > MOST_BITS:
            self._add("number-too-long", "this sum has too many digits", amount.span, "round it")
            raise UnresolvedError
        return result

    def _named(self, key: str, name: str, span: Span) -> LinearForm:
        line = self.values.get(name)
        if line is None:
            # A name is a value's by its line alone: that line is broken, and this has been told.
            raise UnresolvedError
        return self._followed(key, line.amount, span)

    def _overall(self, amount: OverallSize) -> LinearForm:
        target = self.overall.get(amount.dimension)
        if target is None:
            self._add(
                "no-overall",
                f"the overall {amount.dimension} is not written",
                amount.span,
                "add it to the `overall` line",
            )
            raise UnresolvedError
        return self._measured(f"overall {amount.dimension}", target, amount.span)

    def _part_size(self, amount: PartSize) -> LinearForm:
        if amount.part in self.unreadable:
            raise UnresolvedError
        finding = no_such_size(amount, self.parts, self.spaces)
        if finding is not None:
            self._tell(finding)
            raise UnresolvedError
        target = self.sizes.get((amount.part, amount.dimension))
        if target is None:
            return of_figure(amount.part, amount.dimension)
        return self._measured(f"{amount.part}.{amount.dimension}", target, amount.span)

    def _measured(self, key: str, target: Sum, span: Span) -> LinearForm:
        return self._as_measure(target, self._followed(key, target, span), LENGTH)

    def _followed(self, key: str, target: Sum, span: Span) -> LinearForm:
        if key in self._known:
            known = self._known[key]
            if known is None:
                raise UnresolvedError
            return known
        if key in self._trail:
            self._tell(circle([*self._trail[self._trail.index(key) :], key], span))
            raise UnresolvedError
        if len(self._trail) >= LONGEST_CHAIN:
            self._tell_once(chain_too_long(LONGEST_CHAIN, span))
            raise UnresolvedError
        self._trail.append(key)
        try:
            self._known[key] = value = self._value(target)
        except KindError as error:
            self._mixed(error, target.span)
            self._known[key] = None
            raise UnresolvedError from error
        except NotLinearError as error:
            self._tell(not_linear(target.span))
            self._known[key] = None
            raise UnresolvedError from error
        except UnresolvedError:
            # The same mistake is told once: whoever asks again fails quietly.
            self._known[key] = None
            raise
        finally:
            self._trail.pop()
        return value

    def _mixed(self, error: KindError, span: Span) -> None:
        self._add("mixed-kinds", str(error), span, "look at the units of both")

    def _add(self, code: str, message: str, span: Span, hint: str) -> None:
        self._tell(Diagnostic(code, Severity.ERROR, message, span, hints=(Hint(hint),)))

    def _tell_once(self, finding: Diagnostic) -> None:
        # The rest of a chain that is too long is too long again.
        if all(each.code != finding.code for each in self.findings):
            self._tell(finding)

    def _tell(self, finding: Diagnostic) -> None:
        if finding not in self.findings:
            self.findings.append(finding)
