/**
 * What is typed on the page while somebody hands over: what keeps itself is brought to the host
 * first, and what stands in a form and was not sent is named.
 */
import { useEffect } from 'react'

/** Something on the page that keeps what is typed by itself. */
interface Keeping {
	/** brings all of it to the host; rejects in words where it cannot */
	keep: () => Promise<unknown>
	/** nothing is kept any more: another person works here */
	end?: () => void
}
const keeping = new Set<Keeping>()

/** @param what must stay the same object while nothing of it changed */
export function useKeeping(what: Keeping): void {
	useEffect(() => {
		keeping.add(what)
		return () => void keeping.delete(what)
	}, [what])
}
/** Rejects in words where something could not be kept. */
export async function keepAllTyped(): Promise<void> {
	await Promise.all([...keeping].map(({ keep }) => keep()))
}
export function endKeeping(): void {
	for (const { end } of keeping) end?.()
}

type Entry = HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement
/** What is typed here keeps itself: the attribute of the part around it. */
export const keepsItself = { 'data-keeps-itself': '' } as const
/** What stands beside a form, such as a search or a filter, is nothing to be lost. */
const isText = (target: EventTarget | null): target is Entry =>
	target instanceof HTMLTextAreaElement ||
	(target instanceof HTMLInputElement &&
		target.form !== null &&
		!['checkbox', 'radio', 'file'].includes(target.type)) ||
	(target instanceof HTMLSelectElement && target.form !== null)
let typed = new Set<Entry>()

/** Notes what is typed into the forms of the page; sending a form off takes its entries away. */
export function watchTyping(): () => void {
	const put = ({ target }: Event) => {
		if (isText(target) && target.closest('main')) typed.add(target)
	}
	const sent = ({ target }: Event) => {
		typed = new Set([...typed].filter(({ form }) => form !== target))
	}
	addEventListener('input', put)
	addEventListener('submit', sent)
	return () => {
		removeEventListener('input', put)
		removeEventListener('submit', sent)
	}
}
const titleOf = (entry: Entry): string =>
	(entry.getAttribute('aria-label') ?? entry.labels?.[0]?.textContent ?? '').trim()

/** Names of the fields that hold something that was typed and not sent off. */
export function typedNotSent(): string[] {
	typed = new Set([...typed].filter(({ isConnected }) => isConnected))
	const names = [...typed]
		.filter((entry) => entry.value !== '' && !entry.closest('[data-keeps-itself]'))
		.map(titleOf)
	return [...new Set(names.filter(Boolean))]
}
