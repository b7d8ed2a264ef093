import { call, HostRefusal } from '../../host.ts'
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

/**
 * Where a warning came up since the page was opened, the page is asked anew and shows it.
 * @throws what the work throws
 */
export async function lookAgainIfWarned(work: () => Promise<void>, again: () => void) {
	try {
		await work()
	} catch (error) {
		if (error instanceof HostRefusal && error.code === 'outbox.warnings-not-read') again()
		throw error
	}
}
