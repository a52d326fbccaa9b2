"""What hosts say in between: that they wait, where the talk stood, what comes next."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from assistant.answers.extremes import extremes_asked, of_taste_asked
from assistant.language.dish_edits import POURED
from assistant.language.follow_lines import ends_of, follow_lines, opens, says, says_only
from assistant.language.follow_words import follow_words
from assistant.language.frame import Frame, Reading
from assistant.language.sorting import EDIBLE
from assistant.language.standing import WHYS, Talk, dishes_of, last_wine, wines_of
from assistant.table.liked_again import liked_again
from assistant.table.tonight import ORDERS, Tonight

CHOOSES, SMALLTALK, DESCRIBES, REPLACES = "wines-for-food", "smalltalk", "describe", "substitute"
IDLE = ("waits", "recap", "lets-be")
UNHEARD = ("unclear", "smalltalk")
DOUBTED = ("safety", "unclear", "smalltalk", "note", "trouble", "myth", "describe", "set-table", "why-not")
TELLS = ("help", "unclear", "smalltalk", "wines-for-food", "foods-for-wine", "define")
NEXT = ("trouble", "unclear", "wines-for-food", "pour-order", "service", "smalltalk")
MOST_IDLE, MOST_BETWEEN, DEEP = 6, 5, 2
PAIRS = ("wines-for-food", "what-if", "unclear", "why-not")
STOOD_IN = ("judge-pair", "wines-for-food", "foods-for-wine", "unclear", "substitute", "set-table",
            "what-if", "compare", "smalltalk", "safety", "one-bottle")  # fmt: skip
OAKED = (*TELLS, *STOOD_IN, "describe", "why", "why-not", "quantity", "myth", "service")


def aside(frame: Frame, talk: Talk | None, tonight: Tonight) -> Frame:
    """The frame of what is said in between, with what stands; any other as it is."""
    if (doubted := _wrong_about(frame, talk)) is not None:
        return doubted
    if frame.topics or frame.entries:
        return frame
    for step in (
        _instead_of,
        _spends,
        _corrected,
        _idle,
        _oak_asked,
        _told_of,
        _why_there,
        _next_poured,
        _bite_with,
        _because_of,
        _of_taste,
        _hated,
        _freed,
        _liked_again,
    ):
        if (meant := step(frame, talk, tonight)) is not None:
            return meant
    return frame


def _idle(frame: Frame, talk: Talk | None, tonight: Tonight) -> Frame | None:
    """`hang on, phone`, `where were we`: few words, and nothing named."""
    few = len(frame.text.stems) <= MOST_IDLE and not frame.text.readings
    opened = any(opens(frame, line) for line in IDLE) and frame.intent in UNHEARD
    if not few or not (opened or any(says_only(frame, line) for line in IDLE)):
        return None
    return replace(frame, intent=SMALLTALK, dishes=talk.frame.dishes if talk else (), again="")


def _wrong_about(frame: Frame, talk: Talk | None) -> Frame | None:
    """`she says I'm wrong about the nuts`: why it was said, where it was, or what is said of them."""
    if not frame.dishes or frame.text.topics or frame.wines or frame.intent not in DOUBTED:
        return None
    if not says(frame, "wrong-about"):
        return None
    frame = replace(frame, topics=(), entries=(), preferences=(), again="")
    if talk is None or frame.dishes != talk.frame.dishes or not (wines := last_wine(talk)):
        return replace(frame, intent=CHOOSES)
    return replace(frame, intent="why", wines=wines, depth=DEEP)


def _corrected(frame: Frame, talk: Talk | None, tonight: Tonight) -> Frame | None:
    """`what with the ham, no the Comté`: the last named counts in the place of the one before it."""
    named = [r for r in frame.text.readings if r.kind in EDIBLE]
    if len(named) != 2 or frame.intent not in PAIRS or len(named) != len(frame.text.readings):
        return None
    first, second = named
    between = frame.text.stems[first.end : second.start]
    if len(between) > MOST_BETWEEN or not follow_lines()["corrects"].stand_in(between):
        return None
    text = replace(frame.text, readings=(second,))
    return replace(frame, text=text, dishes=dishes_of((second.id,)), barred=(), preferences=(), again="")


def _instead_of(frame: Frame, talk: Talk | None, tonight: Tonight) -> Frame | None:
    """`what can Bev drink instead of the Rioja`: what comes nearest to the one thing that is not to be had.

    With a food beside the wine another wine is asked for with it.
    """
    named = [r for r in frame.text.readings if r.type in ("Wine", "Food", "Drink")]
    asks = says(frame, "stands-in-asks") or bool(talk and talk.asked == REPLACES)
    if not named or frame.intent not in STOOD_IN or not (asks and _is_gone(frame, named)):
        return None
    gone, beside = named[-1], named[:-1]
    limits = tuple(p for p in frame.preferences if p.wanted not in (gone.id, *gone.others))
    frame = replace(frame, preferences=limits, barred=(), again="")
    if beside and (gone.kind not in POURED or any(one.kind in POURED for one in beside)):
        return None
    if beside:
        return replace(frame, intent=CHOOSES, wines=(), named_before=(gone.id,))
    poured = gone.kind in POURED
    wines, dishes = ((gone.id,), ()) if poured else ((), dishes_of((gone.id,)))
    return replace(frame, intent=REPLACES, wines=wines, dishes=dishes)


def _is_gone(frame: Frame, named: Sequence[Reading]) -> bool:
    """Whether `instead of` stands before what is named last, or the one thing named is not to be had."""
    missed = says(frame, "not-to-be-had") and (says(frame, "table-instead") or says(frame, "what-else"))
    return named[-1].start in ends_of(frame, "stands-in") or (missed and len(named) == 1)


def _spends(frame: Frame, talk: Talk | None, tonight: Tonight) -> Frame | None:
    """`to spend more than the Rioja`, `and a cheaper one?`: a wine like it that costs more or less."""
    stands = talk.frame.wines if talk and talk.asked == REPLACES else ()
    read = frame.text.readings  # `a step up from the Rioja` is of the wine, not of its home
    wines = frame.wines or (wines_of(tuple(i for r in read for i in r.others)) if read else stands)
    if len(wines) != 1 or _eaten(frame) or frame.intent not in (*STOOD_IN, "plan", "quantity", "help"):
        return None
    if not (says(frame, "dearer") or says(frame, "cheaper")):
        return None
    return replace(frame, intent=REPLACES, wines=wines, dishes=(), preferences=(), again="")


def _oak_asked(frame: Frame, talk: Talk | None, tonight: Tonight) -> Frame | None:
    """`is it oaked`, `and the Rioja, how much oak`: how much of it the one wine meant has."""
    wines = frame.wines or (last_wine(talk) if says(frame, "guest-it") else ())
    if len(wines) != 1 or _eaten(frame) or frame.intent not in OAKED or not says(frame, "oak-asked"):
        return None
    return replace(frame, intent=DESCRIBES, wines=wines, dishes=(), again="")


def _told_of(frame: Frame, talk: Talk | None, tonight: Tonight) -> Frame | None:
    """`what do I say about the Grüner`, `something to tell about this one`: what the wine is like."""
    stands = last_wine(talk)
    placed = follow_words().places.keys() & set(frame.text.stems)  # `the second one`
    wines = frame.wines or (() if frame.text.readings or placed else stands)
    if frame.intent not in TELLS or frame.dishes or not wines or not says(frame, "say-about"):
        return None
    return replace(frame, intent=DESCRIBES, wines=wines, preferences=(), again="")


def _why_there(frame: Frame, talk: Talk | None, tonight: Tonight) -> Frame | None:
    """`why is the Crémant first`: the order of the wines on the table, with its reasons."""
    poured = len(tonight.wines) > 1 and bool(frame.wines) and set(frame.wines) <= set(tonight.wines)
    if frame.intent not in WHYS or not poured or _eaten(frame) or not says(frame, "order-why"):
        return None
    return replace(frame, intent=ORDERS, wines=tonight.wines, dishes=(), again="")


def _next_poured(frame: Frame, talk: Talk | None, tonight: Tonight) -> Frame | None:
    """`what's pouring next`: the order of the wines on the table."""
    poured = bool(set(frame.wines) & set(tonight.wines)) and says(frame, "poured-already")
    named = frame.text.readings and not poured  # `I poured the Rioja already, what's next`
    if frame.intent not in NEXT or len(tonight.wines) < 2 or named:
        return None
    asks = says(frame, "pours-next") or says_only(frame, "order-only")
    return replace(frame, intent=ORDERS, wines=tonight.wines, again="") if asks else None


def _bite_with(frame: Frame, talk: Talk | None, tonight: Tonight) -> Frame | None:
    """`what bite first with the Albariño`: the foods of the table for that wine, the best first."""
    wines = frame.wines or (last_wine(talk) if not frame.text.readings else ())
    one = len(wines) == 1 and tonight.dishes and not _eaten_by_name(frame)
    if not one or frame.intent not in (*TELLS, ORDERS) or not says(frame, "bite-with"):
        return None
    return replace(frame, intent="foods-for-wine", wines=wines, preferences=(), again="")


def _because_of(frame: Frame, talk: Talk | None, tonight: Tonight) -> Frame | None:
    """`is it cos of the salt`: the reasons both ways of the pair that stands, whatever is suspected."""
    pair = talk is not None and talk.frame.wines and talk.frame.dishes
    if talk is None or not pair or frame.wines or not says(frame, "because-of"):
        return None
    both = replace(frame, wines=talk.frame.wines, dishes=talk.frame.dishes, depth=DEEP)
    return replace(both, intent="why", preferences=(), again="")


def _of_taste(frame: Frame, talk: Talk | None, tonight: Tonight) -> Frame | None:
    """`which of them is oaky`, `which is the lighter red`: asked of the table, whatever stands."""
    if not tonight.wines or not (of_taste_asked(frame) or extremes_asked(frame)):
        return None
    spoken = talk is not None and len(talk.frame.wines) > 1  # of those, by `which of the two`
    return None if spoken else replace(frame, intent="compare", dishes=(), wines=(), again="")


def _hated(frame: Frame, talk: Talk | None, tonight: Tonight) -> Frame | None:
    """`Tom hates the Barbera, what else`: another wine for the dish that stands, or for all on the table."""
    dishes = (talk.frame.dishes if talk else ()) or tonight.dishes
    asks = says(frame, "dislikes") and says(frame, "what-else")
    if len(frame.wines) != 1 or not dishes or not asks or _eaten(frame):
        return None
    gone = frame.wines
    frame = replace(frame, intent=CHOOSES, wines=(), dishes=dishes, preferences=(), again="")
    return replace(frame, named_before=gone)


def _freed(frame: Frame, talk: Talk | None, tonight: Tonight) -> Frame | None:
    """`red is fine after all`: what was asked within that limit, whatever was taken up since."""
    free = liked_again(frame, talk)
    return None if free is frame else free


def _liked_again(frame: Frame, talk: Talk | None, tonight: Tonight) -> Frame | None:
    """`he's changed his mind, likes it actually`: back to the wine that another was asked for."""
    before = wines_of(talk.frame.named_before) if talk else ()
    if not before or talk is None or frame.text.readings or not says(frame, "mind-changed"):
        return None
    back = replace(frame, intent="judge-pair", wines=before[-1:], dishes=talk.frame.dishes)
    return replace(back, preferences=(), again="")


def _eaten_by_name(frame: Frame) -> bool:
    return any(reading.kind in EDIBLE and reading.type != "Kind" for reading in frame.text.readings)


def _eaten(frame: Frame) -> bool:
    return any(reading.kind in EDIBLE for reading in frame.text.readings)
