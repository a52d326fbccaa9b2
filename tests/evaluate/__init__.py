"""Tests of `assistant.evaluate`: reading a corpus, scoring it, and the command."""
