/** Pairs that stand on page one, those first with which something is to be done. */
export const mostPairs = 4
