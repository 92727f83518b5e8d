"""Back from a text to the bytes of the file it was read from."""

from __future__ import annotations

import re

_MARK = b"\xef\xbb\xbf"
_LINE_END = re.compile(rb"\r\n|\r|\n")


def encoded_like(text: str, data: bytes) -> bytes:
    """Return the text as UTF-8 with the byte order mark and the line ends of the file's bytes.

    The text has as many lines as the file, each of which gets its own end back; so a file in
    which the ends are mixed stays as it was.
    """
    ends = [*_LINE_END.findall(data), b""]
    lines = zip(text.split("\n"), ends, strict=True)
    mark = _MARK if data.startswith(_MARK) else b""
    return mark + b"".join(line.encode() + end for line, end in lines)
