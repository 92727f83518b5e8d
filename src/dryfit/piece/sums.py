"""Working out sums: values, sizes of parts and of the whole, with their kinds."""

from __future__ import annotations

from collections.abc import Mapping
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
from dryfit.piece.kind_advice import kind_advice
from dryfit.piece.references import behind, is_bare
from dryfit.quantities import LENGTH, NUMBER, TIME, UNITS, Display, KindError, Quantity
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
    depth, height; `unreadable` names what has a mistake of its own.  Each value is worked out
    once, and a value that failed fails quietly again; `failures` counts the sums that came to
    nothing, told or not.
    """

    unit: str
    display: Display
    values: Mapping[str, ValueLine]
    sizes: Mapping[tuple[str, str], Sum]
    overall: Mapping[str, Sum]
    parts: frozenset[str]
    unreadable: frozenset[str] = frozenset()
    findings: list[Diagnostic] = field(default_factory=list)
    failures: int = 0
    _known: dict[str, Quantity | None] = field(default_factory=dict)
    _trail: list[str] = field(default_factory=list)

    def length(self, amount: Sum) -> Fraction | None:
        """Return the sum in mm, or None with a finding when it is no length."""
        return self._of_kind(amount, LENGTH)

    def minutes(self, amount: Sum) -> int | None:
        """Return the sum in whole minutes, or None with a finding when it is no time."""
        value = self._of_kind(amount, TIME)
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
        """Return a length that must be more than nothing, in mm."""
        value = self.length(amount)
        if value is not None and value <= 0:
            self._add(
                "size-not-positive",
                f"this comes to {self.display.with_unit(value)}: a size must be more than nothing",
                amount.span,
                "write a size greater than 0",
            )
            self.failures += 1
            return None
        if value is not None and value > LONGEST_BOARD:
            self._ask_whether_huge(value, amount.span)
        return value

    def _ask_whether_huge(self, value: Fraction, span: Span) -> None:
        finding = Diagnostic(
            "size-huge",
            Severity.QUESTION,
            f"{self.display.with_unit(value)} is longer than any board; is that meant?",
            span,
            rule="H37",
            figures={"size": value},
            hints=(Hint(f"numbers without a unit are in {self.unit}"),),
        )
        if finding not in self.findings:
            self.findings.append(finding)

    def amount(self, amount: Sum, span: Span) -> Amount | None:
        """Return the sum as a length with what it refers to, or None with a finding."""
        value = self.length(amount)
        return None if value is None else Amount(value, span, self.behind(amount))

    def behind(self, *amounts: Sum) -> Behind:
        """Return what sums refer to, values followed to their own lines."""
        return behind(amounts, self.values)

    def _of_kind(self, amount: Sum, kind: Kind) -> Fraction | None:
        value = self._worked_out(amount, kind)
        self.failures += value is None
        return value

    def _worked_out(self, amount: Sum, kind: Kind) -> Fraction | None:
        try:
            quantity = self._as_measure(amount, self._value(amount), kind)
        except UnresolvedError:
            return None
        except KindError as error:
            self._mixed(error, amount.span)
            return None
        if quantity.kind != kind:
            self._wrong_kind(amount.span, kind, quantity.kind)
            return None
        return quantity.value

    def _wrong_kind(self, span: Span, wanted: Kind, found: Kind) -> None:
        message = f"this should be {wanted.words()}, but it is {found.words()}"
        hint = kind_advice(span, wanted, found)
        self._tell(Diagnostic("wrong-kind", Severity.ERROR, message, span, hints=(hint,)))

    def _as_measure(self, amount: Sum, quantity: Quantity, kind: Kind) -> Quantity:
        # Only what is written as a bare number is meant in the file's unit; a ratio of two
        # lengths is no length.
        if quantity.kind == NUMBER and kind == LENGTH and is_bare(amount, self.values):
            return Quantity(quantity.value * UNITS[self.unit].size, LENGTH)
        return quantity

    def _value(self, amount: Sum) -> Quantity:
        if isinstance(amount, LeftOut):
            raise UnresolvedError
        if isinstance(amount, Number):
            return amount.quantity or Quantity(amount.value, NUMBER)
        if isinstance(amount, ValueName):
            return self._named(f"value {amount.name}", amount.name, amount.span)
        if isinstance(amount, OverallSize):
            return self._overall(amount)
        if isinstance(amount, PartSize):
            return self._part_size(amount)
        return self._operation(amount)

    def _operation(self, amount: Operation) -> Quantity:
        left, right = self._value(amount.left), self._value(amount.right)
        if amount.sign in "+-":
            # A bare number beside a measure is a length in the file's unit.
            if right.kind != NUMBER:
                left = self._as_measure(amount.left, left, LENGTH)
            if left.kind != NUMBER:
                right = self._as_measure(amount.right, right, LENGTH)
            result = left.plus(right) if amount.sign == "+" else left.minus(right)
        else:
            result = left.times(right) if amount.sign == "*" else left.over(right)
        value = result.value
        if max(value.numerator.bit_length(), value.denominator.bit_length()) > MOST_BITS:
            self._add("number-too-long", "this sum has too many digits", amount.span, "round it")
            raise UnresolvedError
        return result

    def _named(self, key: str, name: str, span: Span) -> Quantity:
        line = self.values.get(name)
        if line is None and name in self.unreadable:
            raise UnresolvedError
        if line is None:
            if name in self.parts:
                self._add(
                    "part-as-value",
                    f"`{name}` is a part, not a measure",
                    span,
                    f"write {name}.width or {name}.thickness",
                )
            else:
                self._add(
                    "unknown-value",
                    f"no value is called `{name}`",
                    span,
                    f"add a line such as `{name} = 15`",
                )
            raise UnresolvedError
        return self._followed(key, line.amount, span)

    def _overall(self, amount: OverallSize) -> Quantity:
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

    def _part_size(self, amount: PartSize) -> Quantity:
        if amount.part in self.unreadable:
            raise UnresolvedError
        if amount.part not in self.parts:
            self._add(
                "value-has-no-size",
                f"`{amount.part}` is not a part, so it has no {amount.dimension}",
                amount.span,
                "name a part",
            )
            raise UnresolvedError
        target = self.sizes.get((amount.part, amount.dimension))
        if target is None:
            self._add(
                "size-not-written",
                f"the {amount.dimension} of `{amount.part}` is worked out from the piece, so a "
                "sum cannot use it",
                amount.span,
                f"write the {amount.dimension} on the line of `{amount.part}`, or say how the "
                "parts meet and leave the sum out",
            )
            raise UnresolvedError
        return self._measured(f"{amount.part}.{amount.dimension}", target, amount.span)

    def _measured(self, key: str, target: Sum, span: Span) -> Quantity:
        return self._as_measure(target, self._followed(key, target, span), LENGTH)

    def _followed(self, key: str, target: Sum, span: Span) -> Quantity:
        if key in self._known:
            known = self._known[key]
            if known is None:
                raise UnresolvedError
            return known
        if key in self._trail or len(self._trail) >= LONGEST_CHAIN:
            self._circle(key, span)
            raise UnresolvedError
        self._trail.append(key)
        try:
            self._known[key] = value = self._value(target)
        except KindError as error:
            self._mixed(error, target.span)
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

    def _circle(self, key: str, span: Span) -> None:
        start = self._trail.index(key) if key in self._trail else 0
        chain = [name.removeprefix("value ") for name in [*self._trail[start:], key]]
        if len(chain) > 12:
            chain = [*chain[:5], "...", *chain[-5:]]
        self._add(
            "circle",
            f"these lean on each other in a circle: {' -> '.join(chain)}",
            span,
            "give one of them as a plain measure",
        )

    def _add(self, code: str, message: str, span: Span, hint: str) -> None:
        self._tell(Diagnostic(code, Severity.ERROR, message, span, hints=(Hint(hint),)))

    def _tell(self, finding: Diagnostic) -> None:
        if finding not in self.findings:
            self.findings.append(finding)
