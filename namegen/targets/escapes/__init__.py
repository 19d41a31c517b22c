"""Escapes: what makes a text harmless in one place of one format, without losing any of it.

One module per format. A target that lists the escape ``java_string`` gets the
function ``string`` of the module ``java`` as a Jinja2 filter of that name.
"""
