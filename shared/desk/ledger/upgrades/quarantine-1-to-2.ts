/** The optional key `why` came, and what is put aside need not be a record. */
export const quarantineFrom1To2 = (value: unknown): unknown => value
