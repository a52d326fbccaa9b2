"""After an evening: what is left, what guests thought, whom to write to, and the next one.

`assistant.after.acts` hears what is asked (corpus/planning/after/phrases.toml) and says what answers it; the
numbers stand in ontology/evening/after.toml, the sentences in corpus/planning/after/wording.toml.
"""
