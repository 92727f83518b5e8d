"""The glue to the protocol: what it does with a mistake of our own."""

from __future__ import annotations

import asyncio

import pytest
from lsprotocol import types

from dryfit.editor.server import new_server


def test_a_mistake_of_our_own_is_one_line_in_the_log(monkeypatch: pytest.MonkeyPatch) -> None:
    server = new_server(None)
    said: list[types.LogMessageParams] = []
    monkeypatch.setattr(server, "window_log_message", said.append)

    def fails() -> str:
        raise KeyError("legs")

    assert server.guarded(fails, "nothing") == "nothing"
    assert asyncio.run(server.aside(fails, "nothing")) == "nothing"
    assert [line.type for line in said] == [types.MessageType.Error] * 2
    assert {line.message for line in said} == {"dryfit: this should not happen: KeyError: 'legs'"}
    assert server.guarded(lambda: "all is well", "nothing") == "all is well"
    assert asyncio.run(server.aside(lambda: "all is well", "nothing")) == "all is well"
    assert len(said) == 2
