/**
 * The open draft in this window: what is shown, what the host is known to have, and both brought
 * together. Asks are made one at a time: a slow one never comes after a later one.
 */
import type { DraftContent, InputOf, OutputOf } from '../../../shared/contract.ts'
import { sameEntries, takeIn } from '../../../shared/desk/visits/join-typed.ts'
import { HostRefusal, wordsOf } from '../../host.ts'

/** From an entry until it is saved, if no other comes. */
const waitMs = 400
/** From a failed save until it is tried again. */
const againMs = 3000
/** How the last save went; nothing before the first. */
export interface Saved {
	state: 'none' | 'saving' | 'saved' | 'failed'
	says: string
}
type Looked = OutputOf<'drafts.look'>
export type Ended = NonNullable<Looked['ended']>
/** What the window shows. */
export interface DraftView {
	content: DraftContent | undefined
	/** what the host had last, as far as it is shown; what is typed here and not saved is beside it */
	known: DraftContent | undefined
	saved: Saved
	/** other windows that have it open */
	others: Looked['others']
	/** how it ended elsewhere; nothing is saved any more */
	ended: Ended | undefined
}
/** What the keeper works with. */
export interface KeeperNeeds {
	window: string
	save: (input: InputOf<'drafts.save'>) => Promise<OutputOf<'drafts.save'>>
	look: (input: InputOf<'drafts.look'>) => Promise<Looked>
	/** paths of the tree of entries under the hand: nothing of the others is put there now */
	held: () => readonly string[]
	/** does something after so long; @returns how it is called off */
	later: (work: () => void, ms: number) => () => void
}
const savedAt = (moment: string): Saved => ({
	state: 'saved',
	says: `Saved ${new Date(moment).toLocaleTimeString('en-GB')}`,
})
const endedWords: Readonly<Record<Ended['how'], string>> = {
	signed: 'Signed elsewhere: nothing more is saved here',
	gone: 'Open no more: nothing more is saved here',
}
const seenFirst =
	'Something was typed into this visit in another window just now. It is on the screen: look it ' +
	'over and sign again.'

