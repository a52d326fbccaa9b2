"""What answers each act of corpus/planning/after/phrases.toml."""

from __future__ import annotations

from collections.abc import Mapping

from assistant.after.acts import Builder
from assistant.after.agree import again, agreed, enough, favourite
from assistant.after.bill import bill
from assistant.after.bottle_state import open_instead, stood_warm
from assistant.after.buying import buying
from assistant.after.cooking import cooked, frozen
from assistant.after.left import left
from assistant.after.leftovers import left_over
from assistant.after.level import level
from assistant.after.manner import in_manner
from assistant.after.message import message, message_to_all, messages
from assistant.after.money import cost, cost_said
from assistant.after.next_event import next_event, take_next
from assistant.after.next_same import next_same
from assistant.after.opened import opened
from assistant.after.outside import out_of_fridge
from assistant.after.parked import parked_answered, parked_list
from assistant.after.spend import leave_out, more_bought, next_bought, total_or_each
from assistant.after.voters import voters, who_likes
from assistant.evening.latecomer import latecomer
from assistant.evening.toast import other_fizz, toast

BUILDERS: Mapping[str, Builder] = {
    "freeze": frozen,
    "cook": cooked,
    "outside": out_of_fridge,
    "open": opened,
    "leftovers": left_over,
    "agree": agreed,
    "voters": voters,
    "who-likes": who_likes,
    "favourite": favourite,
    "enough": enough,
    "pair-again": again,
    "message": message,
    "message-all": messages,
    "message-one": message_to_all,
    "message-manner": in_manner,
    "cost": cost,
    "cost-said": cost_said,
    "bill": bill,
    "cheaper-table": leave_out,
    "more-bought": more_bought,
    "next-bought": next_bought,
    "total-or-each": total_or_each,
    "left": left,
    "latecomer": latecomer,
    "open-instead": open_instead,
    "stood-warm": stood_warm,
    "toast": toast,
    "other-fizz": other_fizz,
    "level": level,
    "buy": buying,
    "next": next_event,
    "next-bare": next_event,
    "next-season": next_event,
    "next-same": next_same,
    "next-take": take_next,
    "parked-list": parked_list,
    "parked-answer": parked_answered,
}
