/**
 * Where Decide was left to measure again or to write an outcome: coming back opens that question.
 */
let left: { draftId: string; question: string } | undefined

export const leaveAt = (draftId: string, question: string): void => {
	left = { draftId, question }
}
/** The question of this draft that was left; empty where none was. */
export const leftAt = (draftId: string): string => (left?.draftId === draftId ? left.question : '')
export const cameBack = (): void => {
	left = undefined
}
