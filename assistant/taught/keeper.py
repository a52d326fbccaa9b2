"""The notebook of one conversation: what stands in it, what was kept last, and what it adds to answers."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path

from assistant.answers.record import Answer
from assistant.knowledge.problems import Problem
from assistant.knowledge.store import Knowledge
from assistant.language.parse import Parser
from assistant.notebook import Notebook, Stated, Statement, add, standing
from assistant.notebook.carrying import HOST, Brought, Sent, bring, send
from assistant.pairing.dish import Dish
from assistant.pairing.engine import Engine
from assistant.taught.overlay import Overlay, overlay_of
from assistant.taught.words import taught_words

AUTHOR = HOST


class Keeper:
    """Keeps statements and says what stands. Without a notebook it keeps nothing."""

    def __init__(self, notebook: Notebook | None, parser: Parser, engine: Engine) -> None:
        self._notebook, self._engine = notebook, engine
        self.parser = parser
        self.just: tuple[Statement, ...] = ()
        self.before: tuple[Statement, ...] = ()  # what was just kept when the last question was asked
        self.last: Answer | None = None
        self.overlay = Overlay()
        taught_words()  # now, so that a broken file is told at once
        self._heed()

    @property
    def keeps(self) -> bool:
        """Whether there is a notebook at all."""
        return self._notebook is not None

    @property
    def knowledge(self) -> Knowledge:
        """The knowledge that what is taught is held against."""
        return self._engine.knowledge

    def new_conversation(self) -> None:
        """Forgets what was said last; what was taught stands."""
        self.just, self.before, self.last = (), (), None

    def asked(self, answer: Answer) -> None:
        """Takes down that something was asked since: what was kept last is no longer just kept."""
        self.before, self.just, self.last = self.just, (), answer

    def own_food(self, dish: Dish) -> str:
        """The name of the host's own food that a dish is, or an empty text."""
        return dish.called if any(food.name == dish.called for food in self.overlay.foods) else ""

    def told(self) -> tuple[Statement, ...]:
        """The statements that stand, in the order they were made."""
        return standing(self._notebook.statements) if self._notebook else ()

    def made(self) -> dict[str, Statement]:
        """Every statement there is, taken back or not, by its id."""
        return {one.id: one for one in self._notebook.statements} if self._notebook else {}

    def keep(self, *made: Stated) -> tuple[Problem, ...]:
        """Saves what was stated, all or nothing; without problems it is on the disk and heeded."""
        wrong = tuple(problem for one in made for problem in one.problems)
        if wrong or self._notebook is None:
            return wrong
        statements = tuple(one.statement for one in made if one.statement)
        saved = add(self._notebook, *statements)
        if saved.problems:
            return saved.problems
        self._notebook, self.just = saved.notebook, statements
        self._heed()
        return ()

    def send(self, file: Path) -> Sent:
        """Writes what stands to a new file."""
        return send(self._notebook, file) if self._notebook else Sent()

    def bring(self, file: Path, name: str) -> Brought | None:
        """Takes in the notebook of a host of this name; what came in is heeded, and undone by an undo."""
        if self._notebook is None:
            return None
        brought = bring(self._notebook, file, name)
        if brought.merged.added:
            self._notebook, self.just = brought.merged.notebook, brought.merged.added
            self._heed()
        return brought

    @contextmanager
    def without(self, group: Sequence[Statement]) -> Iterator[None]:
        """For as long as it lasts, answers are as if these statements had never been made."""
        try:
            self._heed([one for one in self.told() if one not in group])
            yield
        finally:
            self._heed()

    def _heed(self, told: Sequence[Statement] | None = None) -> None:
        self.overlay = overlay_of(self.told() if told is None else told, self.knowledge)
        self._engine.heed(self.overlay.amounts)
