"""The language server over its pipes, asked by the protocol library's own client."""

from __future__ import annotations

import asyncio
import subprocess
import sys
from collections.abc import Awaitable, Callable
from pathlib import Path
from typing import TypeVar

from lsprotocol import types
from pygls.lsp.client import LanguageClient

from dryfit.diagnostics import Source
from dryfit.notes import tidied

STOOL = Path(__file__).parents[2] / "examples" / "step_stool.dryfit"
URI = "file:///notes/stool.dryfit"
PATIENCE_SECONDS = 60
Answer = TypeVar("Answer")


class Editor:
    """A client with one open document, and what the server published about it."""

    def __init__(self, client: LanguageClient) -> None:
        self.client = client
        self.published: asyncio.Queue[types.PublishDiagnosticsParams] = asyncio.Queue()
        self.version = 0

    def open(self, text: str) -> None:
        item = types.TextDocumentItem(URI, "dryfit", self.version, text)
        self.client.text_document_did_open(types.DidOpenTextDocumentParams(item))

    def change(self, text: str) -> None:
        self.version += 1
        self.client.text_document_did_change(
            types.DidChangeTextDocumentParams(
                types.VersionedTextDocumentIdentifier(self.version, URI),
                [types.TextDocumentContentChangeWholeDocument(text)],
            )
        )

    async def findings(self) -> list[types.Diagnostic]:
        """What is published about the text as it was last sent."""
        while True:
            told = await asyncio.wait_for(self.published.get(), PATIENCE_SECONDS)
            if told.version == self.version:
                return list(told.diagnostics)


def in_an_editor(work: Callable[[Editor], Awaitable[Answer]]) -> tuple[Answer, str]:
    """Do the work with a running server; return what it gives, and the server's standard error."""

    async def session() -> tuple[Answer, str]:
        client = LanguageClient("test", "1")
        editor = Editor(client)

        feature: Callable[[str], Callable[..., object]] = client.feature
        feature(types.TEXT_DOCUMENT_PUBLISH_DIAGNOSTICS)(
            lambda told: editor.published.put_nowait(told)  # noqa: PLW0108 - it is given a name
        )
        await client.start_io(sys.executable, "-m", "dryfit", "serve-editor")
        await client.initialize_async(types.InitializeParams(types.ClientCapabilities()))
        client.initialized(types.InitializedParams())
        done = await asyncio.wait_for(work(editor), PATIENCE_SECONDS)
        await client.shutdown_async(None)
        client.exit(None)
        process = client._server
        assert process is not None
        assert process.stderr is not None
        said = await asyncio.wait_for(process.stderr.read(), PATIENCE_SECONDS)
        stop: Callable[[], Awaitable[None]] = client.stop
        await stop()
        return done, said.decode()

    return asyncio.run(session())


def place_of(text: str, words: str) -> types.Position:
    before = text[: text.index(words)]
    return types.Position(before.count("\n"), len(before) - (before.rfind("\n") + 1))


def test_findings_come_while_typing_and_go_again() -> None:
    text = STOOL.read_text(encoding="utf-8")
    broken = text.replace(
        "into legs, set back reveal\n2 short", "into lges, set back reveal\n2 short"
    )

    async def work(editor: Editor) -> list[list[types.Diagnostic]]:
        editor.open(text)
        told = [await editor.findings()]
        editor.change(text.replace("piece", "peice"))  # typed over before anybody was told
        editor.change(broken)
        told.append(await editor.findings())
        editor.change(text)
        told.append(await editor.findings())
        return told

    (at_first, typed, mended), said = in_an_editor(work)
    assert (at_first, mended, said) == ([], [], "")
    (finding,) = typed
    assert (finding.code, finding.severity) == ("unknown-name", types.DiagnosticSeverity.Error)
    assert finding.range.start == place_of(broken, "lges")
    assert "did you mean `legs`?" in finding.message


def test_hover_and_completion_are_answered() -> None:
    text = STOOL.read_text(encoding="utf-8")

    async def work(editor: Editor) -> tuple[types.Hover | None, list[str]]:
        editor.open(text)
        await editor.findings()
        document = types.TextDocumentIdentifier(URI)
        shown = await editor.client.text_document_hover_async(
            types.HoverParams(document, place_of(text, "long rails"))
        )
        editor.change(f"{text}2 pegs, at co")
        await editor.findings()
        end = types.Position(text.count("\n"), len("2 pegs, at co"))
        found = await editor.client.text_document_completion_async(
            types.CompletionParams(document, end)
        )
        assert isinstance(found, types.CompletionList)
        return shown, [item.label for item in found.items]

    (shown, labels), said = in_an_editor(work)
    assert shown is not None
    assert isinstance(shown.contents, types.MarkupContent)
    assert shown.contents.value.startswith("2 long rails: 350 x 55 x 20")
    assert labels == ["corners"]
    assert said == ""


def test_formatting_tidies_the_lines_that_are_untidy() -> None:
    text = tidied(Source("stool", STOOL.read_text(encoding="utf-8")))
    line = next(line for line in text.split("\n") if line.startswith("4 legs"))
    untidy = text.replace(line, line.replace(", ", " ,  "))

    async def work(editor: Editor) -> list[types.TextEdit]:
        editor.open(untidy)
        document = types.TextDocumentIdentifier(URI)
        options = types.FormattingOptions(tab_size=4, insert_spaces=True)
        found = await editor.client.text_document_formatting_async(
            types.DocumentFormattingParams(document, options)
        )
        return list(found or ())

    (change,), said = in_an_editor(work)
    assert change.new_text == line
    assert change.range.start == place_of(untidy, "4 legs")
    assert said == ""


def test_a_correction_is_offered_until_the_text_changes() -> None:
    text = STOOL.read_text(encoding="utf-8")
    broken = text.replace("into legs", "into lges", 1)

    async def work(editor: Editor) -> list[types.CodeAction]:
        editor.open(broken)
        await editor.findings()
        at = place_of(broken, "lges")
        asked = types.CodeActionParams(
            types.TextDocumentIdentifier(URI), types.Range(at, at), types.CodeActionContext([])
        )
        found = list(await editor.client.text_document_code_action_async(asked) or ())
        editor.change(f"# from the old kitchen\n{broken}")
        later = await editor.client.text_document_code_action_async(asked)
        assert not later
        return [action for action in found if isinstance(action, types.CodeAction)]

    (action,), said = in_an_editor(work)
    assert action.title == "did you mean `legs`?"
    assert action.edit is not None
    assert action.edit.changes is not None
    (change,) = action.edit.changes[URI]
    assert change.new_text == text.split("\n")[change.range.start.line]
    assert said == ""


def test_whatever_is_asked_no_traceback_comes_out() -> None:
    async def work(editor: Editor) -> object:
        editor.open("4 legs\n\x00")
        await editor.findings()
        nowhere = types.HoverParams(types.TextDocumentIdentifier(URI), types.Position(99, 99))
        return await editor.client.text_document_hover_async(nowhere)

    assert in_an_editor(work) == (None, "")


def test_without_the_extra_one_line_says_what_to_install(tmp_path: Path) -> None:
    code = (
        "import sys; sys.modules['pygls'] = None\n"
        "from dryfit.cli import main\n"
        "sys.exit(main(['serve-editor']))"
    )
    run = subprocess.run(
        [sys.executable, "-c", code], cwd=tmp_path, capture_output=True, text=True, check=False
    )
    assert (run.returncode, run.stdout) == (2, "")
    assert run.stderr == "dryfit: this needs the editor extra: pip install 'dryfit[editor]'\n"
