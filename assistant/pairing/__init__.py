"""From a dish and wines to scores whose every point has a rule behind it."""
