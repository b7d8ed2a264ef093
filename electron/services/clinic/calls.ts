import type { Look } from '../../../shared/desk/workplace/look.ts'
import type { Handlers } from '../../calls/handlers.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { saveClinic, saveRecordSettings } from './clinic.ts'
import { getProtocol, previewProtocol, protocolVersions, saveProtocol } from './protocol.ts'

/** How the screens look on this PC. */
export interface LookOfPc {
	get: () => Look
	save: (look: Look) => void
}
/** The calls about letterhead, settings, protocol and look. */
export const clinicCalls = (
	memory: Pick<Memory, 'clinic' | 'people'>,
	deps: Deps,
	look: LookOfPc,
) =>
	({
		'clinic.get': () => memory.clinic.needLetterhead(),
		'clinic.save': (input) => saveClinic(memory, deps, input),
		'recordSettings.get': () => memory.clinic.settings,
		'recordSettings.save': (input) => saveRecordSettings(memory, deps, input),
		'protocol.get': () => getProtocol(memory),
		'protocol.versions': () => protocolVersions(memory),
		'protocol.preview': (input) => previewProtocol(memory, input),
		'protocol.save': (input) => saveProtocol(memory, deps, input),
		'look.get': () => look.get(),
		'look.save': (input) => {
			look.save(input)
			return {}
		},
	}) satisfies Partial<Handlers>
