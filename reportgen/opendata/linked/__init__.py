"""What pages tell machines in JSON-LD, with the words of schema.org: a file a type."""
