"""Checks: one file per finding kind; each declares its kind and judges."""
