"""One conversation: text in, answers out. Chat, `ask` and other programs use this and nothing below it."""

from __future__ import annotations

import time
from collections.abc import Callable
from dataclasses import replace
from functools import partial

from assistant.afresh import said_alone
from assistant.after.acts import after_heard, of_after
from assistant.after.corrections import corrections_of
from assistant.answers import small
from assistant.answers.again import told_again
from assistant.answers.context import Context
from assistant.answers.extremes import asked_of_table
from assistant.answers.health import of_health
from assistant.answers.in_turn import in_turn, turn
from assistant.answers.overview import overview
from assistant.answers.record import Answer
from assistant.answers.taken_down import taken_down
from assistant.answers.wording import Wording
from assistant.builders import BUILDERS, built, of_evening
from assistant.evening.warned import warned
from assistant.knowledge.collector import loading
from assistant.knowledge.store import Knowledge, shipped
from assistant.language.cautioned import Cautioned, after, heeded, of_same
from assistant.language.eating import WITHOUT_ALCOHOL
from assistant.language.entries import is_explained
from assistant.language.follow_asks import doubted
from assistant.language.follow_lines import says
from assistant.language.follow_lists import solved
from assistant.language.frame import Frame, Text
from assistant.language.guest_named import without_names
from assistant.language.guest_spelt import as_spelt
from assistant.language.parse import Parser
from assistant.language.party import without_party
from assistant.language.standing import Talk, only_kinds, stands
from assistant.language.strength import as_labelled
from assistant.mending import TROUBLE, mended_on
from assistant.notebook import Notebook
from assistant.pairing.dish import Dish
from assistant.pairing.engine import Engine
from assistant.rehearse.noting import AnswerLog
from assistant.spoken import Spoken
from assistant.steps import Steps
from assistant.stock.answering import of_list, with_list
from assistant.stock.asked import meant_of_list
from assistant.stock.records import Stock
from assistant.table.chosen import last_choice, of_choice
from assistant.table.headcount import of_everybody, speaks_of_guests, supposed
from assistant.table.laying import as_laid, with_choice
from assistant.table.numbered import by_number
from assistant.table.own_dishes import followed, short_names
from assistant.table.poured import as_poured, bottles_called, of_kind_here
from assistant.table.spoilt import after_told
from assistant.table.table_set import bottles_meant
from assistant.table.tonight import SETS, Tonight, at_table, paired
from assistant.table.what_it_is import rated
from assistant.taught.answering import answered, heard_anew, heeded_in, is_own, spoken_of
from assistant.taught.carried import by_talk
from assistant.taught.keeper import Keeper
from assistant.told_first import asks, asks_on, questions_of

NO_FRAME = Frame("note", Text("", (), (), (), frozenset(), ()))
COUNTED = ("quantity",)
# What is said in between leaves standing what stood before.
ASIDES = ("define", "help", "smalltalk", "safety", "trouble", "unclear")
HELP, MOST_IN_TURN = "help", 2
NOTHING_SAID = replace(NO_FRAME, intent="unclear")


