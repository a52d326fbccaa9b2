"""Names by how they sound: what goes in under a language comes out under it."""

from __future__ import annotations

import json

from hypothesis import given
from hypothesis import strategies as st

from assistant.language.by_sound import BySound, by_sound

TONGUES, BONES, SOUNDS = st.sampled_from("01234"), st.text("pts", max_size=2), st.text("aiu", max_size=2)
READINGS = st.lists(
    st.tuples(st.builds(str.__add__, TONGUES, BONES), SOUNDS), unique_by=lambda reading: reading[0][0]
)
NAMES = st.lists(st.tuples(st.text("xy", min_size=1), READINGS), max_size=9)
PINOT = [("pinot", [("0pnt", "pinot"), ("1pn", "pino"), ("3pn", "pino")]), ("pan", [("0pn", "pan")])]


def kept(names: list[tuple[str, list[tuple[str, str]]]]) -> BySound:
    """The names after they lay in a cache."""
    return BySound(json.loads(json.dumps(by_sound(names))))


@given(NAMES, TONGUES, BONES)
def test_every_name_is_found_by_its_language_and_bones(
    names: list[tuple[str, list[tuple[str, str]]]], tongue: str, bones: str
) -> None:
    every = [(name, sound) for name, readings in names for at, sound in readings if at == tongue + bones]
    assert list(kept(names).of(bones, tongue)) == every


def test_without_a_language_names_of_all_are_found_once() -> None:
    assert list(kept(PINOT).of("pn")) == [("pinot", "pino"), ("pan", "pan")]
    assert list(kept(PINOT).of("pn", "0")) == [("pan", "pan")]
    assert list(kept(PINOT).of("kl")) == []


def test_bones_and_letters_that_any_name_has() -> None:
    assert kept(PINOT).among({"pn", "tn", ""}) == {"pn"}
    assert kept(PINOT).letters == ["n", "p", "t"]
