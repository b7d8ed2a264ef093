/**
 * Version 2 says which kind of page it is and keeps its document: before there was the player's
 * report alone, as bytes.
 */
export const reportFrom1To2 = (value: unknown): unknown => value
