"""A grammar server that answers what a test wants."""

from __future__ import annotations

import json
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from urllib.parse import parse_qs

Asked = dict[str, str]
Found = list[dict[str, object]]


def remark(text: str, words: str, rule: str = "RULE") -> dict[str, object]:
    """A remark on some words, as the engine sends it."""
    return {
        "message": "Something about it.",
        "offset": text.index(words),
        "length": len(words),
        "replacements": [{"value": "other words"}],
        "context": {"text": text, "offset": 0, "length": 0},
        "rule": {"id": rule, "issueType": "grammar", "category": {"id": "GRAMMAR"}},
    }


class GrammarServer:
    """What was asked, and how it is answered; ``answer`` may raise to make the server fail."""

    def __init__(self) -> None:
        self.asked: list[Asked] = []
        self.answer: Callable[[Asked], Found] = lambda _asked: []
        self.address = ""

    def reply(self, path: str, body: str) -> object:
        """The reply to one request."""
        if path == "/v2/info":
            return {"software": {"name": "LanguageTool", "version": "6.8"}}
        if path == "/v2/languages":
            return [
                {"name": code, "code": "en", "longCode": code} for code in ("en", "en-GB", "en-US")
            ]
        asked = {name: values[0] for name, values in parse_qs(body).items()}
        self.asked.append(asked)
        return {"matches": self.answer(asked)}


@contextmanager
def running_grammar_server() -> Iterator[GrammarServer]:
    """A server on this machine."""
    grammar = GrammarServer()

    class Handler(BaseHTTPRequestHandler):
        def do_GET(self) -> None:
            body = self.rfile.read(int(self.headers.get("Content-Length", 0))).decode()
            try:
                content, code = json.dumps(grammar.reply(self.path, body)), 200
            except ValueError as problem:
                content, code = f"Error: {problem}", 500
            self.send_response(code)
            self.send_header("Content-Length", str(len(content.encode())))
            self.end_headers()
            self.wfile.write(content.encode())

        do_POST = do_GET  # noqa: N815 - the name that the library asks for

        def log_message(self, *_: object) -> None:
            pass

    server = ThreadingHTTPServer(("127.0.0.1", 0), Handler)
    grammar.address = f"http://127.0.0.1:{server.server_port}"
    thread = threading.Thread(target=server.serve_forever, args=(0.02,), daemon=True)
    thread.start()
    try:
        yield grammar
    finally:
        server.shutdown()
        server.server_close()
        thread.join()
