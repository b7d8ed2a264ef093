/** The name of a kind of record; which there are, and what they mean, stands in the ledger. */
export type Kind = string
