"""The shapes of the YAML files: which fields there are, what each may hold, what it is for.

pydantic checks a plain tree against them, and the JSON Schemas are made from
them. Every field may be cleared here; ``needed`` names those that must be there.
"""
