"""The ledger under what befalls files: runs killed on the way, full disks, foreign and damaged files."""

from __future__ import annotations

import os
import resource
import shutil
import signal
import sqlite3
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import closing, contextmanager
from dataclasses import replace
from pathlib import Path

import pytest

from proofkit.drafts import ledger_file, migrations
from proofkit.drafts.keeping import Kept, keep
from proofkit.drafts.ledger import drafts, record, summaries
from proofkit.drafts.ledger_file import LAYOUT, LEDGER
from proofkit.drafts.schema import MIGRATIONS
from proofkit.problem import Unusable
from tests.drafts.goat_drafts import SLIPS, draft

ROOT = Path(__file__).parents[2]
NOBODY = 65534


@pytest.fixture
def ledger(tmp_path: Path) -> Path:
    return tmp_path / LEDGER


def mended(number: int) -> tuple[str, ...]:
    return tuple(wrong for wrong, *_ in SLIPS[:number])


def kept(ledger: Path, number: int) -> Kept:
    return keep(ledger, lambda: draft(*mended(number), day=number))


def said(outcome: Kept) -> str:
    return " ".join(notice.text for notice in outcome.notices)


def is_sound(ledger: Path) -> bool:
    with closing(sqlite3.connect(ledger)) as base:
        (answer,) = base.execute("PRAGMA integrity_check").fetchone()
        return bool(answer == "ok" and not base.execute("PRAGMA foreign_key_check").fetchall())


def only_the_ledger(folder: Path) -> bool:
    return sorted(path.name for path in folder.iterdir()) == [LEDGER]


def in_a_child(work: Callable[[], object]) -> int:
    """Do the work in a copy of this process; how that ended, as ``os.wait`` says."""
    child = os.fork()
    if child == 0:
        try:
            work()
        except BaseException:  # noqa: BLE001 - whatever it is, the copy must not go on as the test run
            os._exit(1)
        os._exit(0)
    return os.waitpid(child, 0)[1]


class _Stepwise(sqlite3.Connection):
    """Ends its process as kill -9 does, before step number ``last``."""

    steps = 0
    last = 0

    @classmethod
    def step(cls) -> None:
        _Stepwise.steps += 1
        if _Stepwise.steps == _Stepwise.last:
            os.kill(os.getpid(), signal.SIGKILL)

    def execute(self, *given: object) -> sqlite3.Cursor:
        self.step()
        return super().execute(*given)  # type: ignore[arg-type]

    def executemany(self, *given: object) -> sqlite3.Cursor:
        self.step()
        return super().executemany(*given)  # type: ignore[arg-type]

    def close(self) -> None:
        self.step()
        super().close()


@contextmanager
def stepwise(monkeypatch: pytest.MonkeyPatch, last: int) -> Iterator[None]:
    connect = sqlite3.connect
    with monkeypatch.context() as patch:
        patch.setattr(_Stepwise, "steps", 0)
        patch.setattr(_Stepwise, "last", last)
        patch.setattr("sqlite3.connect", lambda *a, **k: connect(*a, **k, factory=_Stepwise))
        yield


@pytest.mark.slow
@pytest.mark.parametrize("before", [0, 2])
def test_killed_before_any_step_nothing_is_lost_and_the_next_run_goes_on(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, before: int
) -> None:
    with stepwise(monkeypatch, 0):
        for number in range(before + 1):
            if number == before and before:
                shutil.copy(tmp_path / LEDGER, tmp_path / "before.db")
            _Stepwise.steps = 0
            record(tmp_path / LEDGER, draft(*mended(number), day=number))
        steps = _Stepwise.steps
    whole = list(drafts(tmp_path / LEDGER))
    assert steps > 50
    for last in range(1, steps + 1):
        ledger = tmp_path / f"run {last}" / LEDGER
        ledger.parent.mkdir()
        if before:
            shutil.copy(tmp_path / "before.db", ledger)
        with stepwise(monkeypatch, last):
            now = draft(*mended(before), day=before)
            ended = in_a_child(lambda: record(ledger, now))  # noqa: B023 - done at once
        assert os.WTERMSIG(ended) == signal.SIGKILL
        record(ledger, now)
        assert [summary.number for summary in summaries(ledger)] == list(range(1, before + 2))
        assert list(drafts(ledger)) == whole
        assert is_sound(ledger)
        assert only_the_ledger(ledger.parent)


