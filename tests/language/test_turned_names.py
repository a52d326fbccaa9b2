"""A word of style right behind a wine's name means what it means in front of it."""

from __future__ import annotations

import pytest

from tests.language.conftest import Parse

TURNED = {
    "does Champagne demi-sec go with wedding cake": "wine/demi-sec-sparkling",
    "does Chenin Blanc sweet go with oysters": "wine/vouvray-moelleux",
    "does Riesling late harvest go with apple tart": "wine/late-harvest-riesling",
    "does Riesling off-dry go with green curry": "wine/off-dry-riesling",
    "does Rioja white wine go with paella": "wine/white-rioja",
    "does Port tawny go with cheesecake": "wine/tawny-port",
    "does Port vintage go with Stilton": "wine/vintage-port",
    "Chardonnay unoaked with oysters": "wine/unoaked-chardonnay",
    "is Champagne demi-sec ok with cake": "wine/demi-sec-sparkling",
    "what is port tawny": "wine/tawny-port",
    "does Lambrusco sweet go with steak": "wine/sweet-lambrusco",
}
AS_IT_STANDS = {
    "Riesling sweet and sour pork": ["wine/dry-riesling", "food/sweet-and-sour-pork"],
    "does Rioja white wine vinegar go with salad": [
        "wine/rioja",
        "food/red-wine-vinegar",
        "food/green-salad",
    ],
    "I like Chardonnay, oaked please": ["wine/chardonnay"],
    "a Malbec, red meat": ["wine/malbec", "food/red-meat-generic"],
    "Riesling white chocolate": ["wine/dry-riesling", "food/white-chocolate"],
    "is the Riesling sweet": ["wine/dry-riesling"],
    "what makes Port sweet": ["wine/ruby-port"],
}


@pytest.mark.parametrize(("typed", "wine"), TURNED.items())
def test_the_style_behind_a_name_is_the_wine_asked_of(parse: Parse, typed: str, wine: str) -> None:
    frame = parse(typed)
    assert frame.wines == (wine,)
    assert frame.preferences == ()


@pytest.mark.parametrize(("typed", "read"), AS_IT_STANDS.items())
def test_what_begins_another_name_or_is_asked_stays(parse: Parse, typed: str, read: list[str]) -> None:
    assert [reading.id for reading in parse(typed).text.readings] == read


def test_a_colour_that_is_asked_for_is_no_style(parse: Parse) -> None:
    assert parse("is Rioja red or white").wines == ("wine/rioja",)
