"""The evening: which bottles in which order, what to buy, chill, pack and do, and what to keep from whom."""
