"""Siblings over one Report: each turns it into something an author can look at."""
