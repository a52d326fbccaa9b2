"""Speed and size, measured; run with --benchmark-only."""
