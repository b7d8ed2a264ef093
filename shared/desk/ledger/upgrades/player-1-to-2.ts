/** Version 2 knows how a name is written on paper: optional, so that a player of before is one of now. */
export const playerFrom1To2 = (value: unknown): unknown => value
