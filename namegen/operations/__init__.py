"""Operations: one file a verb; they compute first and write last."""
