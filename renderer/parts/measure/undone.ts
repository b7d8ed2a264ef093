/**
 * Raised when the draft went back a step: what stands half typed in a field is not the draft any
 * more.
 */
export const undone = 'lastwright-undone'