export class DraftKeeper {
	readonly #needs: KeeperNeeds
	readonly #listeners = new Set<() => void>()
	#view: DraftView = {
		content: undefined,
		known: undefined,
		saved: { state: 'none', says: '' },
		others: [],
		ended: undefined,
	}
	/** Empty before it is opened and after it is closed: nothing is saved then. */
	#id = ''
	#revision = ''
	/** What the host had last, also what is not shown yet. */
	#theirs: DraftContent | undefined
	#waits = false
	#dirty = false
	/** How often something of the others came onto the screen. */
	#came = 0
	#callOff = () => {}
	#chain: Promise<unknown> = Promise.resolve()

	constructor(needs: KeeperNeeds) {
		this.#needs = needs
	}
	get view(): DraftView {
		return this.#view
	}
	/** Whether something typed here is not on its way to the host. */
	get dirty(): boolean {
		return this.#dirty
	}
	readonly subscribe = (listener: () => void): (() => void) => {
		this.#listeners.add(listener)
		return () => this.#listeners.delete(listener)
	}
	#show(changed: Partial<DraftView>): void {
		this.#view = { ...this.#view, ...changed }
		for (const listener of this.#listeners) listener()
	}
	begin({ draft, others }: Pick<OutputOf<'drafts.open'>, 'draft' | 'others'>): void {
		const { content } = draft
		this.#id = draft.draftId
		this.#revision = draft.revision
		this.#theirs = content
		this.#show({ content, known: content, others, saved: savedAt(draft.savedAt) })
	}
	/** Shows what was typed, and saves it a moment later. */
	put(content: DraftContent): void {
		this.#dirty = true
		this.#show({ content })
		this.#saveAfter(waitMs)
	}
	#saveAfter(ms: number): void {
		this.#callOff()
		if (this.#id) this.#callOff = this.#needs.later(() => void this.save().catch(() => {}), ms)
	}
	#queue<T>(work: () => Promise<T>): Promise<T> {
		const mine = this.#chain.catch(() => {}).then(work)
		this.#chain = mine
		mine.catch(() => {})
		return mine
	}
	/** Saves at once. Rejects in words where it cannot; what is typed stays on the screen. */
	save(): Promise<void> {
		this.#callOff()
		if (this.#dirty && this.#id) this.#show({ saved: { state: 'saving', says: 'Saving' } })
		return this.#queue(() => this.#send())
	}
	async #send(): Promise<void> {
		const { content, known: base } = this.#view
		if (!this.#dirty || !this.#id || !content) return
		this.#dirty = false
		const draftId = this.#id
		const { window } = this.#needs
		try {
			const answer = await this.#needs.save({
				draftId,
				content,
				window,
				...(base && { base }),
			})
			this.#revision = answer.revision
			this.#takeIn(content, answer.content ?? content)
			this.#show({ saved: savedAt(answer.savedAt), others: answer.others })
		} catch (error) {
			this.#dirty = true
			if (error instanceof HostRefusal && error.code === 'visits.draft-not-open')
				await this.#lookNow().catch(() => {})
			if (!this.#view.ended) {
				const says = `Not saved: ${wordsOf(error)} Your entries are still on this screen.`
				this.#show({ saved: { state: 'failed', says } })
				this.#saveAfter(againMs)
			}
			throw error
		}
	}
	/** @param base what the window had when the host answered */
	#takeIn(base: DraftContent, theirs: DraftContent): void {
		const { content: mine = base } = this.#view
		this.#theirs = theirs
		if (base === theirs) {
			this.#waits = false
			this.#show({ known: theirs })
			return
		}
		const taken = takeIn({ base, mine, theirs }, this.#needs.held())
		this.#waits = taken.waits
		const isNew = !sameEntries(taken.content, mine)
		if (isNew) this.#came++
		this.#show({ known: taken.base, ...(isNew && { content: taken.content }) })
	}
	/** Asks what the others typed, and who they are. */
	look(): Promise<void> {
		return this.#queue(() => this.#lookNow())
	}
	async #lookNow(): Promise<void> {
		if (!this.#id) return
		const { window } = this.#needs
		const draftId = this.#id
		const answer = await this.#needs.look({ draftId, window, revision: this.#revision })
		if (this.#id !== draftId) return
		if (answer.ended) return this.#end(answer.ended)
		this.#revision = answer.revision ?? this.#revision
		const { known } = this.#view
		if (answer.content && known) this.#takeIn(known, answer.content)
		if (JSON.stringify(answer.others) !== JSON.stringify(this.#view.others))
			this.#show({ others: answer.others })
	}
	#end(ended: Ended): void {
		this.#callOff()
		this.#id = ''
		const { content, known } = this.#view
		this.#dirty = content !== undefined && known !== undefined && !sameEntries(content, known)
		const saved: Saved = { state: 'failed', says: endedWords[ended.how] }
		this.#show({ ended, others: [], saved })
	}
	/** The hand left a field: what waited for it is shown. */
	handLeft(): void {
		const { known } = this.#view
		if (this.#waits && known && this.#theirs) this.#takeIn(known, this.#theirs)
	}
	/**
	 * Saves, and makes sure that nothing came from elsewhere which whoever signs has not seen.
	 * @returns the state that may be signed. Rejects in words where something came
	 */
	async saveToSign(): Promise<string> {
		const came = this.#came
		await this.save()
		await this.look()
		this.handLeft()
		if (this.#came !== came) throw new Error(seenFirst)
		return this.#revision
	}
	/** Nothing is saved any more: the draft was signed here. */
	close(): void {
		this.#callOff()
		this.#dirty = false
		this.#id = ''
	}
	/** Its name for the host, while it is open here. */
	get openId(): string {
		return this.#id
	}
}
