"""The evening that was: as its file has it, with what was changed by talk since."""

from __future__ import annotations

from dataclasses import replace

from assistant.answers.context import Context
from assistant.evening.by_talk import evening_of
from assistant.evening.records import Evening
from assistant.language.quantities import quantities


def evening_after(context: Context) -> Evening | None:
    """The evening on the table with its prices, for as many guests as are told; None where there is none."""
    table, file = context.tonight, context.tonight.evening
    if not (table.wines or table.dishes):
        return None
    now = counted(evening_of(context), context)
    if file is None:
        return now
    same = {line.wine for line in file.wines} == set(table.wines)
    if same and [dish for line in file.foods for dish in line.dishes] == list(table.dishes):
        return replace(file, guests=now.guests, non_drinkers=now.non_drinkers)
    wines = {line.wine: line for line in file.wines}
    return replace(
        file,
        guests=now.guests,
        non_drinkers=now.non_drinkers,
        choose=None,
        wines=tuple(wines.get(line.wine, line) for line in now.wines),
        foods=tuple(next((f for f in file.foods if f.dishes == line.dishes), line) for line in now.foods),
    )


def counted(evening: Evening, context: Context) -> Evening:
    """The evening for as many guests as the question names; of them as large a part drinks none as before."""
    said = quantities(context.frame.text)
    if said.people is None:
        return evening
    share = evening.non_drinkers / evening.guests if evening.guests else 0.0
    return replace(
        evening,
        guests=round(said.people),
        non_drinkers=round(said.non_drinkers or share * said.people),
    )
