"""What the host teaches and notes in talk: kept in the notebook, and heard in the answers that follow.

`Keeper` belongs to one conversation; `builder_of` names what answers a frame that teaches, notes, takes
back or asks for what was taught. Without a notebook nothing is kept, and that is said.
"""
