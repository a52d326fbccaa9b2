"""Tests of the evening."""
