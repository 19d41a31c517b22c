"""Finding kinds that are judged in code."""
