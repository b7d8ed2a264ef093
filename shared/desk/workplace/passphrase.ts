/** Fewest characters of a passphrase, of the records or of a pack. A choice of this program. */
export const leastPassphrase = 8
