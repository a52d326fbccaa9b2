"""What is packed comes out as it went in, and equal lists of it are one."""

from __future__ import annotations

import json

from hypothesis import given
from hypothesis import strategies as st

from assistant.knowledge.concepts import Amount
from assistant.knowledge.digest import Digest, read_digest
from assistant.knowledge.files import knowledge_files, ontology_dir
from assistant.knowledge.packing import packed, unpacked

NAMES = st.sampled_from(["amount", "fat", "part", "é"])
NUMBERS = st.floats(0, 9)
PLAIN = st.text("ab") | NUMBERS | st.booleans() | st.none()
AMOUNTS = st.builds(
    Amount, NUMBERS, NUMBERS, NUMBERS, st.just("judged"), st.just("source/judged"), st.none() | st.text("a")
)
LISTS = st.recursive(
    st.lists(PLAIN | AMOUNTS, max_size=3),
    lambda inner: st.lists(PLAIN | AMOUNTS | inner | st.dictionaries(NAMES.filter("amount".__ne__), inner)),
    max_leaves=8,
)


def kept(digest: Digest) -> Digest:
    """The digest after it lay in a cache."""
    return unpacked(json.loads(json.dumps(packed(digest))))


@given(st.dictionaries(st.text("ab"), st.dictionaries(NAMES, LISTS)))
def test_any_digest_comes_back(digest: Digest) -> None:
    assert kept(digest) == digest


def test_the_shipped_files_come_back() -> None:
    digest = read_digest(knowledge_files(ontology_dir()))
    found = kept(digest)
    assert found == digest
    assert [list(entry) for entry in found.values()] == [list(entry) for entry in digest.values()]
    lists = [values for entry in found.values() for values in entry.values()]
    assert len({id(values) for values in lists}) < len(lists) / 2
