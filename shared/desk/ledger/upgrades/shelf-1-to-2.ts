/**
 * Version 2 knows which pairs of a size were measured on the foot, and what was listed before: both
 * optional, so that a shelf of before is one of now.
 */
export const shelfFrom1To2 = (value: unknown): unknown => value
