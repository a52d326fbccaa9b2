"""What a word turns into a ban, or an exception into one or a wish: `no red`, `nothing but red`."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.language.frame import Text
from assistant.language.small_words import small_words

FOODS = ("food", "sauce", "dressing", "garnish")
_REACH, _FAR = 4, 7  # words that a turn reaches over, and that one reaches over to `anything but`


def negated(text: Text, at: int) -> bool:
    """Whether a word turns what stands here into a ban (`not`, `no`, `nothing`, `hate` ...)."""
    if (banned := excepted(text.stems, at)) is not None:
        return banned
    words, turn = small_words(), _turn(text, at)
    if turn is None or text.stems[turn] in words["turns"]:
        return turn is not None and not (_of_thing(text, turn) or _within_name(text, turn, at))
    if turn == at - 1 and text.stems[turn] in words["joins"] and hated(text, turn):
        return True  # `he hates oak and bubbles`
    return turn > 0 and " ".join(text.stems[turn - 1 : turn + 1]) in words["turns-over"]


def denied(text: Text, at: int) -> bool:
    """Whether it is not wanted, rather than found to be too much (`too sour` alone tells of a fault)."""
    found = _turn(text, at)
    while found is not None and text.stems[found] in small_words()["over-much"]:
        found = _turn(text, found)
    return found is not None and negated(text, at) and text.stems[found] in small_words()["turns"]


def hated(text: Text, at: int) -> bool:
    """Whether somebody is said not to bear what stands here (`he hates Riesling, what could go with it`)."""
    words, turn = small_words(), _turn(text, at)
    if turn is None or not negated(text, at):
        return False
    return text.stems[turn] in words["felt"] or bool(
        words["borne"].intersection(text.stems[turn + 1 : turn + 2])
    )


def _turn(text: Text, at: int) -> int | None:
    """Where the nearest word in front stands that turns what follows or ends what was turned, if any."""
    words = small_words()
    near = range(at - 1, max(-1, at - 1 - _REACH), -1)
    ends = words["ends"] | words["turns"] | words["wants-on"]
    found = next((i for i in near if text.stems[i] in ends), None)
    if found is None and at and text.stems[at - 1] in words["liking"]:
        far = range(at - 2, max(-1, at - 1 - _FAR), -1)  # `nobody in this family likes tannin`
        found = next((i for i in far if text.stems[i] in words["nobodies"]), None)
    return None if found is not None and _only_answers(text.stems, found) else found


def _only_answers(stems: Sequence[str], at: int) -> bool:
    """Whether a `no` opens a text and refuses what was answered, not what follows (`no something fizzy`)."""
    words = small_words()
    opens = at == 0 and stems[0] in words["answers"]
    return opens and not words["behind-answer"].isdisjoint(stems[1:2])


def _of_thing(text: Text, at: int) -> bool:
    """Whether a food is said to do what only people do (`does the blue hate the Sancerre`)."""
    felt = text.stems[at] in small_words()["felt"]
    return felt and any(r.end == at and r.kind in FOODS for r in text.readings)


def _within_name(text: Text, turn: int, at: int) -> bool:
    """Whether a turning word is part of a name in front (`without alcohol and fizzy` wants bubbles)."""
    return any(r.start <= turn < r.end <= at for r in text.readings)


def excepted(stems: Sequence[str], at: int) -> bool | None:
    """Whether what stands here is the exception that is banned, or (False) all that is wanted.

    `anything but red` bans red; `nothing but red` and `she won't drink anything but red` want it.
    None where it is no exception.
    """
    words = small_words()
    end = _exception(stems, _before_article(stems, at))
    if end and stems[end - 1] in words["all-things"]:  # `any wine but`, `nothing here but`
        end -= 1
    whole = stems[end - 1] if end else ""
    if whole in words["none-of-all"]:
        return False
    return not _turned(stems, end - 1) if whole in words["all-but"] else None


def _exception(stems: Sequence[str], end: int) -> int:
    """Where the words start that except what stands at the end (`but`, `other than`); 0 where none do."""
    said = small_words()["excepting"]
    return next((end - n for n in (2, 1) if " ".join(stems[max(0, end - n) : end]) in said), 0)


def _turned(stems: Sequence[str], at: int) -> bool:
    """Whether `anything`, `all` stands in a clause that denies it (`won't have anything`)."""
    words = small_words()
    for i in range(at - 1, max(-1, at - 1 - _FAR), -1):
        if stems[i] in words["ends"] or stems[i] in words["minds"]:
            return False
        if stems[i] in words["turns"]:
            return True
    return False


def ruled_out(text: Text, at: int) -> bool:
    """Whether it is what something is not to be (`that isn't`, `other than`), whatever is asked."""
    if (banned := excepted(text.stems, at)) is not None:
        return banned
    said = f" {' '.join(text.stems[: _before_article(text.stems, at)])}"
    return any(said.endswith(f" {phrase}") for phrase in small_words()["ruled-out-by"])


def held_against(text: Text, at: int) -> bool:
    """Whether a wine only tells how far another may go (`nothing heavier than a Pinot Noir`)."""
    end = _before_article(text.stems, at)
    return end > 0 and text.stems[end - 1] in small_words()["than"] and negated(text, at)


def _before_article(stems: Sequence[str], at: int) -> int:
    while at and stems[at - 1] in small_words()["articles"]:
        at -= 1
    return at


def turned_word(stems: tuple[str, ...], at: int) -> bool:
    """Whether the word before turns this one alone (`a not oaky white` is still a white)."""
    return at > 0 and stems[at - 1] in small_words()["turns-word"]
