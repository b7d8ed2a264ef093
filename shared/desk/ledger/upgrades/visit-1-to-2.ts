/** Version 2 names the pages that were kept at signing: a visit of before names none. */
export const visitFrom1To2 = (value: unknown): unknown => value
