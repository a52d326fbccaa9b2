"""From Turtle files to the foods, wines, scales and rules that the other stages use."""
