"""Finding and reading the shop file, the user's on top of the shipped one."""

from __future__ import annotations

import hashlib
from collections.abc import Mapping
from functools import cache
from pathlib import Path

from dryfit.diagnostics import Findings, Source
from dryfit.resources import PACKAGE
from dryfit.shop.build import build
from dryfit.shop.layer import Tree, findings_of, overlay, read_layer
from dryfit.shop.shop import Shop

SHIPPED = PACKAGE / "shop" / "default.toml"
SHIPPED_NAME = "shop file of dryfit"


class ShopFileError(Exception):
    """A shop file cannot be read at all; the message is one line for the user."""


def read_shop(path: Path | None, environment: Mapping[str, str]) -> tuple[Shop | None, Findings]:
    """Return the shop, and what is wrong in the user's shop file.

    `path` is the file of ``--shop``; without it the user's own is taken where there is one.
    There is no shop when there are findings: no plan is made for a shop that is half understood.

    Raises
    ------
    ShopFileError
        The file is missing, cannot be opened, or is not UTF-8.
    """
    shipped = SHIPPED.read_bytes()
    below, shop = _shipped(shipped)
    own = path or users_file(environment)
    if own is None:
        return shop, ()
    content = _content(own)
    above, layer = read_layer(Source(str(own), _text(content, own)), below)
    if above is None:
        return None, findings_of(layer)
    sha256 = hashlib.sha256(shipped + content).hexdigest()
    shop = build(overlay(below, above), layer, sha256, (SHIPPED_NAME, str(own)))
    return (None if layer.findings else shop), findings_of(layer)


@cache
def _shipped(content: bytes) -> tuple[Tree, Shop]:
    """Return the values of the shipped file and its shop; nobody alters either of them."""
    tree, layer = read_layer(Source(SHIPPED_NAME, _text(content, SHIPPED)), None)
    assert tree is not None, findings_of(layer)
    shop = build(tree, layer, hashlib.sha256(content).hexdigest(), (SHIPPED_NAME,))
    assert not layer.findings, findings_of(layer)
    return tree, shop


def users_file(environment: Mapping[str, str]) -> Path | None:
    """Return the user's shop file if there is one.

    The folder is ``XDG_CONFIG_HOME``, or ``.config`` in ``HOME`` when that is unset, empty or a
    relative path, as the XDG Base Directory Specification says.
    """
    folder = Path(environment.get("XDG_CONFIG_HOME", ""))
    if not folder.is_absolute():
        home = environment.get("HOME", "")
        if not home:
            return None
        folder = Path(home, ".config")
    own = folder / "dryfit" / "shop.toml"
    return own if own.exists() else None


def _content(path: Path) -> bytes:
    try:
        return path.read_bytes()
    except FileNotFoundError:
        raise ShopFileError(f"there is no shop file {path}") from None
    except OSError as problem:
        reason = (problem.strerror or "no reason given").lower()
        raise ShopFileError(f"the shop file {path} cannot be read: {reason}") from None


def _text(content: bytes, path: Path) -> str:
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError as problem:
        line = content.count(b"\n", 0, problem.start) + 1
        raise ShopFileError(f"the shop file {path} is not UTF-8: line {line}") from None
    return text.replace("\r\n", "\n")
