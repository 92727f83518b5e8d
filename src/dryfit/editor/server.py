"""The language server over standard input and output: questions in, answers out.

Nothing is decided here.  The text of a document is kept by the protocol's library, each change
brings the whole of it; every document is a piece of its own.
"""

from __future__ import annotations

import asyncio
import logging
import os
from collections.abc import Callable
from pathlib import Path
from typing import TypeVar

from lsprotocol import types
from pygls.lsp.server import LanguageServer
from pygls.workspace import TextDocument

from dryfit import __version__
from dryfit.diagnostics import Severity
from dryfit.editor.completion import Completion, completions
from dryfit.editor.findings import Examined, Mark, examined
from dryfit.editor.formatting import Change, formatting
from dryfit.editor.hover import hover
from dryfit.editor.places import Encoding, Place
from dryfit.placing.model import Model

QUIET_SECONDS = 0.15
"""A text is examined when nobody has typed for so long."""

_SEVERITIES = {
    Severity.ERROR: types.DiagnosticSeverity.Error,
    Severity.WARNING: types.DiagnosticSeverity.Warning,
    Severity.QUESTION: types.DiagnosticSeverity.Information,
    Severity.NOTICE: types.DiagnosticSeverity.Hint,
}
Answer = TypeVar("Answer")


class NotesServer(LanguageServer):
    """The server, and what it remembers of each text: the piece last worked out, the marks."""

    def __init__(self, shop_file: Path | None) -> None:
        super().__init__(
            "dryfit", __version__, text_document_sync_kind=types.TextDocumentSyncKind.Full
        )
        self.shop_file = shop_file
        self.models: dict[str, Model] = {}
        self.marks: dict[str, tuple[int | None, tuple[Mark, ...]]] = {}
        self.one_at_a_time = asyncio.Lock()

    def encoding(self) -> Encoding:
        """Return in which units the client counts characters."""
        chosen = self.workspace.position_encoding
        return "utf-8" if chosen == "utf-8" else "utf-32" if chosen == "utf-32" else "utf-16"

    def guarded(self, answer: Callable[[], Answer], otherwise: Answer) -> Answer:
        """Return the answer; a mistake of our own becomes one line in the client's log."""
        try:
            return answer()
        except Exception as error:  # noqa: BLE001 - an editor must go on whatever we did wrong
            self.regret(error)
            return otherwise

    async def aside(self, answer: Callable[[], Answer], otherwise: Answer) -> Answer:
        """Return the answer as `guarded`, worked out beside what else is asked."""
        try:
            return await asyncio.to_thread(answer)
        except Exception as error:  # noqa: BLE001 - as above
            self.regret(error)
            return otherwise

    def regret(self, error: Exception) -> None:
        """Tell the client's log of a mistake of our own."""
        said = f"dryfit: this should not happen: {type(error).__name__}: {error}"
        self.window_log_message(types.LogMessageParams(types.MessageType.Error, said))


def serve(shop_file: Path | None) -> None:
    """Serve one editor over standard input and output until it says goodbye."""
    # What the library writes into its log has tracebacks; the client learns of errors by protocol.
    logging.getLogger("pygls").setLevel(logging.CRITICAL)
    new_server(shop_file).start_io()


def new_server(shop_file: Path | None) -> NotesServer:
    """Return a server that answers what a client may ask."""
    server = NotesServer(shop_file)
    server.feature(types.TEXT_DOCUMENT_DID_OPEN)(_opened)
    server.feature(types.TEXT_DOCUMENT_DID_CHANGE)(_changed)
    server.feature(types.TEXT_DOCUMENT_DID_CLOSE)(_closed)
    server.feature(types.TEXT_DOCUMENT_HOVER)(_hovered)
    triggers = types.CompletionOptions(trigger_characters=[" ", "."])
    server.feature(types.TEXT_DOCUMENT_COMPLETION, triggers)(_completed)
    server.feature(types.TEXT_DOCUMENT_FORMATTING)(_formatted)
    quick = types.CodeActionOptions(code_action_kinds=[types.CodeActionKind.QuickFix])
    server.feature(types.TEXT_DOCUMENT_CODE_ACTION, quick)(_mended)
    return server


async def _opened(server: NotesServer, asked: types.DidOpenTextDocumentParams) -> None:
    await _publish(server, asked.text_document.uri, asked.text_document.version)


async def _changed(server: NotesServer, asked: types.DidChangeTextDocumentParams) -> None:
    await asyncio.sleep(QUIET_SECONDS)
    await _publish(server, asked.text_document.uri, asked.text_document.version)


