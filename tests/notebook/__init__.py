"""Tests of the notebook."""
