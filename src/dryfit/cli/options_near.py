"""Arguments that are left over: the option that was nearly written, or the quotes left out."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Iterator, Sequence


def understood(
    parser: argparse.ArgumentParser, arguments: Sequence[str] | None
) -> argparse.Namespace:
    """Return the arguments as read; status 2 where some are left over, with what would be right."""
    written = sys.argv[1:] if arguments is None else list(arguments)
    options, left = parser.parse_known_args(written)
    if left:
        parser.error(f"unrecognized arguments: {' '.join(left)}{_remedy(parser, written, left)}")
    return options


class Once(argparse.Action):
    """An option that is given once: the second would silently replace the first."""

    def __call__(
        self,
        parser: argparse.ArgumentParser,
        namespace: argparse.Namespace,
        values: object,
        option_string: str | None = None,
    ) -> None:
        """Keep the values; an error where there are some already."""
        if getattr(namespace, self.dest) is not None:
            parser.error(
                f"only one {option_string} is weighed at a time; the notes take any number"
            )
        setattr(namespace, self.dest, values)


def _remedy(parser: argparse.ArgumentParser, written: Sequence[str], left: Sequence[str]) -> str:
    options = [each.partition("=")[0] for each in left if each.startswith("--")]
    if options:
        # Loaded here alone: a run that is understood needs it for nothing.
        from difflib import get_close_matches

        known = sorted(set(_options(parser, written)))
        near = get_close_matches(options[0], known, n=1)
        return f" (did you mean {near[0]}?)" if near else ""
    return " (a name of several words is put in quotes)" if len(left) > 1 else ""


def _options(parser: argparse.ArgumentParser, written: Sequence[str]) -> Iterator[str]:
    """Yield the options of the parser and of the command that is named."""
    for action in parser._actions:  # noqa: SLF001
        yield from action.option_strings
        if isinstance(action.choices, dict):
            for name in written:
                if name in action.choices:
                    yield from _options(action.choices[name], ())
