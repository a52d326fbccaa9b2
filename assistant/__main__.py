"""Lets `python -m assistant` run the command line."""

from assistant.cli import main

raise SystemExit(main())
