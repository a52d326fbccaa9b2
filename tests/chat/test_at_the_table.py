"""What a host does at the table, on a pseudo-terminal: keys, pages, pastes, another size, a screen reader."""

from __future__ import annotations

import re
import shutil
import sys
from itertools import combinations, islice
from pathlib import Path

import pytest

from assistant.chat.words import chat_words
from assistant.evening.table import set_table
from assistant.knowledge.files import corpus_dir
from assistant.session import Session
from tests.chat.conftest import PLAIN_PROMPT, PROMPT, QUESTION, READ, Open, ask, typed_on
from tests.terminal import CTRL_C, CTRL_D, ENTER, Terminal

DEMO = str(corpus_dir() / "evenings" / "quay-house.toml")
F2, ALT_W, ESCAPE, UP = "\x1bOQ", "\x1bw", "\x1b", "\x1b[A"
BECAUSE = "Still with garlic cheddar."
FOODS = ("brie", "salami", "oysters", "steak", "sushi", "crab", "lamb", "stilton", "olives")
SAYS = chat_words()
MORE = SAYS("said", "more", lines=9).split(" ", 1)[1]
THREE = ((QUESTION, READ), ("what is tannin", "I read: tannin."), ("brie", "I read: Brie."))
BOTTOM = SAYS("bottom", "tonight", wines="brut sparkling")


def test_tonights_wines_stand_at_the_bottom_before_anything_is_asked(chat: Open) -> None:
    terminal = chat("--evening", DEMO)
    terminal.sees(BOTTOM)
    assert terminal.text.splitlines()[-1].startswith(BOTTOM)


def test_what_stands_is_at_the_bottom_and_fits_after_a_resize(chat: Open) -> None:
    terminal = chat("--evening", DEMO)
    ask(terminal)
    terminal.press("half a que")
    terminal.sees("half a que")
    terminal.resize(40, 40)
    terminal.until(lambda text: text.splitlines()[-1].startswith("With garlic cheddar"))
    assert "half a que" in terminal.settles()
    terminal.press("stion" + CTRL_C)
    assert READ in ask(terminal)


def test_without_anything_standing_there_is_no_bottom_line(chat: Open) -> None:
    terminal = chat()
    terminal.sees(PROMPT)
    assert terminal.settles(2.0).strip() == PROMPT


@pytest.mark.parametrize("key", [F2, ALT_W])
def test_a_key_asks_why_and_gives_back_what_was_half_typed(chat: Open, key: str) -> None:
    terminal = chat()
    ask(terminal)
    terminal.press("what about a wh")
    terminal.sees("what about a wh")
    terminal.press(key)
    terminal.sees(BECAUSE)
    terminal.until(lambda text: typed_on(text) == f"{PROMPT} what about a wh")
    terminal.press("ite" + ENTER)
    terminal.sees("Limit: white wine.")


def test_pasted_lines_are_asked_in_turn(chat: Open) -> None:
    terminal = chat()
    terminal.sees(PROMPT)
    terminal.paste("what is tannin\r\n\r\nhow many bottles for 12, five wines\nwhat goes with brie\n")
    terminal.press(ENTER)
    terminal.sees("I read: Brie.")
    screen = terminal.settles()
    assert re.search(
        "what is tannin.+Tannin is.+how many bottles.+10 bottles.+what goes with brie", screen, re.S
    )


def test_ctrl_c_stops_and_gives_back_what_was_not_asked(chat: Open) -> None:
    terminal = chat(lines=60)
    ask(terminal)
    menus = islice(combinations(FOODS, 4), 40)  # no two the same: an answer that is kept is there at once
    terminal.paste("what is tannin\n" + "".join(f"choose six wines for {', '.join(m)}\n" for m in menus))
    terminal.press(ENTER)
    terminal.sees("Tannin is")
    terminal.press(CTRL_C)
    told = SAYS("said", "stopped-some", count="").split(":")[0]
    terminal.sees(told)
    terminal.sees(f"{PROMPT} choose six wines")
    terminal.press(CTRL_C)
    assert READ in ask(terminal)