def _closed(server: NotesServer, asked: types.DidCloseTextDocumentParams) -> None:
    uri = asked.text_document.uri
    server.models.pop(uri, None)
    server.marks.pop(uri, None)
    server.text_document_publish_diagnostics(types.PublishDiagnosticsParams(uri, []))


async def _publish(server: NotesServer, uri: str, version: int) -> None:
    """Examine a text and publish its findings, unless it changes before they are there."""
    async with server.one_at_a_time:
        document = _open_text(server, uri, version)
        if document is None:
            return
        name, text, encoding = _name(document), document.source, server.encoding()
        folder = Path(document.path).parent if document.path else None
        found = await server.aside(
            lambda: examined(name, text, server.shop_file, os.environ, encoding, folder),
            Examined(()),
        )
    if _open_text(server, uri, version) is None:
        return
    if found.checked is not None and found.checked.model is not None:
        server.models[uri] = found.checked.model
    server.marks[uri] = version, found.marks
    told = [_diagnostic(mark, uri) for mark in found.marks]
    server.text_document_publish_diagnostics(types.PublishDiagnosticsParams(uri, told, version))


def _open_text(server: NotesServer, uri: str, version: int) -> TextDocument | None:
    """Return the document if it is open and still of that version."""
    known = server.workspace.text_documents.get(uri)
    return known if known is not None and known.version == version else None


def _hovered(server: NotesServer, asked: types.HoverParams) -> types.Hover | None:
    document, at = server.workspace.get_text_document(asked.text_document.uri), asked.position
    found = server.guarded(
        lambda: hover(
            _name(document),
            document.source,
            at.line,
            at.character,
            server.encoding(),
            os.environ,
            model=server.models.get(document.uri),
        ),
        None,
    )
    if found is None:
        return None
    shown = types.MarkupContent(types.MarkupKind.PlainText, found.text)
    return types.Hover(shown, _range(found.place))


def _completed(server: NotesServer, asked: types.CompletionParams) -> types.CompletionList:
    document, at = server.workspace.get_text_document(asked.text_document.uri), asked.position
    none: tuple[Completion, ...] = ()
    found = server.guarded(
        lambda: completions(
            _name(document),
            document.source,
            at.line,
            at.character,
            server.encoding(),
            os.environ,
        ),
        none,
    )
    items = [
        types.CompletionItem(
            label=each.text,
            kind=types.CompletionItemKind.Variable
            if each.declared
            else types.CompletionItemKind.Keyword,
            detail=each.kind,
            sort_text=f"{number:04}",
            filter_text=each.text,
            text_edit=types.TextEdit(_range(each.place), each.text),
        )
        for number, each in enumerate(found)
    ]
    return types.CompletionList(is_incomplete=True, items=items)


def _formatted(server: NotesServer, asked: types.DocumentFormattingParams) -> list[types.TextEdit]:
    document = server.workspace.get_text_document(asked.text_document.uri)
    none: tuple[Change, ...] = ()
    found = server.guarded(
        lambda: formatting(_name(document), document.source, server.encoding(), os.environ), none
    )
    return [types.TextEdit(_range(change.place), change.text) for change in found]


def _mended(server: NotesServer, asked: types.CodeActionParams) -> list[types.CodeAction]:
    uri, first, last = asked.text_document.uri, asked.range.start.line, asked.range.end.line
    version, marks = server.marks.get(uri, (None, ()))
    if version != server.workspace.get_text_document(uri).version:
        return []  # the text has changed since, and with it perhaps the lines
    return [
        types.CodeAction(
            fix.title,
            types.CodeActionKind.QuickFix,
            diagnostics=[_diagnostic(mark, uri)],
            edit=types.WorkspaceEdit({uri: [types.TextEdit(_range(fix.place), fix.text)]}),
        )
        for mark in marks
        if first <= mark.place.line <= last
        for fix in mark.fixes
    ]


def _name(document: TextDocument) -> str:
    return document.filename or "notes"


def _diagnostic(mark: Mark, uri: str) -> types.Diagnostic:
    related = [
        types.DiagnosticRelatedInformation(types.Location(uri, _range(place)), message)
        for place, message in mark.related
    ]
    return types.Diagnostic(
        range=_range(mark.place),
        message=mark.message,
        severity=_SEVERITIES[mark.severity],
        code=mark.code,
        source="dryfit",
        related_information=related or None,
    )


def _range(place: Place) -> types.Range:
    return types.Range(
        types.Position(place.line, place.start), types.Position(place.line, place.end)
    )
