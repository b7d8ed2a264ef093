import { HostRefusal } from '../host.ts'

/** Work that a person cancelled did not fail: its words are told as what was done. */
export async function orCancelled(work: () => Promise<string>): Promise<string> {
	try {
		return await work()
	} catch (error) {
		if (error instanceof HostRefusal && error.code === 'outreach.cancelled') return error.message
		throw error
	}
}
