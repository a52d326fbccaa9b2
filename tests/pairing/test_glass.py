"""A wine as drunk: its points reckoned again from its amounts and the constants."""

from __future__ import annotations

from dataclasses import replace

import pytest

from assistant.pairing.glass import BODY_PARTS, SWEETNESS_HIDING_FROM, glass_of
from assistant.session import Session

WINES = ("chablis", "barolo", "sauternes", "champagne", "off-dry-riesling", "amontillado")


@pytest.mark.parametrize("name", WINES)
def test_points_follow_from_the_amounts(session: Session, name: str) -> None:
    known = session.knowledge
    wine, c = known.wines[f"wine/{name}"], known.constants
    shown = {
        known.scales[p].shows: known.scales[p].points(a.typical)
        for p, a in wine.amounts.items()
        if p in known.scales
    }
    found = glass_of(replace(wine, reads_sharper=0.0), known)
    assert found.points["acid"] == pytest.approx(min(5.0, shown["acid"]))
    assert found.sugar_points == pytest.approx(shown["sweetness"])
    hidden = c["sweetness-hidden-by-acid"] * max(0.0, found.points["acid"] - SWEETNESS_HIDING_FROM)
    assert found.points["sweetness"] == pytest.approx(max(0.0, shown["sweetness"] - hidden))
    parts = {**shown, "acid": found.points["acid"]}
    assert found.points["body"] == pytest.approx(min(5.0, sum(c[f"body-{n}"] * parts[n] for n in BODY_PARTS)))
    same = ("tannin", "oak", "bubbles", "aroma")
    assert {n: found.points[n] for n in same} == pytest.approx({n: shown[n] for n in same})


def test_what_reads_sharper_is_sharper_and_hides_more_sugar(session: Session) -> None:
    wine = session.knowledge.wines["wine/off-dry-riesling"]
    plain, sharp = (glass_of(replace(wine, reads_sharper=by), session.knowledge) for by in (0.0, 0.5))
    assert sharp.points["acid"] == pytest.approx(min(5.0, plain.points["acid"] + 0.5))
    assert sharp.points["sweetness"] < plain.points["sweetness"] < plain.sugar_points
    assert glass_of(replace(wine, reads_sharper=5.0), session.knowledge).points["acid"] == 5.0
