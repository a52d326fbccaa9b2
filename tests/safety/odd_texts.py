"""Texts that nobody should have to type: corpus questions spoilt, and noise of every kind, from a seed."""

from __future__ import annotations

import random
import unicodedata
from collections.abc import Callable, Iterator, Sequence
from functools import lru_cache

from assistant.evaluate.read import read_corpus

LONGEST = 100_000
PLANE_ENDS = (0x7F, 0x2FF, 0x2FFF, 0xFFFF, 0x10FFFF)
CONTROLS = [*map(chr, (*range(32), *range(0x7F, 0xA0)))]
HIDDEN = list(
    "\u200b\u200c\u200d\u2060\ufeff\u00ad\u034f\u061c\u180e\u115f\u3164\u2800\ufe0f\U000e0061\U000e007f"
)
TURNED = list("\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069\u200e\u200f")
BROKEN = ["\ud800", "\udbff", "\udc00", "\udfff", "\ud83d", "\udc80", "\ufffe", "\uffff", "\U0010ffff"]
EMOJI = ["🧀", "🍷", "👩\u200d👩\u200d👧", "🇫🇷", "☺️", "🧑🏽\u200d🍳", "1️⃣"]
RIGHT_TO_LEFT = ["שלום", "جبن", "نبيذ ١٢", "יין 7"]
STACKED = ["e" + "\u0301" * 40, "\ufdfa", "ﬁ", "Ｂｒｉｅ", "İ", "ß", "\u1e9b\u0323", "\u0301\u0316" * 30]
ESCAPES = ["\x1b]52;c;Zm9v\x07", "\x1b[2J", "\x9b31m", "\x1b]8;;http://example.org\x07x\x1b]8;;\x07", "\r\n"]
MARKS = [*"?!.,;:'\"()[]{}<>/\\|&%$#@*+-=_~^`", "’", "—", "…", "???", "w/", "''", '""']
NUMBERS = [
    "0",
    "-1",
    "1e309",
    "9" * 400,
    "0." + "0" * 300 + "1",
    "١٢",
    "Ⅻ",
    "½",
    "²",
    "1,000,000",
    "3.5.7",
    "12%",
]
SYMBOLS = [CONTROLS, HIDDEN, TURNED, BROKEN, EMOJI, RIGHT_TO_LEFT, STACKED, ESCAPES, MARKS, NUMBERS]


@lru_cache(maxsize=1)
def questions() -> tuple[str, ...]:
    """Every question and every turn of the corpus."""
    corpus = read_corpus()
    turns = [turn.ask for talk in corpus.dialogues for turn in talk.turns]
    return tuple([q.ask for q in corpus.questions] + turns + [r.ask for r in corpus.refusals])


@lru_cache(maxsize=1)
def corpus_words() -> tuple[str, ...]:
    """Every word of every question."""
    return tuple(sorted({word for question in questions() for word in question.split()}))


def odd_texts(number: int, seed: int) -> Iterator[str]:
    """So many texts, no two alike; the same for the same seed."""
    chance, seen = random.Random(seed), set[int]()
    while len(seen) < number:
        text = chance.choice(WAYS)(chance)[:LONGEST]
        if hash(text) not in seen:
            seen.add(hash(text))
            yield text


def spoilt(chance: random.Random) -> str:
    """A question of the corpus with a few things done to it."""
    text = chance.choice(questions())
    for _ in range(chance.randint(1, 6)):
        text = chance.choice(CHANGES)(text, chance)
    return text


def _dropped(text: str, chance: random.Random) -> str:
    at = chance.randrange(len(text) + 1)
    return text[:at] + text[at + chance.randint(1, 3) :]


def _put_in(text: str, chance: random.Random) -> str:
    at = chance.randrange(len(text) + 1)
    return text[:at] + _symbol(chance) + text[at:]


def _swapped(text: str, chance: random.Random) -> str:
    at = chance.randrange(len(text) + 1)
    return text[:at] + text[at : at + 2][::-1] + text[at + 2 :]


