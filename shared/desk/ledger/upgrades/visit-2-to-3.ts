/**
 * Version 3 knows more measures, conditions, notes and private questions, and what a decision is
 * about as a digest: all optional, so that a visit of before is one of now.
 */
export const visitFrom2To3 = (value: unknown): unknown => value
