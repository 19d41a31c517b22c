"""Java, read by tree-sitter."""
