import signal
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from proofkit.analysis import Analysis
from proofkit.book import Book
from proofkit.engines.analyse import Analyst
from proofkit.engines.jars import engine_lock
from proofkit.engines.memory import Memory
from proofkit.engines.note import EngineNote
from proofkit.engines.server import JAVA_VARIABLE
from proofkit.problem import Notice, Unusable
from proofkit.settings import English
from tests.engines import processes
from tests.engines.grammar_server import Asked, Found, GrammarServer, remark, running_grammar_server
from tests.marked import book_of

_GEESE = book_of("Two geese could of flown home.", "", "The fox watched them.")


@pytest.fixture
def server() -> Iterator[GrammarServer]:
    with running_grammar_server() as running:
        running.answer = _find_could_of
        yield running


@pytest.fixture
def memory(tmp_path: Path) -> Iterator[Memory]:
    kept = Memory(tmp_path / "memory.sqlite3")
    yield kept
    kept.close()


def _find_could_of(asked: Asked) -> Found:
    return [remark(asked["text"], "could of")] if "could of" in asked["text"] else []


def _grammar_of(
    memory: Memory, address: str, *books: Book, english: English = English.BRITISH
) -> tuple[list[Analysis], Analyst]:
    with Analyst(memory=memory, grammar_server=address) as analyst:
        analyses = analyst.analyse(
            [(book, english) for book in books], language_model=False, grammar_engine=True
        )
    return analyses, analyst


def test_matches_stand_on_their_page(memory: Memory, server: GrammarServer) -> None:
    (analysis,), analyst = _grammar_of(memory, server.address, _GEESE)
    (match,) = analysis.matches
    assert _GEESE.page(match.page).text[match.start : match.end] == "could of"
    assert analysis.vocabulary.count("geese") == 1
    assert analysis.page(1).tokens == ()
    assert analyst.notices == ()
    version = f"6.8 at {server.address}"
    assert analyst.engines == (EngineNote(name="LanguageTool", version=version, ran=True),)


def test_what_was_asked_is_not_asked_again(memory: Memory, server: GrammarServer) -> None:
    before, _ = _grammar_of(memory, server.address, _GEESE)
    server.asked.clear()
    after, analyst = _grammar_of(memory, server.address, _GEESE)
    assert after == before
    assert server.asked == []
    assert not analyst.engines[0].ran


def test_only_the_page_that_changed_is_asked_again(memory: Memory, server: GrammarServer) -> None:
    _grammar_of(memory, server.address, _GEESE)
    server.asked.clear()
    changed = book_of("Two geese could of flown home.", "", "The fox slept.")
    (analysis,), _ = _grammar_of(memory, server.address, changed)
    assert [asked["text"] for asked in server.asked] == ["The fox slept."]
    assert len(analysis.matches) == 1


def test_another_english_is_asked_anew(memory: Memory, server: GrammarServer) -> None:
    _grammar_of(memory, server.address, _GEESE)
    _grammar_of(memory, server.address, _GEESE, english=English.AMERICAN)
    assert [asked["language"] for asked in server.asked] == ["en-GB", "en-US"]


def test_a_server_that_stops_leaves_a_notice_and_what_it_said_before(
    memory: Memory, server: GrammarServer
) -> None:
    _grammar_of(memory, server.address, _GEESE)

    def fail(_asked: Asked) -> Found:
        raise ValueError("out of sorts")

    server.answer = fail
    changed = book_of("Two geese could of flown home.", "The fox slept.")
    (analysis,), analyst = _grammar_of(memory, server.address, changed)
    assert len(analysis.matches) == 1
    (notice,) = analyst.notices
    assert notice.unchecked
    assert notice.text.startswith("Grammar was not checked everywhere.")
    server.answer = _find_could_of
    _, again = _grammar_of(memory, server.address, changed)
    assert again.notices == ()
    assert server.asked[-1]["text"] == "The fox slept."


def test_a_wrong_address_leaves_a_notice_with_the_remedy(memory: Memory) -> None:
    (analysis,), analyst = _grammar_of(memory, "http://127.0.0.1:9", _GEESE)
    assert analysis.matches == ()
    assert analyst.notices == (
        Notice(
            text="Grammar was not checked everywhere. The grammar server at http://127.0.0.1:9 does not "
            "answer. See that it runs, or leave --grammar-server out, and proofkit starts its own.",
            unchecked=True,
        ),
    )


