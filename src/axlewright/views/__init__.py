"""Results as words, rows and figures in the reader's units."""
