"""Tests of the assistant, with the helpers they share."""
