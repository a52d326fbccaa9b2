"""Tests of what the host teaches in talk."""
