import { call } from '../../host.ts'
import { useReading } from '../../query.ts'

/**
 * The first page with the consents and warnings of now: asked anew each time something happened to
 * the item, for which the number of happenings stands.
 */
export const useLook = (itemId: string, happenings: number | undefined) =>
	useReading(
		'first page of an item',
		{ itemId, happenings },
		[],
		() => call('outbox.look', { itemId }),
		{ when: happenings !== undefined, keepLast: true },
	)
