"""`R forgot to say she's lactose intolerant`: what is retold of a guest, put first hand."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from assistant.knowledge.files import corpus_dir
from assistant.language.data import read_data, read_words
from assistant.language.fold import fold

CONTINUES = "ing"
CALLED = (" one", " guest", " lady")
_LINK = re.compile(r",\s|\sand\s")


@dataclass(frozen=True, slots=True)
class Retold:
    """What is left out of what is retold: `mine` in front, `theirs` between a guest and the need.

    `opens`, `told`, `then`, `hence`: what leads in, who told it, what follows (`so no more for him`);
    `kept`: that it is to be remembered;
    `is_whom`: who a guest is at the party;
    `where`: the place behind a guest; `the_one`: that this is who has the need, `only_one`: and nobody else;
    `reacts`: a reaction that a guest always has; `short`: a name run together
    with `is` in front of a need; `behind`: somebody, a need, and only then the name of who has it; `bracket`:
    the same with the name in brackets; `who`: a need said to be somebody, `needs` being the words for it.
    """

    mine: re.Pattern[str]
    theirs: re.Pattern[str]
    where: re.Pattern[str]
    the_one: re.Pattern[str]
    reacts: re.Pattern[str]
    arrives: re.Pattern[str]
    one_more: re.Pattern[str]
    is_whom: re.Pattern[str]
    opens: re.Pattern[str]
    told: re.Pattern[str]
    then: re.Pattern[str]
    hence: re.Pattern[str]
    leads_to: re.Pattern[str]
    kept: re.Pattern[str]
    willing: re.Pattern[str]
    cannot_do: re.Pattern[str]
    cannot_have: str
    named_she: re.Pattern[str]
    allergic: str
    only_one: re.Pattern[str]
    short: re.Pattern[str]
    behind: re.Pattern[str]
    bracket: re.Pattern[str]
    who: re.Pattern[str]
    needs: Mapping[str, str]
    several: frozenset[str]
    no_name: frozenset[str]

    @classmethod
    def of(cls, tables: Mapping[str, Any]) -> Retold:
        """The turns of the table `retold`. Raises KeyError for a key that is missing."""
        table = tables["retold"]
        names = ("mine", "verbs", "who", "where", "the_one", "short_needs", "ones", "named_by")
        mine, verbs, who, where, the_one, short, ones, named_by = (either(table[key]) for key in names)
        needs = {word: need for need, words in table["called_by"].items() for word in words}
        family = rf"(?:my|our|his|her)\s{either(tables['named']['kin'])}\s"
        whom = either((*table["is_whom"], *tables["named"]["kin"]))
        days = either(tables["days"])  # `somebody is late, it's Friday`
        return cls(
            re.compile(rf"{mine}\s(?:that\s)?", re.IGNORECASE),
            re.compile(
                rf"\s{verbs}(?:\s(?!{who}\b)\w{{1,20}}){{0,4}}?\s(?:that\s)?{who}(?:(?P<is>s\b|re\b)|\b)",
                re.IGNORECASE,
            ),
            re.compile(rf"(?<=\w)\s{where}(?=\s|['’]s\b)", re.IGNORECASE),
            re.compile(rf"(?<=\w){the_one}(?=\s)", re.IGNORECASE),
            re.compile(rf"(?<=\w)\s{either(table['reacts'])}\s", re.IGNORECASE),
            re.compile(
                rf"(?:\s(?:has\s|is\s)?|['’]s\s)(?:just\s)?{either(table['arrives'])}(?:,|;|\sand|\sbut)?\s"
                rf"(?:{who}(?:['’]?s|\sis|['’]?re|\sare)|is|are)\s",
                re.IGNORECASE,
            ),
            re.compile(rf"\s{either(table['one_more'])}\b", re.IGNORECASE),
            re.compile(
                rf"(?<=\w)(?:['’]s|\sis)\s(?:the|our|my|a)\s{whom}(?:,|;|\sand|,\sand)?"
                rf"\s(?:who|{who})(?=\s|['’])",
                re.IGNORECASE,
            ),
            re.compile(rf"^(?:{either(table['opens'])}(?:\s?[,.;!:-]\s?|\s))+(?=\w)", re.IGNORECASE),
            re.compile(
                rf"(?<=\w),?\s{who}(?:['’]ve|['’]s|\shas|\shave)?(?:\sonly|\sjust)*\s{either(table['told'])}"
                rf"(?:\s(?:now|today|tonight|earlier|just))*(?=$|[,;]|\sand\b|\sso\b)",
                re.IGNORECASE,
            ),
            re.compile(
                rf",?\s(?:so|and)\s(?:it['’]s\s)?{either(table['then'])}(?:\sfor\s(?:her|him|them))?(?=$|[,;])",
                re.IGNORECASE,
            ),
            re.compile(r",?\s(?:and\s)?so\s(?P<none>no\s[^,;]+?)\sfor\s(?:her|him|them)\b", re.IGNORECASE),
            re.compile(rf"(?<=\w),?\s{either(table['leads_to'])}\s[^.!?]*+", re.IGNORECASE),
            re.compile(rf"(?<=\w)(?:[,;.]\s?|\s(?:and|so)\s){either(table['kept'])}[ .!]*$", re.IGNORECASE),
            re.compile(rf"(?<=\w)\s{either(table['willing'])}\sto\s(?=drive\b)", re.IGNORECASE),
            re.compile(rf"(?<=\w)\s{either(table['cannot_do'])}(?=\s)", re.IGNORECASE),
            table["cannot_have"],
            re.compile(
                rf"^(?P<name>(?!{either(tables['lead']['words'])}\b)\w{{1,30}})\s{who}(?=['’]?s\b|\sis\b|\shas\b|\scan|\sdoes)",
                re.IGNORECASE,
            ),
            table["allergic"],
            re.compile(rf"^{either(table['only_one'])}\s(?P<name>\w+)\s(?:who|that)\s", re.IGNORECASE),
            re.compile(rf"^(?P<name>[a-z]\w+)s(?=\s{short}\b)", re.IGNORECASE),
            re.compile(
                rf"\b(?i:{ones})\s(?P<need>[^,;.?!]+)[,;]\s(?:(?i:the|my|our|his|her)\s\w+[,;]\s)?(?i:{named_by})\s(?!(?i:{days})\b)(?P<name>[A-Z]\w+)"
            ),
            re.compile(
                rf"\b(?:{ones}|one)\s(?:is\s)?(?P<need>[^,;.?!()]+)\s\((?P<name>\w+)\)", re.IGNORECASE
            ),
            re.compile(
                rf"^(?:no,?\s)?(?:and\s)?(?:the|our|my)?\s?(?P<need>{either(needs)})\s(?:is|are)\s(?:called\s)?"
                rf"(?P<names>(?:{family})?\w+(?:(?:,|\sand)\s\w+)*)(?P<not>,?\s(?:and\s)?not\s[^,;]+)?\.?$",
                re.IGNORECASE,
            ),
            needs,
            frozenset(table["several"]),
            frozenset(table["no_name"]),
        )


@lru_cache(maxsize=1)
def _retold() -> Retold:
    """The shipped turns. Raises KnowledgeError for a broken file."""
    return read_data(corpus_dir() / "language" / "guests.toml", Retold.of)


def first_hand(typed: str) -> str:
    """What is said, without that somebody said it; any other text as it is."""
    known = _retold()
    found = known.mine.match(typed)
    said = known.where.sub("", typed[found.end() :] if found else typed, count=1)
    said = known.the_one.sub("", known.named_she.sub(r"\g<name>", said), count=1)
    said = known.theirs.sub(lambda match: " is" if match["is"] else "", said, count=1)
    return known.short.sub(_apart, said)


def as_told(typed: str) -> str:
    """`It's only Mark who gets hives from nuts` as `Mark is allergic to nuts`; any other text as it is.

    So `Ruby is the bride, she hates oak` as `Ruby hates oak`, and
    `Sara just turned up, she's vegan` as `Sara is vegan`.
    """
    known = _retold()
    typed = known.is_whom.sub("", typed, count=1)
    typed = known.leads_to.sub("", known.told.sub("", known.opens.sub("", known.kept.sub("", typed))))
    typed = known.cannot_do.sub(f" {known.cannot_have}", known.willing.sub(" has to ", typed))
    typed = known.hence.sub(r" and \g<none>", known.then.sub("", known.arrives.sub(" is ", typed, count=1)))
    return known.reacts.sub(f" {known.allergic} ", known.only_one.sub(r"\g<name> ", typed, count=1), count=1)


def comes_too(typed: str) -> bool:
    """Whether somebody who is told of was not counted before."""
    known = _retold()
    return bool(known.arrives.search(typed) and known.one_more.search(typed))


def tells_habit(typed: str) -> bool:
    """Whether a reaction is told of that a guest always has, and not one that is here now."""
    return bool(_retold().reacts.search(typed))


def _apart(match: re.Match[str]) -> str:
    """`Marks allergic` as `Mark is allergic`; a name as it stands (`James`) and several people are left."""
    whole = fold(match[0])
    left = whole in _retold().several or whole in given_names()
    return match[0] if left else f"{match['name']} is"


@lru_cache(maxsize=1)
def given_names() -> frozenset[str]:
    """What people are called; read on the first name that may have run together."""
    return read_words(corpus_dir() / "language" / "given-names.txt")


def named_first(typed: str) -> str:
    """`One of them is pregnant, that's Nell`, `the vegan is Nell` as it is said of Nell; else as it is."""
    known = _retold()
    typed = known.bracket.sub(r"\g<name> is \g<need>", known.behind.sub(r"\g<name> \g<need>", typed, count=1))
    return known.who.sub(_of_names, typed)


def as_called(need: str) -> str:
    """`the pregnant one` as `pregnant`: a need by which a guest is called; any other as it is."""
    words = need.lower().split()
    called = " ".join(words[1:]) if words[:1] == ["the"] else ""
    return _retold().needs.get(called, need) if called.endswith(CALLED) else need


def _of_names(match: re.Match[str]) -> str:
    """Each of the names with the need; what is no name is left as it is (`the driver is late`)."""
    names, need = _LINK.split(match["names"]), _retold().needs[match["need"].lower()]
    none = any(fold(name) in _retold().no_name or fold(name).endswith(CONTINUES) for name in names)
    return match[0] if none else " and ".join(f"{name} is {need}" for name in names)


def either(words: Iterable[str]) -> str:
    """A pattern of any of these words, the longest first."""
    return f"(?:{'|'.join(re.escape(word) for word in sorted(words, key=len, reverse=True))})"
