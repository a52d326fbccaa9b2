"""Tests of the chat."""
