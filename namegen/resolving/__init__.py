"""Resolving: follows names through constants and files; knows only the model."""
