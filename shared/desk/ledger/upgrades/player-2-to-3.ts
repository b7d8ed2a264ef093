/** Version 3 knows preferred languages: optional, so that a player of before is one of now. */
export const playerFrom2To3 = (value: unknown): unknown => value