def test_killed_at_any_moment_by_the_clock_the_ledger_is_whole(tmp_path: Path) -> None:
    ledger = tmp_path / LEDGER
    record(ledger, draft())
    many = [draft(*mended(n % 7), day=n, age_band=f"band {n}") for n in range(1, 60)]

    def all_of_them() -> None:
        for each in many:
            record(ledger, each)

    for round_ in range(12):
        child = os.fork()
        if child == 0:
            all_of_them()
            os._exit(0)
        time.sleep(0.01 + 0.013 * round_)
        os.kill(child, signal.SIGKILL)
        os.waitpid(child, 0)
        numbers = [summary.number for summary in summaries(ledger)]
        assert numbers == list(range(1, len(numbers) + 1))
        assert is_sound(ledger)
    all_of_them()
    recorded = [each.asked_digest for each in drafts(ledger)]
    assert recorded[1:] == [each.asked_digest for each in many]


def test_on_a_full_disk_the_check_says_so_and_the_ledger_is_as_it_was(
    ledger: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    record(ledger, draft())
    before = list(drafts(ledger))
    connect = sqlite3.connect

    def nearly_full(*given: object, **named: object) -> sqlite3.Connection:
        base: sqlite3.Connection = connect(*given, **named)  # type: ignore[call-overload]
        pages = base.execute("PRAGMA page_count").fetchone()[0]
        base.execute(f"PRAGMA max_page_count = {pages}")
        return base

    long = draft(*mended(2), day=2, spreads=[" ".join(os.urandom(9000).hex())])
    with monkeypatch.context() as patch:
        patch.setattr("sqlite3.connect", nearly_full)
        outcome = keep(ledger, lambda: long)
    assert outcome.recorded is None
    assert "the disk is full. Make room there, and check again" in said(outcome)
    assert list(drafts(ledger)) == before
    assert record(ledger, long).draft.number == 2
    assert is_sound(ledger)


@pytest.mark.parametrize("limit", [0, 4096, 40_000, 80_000, 120_000, 160_000, 200_000])
def test_where_a_file_may_grow_no_more_a_draft_is_kept_wholly_or_not_at_all(
    tmp_path: Path, limit: int
) -> None:
    ledger = tmp_path / LEDGER
    whole = draft(*mended(1), day=1, spreads=[os.urandom(30_000).hex()])

    def within_limit() -> None:
        signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
        resource.setrlimit(resource.RLIMIT_FSIZE, (limit, limit))
        if keep(ledger, lambda: whole).recorded is None:
            os._exit(7)

    ended = os.waitstatus_to_exitcode(in_a_child(within_limit))
    assert ended in (0, 7)
    again = record(ledger, whole)
    assert again.is_new == (ended == 7)
    assert list(drafts(ledger)) == [replace(whole, number=1)]
    assert is_sound(ledger)


@contextmanager
def as_somebody_else() -> Iterator[None]:
    """Without a superuser's rights, to whom nothing is forbidden."""
    if os.geteuid() != 0:
        yield
        return
    os.seteuid(NOBODY)
    try:
        yield
    finally:
        os.seteuid(0)


@pytest.fixture
def closed_folder(tmp_path: Path) -> Iterator[Path]:
    """A folder that can be read and not written; those above it let everybody in."""
    opened = [path for path in tmp_path.parents if path.owner() != "nobody"][:3]
    modes = [(path, path.stat().st_mode) for path in (*opened, tmp_path) if path != Path("/")]
    for path, mode in modes:
        path.chmod(mode | 0o055)
    folder = tmp_path / "closed"
    folder.mkdir()
    yield folder
    folder.chmod(0o755)
    for path, mode in modes:
        path.chmod(mode)


def test_in_a_folder_that_is_read_only_nothing_is_recorded_and_all_can_be_read(
    closed_folder: Path,
) -> None:
    ledger = closed_folder / LEDGER
    record(ledger, draft())
    ledger.chmod(0o444)
    closed_folder.chmod(0o555)
    content = ledger.read_bytes()
    with as_somebody_else():
        outcome = kept(ledger, 1)
        assert outcome.recorded is None
        assert "can’t be written to. Check that you may write in that folder" in said(outcome)
        assert kept(ledger, 0).recorded is not None  # it is there already: nothing need be written
        assert len(summaries(ledger)) == 1
    assert ledger.read_bytes() == content


def test_a_folder_without_a_ledger_that_is_read_only_is_said(closed_folder: Path) -> None:
    closed_folder.chmod(0o555)
    with as_somebody_else():
        outcome = kept(closed_folder / LEDGER, 0)
    assert "Check that you may write in that folder" in said(outcome)
    assert list(closed_folder.iterdir()) == []


def test_what_a_killed_run_left_can_be_read_in_a_read_only_folder(
    closed_folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    ledger = closed_folder / LEDGER
    record(ledger, draft())
    now = draft(*mended(1), day=1)

    def killed_before_putting_away() -> None:
        ledger_file._put_away = lambda _base: os.kill(os.getpid(), signal.SIGKILL)  # type: ignore[assignment] # noqa: SLF001
        record(ledger, now)

    in_a_child(killed_before_putting_away)
    assert ledger.with_name(f"{LEDGER}-wal").exists()
    for file in closed_folder.iterdir():
        file.chmod(0o444)
    closed_folder.chmod(0o555)
    with as_somebody_else():
        assert len(summaries(ledger)) == 2
    closed_folder.chmod(0o755)
    assert len(summaries(ledger)) == 2
    assert only_the_ledger(closed_folder)


def test_two_checks_at_once_are_both_recorded(ledger: Path) -> None:
    made = [draft(*mended(number % 8), day=number, age_band=str(number)) for number in range(24)]
    children = []
    for part in range(4):
        child = os.fork()
        if child == 0:
            for each in made[part::4]:
                record(ledger, each)
            os._exit(0)
        children.append(child)
    assert [os.waitpid(child, 0)[1] for child in children] == [0] * 4
    recorded = list(drafts(ledger))
    assert sorted(each.asked_digest for each in recorded) == sorted(d.asked_digest for d in made)
    assert [each.number for each in recorded] == list(range(1, 25))
    assert only_the_ledger(ledger.parent)


def test_two_checks_of_one_text_at_once_record_it_once(ledger: Path) -> None:
    with ThreadPoolExecutor(4) as pool:
        outcomes = list(pool.map(lambda _: kept(ledger, 0), range(8)))
    assert all(each.recorded and each.recorded.draft.number == 1 for each in outcomes)
    assert sum(each.recorded.is_new for each in outcomes if each.recorded) == 1


def test_a_ledger_of_an_older_proofkit_is_kept_and_brought_up_to_date(
    ledger: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    with monkeypatch.context() as patch:
        patch.setattr(ledger_file, "MIGRATIONS", MIGRATIONS[:1])
        patch.setattr(ledger_file, "LAYOUT", 1)
        record(ledger, draft())
    old = ledger.read_bytes()
    record(ledger, draft("the the", day=1))
    assert len(summaries(ledger)) == 2
    backup = ledger.with_name("proofkit backup of layout 1.db")
    with closing(sqlite3.connect(backup)) as base:
        assert base.execute("PRAGMA user_version").fetchone() == (1,)
        assert base.execute("SELECT count(*) FROM draft").fetchone() == (1,)
    assert len(backup.read_bytes()) == len(old)
    assert said(kept(ledger, 2)) == ""  # the copy is our own: nothing to say of it


def test_without_room_for_a_copy_an_older_ledger_is_left_as_it_was(
    ledger: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    with monkeypatch.context() as patch:
        patch.setattr(ledger_file, "MIGRATIONS", MIGRATIONS[:1])
        patch.setattr(ledger_file, "LAYOUT", 1)
        record(ledger, draft())
    old = ledger.read_bytes()

    def no_room(*_: object) -> None:
        raise OSError(28, "No space left on device")

    with monkeypatch.context() as patch:
        patch.setattr(migrations, "_keep_copy", no_room)
        assert "no space left on device" in said(kept(ledger, 1))
    assert ledger.read_bytes() == old


def test_a_step_that_fails_half_way_leaves_the_layout_as_it_was(ledger: Path) -> None:
    record(ledger, draft())
    broken = (*MIGRATIONS, "CREATE TABLE more (a);\nINSERT INTO nowhere VALUES (1);\n")
    with closing(sqlite3.connect(ledger, isolation_level=None)) as base:
        with pytest.raises(sqlite3.OperationalError):
            migrations.bring_up_to_date(base, ledger, broken)
        assert base.execute("PRAGMA user_version").fetchone() == (LAYOUT,)
        assert base.execute("SELECT 1 FROM sqlite_schema WHERE name = 'more'").fetchone() is None


def test_a_ledger_of_a_newer_proofkit_is_refused_and_left_untouched(ledger: Path) -> None:
    record(ledger, draft())
    with closing(sqlite3.connect(ledger)) as base:
        base.execute(f"PRAGMA user_version = {LAYOUT + 1}")
    content, changed = ledger.read_bytes(), ledger.stat().st_mtime_ns
    assert "made by a newer proofkit" in said(kept(ledger, 1))
    with pytest.raises(Unusable, match="Bring proofkit up to date"):
        summaries(ledger)
    assert (ledger.read_bytes(), ledger.stat().st_mtime_ns) == (content, changed)
    assert only_the_ledger(ledger.parent)


def test_another_programs_database_is_refused_and_left_untouched(ledger: Path) -> None:
    with closing(sqlite3.connect(ledger)) as base:
        base.execute("CREATE TABLE recipes (cake)")
    content = ledger.read_bytes()
    assert "made by another program" in said(kept(ledger, 0))
    assert ledger.read_bytes() == content


def spoil_all(content: bytearray) -> None:
    content[:] = b"Once upon a time there was no database here.\n" * 300


def spoil_all_but_the_header(content: bytearray) -> None:
    content[100:] = b"\xff" * (len(content) - 100)


def cut_short(content: bytearray) -> None:
    del content[len(content) // 3 :]


@pytest.mark.parametrize("spoil", [spoil_all, spoil_all_but_the_header, cut_short])
def test_a_damaged_ledger_is_set_aside_under_a_dated_name_and_a_new_one_begun(
    ledger: Path, spoil: Callable[[bytearray], None]
) -> None:
    for number in range(4):
        record(ledger, draft(*mended(number), day=number))
    content = bytearray(ledger.read_bytes())
    spoil(content)
    ledger.write_bytes(content)
    with pytest.raises(Unusable, match="damaged"):
        list(drafts(ledger))
    outcome = kept(ledger, 5)
    assert "was damaged and is kept as “proofkit damaged 2026-09-06.db”; a new one" in said(outcome)
    assert outcome.recorded is not None
    assert outcome.recorded.draft.number == 1
    assert ledger.with_name("proofkit damaged 2026-09-06.db").read_bytes() == content
    assert said(kept(ledger, 6)) == ""


def test_damage_never_takes_the_name_of_damage_before(ledger: Path) -> None:
    for _ in range(2):
        ledger.write_bytes(b"no database" * 100)
        kept(ledger, 0)
    names = sorted(path.name for path in ledger.parent.iterdir())
    assert names == [
        "proofkit damaged 2026-09-01 (2).db",
        "proofkit damaged 2026-09-01.db",
        "proofkit.db",
    ]


def test_an_empty_file_of_that_name_is_no_damage(ledger: Path) -> None:
    ledger.touch()
    assert kept(ledger, 0).recorded is not None
    assert only_the_ledger(ledger.parent)


@pytest.mark.parametrize(
    "copy",
    [
        "proofkit (Sam's conflicted copy 2026-11-25).db",
        "proofkit (1).db",
        "proofkit-SAMS-LAPTOP.db",
        "proofkit.sync-conflict-20261125-101500-ABCDEFG.db",
        "proofkit 2.db",
    ],
)
def test_a_syncing_services_copy_is_named_and_left_alone(ledger: Path, copy: str) -> None:
    record(ledger, draft())
    beside = ledger.with_name(copy)
    beside.write_bytes(ledger.read_bytes())
    told = said(kept(ledger, 1))
    assert f"Beside proofkit.db lies “{copy}”" in told
    assert "proofkit drafts import" in told
    assert beside.exists()


def test_a_mistake_of_our_own_costs_no_report(ledger: Path) -> None:
    def mistaken() -> None:
        raise ZeroDivisionError("oh")

    outcome = keep(ledger, mistaken)  # type: ignore[arg-type] # that is the mistake
    assert "mistake of its own" in said(outcome)
    assert "ZeroDivisionError: oh" in said(outcome)


def test_a_folder_in_the_ledgers_place_is_said(ledger: Path) -> None:
    ledger.mkdir()
    assert "could not be used" in said(kept(ledger, 0))


def test_the_ledger_is_one_file_after_every_run(ledger: Path) -> None:
    for number in range(3):
        record(ledger, draft(*mended(number), day=number))
        assert only_the_ledger(ledger.parent)
        assert len(summaries(ledger)) == number + 1
        assert only_the_ledger(ledger.parent)


def test_it_is_written_ahead_while_it_is_written(ledger: Path) -> None:
    with ledger_file.writing(ledger) as base:
        assert base.execute("PRAGMA journal_mode").fetchone() == ("wal",)
        base.execute("INSERT INTO past VALUES (1, 'x')")
        assert ledger.with_name(f"{LEDGER}-wal").exists()
        assert not ledger.with_name(f"{LEDGER}-shm").exists()


def test_a_program_that_keeps_the_ledger_open_is_waited_for_and_then_named(
    ledger: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    record(ledger, draft())
    monkeypatch.setattr(ledger_file, "_WAIT", 0.2)
    with closing(sqlite3.connect(ledger, isolation_level=None)) as other:
        other.execute("BEGIN EXCLUSIVE")
        assert "another program keeps it open" in said(kept(ledger, 1))
    assert kept(ledger, 1).recorded is not None


def test_the_module_runs_apart_from_the_tests(tmp_path: Path) -> None:
    """A draft recorded by one Python is read by another."""
    ledger = tmp_path / LEDGER
    record(ledger, draft())
    code = (
        "import sys; from pathlib import Path; from proofkit.drafts.ledger import summaries; "
        "print(len(summaries(Path(sys.argv[1]))))"
    )
    out = subprocess.run(
        [sys.executable, "-c", code, str(ledger)],
        capture_output=True,
        text=True,
        cwd=ROOT,
        check=True,
    )
    assert out.stdout.strip() == "1"