def _shuffled(text: str, chance: random.Random) -> str:
    words = text.split()
    chance.shuffle(words)
    return " ".join(words)


def _crossed(text: str, chance: random.Random) -> str:
    other = chance.choice(questions())
    return text[: chance.randrange(len(text) + 1)] + other[chance.randrange(len(other)) :]


def _run_together(text: str, chance: random.Random) -> str:
    return text.replace(" ", chance.choice(["", "-", "  ", "\t", "\u00a0", "_", ","]))


def _cased(text: str, chance: random.Random) -> str:
    return chance.choice([str.upper, str.title, str.swapcase, str.casefold])(text)


def _decomposed(text: str, chance: random.Random) -> str:
    return unicodedata.normalize(chance.choice(["NFD", "NFKD", "NFKC"]), text)


def _lengthened(text: str, chance: random.Random) -> str:
    return text * chance.choice([2, 3, 8, 40])


def _symbol(chance: random.Random) -> str:
    return chance.choice(chance.choice(SYMBOLS))


def word_salad(chance: random.Random) -> str:
    """Words of the corpus without any order, some of them cut."""
    words = chance.choices(corpus_words(), k=chance.choice([1, 3, 8, 20, 60, 200]))
    return " ".join(word[: chance.randint(1, 12)] if chance.random() < 0.2 else word for word in words)


def any_planes(chance: random.Random) -> str:
    """Characters of any plane, surrogates among them."""
    top = chance.choice(PLANE_ENDS)
    return "".join(chr(chance.randint(0, top)) for _ in range(chance.choice([1, 10, 80, 400])))


def made_up(chance: random.Random) -> str:
    """Words that are in no language, such as repair must weigh against every name it knows."""
    letters = chance.choice(["abcdefghijklmnopqrstuvwxyz", "aeiou", "srtnlm", "zqxj"])
    sizes = [chance.choice([2, 4, 7, 9, 14, 40]) for _ in range(chance.choice([1, 5, 30, 120]))]
    return " ".join("".join(chance.choices(letters, k=size)) for size in sizes)


def symbols(chance: random.Random) -> str:
    """Symbols and words mixed."""
    bits = [
        chance.choice(corpus_words()) if chance.random() < 0.3 else _symbol(chance)
        for _ in range(chance.choice([2, 8, 40, 150]))
    ]
    return chance.choice(["", " "]).join(bits)


def repeated(chance: random.Random) -> str:
    """One thing again and again, then something else: what makes careless patterns slow."""
    unit = chance.choice(
        [_symbol(chance), chance.choice(corpus_words()), " ", "a", "?", chance.choice(questions())]
    )
    times = chance.choice([10, 100, 1_000, 20_000])
    return unit * min(times, LONGEST // max(len(unit), 1)) + chance.choice(["", "x", " brie?", "\n"])


def nested(chance: random.Random) -> str:
    """Brackets in brackets, closed or not."""
    depth, (left, right) = chance.choice([3, 50, 2_000]), chance.choice(["()", "[]", "{}", "<>", "“”", "''"])
    inside = chance.choice([*questions()[:50], "", "brie"])
    return left * depth + inside + right * chance.choice([depth, 0, depth // 2])


def counted(chance: random.Random) -> str:
    """A question with numbers no table has."""
    words = chance.choice(questions()).split()
    for _ in range(chance.randint(1, 4)):
        number = chance.choice([*NUMBERS, str(chance.randint(0, 10**12)), f"{chance.random():.9f}"])
        words.insert(chance.randrange(len(words) + 1), number)
    return " ".join(words)


Change = Callable[[str, random.Random], str]
CHANGES: Sequence[Change] = (
    _dropped, _put_in, _put_in, _swapped, _shuffled, _crossed, _run_together,
    _cased, _decomposed, _lengthened,
)  # fmt: skip
WAYS: Sequence[Callable[[random.Random], str]] = (
    spoilt, spoilt, spoilt, spoilt, word_salad, any_planes, made_up, symbols, repeated,
    nested, counted, counted,
)  # fmt: skip
