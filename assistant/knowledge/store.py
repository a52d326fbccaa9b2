"""The knowledge as one object: foods, wines, methods, rules, scales and small tables by name."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property, lru_cache
from pathlib import Path

from assistant.knowledge import build, names, packing
from assistant.knowledge import digest as digest_module
from assistant.knowledge.cache import cached, content_key
from assistant.knowledge.concepts import Amount, Entry, Food, Method, Rule, Wine, first
from assistant.knowledge.digest import Digest, read_digest
from assistant.knowledge.files import knowledge_files, ontology_dir
from assistant.knowledge.kinds import kind_as_food
from assistant.knowledge.scales import Scale, read_scales


@dataclass(frozen=True, slots=True)
class Band:
    """A verdict and the lowest score that earns it."""

    verdict: str
    floor: float
    spoken: str


@dataclass(frozen=True, slots=True)
class Family:
    """A rule family and the limits of its sum."""

    id: str
    label: str
    floor: float
    ceiling: float
    general: bool


FEW_DISHES = 3  # of its own, from which a kitchen is known by them


class Knowledge:
    """Everything shipped, built lazily from the digest and never changed."""

    def __init__(self, digest: Digest, key: str = "", cache: Path | None = None) -> None:
        self.digest = digest
        self.key, self.cache = key, cache
        self._foods: dict[str, Food] = {}
        self._broader: dict[str, tuple[str, ...]] = {}

    def of_type(self, *types: str) -> list[str]:
        """Short names of all subjects with one of these types, in file order."""
        wanted = set(types)
        return [s for s, e in self.digest.items() if wanted.intersection(e.get("type", ()))]

    def entry(self, subject: str) -> Entry:
        """What the files say of a subject, unchanged."""
        return self.digest[subject]

    def label(self, subject: str) -> str:
        """The preferred label of a subject."""
        entry = self.digest.get(subject, {})
        return str(first(entry, "prefLabel") or first(entry, "label") or names.local(subject))

    def broader(self, subject: str) -> tuple[str, ...]:
        """All broader concepts, nearest first."""
        if subject not in self._broader:
            self._broader[subject] = build.broader(self.digest, subject)
        return self._broader[subject]

    def food(self, subject: str) -> Food:
        """The food with this short name; a kind is worked out from its members."""
        if subject not in self._foods:
            found = build.food(self.digest, subject)
            if "Kind" in self.digest[subject]["type"]:
                found = kind_as_food(found, [self.food(m) for m in self.members(subject)])
            self._foods[subject] = found
        return self._foods[subject]

    def members(self, kind: str) -> list[str]:
        """Foods of a kind, at any depth."""
        return self._members.get(kind, [])

    @cached_property
    def _members(self) -> dict[str, list[str]]:
        members: dict[str, list[str]] = {}
        for food in self.of_type("Food"):
            for kind in self.broader(food):
                members.setdefault(kind, []).append(food)
        return members

    def styles_of(self, wine: str) -> list[str]:
        """The styles a wine word stands for: itself, or the members of a kind or home."""
        return [wine] if wine in self.wines else self._of_kind.get(wine, [])

    @cached_property
    def _of_kind(self) -> dict[str, list[str]]:
        styles: dict[str, list[str]] = {}
        for style in self.wines.values():
            for kind in style.kinds:
                styles.setdefault(kind, []).append(style.id)
        return styles

    def pours(self, wine: str, foods: Iterable[str]) -> frozenset[str]:
        """Those of the foods that custom pours a style with: its classics, and by the foods' customs."""
        style = self.wines[wine]
        alike = {wine, *style.kinds}
        return frozenset(f for f in foods if f in style.classics or alike & self.food(f).customs)

    def style(self, wine: str) -> str:
        """The style a wine word stands for: itself, or of a kind the one that is easiest to buy.

        Raises ValueError where no style answers to it.
        """
        return max(self.styles_of(wine), key=lambda style: self.wines[style].availability)

    def keeps_open(self, wine: str) -> Amount | None:
        """Days that an opened bottle keeps: its own word, else that of its nearest kind, or None."""
        for subject in (wine, *self.broader(wine)):
            value: Amount | None = first(self.digest[subject], "keepsOpen")
            if value is not None:
                return value
        return None

    def countries(self, homes: Iterable[str]) -> frozenset[str]:
        """The countries that these homes are or lie in."""
        return frozenset((self.broader(home) or (home,))[-1] for home in homes)

    def cuisine(self, region: str) -> list[str]:
        """Composed dishes whose home is this region or one inside it, and no other where there are a few."""
        at_home = {food: self._at_home(food, region) for food in self.members("kind/dish")}
        own = [food for food, here in at_home.items() if here and all(here)]
        return own if len(own) >= FEW_DISHES else [food for food, here in at_home.items() if any(here)]

    def _at_home(self, food: str, region: str) -> list[bool]:
        """For each home of a food whether it is this region or one inside it."""
        homes = self.digest[food].get("home", ())
        return [region == home or region in self.broader(home) for home in homes]

    @cached_property
    def wines(self) -> dict[str, Wine]:
        """Wine styles and drinks without alcohol."""
        return {s: build.wine(self.digest, s) for s in self.of_type("Wine", "Drink")}

    @cached_property
    def methods(self) -> dict[str, Method]:
        """Cooking methods."""
        return {s: build.method(self.digest, s) for s in self.of_type("Method")}

    @cached_property
    def rules(self) -> dict[str, Rule]:
        """Pairing rules, in the order they are run."""
        rules = (build.rule(self.digest, s) for s in self.of_type("PairingRule"))
        return {rule.id: rule for rule in sorted(rules, key=lambda r: (r.order, r.id))}

    @cached_property
    def scales(self) -> dict[str, Scale]:
        """Scales by quantity."""
        return read_scales(self.digest)

    @cached_property
    def constants(self) -> dict[str, float]:
        """Constants of the composition model by local name."""
        return {names.local(s): self.digest[s]["value"][0] for s in self.of_type("Constant")}

    @cached_property
    def contacts(self) -> dict[str, float]:
        """Contact weight of each role."""
        return {s: self.digest[s]["contact"][0] for s in self.of_type("Role")}

    @cached_property
    def loud_traits(self) -> frozenset[str]:
        """Traits that are tasted from a pinch."""
        return frozenset(s for s in self.of_type("Trait") if first(self.digest[s], "loud"))

    @cached_property
    def families(self) -> dict[str, Family]:
        """Rule families with their limits."""
        return {
            s: Family(s, self.label(s), e["floor"][0], e["ceiling"][0], bool(first(e, "general")))
            for s in self.of_type("Family")
            for e in (self.digest[s],)
        }

    @cached_property
    def bands(self) -> tuple[Band, ...]:
        """Verdict bands, best first."""
        entries = [self.digest[s] for s in self.of_type("Band")]
        bands = [Band(e["prefLabel"][0], e["floor"][0], e["spoken"][0]) for e in entries]
        return tuple(sorted(bands, key=lambda band: -band.floor))


def load(root: Path | None = None, cache: Path | None = None) -> Knowledge:
    """The knowledge under `root` (the shipped one by default). Raises KnowledgeError."""
    files = knowledge_files(root or ontology_dir())
    key = content_key([*files, Path(digest_module.__file__), Path(packing.__file__)])
    found = cached("digest", key, lambda: packing.packed(read_digest(files)), cache)
    return Knowledge(packing.unpacked(found), key, cache)


@lru_cache(maxsize=1)
def shipped() -> Knowledge:
    """The shipped knowledge, loaded once in a process."""
    return load()
