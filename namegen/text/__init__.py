"""Text: words and cases, likeness, positions, differences."""