def test_an_answer_that_fits_is_not_paged(chat: Open) -> None:
    assert MORE not in ask(chat())


def test_a_long_answer_comes_in_pages(chat: Open) -> None:
    terminal = chat(lines=12)
    terminal.press("help" + ENTER)
    terminal.sees(MORE)
    assert terminal.settles().startswith("Ask me what goes")
    terminal.press(ENTER)
    terminal.until(lambda text: "talk." in text and typed_on(text) == PROMPT)
    assert MORE not in terminal.text


def test_pages_are_laid_out_anew_after_a_resize(chat: Open) -> None:
    terminal = chat("--evening", DEMO, lines=20)
    terminal.sees(BOTTOM)
    terminal.press("plan it" + ENTER)
    terminal.sees(MORE)
    seen = [terminal.settles()]
    terminal.resize(50, 20)
    while MORE in terminal.settles():
        before = terminal.text
        terminal.press(ENTER)
        terminal.until(lambda text, old=before: text != old)  # type: ignore[misc]
        seen.append(terminal.settles())
    whole = Session()
    set_table(whole, Path(DEMO))
    words, pages = whole.ask("plan it").text.split(), [page.replace(MORE, "").split() for page in seen]
    last = len(pages[-1])  # with the prompt below it, its first line may have gone up by now
    shown = {word for page in pages for word in page}
    assert len(pages) > 3
    assert all(word in shown for word in words[:-last])
    assert words[-1] in shown


def test_plain_answers_are_broken_at_words(chat: Open) -> None:
    terminal = chat("--plain", "--evening", DEMO, columns=80, lines=200)
    ask(terminal, "is the brie safe in pregnancy", "I read: Brie.", prompt=PLAIN_PROMPT)
    text = Session().ask("is the brie safe in pregnancy").text
    rows = [row.rstrip() for row in terminal.text.splitlines()]
    ends = {row.split()[-1] for row in rows if len(row) > 60}
    assert ends
    assert ends <= set(text.split())


def test_escape_leaves_the_rest_out_and_says_so(chat: Open) -> None:
    terminal = chat(lines=12)
    terminal.press("help" + ENTER)
    terminal.sees(MORE)
    terminal.press(ESCAPE)
    terminal.sees(SAYS("said", "left-out"))
    assert "privacy, talk." not in terminal.settles()


def test_whoever_types_on_under_a_page_sees_all_and_loses_no_key(chat: Open) -> None:
    terminal = chat(lines=12)
    terminal.press("help" + ENTER)
    terminal.sees(MORE)
    terminal.press("what is tannin" + ENTER)
    terminal.sees("Tannin is the drying grip")
    assert f"{PROMPT} what is tannin" in terminal.text


@pytest.mark.skipif(shutil.which("bash") is None, reason="needs a shell that starts it again")
def test_ctrl_z_sets_it_aside_and_it_comes_back_whole(
    environment: dict[str, str], home: Path, tmp_path: Path
) -> None:
    told = environment | {"TERM": "xterm-256color", "XDG_DATA_HOME": str(home), "PS1": "shell$ "}
    with Terminal(told, ("bash", "--norc", "-i"), folder=tmp_path) as terminal:
        terminal.press(f"{sys.executable} -m assistant{ENTER}")
        ask(terminal)
        terminal.press("what about a")
        terminal.sees("what about a")
        terminal.press("\x1a")
        terminal.sees("Stopped")
        terminal.press("fg" + ENTER)
        terminal.until(lambda text: typed_on(text) == f"{PROMPT} what about a")
        terminal.press(" white" + ENTER)
        terminal.sees("Limit: white wine.")


