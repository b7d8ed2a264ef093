/**
 * A folder or a file chosen in the system's own dialog. Who may, where it begins and whether the
 * choice serves is asked of the host by the calls that the browser window uses too.
 */
import type { OpenDialogOptions } from 'electron'
import type { Answer, OutputOf } from '../../shared/contract.ts'
import { type Purpose, purposeNames, purposes } from '../../shared/desk/places/purposes.table.ts'
import type { App } from '../app.ts'

const isPurpose = (given: unknown): given is Purpose =>
	(purposeNames as readonly unknown[]).includes(given)

/** The dialog for a purpose. @param from the folder in which it begins; the system's choice without */
function dialogFor(purpose: Purpose, from: string | undefined): OpenDialogOptions {
	const { picks, title, endings } = purposes[purpose]
	return {
		title,
		buttonLabel: `Use this ${picks}`,
		...(from === undefined ? {} : { defaultPath: from }),
		...(picks === 'folder'
			? { properties: ['openDirectory', 'createDirectory'] }
			: {
					properties: ['openFile'],
					filters: [{ name: title, extensions: endings.map((ending) => ending.slice(1)) }],
				}),
	}
}
/**
 * @param call the host
 * @param show opens the dialog
 * @returns the path; none where the person chose nothing
 */
export async function chosenBy(
	call: App['call'],
	purpose: unknown,
	show: (options: OpenDialogOptions) => Promise<{ canceled: boolean; filePaths: string[] }>,
): Promise<Answer<{ path?: string }>> {
	const begin = await call('places.look', { purpose })
	if (!begin.ok) return begin
	if (!isPurpose(purpose)) return { ok: true, value: {} }
	const { at } = begin.value as OutputOf<'places.look'>
	const { canceled, filePaths } = await show(dialogFor(purpose, at?.path))
	const [path] = filePaths
	if (canceled || path === undefined) return { ok: true, value: {} }
	const chosen = await call('places.choose', { purpose, path, written: true })
	return chosen.ok ? { ok: true, value: chosen.value as OutputOf<'places.choose'> } : chosen
}
