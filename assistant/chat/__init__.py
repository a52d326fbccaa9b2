"""The chat on a terminal; prompt_toolkit is used here and nowhere else."""
