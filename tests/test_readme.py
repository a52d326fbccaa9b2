"""What the README shows goes as it is written there: its questions, its talks, its examples, its picture."""

from __future__ import annotations

import re
from datetime import datetime
from pathlib import Path

import pytest

from assistant.answers.wrap import wrapped
from assistant.chat.bottom import bottom_line, standing
from assistant.chat.words import chat_words
from assistant.evening.plan import plan
from assistant.evening.read import read_evening
from assistant.evening.table import set_table
from assistant.evening.text import text
from assistant.notebook import load
from assistant.rehearse.noting import AnswerLog
from assistant.session import Session
from assistant.stock.reading import read_stock

ROOT = Path(__file__).parents[1]
README = (ROOT / "README.md").read_text("utf-8")
EVENINGS = ROOT / "corpus" / "evenings"
DEMO = EVENINGS / "quay-house.toml"
NOW = datetime(2027, 1, 20, 12).astimezone()
SIGN = chat_words()("sign", "usual")
WIDTH = 80
HEADINGS = "Ten questions", "What else to ask", "An evening, from plan to table", "Out of your own bottles"


def _section(heading: str) -> str:
    return README.split(f"## {heading}\n", 1)[1].split("\n## ", 1)[0]


ASKED, ELSE, EVENING, BOTTLES = map(_section, HEADINGS)
ROW = re.compile(r"^\| (?!asked|about|-)(.*?) \| (.*) \|$", re.MULTILINE)
QUESTIONS = [(asked.strip("`"), said) for asked, said in ROW.findall(ASKED)]
EXAMPLES = [re.findall(r"`(.+?)`", examples) for _, examples in ROW.findall(ELSE)]


def _blocks(section: str) -> list[str]:
    return re.findall(r"```text\n(.*?)```", section, re.DOTALL)


def _turns(block: str) -> list[tuple[str, str]]:
    """Each question with what was said, of a talk as the chat shows it."""
    turns = [turn.partition("\n") for turn in block.split(SIGN)[1:]]
    return [(asked, said.split(f"\n{SIGN.rstrip()}\n")[0].rstrip("\n")) for asked, _, said in turns]


def _goes(session: Session, block: str) -> None:
    turns = _turns(block)
    assert turns
    for asked, said in turns:
        assert wrapped(session.ask(asked).text, WIDTH) == said


@pytest.fixture
def table(session: Session, tmp_path: Path) -> Session:
    """A session of its own, with the demo evening on the table, a notebook and a log."""
    own = Session(session.knowledge, notebook=load(tmp_path / "notebook.ttl"))
    own.log = AnswerLog(tmp_path / "answers.jsonl", own.wording)
    set_table(own, DEMO)
    own.new_conversation()
    return own


def test_ten_questions_are_shown() -> None:
    assert len(QUESTIONS) == 10
    assert len(EXAMPLES) >= 10
    assert all(EXAMPLES)


@pytest.mark.parametrize(("asked", "said"), QUESTIONS)
def test_each_question_is_answered_as_shown(conversation: Session, asked: str, said: str) -> None:
    assert conversation.ask(asked).text.split("\n")[0] == said


def test_the_talk_goes_on_as_shown(conversation: Session) -> None:
    (block,) = _blocks(ASKED)
    _goes(conversation, block)


def test_every_example_is_understood(table: Session) -> None:
    not_understood = []
    for row in EXAMPLES:
        table.new_conversation()
        answers = [table.ask(example) for example in row]
        not_understood += [a.question for a in answers if not a.understood or a.left_out]
    assert not_understood == []


def test_the_plan_begins_as_shown(session: Session) -> None:
    evening = read_evening(DEMO, session, NOW)
    assert text(evening, plan(evening, session)).startswith(_blocks(EVENING)[0].rstrip("\n"))


def test_the_talk_at_the_table_goes_as_shown(table: Session) -> None:
    block = _blocks(EVENING)[1]
    _goes(table, block)
    assert max(map(len, block.split("\n"))) <= WIDTH
    assert block.rstrip("\n").split("\n")[-2:] == [
        SIGN.rstrip(),
        bottom_line(standing(table), chat_words(), WIDTH),
    ]


def test_the_talk_with_a_list_goes_as_shown(session: Session) -> None:
    own = Session(session.knowledge)
    own.stock = read_stock(EVENINGS / "quay-house-bottles.csv", own.knowledge, own.parser)
    (block,) = _blocks(BOTTLES)
    _goes(own, block)


def test_every_file_it_names_is_there() -> None:
    named = re.findall(r"(?:assistant|corpus|ontology|tests)/[\w./-]*\w", README)
    assert named
    assert [name for name in named if not (ROOT / name).exists()] == []
