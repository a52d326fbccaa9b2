"""`can Mo have the salami`: the guest of tonight, with known needs, whom a question is about."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import replace
from itertools import dropwhile, pairwise

from assistant.language.fold import fold, stem
from assistant.language.frame import Frame
from assistant.language.guests import Asked, guest_words
from assistant.language.own_needs import asks_for_own, own_words

_WORD = re.compile(r"\w[\w-]*")
POSSESSIVE = re.compile(r"['’]s\b")


def guests_named(typed: str, needs: Sequence[Asked]) -> tuple[str, ...]:
    """The guests, as called, that a text names: by name, or by what they ask to be spared (`the vegans`)."""
    words = _WORD.findall(POSSESSIVE.sub("", typed))
    found = [n.guest for n in needs if _by_name(n.guest, words) or _by_need(n.need, words)]
    found += [n.guest for n in needs if _owns(n.guest, typed)]
    found += filter(None, [asks_for_own(typed, needs)])
    return tuple(one for one in dict.fromkeys(found) if not _of_another(one, found))


def needs_named(typed: str, needs: Sequence[Asked]) -> tuple[str, ...]:
    """The needs by which guests without a name are called (`the coeliac`)."""
    words = _WORD.findall(POSSESSIVE.sub("", typed))
    return tuple(n.need for n in needs if not n.guest and _by_need(n.need, words))


def _of_another(guest: str, found: Sequence[str]) -> bool:
    """Whether the name only tells whose guest another is: Lena, where Lena's husband is named."""
    return any(other != guest and guest and POSSESSIVE.split(other)[0] == guest for other in found)


def has_name(guest: str) -> bool:
    """Whether a guest is called by a name, and not `two of them` or `2`."""
    name = _WORD.findall(guest)
    counted = any(word.isdigit() for word in name)
    return bool(name) and not counted and not guest_words().grouped.intersection(fold(word) for word in name)


def own_name(guest: str) -> list[str]:
    """The name in what a guest is called (`my neighbour Ewa`); empty where there is none, or nothing else.

    Typed small it is the one word behind what the guest is to somebody (`aunt carol`).
    """
    words, kin = _WORD.findall(guest), guest_words().kin
    if len(words) > 1 and fold(words[-2]) in kin and fold(words[-1]) not in kin:
        return words[-1:]
    name = [word for word in words if word[:1].isupper()]
    return name if words[-len(name) :] == name and 0 < len(name) < len(words) else []


def words_of_guests(guests: Iterable[str]) -> frozenset[str]:
    """The words of these names, folded."""
    return frozenset(fold(word) for guest in guests for word in _WORD.findall(guest))


def without_names(frame: Frame, needs: Sequence[Asked]) -> Frame:
    """The frame without the names of guests told of, and of who says something, among words not known."""
    names = words_of_guests(need.guest for need in needs if has_name(need.guest)) | _speaker(frame)
    left = tuple(word for word in frame.text.left_out if fold(word) not in names)
    return replace(frame, text=replace(frame.text, left_out=left)) if names else frame


def _speaker(frame: Frame) -> frozenset[str]:
    """The name that opens a text and does what only a person does (`Rolf says`); empty where none is."""
    known, words = guest_words(), [fold(word) for word in frame.text.words if word[:1].isalnum()]
    while words and words[0] in known.lead:
        words.pop(0)
    return frozenset(words[:1]) if words[1:2] and words[1] in known.does else frozenset()


def _by_name(guest: str, words: Sequence[str]) -> bool:
    """Whether the name stands in the words: a letter as written, one that is a word too not in front."""
    known, name = guest_words(), own_name(guest) or _WORD.findall(POSSESSIVE.sub("", guest))
    if not has_name(guest) or guest == own_words().called:
        return False
    everyday = any(fold(word) in known.everyday for word in name)
    strict = everyday or any(len(word) == 1 for word in name)
    wanted, said = ([word if strict else fold(word) for word in row] for row in (name, words))
    found = (at for at in range(len(said)) if said[at : at + len(wanted)] == wanted)
    sure = any(at or not everyday or _is_told_of(said[len(wanted) :]) for at in found)
    small = [fold(word) for word in words] if len(name) == 1 and everyday else []
    return sure or _asked_for(fold(name[0]), small) or _tells_of(fold(name[0]), small)


def _owns(guest: str, typed: str) -> bool:
    """Whether a name that is a word too, and nothing to eat, opens what is somebody's (`Sue's doctor`)."""
    first, owned = typed.split()[:1], POSSESSIVE.search(typed.partition(" ")[0])
    name = fold(POSSESSIVE.sub("", first[0])) if first and owned else ""
    return bool(name) and name == fold(guest) and name not in guest_words().eaten_too


def _asked_for(name: str, said: Sequence[str]) -> bool:
    """Whether a name that is a word too stands where only somebody does: `what can mark drink`."""
    known = guest_words()
    pairs = pairwise(said)
    return name not in known.eaten_too and any(b == name and a in known.before_one for a, b in pairs)


def _tells_of(name: str, said: Sequence[str]) -> bool:
    """Whether a name that is a word too opens what is told (`sue drank some`); `will` and `may` ask."""
    told = list(dropwhile(guest_words().lead.__contains__, said))
    opens = told[:1] == [name] and name not in guest_words().before_one
    return opens and (_is_told_of(told[1:]) or bool(guest_words().no_name_verbs.intersection(told[1:2])))


def _is_told_of(behind: Sequence[str]) -> bool:
    """Whether something is told of whoever is named in front: `pat asks`, and not `will the brie`."""
    known = guest_words()
    return bool(set(behind[:1]) & (known.is_ | known.does | {verb.split()[0] for verb in known.passing}))


def _by_need(need: str, words: Sequence[str]) -> bool:
    """Whether guests are called by a need of one word: `the vegetarians`, not `a vegan cheese`."""
    known, said = guest_words(), [fold(word) for word in words]
    for at, word in enumerate(said):
        called = at and stem(word) == stem(fold(need)) and said[at - 1] in known.called
        if called and (word != stem(word) or said[at + 1 : at + 2] in _ends()):
            return True
    return False


def _ends() -> list[list[str]]:
    return [[], *([word] for word in sorted(guest_words().called_then))]
