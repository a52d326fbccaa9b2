"""Tests of the pairing package."""
