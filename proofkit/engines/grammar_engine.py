"""The grammar engine: LanguageTool 6.8 on this machine, asked through language-tool-python.

Texts go to a server of our own on the loopback, or to the one whose address the user gave; never to
a public service. Pages travel many at a time, two requests at once.
"""

from __future__ import annotations

from collections.abc import Sequence
from concurrent.futures import Future, ThreadPoolExecutor
from threading import Event, Lock
from typing import TYPE_CHECKING

from proofkit.engines.address import checked_address
from proofkit.engines.jars import engine_lock, ensure_jars
from proofkit.engines.joined import Remark, joined
from proofkit.engines.server import Server, start_server
from proofkit.engines.trouble import EngineTrouble
from proofkit.progress import Progress
from proofkit.settings import English

if TYPE_CHECKING:
    from language_tool_python import LanguageTool
    from language_tool_python import Match as ToolMatch

NAME = "LanguageTool"
# The engine's own spelling costs a fifth of the start and knows neither names nor sounds; proofkit
# has its own.
_SPELLING = ("MORFOLOGIK_RULE_EN_GB", "MORFOLOGIK_RULE_EN_US")
# Rules that look beyond the paragraph: what they say of one page hangs on the pages that travel with
# it, so it can't be remembered page by page. Repetition, pairs of marks and one word in two
# spellings are looked after by our own checks, over the whole book.
_FAR_SIGHTED = (
    "ENGLISH_WORD_REPEAT_BEGINNING_RULE",
    "EN_REPEATEDWORDS",
    "EN_UNPAIRED_BRACKETS",
    "EN_UNPAIRED_QUOTES",
    "EN_WORD_COHERENCY",
)
# No story is the better for miles in kilometres; these alone cost a fifteenth of the time.
_UNITS = ("METRIC_UNITS_EN_IMPERIAL", "METRIC_UNITS_EN_US")
DISABLED_RULES = (*_SPELLING, *_FAR_SIGHTED, *_UNITS)

_AT_ONCE = 2
_TIMEOUT = 10  # seconds for a server to say what it is
# Text goes straight to the server, past any proxy that the system names.
_NO_PROXY = {"http": "", "https": "", "all": ""}


class GrammarEngine:
    """Checks texts in the background. Starts at the first need, or when ``start`` is called."""

    def __init__(self, *, address: str | None, progress: Progress) -> None:
        self._given = checked_address(address) if address else None
        self._progress = progress
        self._pool = ThreadPoolExecutor(_AT_ONCE, thread_name_prefix="grammar")
        self._starting: Future[None] | None = None
        self._server: Server | None = None
        self._tools: dict[tuple[str, English], LanguageTool] = {}
        self._revival, self._revived = Lock(), False
        self._closing = Event()

    def start(self) -> Future[None]:
        """Begin to start the server, and return at once; the future is done once it answers."""
        if self._starting is None:
            starter = ThreadPoolExecutor(1, thread_name_prefix="grammar-start")
            self._starting = starter.submit(self._start)
            starter.shutdown(wait=False)
        return self._starting

    def version(self) -> str:
        """The engine's version, and where it runs if it is the user's own.

        Raises EngineTrouble if the user's own does not answer.
        """
        if self._given is None:
            return engine_lock().version
        import requests  # noqa: PLC0415 - only where there is a server to ask

        try:
            answer = requests.get(f"{self._given}/v2/info", timeout=_TIMEOUT, proxies=_NO_PROXY)
            software = answer.json()["software"]
        except (requests.RequestException, ValueError, LookupError, TypeError) as problem:
            raise EngineTrouble(self._silence()) from problem
        return f"{software['version']} at {self._given}"

    def check(self, texts: Sequence[str], english: English) -> Future[list[list[Remark]]]:
        """Hand in a batch of texts; the future brings the remarks on each of them.

        It raises EngineTrouble if the engine can't be asked, even after a new start.
        """
        return self._pool.submit(self._check, self.start(), texts, english)

    def close(self) -> None:
        """End the server, and what was asked of it."""
        self._closing.set()
        self._pool.shutdown(wait=False, cancel_futures=True)
        if self._server:
            self._server.close()
        if self._starting:
            self._starting.exception()
        if self._server:
            self._server.close()
        self._pool.shutdown()

    def _start(self) -> None:
        if self._given is None:
            self._server = start_server(ensure_jars(engine_lock(), self._watched))
            import language_tool_python  # noqa: F401, PLC0415 - loaded while Java starts

            self._server.await_answer(self._closing)

    def _watched(self, stage: str, done: int, total: int) -> None:
        if self._closing.is_set():
            raise EngineTrouble("The grammar engine was not fetched: it was stopped.")
        self._progress(stage, done, total)

    def _check(
        self, started: Future[None], texts: Sequence[str], english: English
    ) -> list[list[Remark]]:
        started.result()
        remarks: list[list[Remark]] = [[] for _ in texts]
        for request in joined(texts):
            for number, remark in request.remarks(self._answer(request.text, english)):
                remarks[number].append(remark)
        return remarks

    def _answer(self, text: str, english: English) -> list[ToolMatch]:
        try:
            return self._ask(text, english)
        except Exception:  # noqa: BLE001 - the library raises whatever went wrong inside it
            self._revive()
        try:
            return self._ask(text, english)
        except Exception as problem:
            raise EngineTrouble(self._silence()) from problem

    def _ask(self, text: str, english: English) -> list[ToolMatch]:
        return self._tool(english).check(text)

    def _silence(self) -> str:
        if self._given:
            return (
                f"The grammar server at {self._given} does not answer. See that it runs, "
                "or leave --grammar-server out, and proofkit starts its own."
            )
        return "The grammar engine failed twice. Check the manuscript again."

    def _tool(self, english: English) -> LanguageTool:
        address = self._given or self._own_address()
        tool = self._tools.get((address, english))
        if tool is None:
            from language_tool_python import LanguageTool  # noqa: PLC0415 - loaded while Java starts

            tool = LanguageTool(english.code, remote_server=address, proxies=_NO_PROXY)
            tool.disabled_rules = set(DISABLED_RULES)
            self._tools[address, english] = tool
        return tool

    def _own_address(self) -> str:
        if self._server is None:
            raise EngineTrouble(self._silence())
        return self._server.address

    def _revive(self) -> None:
        """Start the server again if it has ended, once in a run."""
        with self._revival:
            server = self._server
            if server is None or server.runs or self._closing.is_set():
                return
            if self._revived:
                raise EngineTrouble(self._silence())
            self._revived = True
            server.close()
            self._server = start_server(ensure_jars(engine_lock(), self._watched))
            self._server.await_answer(self._closing)
