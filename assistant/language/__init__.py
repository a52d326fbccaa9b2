"""From what a guest says to a frame: what was asked, of which foods and wines, within which limits."""
