"""Python, read by tree-sitter and proved by LibCST."""
