"""Tests of the language package."""
