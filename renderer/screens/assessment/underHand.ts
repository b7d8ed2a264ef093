/** What of a draft is under the hand: there nothing is put that comes from another window. */

/** Lists whose rows would move under the hand. */
const lists = ['conditions', 'footwear'] as const
const isText = (element: Element): boolean =>
	element instanceof HTMLTextAreaElement ||
	(element instanceof HTMLInputElement && !['checkbox', 'radio', 'button'].includes(element.type))

/** The list that a control stands in, by the fields of the sheet around it. */
function listAround(element: Element): string | undefined {
	const sheet = element.closest('.MuiPaper-root')
	return lists.find((list) => sheet?.querySelector(`[data-path^="${list}."]`))
}
/** Paths of the tree of entries; '' for all of it, where a text is typed that names no field. */
export function underHand(): readonly string[] {
	const element = document.activeElement
	if (!document.hasFocus() || !element || element === document.body) return []
	const list = listAround(element)
	if (list) return [`visit.${list}`]
	const path = element instanceof HTMLElement ? element.dataset.path : undefined
	if (path !== undefined) return [`visit.${path}`]
	return isText(element) ? [''] : []
}