@pytest.mark.parametrize(("options", "variables"), [(("--plain",), {}), ((), {"GOESWITH_PLAIN": "1"})])
def test_for_a_screen_reader_nothing_is_drawn(
    chat: Open, options: tuple[str, ...], variables: dict[str, str]
) -> None:
    terminal = chat(*options, "--evening", DEMO, **variables)
    ask(terminal, prompt=PLAIN_PROMPT)
    ask(terminal, "why", BECAUSE, prompt=PLAIN_PROMPT)
    assert b"\x1b" not in terminal.raw
    assert BOTTOM not in terminal.text
    terminal.press(CTRL_D)
    assert terminal.leaves() == 0


def test_plain_lines_pasted_are_asked_in_turn_and_ctrl_c_clears(chat: Open) -> None:
    terminal = chat("--plain")
    terminal.sees(PLAIN_PROMPT)
    terminal.press("half" + CTRL_C)
    terminal.until(lambda text: text.count(PLAIN_PROMPT) == 2)
    terminal.press("what is tannin\nwhat goes with brie\n")
    terminal.sees("Tannin is the drying grip")
    terminal.sees("I read: Brie.")


def test_health_and_lines_after_a_space_never_reach_the_history(chat: Open, home: Path) -> None:
    terminal = chat()
    ask(terminal, "I'm pregnant, is the brie safe?", "I read: Brie.")
    ask(terminal, " what is tannin", "I read: tannin.")
    ask(terminal)
    terminal.press(CTRL_D)
    assert terminal.leaves() == 0
    kept = (home / "goeswith" / "history").read_text("utf-8")
    assert kept == f"\n+{QUESTION}\n"


def test_the_talk_is_saved_by_a_phrase(chat: Open, tmp_path: Path) -> None:
    terminal = chat()
    ask(terminal)
    ask(terminal, "save this talk to ours.txt", "with what was said")
    saved = (tmp_path / "ours.txt").read_text("utf-8").splitlines()
    assert saved[0] == f"> {QUESTION}"
    assert saved[-1] == f"  {READ}"


def test_the_first_time_there_is_something_to_try_and_one_hint(chat: Open, home: Path) -> None:
    (home / "goeswith" / "hint-given").unlink()
    first, hint = SAYS("said", "first"), SAYS("said", "hint").split(":")[0]
    terminal = chat()
    terminal.sees(first)
    for question, answer in (
        (QUESTION, READ),
        ("what is tannin", "I read: tannin."),
        ("brie", "I read: Brie."),
    ):
        assert hint not in terminal.text
        ask(terminal, question, answer)
    terminal.sees(hint)
    terminal.press(CTRL_D)
    terminal.leaves()
    again = chat()
    for question, answer in (
        (QUESTION, READ),
        ("what is tannin", "I read: tannin."),
        ("brie", "I read: Brie."),
    ):
        ask(again, question, answer)
    assert hint not in again.text
    assert first not in again.text


def test_the_hint_waits_until_nobody_s_health_is_spoken_of(chat: Open, home: Path) -> None:
    (home / "goeswith" / "hint-given").unlink()
    hint = SAYS("said", "hint").split(":")[0]
    terminal = chat(lines=90)
    ask(terminal, "why", "Why what?")
    ask(terminal, "why", "Why what?")
    ask(terminal, "why", "Why what?")
    ask(terminal, "I'm pregnant, is the brie safe?", "I read: Brie.")
    assert hint not in terminal.settles()
    ask(terminal)
    terminal.sees(hint)


def test_an_evening_that_cannot_be_read_is_told_at_once(chat: Open, tmp_path: Path) -> None:
    (tmp_path / "mine.toml").write_text("guests = many", "utf-8")
    terminal = chat("--evening", "mine.toml")
    assert terminal.leaves() == 2
    assert "mine.toml" in terminal.text
    assert "Traceback" not in terminal.text


@pytest.mark.parametrize("columns", [40, 200])
def test_narrow_and_wide(chat: Open, columns: int) -> None:
    terminal = chat("--evening", DEMO, columns=columns)
    screen = ask(terminal)
    assert max(map(len, screen.splitlines())) <= columns
    assert len(screen.splitlines()[-1]) <= columns
