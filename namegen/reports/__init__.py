"""Reports: a list of findings as text, JSON, SARIF or lines."""
