"""Tests of what follows an evening."""
