"""Loading: YAML text to model with places, and back to edits of that text."""
