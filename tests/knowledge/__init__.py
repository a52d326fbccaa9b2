"""Tests of how the knowledge is checked."""
