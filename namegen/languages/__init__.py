"""Languages: what a file of code says, and how an edit of it is spelt."""
