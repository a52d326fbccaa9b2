"""Physical quantities -> points from 0 to 5, through the anchor tables of ontology/scales.ttl."""

from __future__ import annotations

from bisect import bisect_right
from dataclasses import dataclass

from assistant.knowledge import names
from assistant.knowledge.digest import Digest

POINTS = 5.0


@dataclass(frozen=True, slots=True)
class Scale:
    """Six anchors in the quantity's unit, standing for 0 to 5 points; `meanings` says them in words."""

    quantity: str
    shows: str
    anchors: tuple[float, ...]
    meanings: tuple[str, ...]

    def points(self, value: float) -> float:
        """Points from 0 to 5 of a value in the quantity's unit, straight between anchors."""
        ladder = self.anchors if self.anchors[0] < self.anchors[-1] else self._mirrored()
        value = value if ladder is self.anchors else -value
        if value <= ladder[0]:
            return 0.0
        if value >= ladder[-1]:
            return POINTS
        step = bisect_right(ladder, value) - 1
        return step + (value - ladder[step]) / (ladder[step + 1] - ladder[step])

    def _mirrored(self) -> tuple[float, ...]:
        return tuple(-anchor for anchor in self.anchors)

    def value(self, points: float) -> float:
        """The value in the quantity's unit that has these points (the inverse of `points`)."""
        points = min(max(points, 0.0), POINTS)
        step = min(int(points), len(self.anchors) - 2)
        low, high = self.anchors[step], self.anchors[step + 1]
        return low + (points - step) * (high - low)

    def word(self, points: float) -> str:
        """The anchor's words nearest to these points."""
        return self.meanings[min(int(points + 0.5), len(self.meanings) - 1)]


def read_scales(digest: Digest) -> dict[str, Scale]:
    """All scales by the quantity they turn into points (`fat`, `residualSugar`, ...)."""
    scales = {}
    for entry in digest.values():
        if "Scale" in entry.get("type", ()):
            quantity = str(entry["scaleOf"][0])
            scales[quantity] = Scale(
                quantity,
                names.local(entry["shows"][0]),
                tuple(entry["anchors"][0]),
                tuple(entry["meanings"][0]),
            )
    return scales
