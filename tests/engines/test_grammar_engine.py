from collections.abc import Iterator
from contextlib import closing

import pytest

from proofkit.engines.address import checked_address
from proofkit.engines.grammar_engine import GrammarEngine
from proofkit.engines.joined import Remark
from proofkit.engines.trouble import EngineTrouble
from proofkit.problem import Unusable
from proofkit.progress import silent
from proofkit.settings import English
from tests.engines import processes
from tests.engines.grammar_server import Asked, Found, GrammarServer, remark, running_grammar_server


@pytest.fixture
def server() -> Iterator[GrammarServer]:
    with running_grammar_server() as running:
        yield running


def _remarks(
    address: str | None, *texts: str, english: English = English.BRITISH
) -> list[list[Remark]]:
    with closing(GrammarEngine(address=address, progress=silent)) as engine:
        return engine.check(texts, english).result()


def test_pages_travel_together_and_remarks_come_home(server: GrammarServer) -> None:
    server.answer = lambda asked: [remark(asked["text"], "run")]
    first, second = _remarks(server.address, "A hen sat.", "The fox run.")
    assert first == []
    assert [(r.start, r.end, r.rule, r.category) for r in second] == [(8, 11, "RULE", "GRAMMAR")]
    assert [asked["text"] for asked in server.asked] == ["A hen sat.\n\nThe fox run."]


@pytest.mark.parametrize(
    ("english", "code"), [(English.BRITISH, "en-GB"), (English.AMERICAN, "en-US")]
)
def test_the_book_s_english_is_asked_without_the_engine_s_spelling(
    server: GrammarServer, english: English, code: str
) -> None:
    _remarks(server.address, "A hen sat.", english=english)
    (asked,) = server.asked
    assert asked["language"] == code
    assert "MORFOLOGIK_RULE_EN_GB" in asked["disabledRules"].split(",")


def test_text_never_goes_to_a_proxy(server: GrammarServer, monkeypatch: pytest.MonkeyPatch) -> None:
    for name in ("http_proxy", "HTTP_PROXY", "all_proxy", "ALL_PROXY"):
        monkeypatch.setenv(name, "http://127.0.0.1:9")
    monkeypatch.delenv("no_proxy", raising=False)
    monkeypatch.delenv("NO_PROXY", raising=False)
    _remarks(server.address, "A hen sat.")
    assert len(server.asked) == 1


def test_one_failure_is_asked_again(server: GrammarServer) -> None:
    def fail_once(asked: Asked) -> Found:
        if len(server.asked) == 1:
            raise ValueError("out of sorts")
        return [remark(asked["text"], "run")]

    server.answer = fail_once
    (found,) = _remarks(server.address, "The fox run.")
    assert len(found) == 1


def test_a_server_that_keeps_failing_is_told(server: GrammarServer) -> None:
    def fail(_asked: Asked) -> Found:
        raise ValueError("out of sorts")

    server.answer = fail
    with pytest.raises(EngineTrouble, match="leave --grammar-server out"):
        _remarks(server.address, "The fox run.")


def test_a_server_that_is_not_there_is_told() -> None:
    with closing(GrammarEngine(address="http://127.0.0.1:9", progress=silent)) as engine:
        with pytest.raises(EngineTrouble, match=r"at http://127\.0\.0\.1:9 does not answer"):
            engine.version()
        with pytest.raises(EngineTrouble, match="does not answer"):
            engine.check(["A hen sat."], English.BRITISH).result()


def test_the_user_s_own_server_tells_its_version(server: GrammarServer) -> None:
    with closing(GrammarEngine(address=f"{server.address}/v2/", progress=silent)) as engine:
        assert engine.version() == f"6.8 at {server.address}"


@pytest.mark.parametrize("address", ["", "http://", "ftp://localhost:8081", "http://[", "//"])
def test_what_cannot_be_an_address_is_refused(address: str) -> None:
    with pytest.raises(Unusable, match="not the address of a grammar server"):
        checked_address(address)


@pytest.mark.parametrize(
    "address",
    ["https://api.languagetool.org/v2", "languagetool.org", "https://x.languagetoolplus.com"],
)
def test_a_manuscript_never_goes_to_a_public_service(address: str) -> None:
    with pytest.raises(Unusable, match="a manuscript never leaves your machine"):
        checked_address(address)


@pytest.mark.parametrize(
    ("given", "used"),
    [
        ("localhost:8081", "http://localhost:8081"),
        ("http://localhost:8081/v2", "http://localhost:8081"),
        ("http://192.168.1.4/check/", "http://192.168.1.4/check"),
    ],
)
def test_an_address_may_be_written_in_several_ways(given: str, used: str) -> None:
    assert checked_address(given) == used


@pytest.mark.engine
def test_the_real_engine_finds_a_slip_in_its_exact_place() -> None:
    page = "🦊 The fox 🦊 could of jumped over the wall, but he sat down."
    silent_page, found = _remarks(None, "The hen sat on the wall.", page)
    assert silent_page == []
    assert [page[r.start : r.end] for r in found] == ["could of"]
    assert found[0].replacements[0] == "could have"


@pytest.mark.engine
def test_what_a_page_is_told_does_not_hang_on_its_neighbours() -> None:
    pages = [
        "“Come in, said the owl. The bedtime story was long (very long.",
        "The hen sat. The hen could of slept. The hen ran.",
        "The bed-time story. “Go away, said the hen.",
    ]
    together = _remarks(None, *pages)
    with closing(GrammarEngine(address=None, progress=silent)) as engine:
        alone = [engine.check([page], English.BRITISH).result()[0] for page in pages]
    assert together == alone
    assert together[1]


@pytest.mark.engine
def test_an_engine_that_is_killed_is_started_again_once() -> None:
    with closing(GrammarEngine(address=None, progress=silent)) as engine:
        before = engine.check(["He could of run."], English.BRITISH).result()
        _kill_java()
        assert engine.check(["He could of run."], English.BRITISH).result() == before
        _kill_java()
        with pytest.raises(EngineTrouble, match="failed twice"):
            engine.check(["He could of run."], English.BRITISH).result()
    assert not processes.javas()


def _kill_java() -> None:
    (java,) = processes.javas()
    processes.kill(java)
