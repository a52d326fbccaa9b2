"""The HTML of all sheets, by the templates in corpus/planning/handout."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import datetime
from functools import lru_cache
from typing import Any

from jinja2 import Environment, FileSystemLoader, StrictUndefined, TemplateError

from assistant.answers.sanitise import safe_record
from assistant.handout import cells, fit
from assistant.handout.cards import cards
from assistant.handout.fit import Fitted, fitted
from assistant.handout.guest import guest_sheet
from assistant.handout.host import host_sheet
from assistant.handout.words import folder, principles, say
from assistant.knowledge.problems import KnowledgeError, Problem
from assistant.language.data import REMEDY

PAGE = "handout.html.j2"


def sheets(plan: Mapping[str, Any], now: datetime) -> str:
    """One HTML file with the guests' sheet, the host's sheet and the cards; it needs nothing beside it.

    `plan` is a record as plan.schema.json has it, `now` the day that is printed as its date. Raises
    KnowledgeError where words or templates are damaged.
    """
    plan = safe_record(plan)
    page = fitted(guest_sheet(plan, now))
    told = {"guests": plan["guests"], "host": host_sheet(plan), "cards": cards(plan)}
    try:
        return _pages().get_template(PAGE).render(**_guest(page), **told)
    except (TemplateError, UnicodeDecodeError) as error:
        message = f"cannot be used ({' '.join(str(error).split())})."
        raise KnowledgeError([Problem(f"{folder().name}/{PAGE}", message, REMEDY)]) from error


def _guest(page: Fitted) -> dict[str, Any]:
    """What the template of the guests' sheet asks for."""
    sheet, setting = page.sheet, page.setting
    return {
        "say": say(),
        "page": page,
        "sheet": sheet,
        "setting": setting,
        "drawn": fit.drawing(sheet, setting),
        "principles": principles() if setting.principles else (),
        "foods": [(food, fit.food_cells(food, sheet, setting)) for food in sheet.foods],
        "cells": cells,
        "rule_left": fit.rule_left,
    }


@lru_cache(maxsize=1)
def _pages() -> Environment:
    """The templates; whatever is filled in is escaped."""
    loader = FileSystemLoader(folder())
    return Environment(
        loader=loader, autoescape=True, undefined=StrictUndefined, trim_blocks=True, lstrip_blocks=True
    )
