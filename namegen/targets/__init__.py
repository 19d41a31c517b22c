"""Targets: folders of data (``target.yaml`` and Jinja2 templates) that turn manifests into files.

Import from the modules: which languages are generated (``shelf``, ``schemes``) is
asked far more often than anything is rendered (``rendering``, ``guide``).
"""