def test_what_is_no_address_is_refused_at_once(memory: Memory) -> None:
    with pytest.raises(Unusable, match="not the address"):
        Analyst(memory=memory, grammar_server="ftp://goose")


def test_a_damaged_answer_is_asked_again(tmp_path: Path, server: GrammarServer) -> None:
    class Spoilt(Memory):
        def recall_many(self, kind: str, keys: object) -> dict[bytes, bytes]:
            found = super().recall_many(kind, keys)  # type: ignore[arg-type]  # as it is handed in
            return dict.fromkeys(found, b"\xc1")

    spoilt = Spoilt(tmp_path / "memory.sqlite3")
    first, _ = _grammar_of(spoilt, server.address, _GEESE)
    second, _ = _grammar_of(spoilt, server.address, _GEESE)
    spoilt.close()
    assert second == first
    assert len(server.asked) == 2


def test_without_engines_there_is_the_vocabulary(memory: Memory) -> None:
    with Analyst(memory=memory) as analyst:
        (analysis,) = analyst.analyse(
            [(_GEESE, English.BRITISH)], language_model=False, grammar_engine=False
        )
    assert analysis.vocabulary.count("fox") == 1
    assert analyst.engines == ()


def test_no_network_at_the_first_run_leaves_a_notice(
    memory: Memory, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    from jgo.maven import _core  # noqa: PLC0415

    monkeypatch.setenv("PROOFKIT_CACHE", str(tmp_path))
    monkeypatch.setitem(_core.DEFAULT_REMOTE_REPOS, "central", "http://127.0.0.1:9")
    with Analyst(memory=memory) as analyst:
        analyst.analyse([(_GEESE, English.BRITISH)], language_model=False, grammar_engine=True)
    (notice,) = analyst.notices
    assert "Connect to the internet once and run: proofkit engine fetch" in notice.text


@pytest.mark.engine
def test_what_is_remembered_starts_neither_java_nor_the_model(
    memory: Memory, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked = {"language_model": True, "grammar_engine": True}
    with Analyst(memory=memory) as analyst:
        analyst.ask([(_GEESE, English.BRITISH)])
        before = analyst.analyse([(_GEESE, English.BRITISH)], **asked)
    assert [note.ran for note in analyst.engines] == [True, True]
    assert [match.rule for match in before[0].matches] == ["MODAL_OF"]
    assert "fly" in {token.lemma for token in before[0].page(1).tokens}
    monkeypatch.setenv(JAVA_VARIABLE, "/nowhere")
    monkeypatch.setattr("proofkit.engines.language_model._load", None)
    with Analyst(memory=memory) as analyst:
        after = analyst.analyse([(_GEESE, English.BRITISH)], **asked)
    assert after == before
    assert [note.ran for note in analyst.engines] == [False, False]
    assert analyst.engines[0].version == engine_lock().version


@pytest.mark.engine
def test_other_books_are_another_question(memory: Memory) -> None:
    foxes = book_of("The fox should of run.")
    asked = {"language_model": False, "grammar_engine": True}
    with Analyst(memory=memory) as analyst:
        analyst.analyse([(_GEESE, English.BRITISH)], **asked)
        (analysis,) = analyst.analyse([(foxes, English.BRITISH)], **asked)
    assert [foxes.page(1).text[m.start : m.end] for m in analysis.matches] == ["should of"]


_RUN = """
import sys
from proofkit.engines.analyse import Analyst
from proofkit.engines.memory import Memory
from proofkit.settings import English
from tests.marked import book_of
with Analyst(memory=Memory(None)) as analyst:
    analyst.analyse([(book_of("The hen sat."), English.BRITISH)], language_model=False, grammar_engine=True)
    print("ready", flush=True)
    sys.stdin.read()
"""


@pytest.mark.engine
@pytest.mark.parametrize("sent", [signal.SIGINT, signal.SIGKILL])
def test_a_run_that_is_stopped_leaves_no_engine_behind(sent: signal.Signals) -> None:
    run = subprocess.Popen(
        [sys.executable, "-c", _RUN],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.DEVNULL,
    )
    assert run.stdout
    assert run.stdout.readline() == b"ready\n"
    (java,) = processes.javas()
    run.send_signal(sent)
    run.communicate(timeout=10)
    assert processes.is_gone(java)
