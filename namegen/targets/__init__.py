"""Targets: reads templates/<target>/ and renders artifacts."""
