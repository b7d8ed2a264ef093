/** Giving a released document out by hand: to the mail program, the printer or a person. */
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { numberOf, type OutboxItem, type Recipient } from '../../../shared/desk/outbox/item.ts'
import { fileNameFor } from '../../../shared/desk/outbox/message.ts'
import { composeDraft } from '../../mail/compose.ts'
import type { Deps } from '../records/deps.ts'
import { Refusal } from '../records/refusal.ts'
import { storedDocument } from '../visits/documents.ts'
import { frameOf, keptOrText, pageOf } from '../visits/page.ts'
import { keepItemFromReception } from '../visits/private-pages.ts'
import { latest } from '../visits/visits.ts'
import { freeItem, itemOf, noted, putItem } from './items.ts'
import { documentToSend, letterFor } from './letter.ts'
import type { OutboxNeeds } from './needs.ts'
import type { Post } from './post.ts'
import { senderOf } from './preparing.ts'
import { mustHold, recipientOf } from './recipients.ts'

interface GivenFile {
	bytes: Uint8Array
	fileName: string
	mediaType: string
}
/** What the history says of what was given out. */
const givenWords: Record<Exclude<OutboxItem['channel'], 'smtp'>, string> = {
	eml: 'The draft was given to the mail program. A draft is no proof of sending.',
	print: 'Given to the printer.',
	'hand-over': 'Given out for handing over.',
}

/** The bytes of a released item. @throws Refusal where it goes by mail server, or is not ready */
export async function giveOut(
	memory: OutboxNeeds,
	deps: Deps,
	post: Pick<Post, 'inFlight'>,
	{ itemId, asPage }: InputOf<'outbox.take'>,
): Promise<OutputOf<'outbox.take'>> {
	const item = freeItem(memory, post, itemId)
	keepItemFromReception(memory, deps, item)
	const { channel } = item
	if (channel === 'smtp')
		throw new Refusal('outbox.goes-by-itself', 'This goes by the mail server by itself.')
	if (item.state !== 'ready')
		throw new Refusal(
			'outbox.not-ready',
			`${numberOf(itemId)} is not ready. Check it beside its recipient first.`,
		)
	const { recipient, consentIds } = mustHold(memory, deps, item)
	const file = asPage ? await pageFor(deps, item) : await fileFor(memory, deps, item, recipient)
	// drawing took time: the consents are asked once more before the bytes leave
	const still = freeItem(memory, post, itemId)
	if (still.state !== 'ready')
		throw new Refusal('outbox.not-ready', `${numberOf(itemId)} is not ready any more.`)
	mustHold(memory, deps, still)
	const at = deps.now().toISOString()
	const { name } = memory.people.acts()
	const given: OutboxItem = {
		...noted(still, at, name, asPage ? pageWords : givenWords[channel]),
		taken: at,
		consentIds,
	}
	putItem(memory, deps, given, channel === 'print' && !asPage ? 'print' : 'export')
	return {
		base64: Buffer.from(file.bytes).toString('base64'),
		fileName: file.fileName,
		mediaType: file.mediaType,
	}
}
const pageWords = 'Given out as a page for a screen reader.'
/**
 * The document as one accessible page. @throws Refusal where it goes by mail or under a password: a
 * page carries none
 */
async function pageFor(deps: Deps, item: OutboxItem): Promise<GivenFile> {
	const { itemId, channel, documentId, sha256, protection } = item
	if (channel === 'eml' || protection === 'password')
		throw new Refusal(
			'outbox.no-page-by-mail',
			'A page for a screen reader goes by hand or from the printer alone, without a password. ' +
				'Prepare this anew, to be handed over.',
		)
	const { value, bytes } = storedDocument(deps, documentId, sha256)
	const { visit } = latest(deps, item.visitId)
	const frame = { ...frameOf(visit), isNewer: value.document !== undefined }
	const document = await keptOrText(deps, { bytes, document: value.document }, frame)
	const { html, fileName } = pageOf(document, fileNameFor(numberOf(itemId)))
	return { bytes: Buffer.from(html), fileName, mediaType: 'text/html' }
}
async function fileFor(
	memory: OutboxNeeds,
	deps: Deps,
	item: OutboxItem,
	recipient: Recipient,
): Promise<GivenFile> {
	const clinic = memory.clinic.needLetterhead()
	const document = await documentToSend(deps, item)
	if (item.channel !== 'eml') return { ...document, mediaType: 'application/pdf' }
	const letter = letterFor({
		item,
		recipient,
		clinic,
		from: senderOf(memory),
		date: deps.now(),
		document,
	})
	return {
		bytes: await composeDraft(letter),
		fileName: `message-${numberOf(item.itemId)}.eml`,
		mediaType: 'message/rfc822',
	}
}
/** The password of a copy, to be told on another way than the copy goes. */
export function tellPassword(
	memory: OutboxNeeds,
	deps: Deps,
	{ itemId }: InputOf<'outbox.password'>,
): OutputOf<'outbox.password'> {
	const item = itemOf(memory, itemId)
	if (!item.password) throw new Refusal('outbox.without-password', 'This goes without a password.')
	if (item.breachId)
		throw new Refusal(
			'outbox.sent-in-error',
			'This was sent in error: its password is withheld, so that whoever has it cannot open it.',
		)
	const { playerId, recipient } = item
	deps.store.audit({ function: 'read', objectRef: `password:${itemId}`, playerId })
	const { phone } = recipientOf(memory, playerId, recipient.recipientId)
	return { password: item.password, recipient: recipient.name, ...(phone && { phone }) }
}
