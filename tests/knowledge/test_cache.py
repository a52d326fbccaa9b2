"""The cache: what it gives back, what it keeps, and that nothing in it is trusted."""

from __future__ import annotations

import hashlib
import json
import os
import tomllib
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

from assistant.knowledge.cache import KEPT, cached
from assistant.knowledge.files import corpus_dir
from assistant.language import data
from tests.conftest import Run

BUILT = {"é": ["crème 奶酪", 1.5, None, True], "x": {}}


def files(folder: Path) -> list[str]:
    return sorted(file.name for file in folder.iterdir())


def test_what_is_kept_is_given_back_without_being_built_again(tmp_path: Path) -> None:
    assert cached("one", "key", lambda: BUILT, tmp_path) == BUILT
    assert cached("one", "key", lambda: {"built": "again"}, tmp_path) == BUILT


def test_versions_that_take_turns_find_their_own_and_old_ones_go(tmp_path: Path) -> None:
    for number in range(KEPT + 2):
        cached("one", f"key{number}", lambda: BUILT, tmp_path)
        os.utime(tmp_path / f"one-key{number}.json", (number, number))
    assert files(tmp_path) == [f"one-key{number}.json" for number in range(2, KEPT + 2)]
    assert cached("one", "key2", lambda: {"built": "again"}, tmp_path) == BUILT


def test_many_at_once_find_or_build_the_same(tmp_path: Path) -> None:
    with ThreadPoolExecutor(8) as pool:
        found = list(pool.map(lambda _: cached("one", "key", lambda: BUILT, tmp_path), range(64)))
    assert found == [BUILT] * 64
    assert files(tmp_path) == ["one-key.json"]


def test_what_is_no_json_is_not_kept_and_no_hindrance(tmp_path: Path) -> None:
    dated = tomllib.loads("start = 2027-02-12")
    assert cached("one", "key", lambda: dated, tmp_path) == dated
    assert files(tmp_path) == []


def test_language_files_are_the_same_from_the_cache() -> None:
    for file in sorted((corpus_dir() / "language").glob("*.toml")):
        plain = tomllib.loads(file.read_text("utf-8"))
        assert data.read_data(file, dict) == plain
        assert data.read_data(file, dict) == plain


def test_a_sealed_file_of_another_encoding_is_built_anew(tmp_path: Path) -> None:
    body = json.dumps("é", ensure_ascii=False).encode()
    seal = hashlib.sha256(body).hexdigest().encode()
    (tmp_path / "words-1.json").write_bytes(seal + b"\n" + body)
    assert cached("words", "1", lambda: "new", tmp_path) == "new"


def test_the_program_mends_every_file_that_was_damaged(goeswith: Run, tmp_path: Path) -> None:
    """The digest, the lexicon, the English words, the names by sound and the language files alike."""

    def answer() -> str:
        return goeswith("ask", "what goes with pizza and brocoley", XDG_CACHE_HOME=str(tmp_path)).stdout

    first, sound = answer(), {file: file.read_bytes() for file in (tmp_path / "goeswith").iterdir()}
    assert {file.name.partition("-")[0] for file in sound} >= {"digest", "lexicon", "english", "sounds"}
    for file, whole in sound.items():
        file.write_bytes(whole[:-9])
    assert answer() == first
    assert {file: file.read_bytes() for file in sound} == sound
