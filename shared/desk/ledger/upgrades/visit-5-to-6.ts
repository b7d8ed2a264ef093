/**
 * Version 6 knows preferred languages, and how it was explained without an interpreter: optional, so
 * that a visit of before is one of now.
 */
export const visitFrom5To6 = (value: unknown): unknown => value
