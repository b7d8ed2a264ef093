/**
 * Version 4 knows outcomes, core questions set aside, what may be bought, more of a pair, answers to
 * the questions of the prescription: all optional, so that a visit of before is one of now. Its
 * assessment keeps having no prescription.
 */
export const visitFrom3To4 = (value: unknown): unknown => value
