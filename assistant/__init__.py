"""goeswith: which wine with which food, answered offline with the rules that produced it."""

__version__ = "0.1.0"
