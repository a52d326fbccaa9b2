"""Rule weights against published pairings: bounds, figures, and fits with one source left out."""
