from pathlib import Path

import pytest

from proofkit.engines.folders import cache_folder, grammar_engine_folder, memory_file


def test_everything_is_kept_where_the_user_says(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("PROOFKIT_CACHE", str(tmp_path))
    assert cache_folder() == tmp_path
    assert grammar_engine_folder("9.9").parent == tmp_path
    assert memory_file().parent == tmp_path


def test_without_that_it_is_the_system_s_cache_folder(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("PROOFKIT_CACHE", raising=False)
    assert cache_folder().name == "proofkit"
    assert cache_folder().is_absolute()
