/** The engine's answer to the draft, worked out after each entry, while typing never before it. */
import { useDeferredValue, useMemo } from 'react'
import { assess } from '../../../shared/engine/assess.ts'
import type { ProtocolFile } from '../../../shared/engine/protocol/protocol.ts'
import type { Shelf } from '../../../shared/engine/visit/shelf.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'

const cannot =
	'The findings cannot be worked out from these entries. Nothing entered is lost; ' +
	'correct the last entry.'

interface Given {
	typed: Visit
	earlier: readonly Visit[]
	protocol: ProtocolFile
	shelf: Shelf | undefined
	/** Proposals are being answered: they are those of the last entry, never of the one before. */
	answered: boolean
}
/** @returns `visit` is the visit that was assessed; `trouble` says why there is no assessment */
export function useAssessment({ typed, earlier, protocol, shelf, answered }: Given) {
	const settled = useDeferredValue(typed)
	const visit = answered ? typed : settled
	const answer = useMemo(() => {
		try {
			return { assessment: assess(visit, earlier, protocol, shelf), trouble: '' }
		} catch {
			return { assessment: undefined, trouble: cannot }
		}
	}, [visit, earlier, shelf, protocol])
	return { visit, ...answer }
}
