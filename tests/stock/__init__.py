"""Tests of lists of bottles."""
