"""Of whom was spoken: what `she`, `they` and `and the brie?` take up in the next question."""

from __future__ import annotations

from dataclasses import dataclass, field


@dataclass(slots=True)
class Spoken:
    """The guests a conversation spoke of, by name.

    `asked`: whose food was last asked about; `of`: last spoken of, whom `she` means; `called`: of whom `she`
    or `he` was said; `sober`: whether those who drink no wine were just spoken of.
    """

    asked: tuple[str, ...] = ()
    of: tuple[str, ...] = ()
    called: dict[str, str] = field(default_factory=dict)
    sober: bool = False
