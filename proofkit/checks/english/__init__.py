"""British and American spelling."""
