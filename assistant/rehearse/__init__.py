"""Before and between evenings: what was answered, what guests will ask, what contradicts what.

`AnswerLog` notes the answers of a conversation; `rehearsed` makes of tonight's table and that log the
questions to expect; `conflicts` finds what hosts and book say against one another.
"""