class Session:
    """Answers questions one after another; each may follow on from the one before."""

    def __init__(
        self, knowledge: Knowledge | None = None, top: int = 3, notebook: Notebook | None = None
    ) -> None:
        with loading():
            self.knowledge = knowledge or shipped()
            self.engine = Engine(self.knowledge)
            self.parser = Parser(self.knowledge)
            self.wording = Wording()
        self.taught = Keeper(notebook, self.parser, self.engine)
        self.log: AnswerLog | None = None
        self.top = top
        self._talk: Talk | None = None
        self._puzzle: Frame | None = None
        self._cautioned: Cautioned | None = None
        self._given = self.tonight = Tonight()
        self._steps, self.stock = Steps(), Stock()
        self._last: Answer | None = None
        self.proposed: Tonight | None = None  # the next evening, as last proposed
        self.written: Frame | None = None  # the text to guests that was asked for last
        self.warm_texts = False
        self.spoken = Spoken()

    def new_conversation(self) -> None:
        """Forgets what stands and what was put on the table by talk."""
        self._begin(None, self._given)
        self.taught.new_conversation()

    def new_conversation_of(self, talk: Talk | None, tonight: Tonight) -> None:
        """Starts where a turn stands and a table is set, as it was when a question was put aside."""
        self._begin(talk, tonight)

    def _begin(self, talk: Talk | None, tonight: Tonight) -> None:
        self._talk, self._puzzle, self._cautioned = talk, None, None
        self.tonight, self.proposed, self.written, self.warm_texts = tonight, None, None, False
        self._steps, self._last, self.spoken = Steps(), None, Spoken()

    def lay(self, tonight: Tonight) -> None:
        """Sets the table of the evening; every new conversation starts with it."""
        self._given = self.tonight = tonight

    @property
    def talk(self) -> Talk | None:
        """The turn that stands, or None."""
        return self._talk

    def dish_name(self, dishes: tuple[Dish, ...]) -> str:
        """How dishes are called in a sentence."""
        return self._context(replace(NOTHING_SAID, dishes=dishes)).dish_name()

    def ask(self, typed: str) -> Answer:
        """The answer to what was typed; never raises. Several questions in a line are answered in turn."""
        carried = by_talk(typed, self.taught, self._context(NO_FRAME))  # before reading: a file is no wine
        if not carried and self._last and (again := told_again(typed, self._last)) is not None:
            return again
        spelt = as_spelt(typed, self.tonight.needs, self.parser.lexicon)
        self._last = carried or self._in_turn(spelt)
        return self._last

    def _in_turn(self, typed: str) -> Answer:
        questions = questions_of(typed, partial(asks, self), partial(asks_on, self), self)
        if len(questions) == 1:
            return self._ask_one(typed)
        answers = [self._ask_one(question) for question in questions[:MOST_IN_TURN]]
        answers.sort(key=partial(turn, self.parser.topics.urgent))  # what may hurt is told first
        return in_turn(typed, answers, questions[MOST_IN_TURN:], self.wording)

    def _ask_one(self, question: str) -> Answer:
        started = time.perf_counter()
        frame = without_names(as_labelled(self.read(question), self.knowledge), self.tonight.needs)
        if (back := self._steps.back(frame)) is not None:
            self.tonight, self._talk = back
        if back is not None and not self.taught.just:
            return small.shown(self._context(frame)) or small.cleared(self._context(frame))
        before = self.tonight, self._talk
        self.tonight = after_told(frame, self)
        told_of = self.tonight.needs != before[0].needs  # who is only told of asks nothing yet
        frame = without_party(frame) if told_of or self.tonight.budget != before[0].budget else frame
        answer = taken_down(self._answer(frame, told_of), before[0], self._context(frame))
        answer = warned(answer, before[0], self._context(frame), self)
        self._cautioned = after(frame, self._cautioned)
        self.spoken.heard(answer)
        self.spoken.ails = frame.entries[:1] if answer.intent == TROUBLE else ()
        told = frame.intent not in BUILDERS and bool(frame.dishes or frame.wines)
        looks = frame.intent == SETS and not frame.text.readings and self.tonight == before[0]
        if (answer.understood or told) and not (looks or self._aside(frame)):
            picks, avoid = tuple(i.id for i in answer.picks), tuple(i.id for i in answer.avoid)
            stood = of_everybody(frame, self.spoken, self.tonight.needs)
            self._talk = stands(stood, picks, avoid, self._talk)
        self._steps.noted(before, (self.tonight, self._talk), bool(self.taught.just))
        half = frame.intent == "foods-for-wine" and not frame.dishes  # a wine and a food that is not known
        self._puzzle = frame if frame.text.left_out and (half or not answer.understood) else None
        if not frame.after:
            answer = heeded_in(with_list(answer, self._context(frame)), self._context(frame), self.taught)
        private = told_of or of_health(frame, answer)
        answer = replace(answer, seconds=round(time.perf_counter() - started, 4), private=private)
        return self.log.noted(frame, answer) if self.log else answer

    def read(self, question: str) -> Frame:
        """The question understood, together with what stands; nothing is answered or remembered."""
        short = short_names(self.tonight, self._talk, self.knowledge, self.parser.lexicon)
        names = {**short, **by_number(question, self)}
        called = bottles_called(self.tonight, self.stock, self.knowledge, names)
        frame = spoken_of(heard_anew(question, self.taught, self._talk, called), self.taught)
        choice = last_choice(self._talk)
        frame = as_poured(frame, self.tonight.wines or (choice.picks if choice else ()), self.knowledge)
        if alone := said_alone(frame, self.tonight.needs):
            return replace(NOTHING_SAID, intent=alone, text=frame.text)
        before = of_same(self._cautioned, frame, self.tonight.needs)
        frame = heeded(frame, before, self.parser.topics.by_id, self.knowledge.label(WITHOUT_ALCOHOL))
        frame = after_heard(rated(frame, self.tonight), self, self._talk)
        if frame.after or is_own(frame, self.taught):
            return self._pourable(frame)
        last = self._last.intent if self._last else ""
        frame = doubted(paired(frame, self.tonight, self._talk), self._talk, last)
        frame = mended_on(bottles_meant(frame, self.tonight, self.knowledge), self.spoken)
        told = as_laid(frame, self._talk, self.tonight, self.knowledge)
        heard = followed(frame, self._talk, self.tonight, self.knowledge) if told is frame else told
        frame = self._pourable(heard)
        frame = of_choice(frame, self._talk, self.tonight, self.engine)
        frame = at_table(solved(frame, self._puzzle), self.tonight, self.knowledge)
        frame = of_kind_here(frame, self.tonight.wines, self.knowledge)
        return meant_of_list(frame, self._talk, self.stock)

    def _aside(self, frame: Frame) -> bool:
        """Whether what stood stands on: a saying only brings in what it names itself."""
        old = self._talk.frame.dishes if self._talk else ()
        if frame.after or is_own(frame, self.taught) or is_explained(frame) or asked_of_table(frame):
            return True
        counts = frame.intent in COUNTED and bool(self.tonight.dishes or (old and only_kinds(frame.dishes)))
        return counts or frame.intent in ASIDES or (frame.intent == "myth" and frame.dishes in ((), old))

    def _pourable(self, frame: Frame) -> Frame:
        """The frame without wine words that no style of the graph answers to."""
        poured = tuple(w for w in frame.wines if self.knowledge.styles_of(w))
        return replace(frame, wines=poured)

    def _of_guest(self, frame: Frame) -> Callable[[Context, Session], Answer | None] | None:
        """What answers what a guest with needs, or one with a diet, may have; loaded only then."""
        if not (self.tonight.needs or speaks_of_guests(frame, self.spoken)):
            return None
        from assistant.evening.guest_asks import guest_asks

        return guest_asks(frame, self)

    def _context(self, frame: Frame) -> Context:
        tonight = with_choice(supposed(self.tonight, frame), frame, self._talk)
        corrected = corrections_of(self) if frame.intent in COUNTED else {}
        topics = self.parser.topics.by_id
        return Context(frame, self.engine, self.wording, topics, self.top, tonight, self.stock, corrected)

    def _answer(self, frame: Frame, told_of: bool = False) -> Answer:
        context = self._context(frame)
        if not frame.text.typed:
            return small.unclear(context, "empty")
        if frame.intent == HELP and said_alone(frame):
            return BUILDERS[HELP](context)
        if (later := of_after(frame)) and (answer := later(context, self)) is not None:
            return answer
        guests = None if told_of else self._of_guest(frame)
        answer = guests(context, self) if guests else None
        if answer is not None:
            return answer
        if (own := answered(context, self.taught, self._talk)) is not None:
            return own
        if (listed := of_list(context)) is not None:
            return listed
        if frame.again:
            return replace(self._answer(replace(frame, intent=frame.again, again="")), intent=frame.intent)
        if says(frame, "overview") and self.tonight.wines and self.tonight.dishes and not frame.topics:
            return overview(context)
        whole = of_evening(frame)
        answer = whole(context, self) if whole else None
        return built(context) if answer is None else answer
