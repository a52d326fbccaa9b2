"""`is there enough fizz for a toast`: yes or no by the bottles with bubbles; another sparkling wine."""

from __future__ import annotations

from collections.abc import Set
from math import floor
from typing import TYPE_CHECKING

from assistant.after.phrases import said
from assistant.after.telling import told
from assistant.answers.choose import IN_A_SHOP
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.wording import listed
from assistant.evening.alcohol_free import alcohol_free_drinks
from assistant.evening.bottles import needed, usable_ml
from assistant.evening.facts import HAIR, fact
from assistant.evening.guest_drinks import TOASTS
from assistant.evening.needs import with_sober
from assistant.language.guest_named import guests_named
from assistant.language.quantities import quantities
from assistant.pairing.choose import SPARKLING, picks
from assistant.pairing.dish import table_of

if TYPE_CHECKING:
    from assistant.session import Session

DEALCOHOLISED = "kind/dealcoholised-wine"
TRADITIONAL, TANK = "kind/traditional-sparkling", "kind/tank-sparkling"
BRUT = "wine/brut-sparkling"
BUBBLES, CLEARLY, MOST_OTHERS = "bubbles", 2.0, 3


def toast(context: Context, session: Session) -> Answer | None:
    """Whether the bottles with bubbles do for a toast, and what those raise who drink none.

    None where bottles are counted in the question, or no wine is on the table.
    """
    table, asked = with_sober(context.tonight, session), quantities(context.frame.text)
    if asked.bottles or not table.wines:
        return None
    people = asked.people or table.guests
    if not people:
        return told(context, [_by_bottle(), said("toast", "how-many")], understood=False)
    sober = min(people, asked.non_drinkers or table.non_drinkers)
    drinkers = round(people - sober)
    enough = _enough(drinkers, context) if drinkers else said("toast", "none-drink")
    return told(context, [enough, *_without(round(sober), context)])


def _by_bottle() -> str:
    ml = fact("amounts", "toast", "pour_ml").typical
    return said("toast", "by-bottle", ml=f"{ml:g}", count=floor(usable_ml(None) / ml + HAIR))


def _enough(drinkers: int, context: Context) -> str:
    """Yes, or how many bottles are short; one bottle of each where none was counted."""
    label, owned = context.knowledge.label, dict(context.tonight.owned)
    ml = fact("amounts", "toast", "pour_ml").typical
    fizz = [wine for wine in context.tonight.wines if is_fizz(wine, context)]
    meant = [wine for wine in fizz if wine in {reading.id for reading in context.frame.text.readings}]
    there = {wine: owned.get(wine) or 1 for wine in meant or fizz}
    count, wanted = sum(there.values()), needed(drinkers, ml, usable_ml(None))
    fields = {
        "count": count,
        "things": listed([f"{n} {label(wine)}" for wine, n in there.items()]),
        "people": drinkers,
        "ml": f"{min(count * usable_ml(None) / drinkers, fact('amounts', 'toast', 'pour_ml').high):.0f}",
        "wanted": wanted,
        "more": wanted - count,
    }
    kind = "no-fizz" if not count else "yes" if count >= wanted else "no"
    one = fields["more"] == 1 if kind != "yes" else False
    return said("toast", f"{kind}-one" if one else kind, **fields)


def is_fizz(wine: str, context: Context) -> bool:
    """Whether it is a wine with bubbles."""
    return SPARKLING in context.knowledge.wines[wine].kinds


def _without(sober: int, context: Context) -> list[str]:
    """What is raised without alcohol: in the same glasses, with bubbles, a wine without alcohol first."""
    known, glasses = context.knowledge.wines, context.engine.glasses
    fit = [one for one in alcohol_free_drinks(context.engine) if TOASTS.intersection(known[one].kinds)]
    fizzy = [one for one in fit if glasses[one].points[BUBBLES] > CLEARLY]
    best = sorted(fizzy, key=lambda one: -known[one].availability)
    wines = [one for one in best if DEALCOHOLISED in known[one].kinds]
    others = [one for one in best if one not in wines]
    names = listed([context.knowledge.label(one) for one in (*wines[:1], *others[:1])], "or")
    kind = "without" if sober > 1 else "without-one" if sober else "without-any"
    return [said("toast", kind, count=sober, things=names)]


def other_fizz(context: Context, session: Session) -> Answer | None:
    """Sparkling wines neither named nor on the table, fermented in the bottle; none for who has a need."""
    if guests_named(context.frame.text.typed, context.tonight.needs):
        return None
    known = context.knowledge
    named = [style for one in context.frame.wines for style in known.styles_of(one)]
    there = {*context.tonight.wines, *(one for one in named if len(named) == 1)}
    found = _finer(there, context)
    if not found:
        return None
    tank = [known.label(one) for one in dict.fromkeys(named) if TANK in known.wines[one].kinds]
    lines = [said("toast", "other", things=listed([known.label(one) for one in found], "or"))]
    lines += [said("toast", "finer", wine=tank[0])] if len(tank) == 1 else []
    return told(context, lines)


def _finer(there: Set[str], context: Context) -> list[str]:
    """Dry ones by their own names that shops have; those that do best with the foods of the table first."""
    known, allowed = context.knowledge.wines, context.all_candidates()
    free = [one for one in allowed if TRADITIONAL in known[one].kinds and one not in there]
    named = [one for one in free if BRUT in known[one].kinds and known[one].availability >= IN_A_SHOP]
    named = [one for one in named if not {*free, *there}.intersection({*known[one].kinds} - {one, BRUT})]
    dishes = context.tonight.dishes
    if not dishes:
        return sorted(named, key=lambda one: -known[one].availability)[:MOST_OTHERS]
    ranked = context.engine.rank(table_of(list(dishes)), named)
    return [match.wine for match in picks(ranked, MOST_OTHERS, context.knowledge)]
