"""The model: frozen data that every part of the house shares; no input or output."""
