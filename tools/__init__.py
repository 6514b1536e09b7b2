"""Scripts for the desk: what is generated, and what is missing."""
